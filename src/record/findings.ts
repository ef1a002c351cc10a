// What the record itself notices: order, counts, things said at the same time; nobody is blamed.

import type { Pack, Step } from '../pack/types.ts';
import { say } from '../words/heard.ts';
import { missingWords } from './as-found.ts';
import { doneBy, type Reports } from './done.ts';
import { isolationIn, opensWet } from './isolation.ts';
import { expectedCount, shouldBeClosedBefore, stepIdOf } from './kinds.ts';
import { collide, type Ledger, openingsOf, unclosed } from './ledger.ts';
import { everything, rivalsId, type Said, stepOf, viewOf } from './said.ts';
import { lookFaults, unseenFaults } from './second-look.ts';
import { supersededWords } from './superseded.ts';
import { after } from './things.ts';
import type { Finding, Superseded } from './types.ts';

type Raised = Omit<Finding, 'decision'> & { readonly index: number };

export type Noticing = {
  readonly said: readonly Said[];
  readonly others: readonly Said[];
  readonly reports: Reports;
  readonly ledger: Ledger;
  readonly rivals: readonly (readonly Said[])[];
  /** Values replaced before the job was closed, or side by side with its closing. */
  readonly superseded: readonly Superseded[];
};

/** All findings in causal order, each with the latest decision about it. */
export function findingsOf(n: Noticing, decided: readonly Said[]): readonly Finding[] {
  const raised = [
    ...n.others.flatMap((s) => raisedByPerson(n, s)),
    ...n.said.flatMap((s) => [
      ...outOfOrder(n, s),
      ...notUndone(n, s),
      ...differs(s),
      ...answeredBadly(s),
      ...positionDiffers(s),
      ...lookedAt(n, s),
      ...failed(s),
      ...piecesMissing(s),
    ]),
    ...together(n),
    ...n.rivals.flatMap(rival),
    ...aroundClosing(n),
    ...n.superseded.flatMap((row) => madeBySuperseded(n, row)),
  ].sort((a, b) => a.index - b.index);
  return raised.map(({ index: _index, ...finding }) => {
    const last = decided.filter((d) => d.body.finding === finding.id).at(-1);
    const decision =
      last === undefined
        ? null
        : { by: last.act.by, owner: String(last.body.owner), what: String(last.body.what) };
    return { ...finding, decision };
  });
}

function raise(
  kind: Finding['kind'],
  s: Said,
  what: string,
  needsDecision: boolean,
  thing = String(s.body.thing ?? 'job'),
): Raised {
  const id = `${kind} ${thing} ${s.act.hash.slice(0, 16)}`;
  return { id, kind, thing, what, act: s.act.hash, needsDecision, index: s.index };
}

function raisedByPerson(n: Noticing, s: Said): readonly Raised[] {
  if (s.act.kind === 'found') return [raise('found', s, String(s.body.what), true)];
  if (s.act.kind !== 'could-not') return [];
  // What could not be done and was done later has answered itself.
  const step = s.body.step === undefined ? null : String(s.body.step);
  const done = step === null ? null : doneBy(n.reports, step, everything);
  const later = done !== null && n.ledger.isAncestor(s.index, done.index);
  return [raise('could not', s, String(s.body.why), !later)];
}

const shownId = (pack: Pack | null, id: string): string => stepOf(pack, id)?.text ?? id;

function outOfOrder(n: Noticing, s: Said): readonly Raised[] {
  const view = viewOf(s, n.ledger.isAncestor);
  const id = stepIdOf(s.act.kind, s.body);
  const step = stepOf(s.pack, id);
  const missing = (step?.needs ?? []).filter(
    (need) => stepOf(s.pack, need) !== null && doneBy(n.reports, need, view) === null,
  );
  const over = shouldBeClosedBefore(s.act.kind, s.body, s.facts).filter(
    (thing) => unclosed(n.ledger, thing, view).length > 0,
  );
  const early = [
    ...missing.map((need) => say('outOfOrder', String(id), need, shownId(s.pack, need))),
    ...over.map((thing) => say('outOfOrderOpen', String(id), thing)),
  ];
  // A weight that nothing carries is no slip of the pen: somebody looks at it.
  const hung = [...missing, ...(missing.length === 0 ? [] : [String(id)])].some((each) =>
    holds(s, each),
  );
  const found = early.length === 0 ? [] : [raise('out of order', s, say('together', early), hung)];
  if (!opensWet(s.act.kind, s.body, s.facts)) return found;
  const { isAncestor } = n.ledger;
  const isolation = isolationIn({ said: n.said, isAncestor, view, facts: s.facts, pack: s.pack });
  if (isolation.proved) return found;
  const what = say('openedWet', String(s.body.thing), isolation.why);
  return [{ ...raise('out of order', s, what, true), id: `isolation ${s.act.hash.slice(0, 16)}` }];
}

