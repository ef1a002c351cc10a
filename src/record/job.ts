// One job's state from its acts: its open list, findings, isolation, readings, verdict, closing.

import { beforeOf } from '../pack/before.ts';
import type { Pack } from '../pack/types.ts';
import { say } from '../words/heard.ts';
import { asFoundIn, withHours } from './as-found.ts';
import { baselineIn, foundPositionsIn } from './before.ts';
import { boltsFoundIn } from './bolts.ts';
import { doneBy, type Reports, reportsOf } from './done.ts';
import { entriesOf } from './entries.ts';
import { deviationsOf, findingsOf, uncovered } from './findings.ts';
import { handedOverIn } from './hand-over.ts';
import { isClear, isolationIn } from './isolation.ts';
import { stepIdOf } from './kinds.ts';
import { type Ledger, makeLedger } from './ledger.ts';
import {
  type Chain,
  chainOf,
  type Effective,
  everything,
  type IsAncestor,
  mergedFacts,
  type Said,
  stepOf,
  viewOf,
} from './said.ts';
import { type Looking, looksIn } from './second-look.ts';
import { isStart, stripFacts, stripNames, stripOf } from './strip.ts';
import { type Issues, issuedAfter, supersededOf } from './superseded.ts';
import { after } from './things.ts';
import type { Act, Deviation, Entry, JobState, StripState } from './types.ts';

type Row = Effective['acts'][number];

/** The acts of one job, each with the pack that was in force for whoever said it. */
type Told = {
  readonly started: Said;
  readonly all: readonly Said[];
  readonly chain: Chain;
  readonly pack: Pack | null;
  readonly facts: Said['facts'];
  readonly strip: StripState | null;
};

export function foldJob(
  id: string,
  rows: readonly Row[],
  packs: ReadonlyMap<string, Pack>,
  isAncestor: IsAncestor,
  issues: Issues,
): Omit<JobState, 'said'> | null {
  const told = tell(rows, packs, isAncestor);
  if (told === null) return null;
  const { all, chain, pack, facts } = told;
  const ofKind = (kind: string) => all.filter((s) => s.act.kind === kind);
  const said = all.filter((s) => s.row.step);
  const others = all.filter((s) => !s.row.step);
  const ledger = makeLedger(said, isAncestor);
  const passing = [...ofKind('used-anyway'), ...ofKind('cannot-run')];
  const aboard = aboardOf(told);
  const looking: Looking = { said, anyway: ofKind('used-anyway'), isAncestor, facts, aboard };
  const reports = reportsOf([...said, ...passing].sort(byIndex), ledger, looking);
  const entries = entriesOf(ledger, facts);
  const done = doneSteps(reports);
  const closings = ofKind('closed');
  const closed = closingOf(closings, ledger);
  const held = { ...issues, all, pack, isAncestor };
  const superseded = supersededOf(held);
  const end = closed === null ? null : (closings.at(-1)?.index ?? null);
  const late = superseded.filter((r) => !issuedAfter(held, r, end));
  const noticing = { said, others, reports, ledger, rivals: chain.rivals, superseded: late };
  const view = everything;
  const deviations = deviationsIn(all, closed?.act ?? null);
  return {
    id,
    ...startOf(told),
    packs: chain.packs,
    packInForce: chain.inForce,
    strip: told.strip,
    handedOver: handedOverIn(all, ledger),
    stage: stageOf(entries, said.length > 0, closed !== null),
    entries,
    openCount: entries.filter((e) => e.open).length,
    done,
    findings: findingsOf(noticing, ofKind('decided')),
    deviations,
    isolation: isolationIn({ said, isAncestor, view, facts, pack }),
    handsAboard: aboard,
    looks: looksIn(looking),
    clear: isClear(said, isAncestor, view),
    readings: said.flatMap(readingsOf),
    superseded,
    verdict: verdictOf(entries, said),
    followUps: followUpsOf(told),
    photos: all.flatMap(photoOf),
    notes: ofKind('note').map((s) => ({
      act: s.act.hash,
      by: s.act.by,
      thing: String(s.body.thing ?? 'job'),
      text: String(s.body.text),
    })),
    items: withHours(said.flatMap(itemOf), asFoundIn(said)),
    baseline: baselineIn(said, others),
    bolts: boltsFoundIn(all, isAncestor),
    foundPositions: foundPositionsIn(said),
    asFound: asFoundIn(said),
    closed: closed === null ? null : { ...closed, deviations: deviations.length },
  };
}

const byIndex = (a: Said, b: Said): number => a.index - b.index;