/** Whether a step puts in, or takes away, what carries a weight. */
function holds(s: Said, id: string): boolean {
  const [, temp] = /^(?:put-in|taken-away) temp\/(\S+)$/.exec(id) ?? [];
  return temp !== undefined && s.facts?.temps[temp]?.holds !== undefined;
}

/** A making good finds its entry open in the eyes of whoever did it, or says so. */
function notUndone(n: Noticing, s: Said): readonly Raised[] {
  const view = viewOf(s, n.ledger.isAncestor);
  return s.row.closes(s.body, s.facts).flatMap((thing) => {
    const opened = openingsOf(n.ledger, thing, view);
    // A proof nobody owes may be done all the same.
    if (thing.startsWith('proof/') && opened.length === 0) return [];
    if (opened.length > 0 && unclosed(n.ledger, thing, view).length > 0) return [];
    const why = say(opened.length > 0 ? 'madeGoodBefore' : 'nobodyUndid');
    const what = say('notUndone', `${s.act.kind} ${thing}`, why);
    return [raise('made good without being undone', s, what, false, thing)];
  });
}

function differs(s: Said): readonly Raised[] {
  const step = stepOf(s.pack, stepIdOf(s.act.kind, s.body));
  const counts: string[] = [];
  const expected = expectedCount(s.act.kind, s.body, s.facts) ?? step?.count?.n ?? null;
  const said = s.body.count;
  const wanted = step?.asks.find((a) => a.name === 'count')?.expected ?? expected;
  const byHole = Array.isArray(s.body.holes);
  if (typeof said === 'number' && wanted !== null && said !== wanted && !byHole)
    counts.push(say('countedWhere', said, wanted));
  for (const ask of step?.asks ?? []) {
    const answer = s.body[ask.name];
    const [stated] = ask.choices ?? [];
    const isSetting = s.act.kind === 'measured' && String(s.body.thing).startsWith('setting/');
    if (isSetting && typeof answer === 'string' && stated !== undefined) {
      if (answer !== stated) counts.push(say('answeredWhere', ask.label, answer, stated));
      continue;
    }
    if (
      s.act.kind === 'as-found' ||
      ask.name === 'count' ||
      ask.expected === undefined ||
      typeof answer !== 'number'
    )
      continue;
    if (answer !== ask.expected) counts.push(say('answeredWhere', ask.label, answer, ask.expected));
  }
  const holes = s.facts?.joints[after(String(s.body.thing))]?.holes ?? [];
  const strange = byHole && holes.length > 0 ? strangeHoles(s, holes) : [];
  if (strange.length > 0) counts.push(say('noSuchHole', strange));
  if (counts.length === 0) return [];
  const what = say('countDiffers', `${s.act.kind} ${s.body.thing}`, counts);
  return [raise('count differs', s, what, true)];
}

const strangeHoles = (s: Said, holes: readonly string[]): readonly string[] =>
  (Array.isArray(s.body.holes) ? s.body.holes : []).map(String).filter((h) => !holes.includes(h));

/** The open list holds the hunt; the finding says where it began. */
function piecesMissing(s: Said): readonly Raised[] {
  if (s.act.kind !== 'as-found' || Number(s.body.missing) === 0) return [];
  return [raise('found', s, missingWords(s.body.missing), false)];
}

/** A closure left in another position than the one listed, or than its normal one. */
function positionDiffers(s: Said): readonly Raised[] {
  if (s.act.kind !== 'shut' && s.act.kind !== 'restored') return [];
  const closure = s.facts?.closures[after(String(s.body.thing))];
  const want = s.act.kind === 'shut' ? closure?.workPosition : closure?.normal;
  const got = s.body.position;
  if (typeof want !== 'string' || got === undefined || got === want) return [];
  const what = say('positionDiffers', String(closure?.name), String(got), want);
  return [raise('position differs', s, what, true)];
}

function lookedAt(n: Noticing, s: Said): readonly Raised[] {
  const { looking } = n.reports;
  const wet = (o: Said): boolean => opensWet(o.act.kind, o.body, o.facts);
  return [...lookFaults(looking, s), ...unseenFaults(looking, s, wet)].map((f) => ({
    ...raise(f.kind, s, f.what, f.needsDecision),
    id: `second look ${f.kind} ${s.act.hash.slice(0, 16)}`,
  }));
}

/** Of two answers offered, the second is the bad one: it must be looked at by a person. */
function answeredBadly(s: Said): readonly Raised[] {
  const step: Step | null = stepOf(s.pack, stepIdOf(s.act.kind, s.body));
  const ask = step?.asks.find((a) => a.name === 'result' && a.kind === 'choice');
  const [, bad, ...more] = ask?.choices ?? [];
  if (bad === undefined || more.length > 0 || s.act.kind === 'proof') return [];
  if (s.body.result !== bad) return [];
  const note = s.body.text === undefined ? null : String(s.body.text);
  const told = step?.text ?? String(s.body.thing);
  return [raise('found', s, say('answeredBadly', told, ask?.label ?? '', bad, note), true)];
}

function failed(s: Said): readonly Raised[] {
  if (s.act.kind !== 'proof' || s.row.closes(s.body, s.facts).length > 0) return [];
  const name = s.facts?.proofs[after(String(s.body.thing))]?.name ?? String(s.body.thing);
  return [raise('proof failed', s, say('proofFailed', name, String(s.body.result)), false)];
}

/** Acts on one thing said apart: one finding an act, at the later of each pair. */
function together(n: Noticing): readonly Raised[] {
  const raised: Raised[] = [];
  for (const [thing, account] of n.ledger.accounts) {
    const own = account.opened.map((o) => o.said).filter((s) => s.body.thing === thing);
    const acts = [...new Set([...own, ...account.closers])].sort((a, b) => a.index - b.index);
    for (const [i, later] of acts.entries()) {
      const apart = acts.slice(0, i).filter((earlier) => collide(n.ledger, earlier, later));
      if (apart.length === 0) continue;
      const both = [...apart, later].map((s) => say('actBy', s.act.kind, s.act.by));
      const what = say('atTheSameTime', thing, both);
      raised.push(raise('at the same time', later, what, false, thing));
    }
  }
  return raised;
}

/** A joint brought to a value that was no longer in force, or no longer is; a look answers it. */
function madeBySuperseded(n: Noticing, row: Superseded): readonly Raised[] {
  const made = n.said.find((s) => s.act.hash === row.reached);
  if (made === undefined) return [];
  const raised = raise('value superseded', made, supersededWords(row), row.looked === null);
  return [{ ...raised, id: `value superseded ${row.thing} ${row.value} ${row.act.slice(0, 16)}` }];
}

function rival(amendments: readonly Said[]): readonly Raised[] {
  const [first] = amendments;
  const last = amendments.at(-1);
  if (first === undefined || last === undefined) return [];
  const said = amendments.map((a) => `${a.body.why} (${a.act.by})`);
  const what = say('twoPacks', said);
  return [{ ...raise('two amendments', last, what, true, 'job'), id: rivalsId(first) }];
}

function aroundClosing(n: Noticing): readonly Raised[] {
  const closings = n.others.filter((s) => s.act.kind === 'closed');
  const raised: Raised[] = [];
  for (const closing of closings) {
    const open = uncovered(n.ledger, closing, true);
    if (open.length === 0) continue;
    const what = say('closedOpen', closing.act.by, open);
    raised.push(raise('closed with entries open', closing, what, true, 'job'));
  }
  const last = closings.at(-1);
  if (last === undefined) return raised;
  for (const s of n.said) {
    if (n.ledger.isAncestor(s.index, last.index)) continue;
    const what = say('notKnown', `${s.act.kind} ${s.body.thing}`, s.act.by);
    raised.push(raise('after closing', s, what, true));
  }
  return raised;
}

/** Things open, then or now, for which a closing states no deviation. */
export function uncovered(ledger: Ledger, closing: Said, then: boolean): readonly string[] {
  const view = then ? viewOf(closing, ledger.isAncestor) : everything;
  const stated = deviationsOf(closing).map((d) => d.thing);
  return [...ledger.accounts.keys()].filter(
    (thing) => !stated.includes(thing) && unclosed(ledger, thing, view).length > 0,
  );
}

type Stated = { readonly thing: string; readonly reason: string; readonly limits: string };

/** The body's shape was checked when the act was taken up. */
export const deviationsOf = (closing: Said): readonly Stated[] =>
  closing.body.deviations as unknown as readonly Stated[];