function tell(
  rows: readonly Row[],
  packs: ReadonlyMap<string, Pack>,
  isAncestor: IsAncestor,
): Told | null {
  const start = rows.find(({ act }) => isStart(act.kind));
  if (start === undefined) return null;
  const bare = rows.map((r): Said => ({ ...r, body: r.act.body, pack: null, facts: null }));
  if (start.act.kind === 'strip-started') return tellStrip(start.act, bare, isAncestor);
  const amended = bare.filter((s) => s.act.kind === 'pack-amended');
  const decided = bare.filter((s) => s.act.kind === 'decided');
  const first = String(start.act.body.pack);
  const known = new Map<string, Pick<Said, 'pack' | 'facts'>>();
  const factsOf = (chain: Chain): Pick<Said, 'pack' | 'facts'> => {
    // While two amendments stand undecided, the last pack nobody disputes speaks.
    const ids = chain.inForce === null ? chain.packs.slice(0, undisputed(chain)) : chain.packs;
    const key = ids.join(' ');
    let found = known.get(key);
    if (found === undefined) {
      const here = ids.flatMap((p) => packs.get(p) ?? []);
      found = { pack: packs.get(ids.at(-1) ?? '') ?? null, facts: mergedFacts(here) };
      known.set(key, found);
    }
    return found;
  };
  const inView = (s: Said): Said => {
    if (amended.length === 0) return { ...s, ...factsOf(chain) };
    return { ...s, ...factsOf(chainOf(first, amended, decided, viewOf(s, isAncestor))) };
  };
  const chain = chainOf(first, amended, decided, everything);
  const all = bare.map(inView);
  const started = all.find((s) => s.act === start.act);
  return started === undefined ? null : { started, all, chain, ...factsOf(chain), strip: null };
}

/** Without a pack everybody's facts are what all have seen so far; no pack ever comes in force. */
function tellStrip(start: Act, bare: readonly Said[], isAncestor: IsAncestor): Told | null {
  const first = bare.find((s) => s.act === start);
  if (first === undefined) return null;
  const strip = stripOf(first, bare, isAncestor);
  const facts = stripFacts(strip);
  const all = bare.map((s): Said => ({ ...s, facts }));
  const chain: Chain = { packs: [], inForce: null, rivals: [] };
  return { started: { ...first, facts }, all, chain, pack: null, facts, strip };
}

function undisputed(chain: Chain): number {
  const disputed = chain.rivals.at(-1)?.map((r) => String(r.body.to)) ?? [];
  const at = chain.packs.findIndex((p) => disputed.includes(p));
  return at < 0 ? chain.packs.length : at;
}

/** Taken by itself, or with the act that it shows. */
function photoOf(s: Said): JobState['photos'] {
  const hash = s.act.kind === 'photo' ? s.body.hash : s.body.photo;
  if (typeof hash !== 'string') return [];
  return [{ act: s.act.hash, thing: String(s.body.thing ?? 'job'), hash }];
}

function startOf({ started }: Told) {
  const { act, body } = started;
  const names = {
    title: String(body.title),
    machine: String(body.machine),
    target: String(body.target),
    does: String(body.does),
  };
  return {
    ...(act.kind === 'strip-started' ? stripNames(started) : names),
    why: String(body.why),
    hands: Array.isArray(body.hands) ? body.hands.map(String) : [],
    competent: body.competent === undefined ? null : String(body.competent),
    startAct: act.hash,
    startedBy: act.by,
    startedAt: act.at,
  };
}

/** The body's shape was checked when the act was taken up. */
const aboardOf = ({ started, pack }: Told): JobState['handsAboard'] =>
  pack?.request.handsAboard ??
  (started.body.handsAboard as Exclude<JobState['handsAboard'], null> | undefined) ??
  null;

function doneSteps(reports: Reports): JobState['done'] {
  const done: Record<string, string> = {};
  for (const step of [...reports.byStep.keys()].sort()) {
    const act = doneBy(reports, step, everything);
    if (act !== null) done[step] = act.act.hash;
  }
  return done;
}

/** The machine is whole again once every joint, part, item, seal and loose part is made good. */
function stageOf(entries: readonly Entry[], begun: boolean, closed: boolean): JobState['stage'] {
  if (closed) return 'Record';
  if (!begun) return 'Pack';
  const machine = ['joint', 'part', 'item', 'old seal', 'new seal', 'loose part'];
  const disturbed = entries.filter((e) => machine.includes(e.kind));
  if (disturbed.length === 0 || disturbed.some((e) => e.open)) return 'Work';
  return entries.some((e) => e.open) ? 'Proof' : 'Record';
}

type Closing = Omit<NonNullable<JobState['closed']>, 'deviations'>;

/** The last closing holds while nothing is open beyond its stated deviations. */
function closingOf(closings: readonly Said[], ledger: Ledger): Closing | null {
  const last = closings.at(-1);
  if (last === undefined || uncovered(ledger, last, false).length > 0) return null;
  const { hash, by, at } = last.act;
  return { act: hash, by, at };
}

function deviationsIn(all: readonly Said[], closing: string | null): readonly Deviation[] {
  return all.flatMap((s): readonly Deviation[] => {
    const { hash: act, by } = s.act;
    const of = (thing: unknown, reason: unknown, limits: unknown): Deviation => ({
      act,
      thing: String(thing),
      by,
      reason: String(reason),
      limits: String(limits),
    });
    if (s.act.kind === 'accounted' && s.body.reason !== undefined)
      return [of(s.body.thing, s.body.reason, s.body.limits)];
    if (s.act.kind === 'used-anyway') return [of(s.body.thing, s.body.reason, s.body.limits)];
    if (act === closing) return deviationsOf(s).map((d) => of(d.thing, d.reason, d.limits));
    if (s.act.kind !== 'job-started' || !Array.isArray(s.body.anyway)) return [];
    const anyway = s.body.anyway as unknown as readonly Record<string, string>[];
    return anyway.map((a) => of(a.decision, a.reason, a.limits));
  });
}

/** At a joint that is tight the figure said is the issued one: nobody read it off. */
const NO_READING: readonly string[] = ['as-found', 'checked-tight', 're-tightened'];

/** Figures and answers a person gave, under the words the pack asked in. */
function readingsOf(s: Said): JobState['readings'] {
  const step = stepOf(s.pack, stepIdOf(s.act.kind, s.body));
  // What was read before the stop and the turns of a valve are told apart, each in its place.
  if (beforeOf(String(s.body.thing)) !== null || NO_READING.includes(s.act.kind)) return [];
  const asks = (step?.asks ?? []).filter((a) => a.kind === 'number' && a.name !== 'turns');
  const act = s.act.hash;
  const thing = String(s.body.thing);
  const round = s.body.round === undefined ? null : String(s.body.round);
  const rows = asks.flatMap((ask) => {
    const value = s.body[ask.name];
    if (typeof value !== 'number' && typeof value !== 'string') return [];
    const name = ask.name === 'value' ? (round ?? ask.label) : ask.label;
    return [{ act, thing, name, value, unit: String(ask.unit ?? s.body.unit ?? '') }];
  });
  const asked = asks.some((a) => a.name === 'value');
  const { value, text, unit } = s.body;
  const hole = round !== null && Array.isArray(s.body.holes) ? s.body.holes.map(String) : [];
  const name = hole.length > 0 ? say('roundAtHoles', round ?? '', hole) : (round ?? 'value');
  if (!asked && (typeof value === 'number' || typeof value === 'string'))
    rows.push({ act, thing, name, value, unit: String(unit ?? '') });
  else if (s.act.kind === 'measured' && value === undefined && typeof text === 'string')
    rows.push({ act, thing, name, value: text, unit: '' });
  return rows;
}

/** The worst of the proofs owed speaks; nothing is said while one is owed and not yet tried. */
function verdictOf(entries: readonly Entry[], said: readonly Said[]): JobState['verdict'] {
  const owed = entries.filter((e) => e.kind === 'proof');
  const results = owed.map((e) => {
    const tried = said.filter((s) => s.act.kind === 'proof' && s.body.thing === e.thing).at(-1);
    return { open: e.open, result: String(tried?.body.result ?? ''), upTo: tried?.body.upTo };
  });
  if (results.some((r) => r.open && r.result === 'fail')) return 'fail';
  if (results.some((r) => r.open && r.result === 'cannot tell')) return 'cannot tell';
  if (results.length === 0 || results.some((r) => r.open)) return null;
  const upTo = results.find((r) => r.result === 'passed up to');
  return upTo === undefined ? 'pass' : passedTo(String(upTo.upTo));
}

/** Kept as the English words stand; said as well, so that it can be told. */
function passedTo(upTo: string): `passed up to ${string}` {
  say('passedTo', upTo);
  return `passed up to ${upTo}`;
}

function followUpsOf(told: Told): JobState['followUps'] {
  const last = (kind: string, id: string) =>
    told.all.filter((s) => s.act.kind === kind && s.body.followUp === id).at(-1);
  return (told.pack?.lists.followUps ?? []).map(({ id, after: due, what }) => {
    const owned = last('follow-up-owned', id);
    return {
      id,
      after: due,
      what,
      owner: owned === undefined ? null : String(owned.body.owner),
      doneBy: last('follow-up-done', id)?.act.by ?? null,
    };
  });
}

/** What stands where nobody gave a serial; a screen says it in its own words. */
export const SERIAL_NOT_GIVEN = 'serial not given';

function itemOf(s: Said): JobState['items'] {
  if (s.act.kind !== 'item-out' && s.act.kind !== 'item-in') return [];
  const { hours, serial, thing } = s.body;
  return [
    {
      act: s.act.hash,
      part: after(String(thing)),
      way: s.act.kind === 'item-out' ? 'out' : 'in',
      serial: serial === undefined || serial === '' ? SERIAL_NOT_GIVEN : String(serial),
      hours: typeof hours === 'number' ? hours : null,
    },
  ];
}
