// Box-up worked out from what was disturbed: what must come before what, then the trade's rules.

import { limits } from '../limits.ts';
import {
  accessOf,
  type Context,
  jointOf,
  type Moved,
  movedBetween,
  partOf,
  targetJoints,
  type Undone,
  wayOf,
} from './context.ts';
import { EARLY_LOOSE, facesId, fitSteps, looseInId, sealInId } from './fit.ts';
import { holdersOf, holdingJoints } from './holding.ts';
import { makeSteps, roundIds, squareId } from './make.ts';
import type { DraftStep, Preference } from './order.ts';
import { step, stepId } from './step.ts';
import { movedId, undoneId } from './strip.ts';
import type { Temporary } from './temporary.ts';

export type BoxUp = {
  readonly steps: readonly DraftStep[];
  readonly preferences: readonly Preference[];
};

export const refittedId = (part: string): string => stepId('refitted', `part/${part}`);

/** Parts to be put back, last moved first; a part that was moved twice goes back once. */
export const backOrder = (c: Context): Moved[] => {
  const seen = new Set<string>();
  return [...c.moved].reverse().filter((m) => {
    if (seen.has(m.id)) return false;
    seen.add(m.id);
    return true;
  });
};

export const boxUp = (c: Context, temps: readonly Temporary[]): BoxUp => {
  const back = backOrder(c);
  const rankOf = new Map(back.map((m, i) => [m.id, 10_000 + i * 100]));
  const last = 10_000 + back.length * 100;
  const jointRank = (j: string): number =>
    Math.max(10_000, ...movedBetween(c, j).map((p) => rankOf.get(p) ?? last));
  const steps: DraftStep[] = [...fitSteps(c, temps, jointRank)];
  for (const m of back) {
    const at = rankOf.get(m.id) ?? last;
    steps.push(refitStep(c, m, at, temps));
    if (c.items.includes(m.id)) steps.push(...itemIn(c, m, at));
    steps.push(...tempSteps(c, m, at, temps, jointRank));
  }
  for (const u of c.undone) {
    const guides = temps.filter((t) => t.kind === 'guide studs' && t.of === u.id);
    steps.push(...makeSteps(c, u, jointRank(u.id) + 20, firstRoundNeeds(c, u, guides)));
  }
  return { steps, preferences: tradeRules(c) };
};

/** The first round of a joint waits for its parts, its seals, its keys and its guides. */
const firstRoundNeeds = (c: Context, u: Undone, guides: readonly Temporary[]): string[] => {
  const j = u.id;
  const there = c.moved.filter((m) => m.bench === u.bench);
  return [
    ...movedBetween(c, j)
      .filter((p) => there.some((m) => m.id === p))
      .map(refittedId),
    ...there.filter((m) => (wayOf(c, m)?.joints ?? []).includes(j)).map((m) => refittedId(m.id)),
    ...Object.keys(jointOf(c, j).seals ?? {}).map((s) => sealInId(j, s)),
    ...guides.map((t) => stepId('taken-away', `temp/${t.n}`)),
  ];
};

const refitStep = (c: Context, m: Moved, at: number, temps: readonly Temporary[]): DraftStep => {
  const part = partOf(c, m.id);
  const way = wayOf(c, m);
  const joints = c.undone.filter(
    (u) => u.bench === m.bench && (jointOf(c, u.id).between ?? []).includes(m.id),
  );
  const aside = m.as === 'aside';
  const guided = temps.some((t) => t.kind === 'guide studs' && t.part === m.id);
  const studs = joints.some((u) =>
    Object.values(jointOf(c, u.id).fasteners ?? {}).some((f) => f.kind === 'stud and nut'),
  );
  const on = guided ? c.say('onGuides') : studs ? c.say('onStuds') : '';
  return step({
    verb: 'refitted',
    thing: `part/${m.id}`,
    phase: 'box-up',
    rank: at + 10,
    text: aside
      ? c.say('backInPlace', part.name)
      : c.say('offerUp', lower(part.name), on, carrierOf(c, m), m.id === c.targetId),
    reason: backReason(c, m),
    place: m.bench ? 'bench' : null,
    needs: [
      movedId(c, m.id),
      ...refitNeeds(c, m),
      ...joints.flatMap((u) => sealNeeds(c, u.id, m)),
      ...blanksOf(temps, m.id).map((t) => stepId('taken-away', `temp/${t.n}`)),
      ...temps
        .filter((t) => t.kind === 'guide studs' && t.part === m.id)
        .map((t) => stepId('put-in', `temp/${t.n}`)),
      ...(c.items.includes(m.id) ? [stepId('item-in', `item/${m.id}`)] : []),
    ],
    minutes: way?.minutes === undefined ? null : way.minutes / 2,
    hands: way?.people ?? 1,
    hazards: liftingAgain(c, m) ? ['lifting'] : [],
  });
};

/** What bears it while its joints are started: as stated, else what held it when it went. */
const carrierOf = (c: Context, m: Moved): string | null => {
  const stated = partOf(c, m.id).carriedBy;
  const held = holdersOf(c, c.moved.find((x) => x.id === m.id) ?? m);
  return stated ?? (held.length === 0 ? null : c.say('listed', held));
};

const liftingAgain = (c: Context, m: Moved): boolean => {
  const part = partOf(c, m.id);
  return (
    part.carriedBy !== undefined ||
    part.mass === undefined ||
    Number.parseFloat(part.mass) >= limits.pack.liftingKg
  );
};

const lower = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);

const blanksOf = (temps: readonly Temporary[], part: string) =>
  temps.filter((t) => (t.kind === 'blank' || t.kind === 'other') && t.part === part);

/** Seals and keys go in before the last of a joint's parts comes to it. */
const sealNeeds = (c: Context, j: string, m: Moved): string[] => {
  const order = backOrder(c).map((x) => x.id);
  const lastPart = movedBetween(c, j).sort((a, b) => order.indexOf(b) - order.indexOf(a))[0];
  const joint = jointOf(c, j);
  const early = Object.entries(joint.loose ?? {})
    .filter(([, l]) => EARLY_LOOSE.includes(l.kind))
    .map(([id]) => looseInId(j, id));
  const seals = Object.keys(joint.seals ?? {}).map((s) => sealInId(j, s));
  return lastPart === m.id
    ? [...seals, ...early, ...(Object.keys(joint.seals ?? {}).length > 0 ? [facesId(j)] : [])]
    : early;
};

/**
 * What the way back demands: the parts and joints that had to be clear for this part to move are
 * not put back before it, and the joints reached only with this part away are made up first.
 */
const refitNeeds = (c: Context, m: Moved): string[] => {
  const needs: string[] = [];
  for (const u of c.undone) {
    const clear = accessOf(c, u)?.clear ?? [];
    const between = jointOf(c, u.id).between ?? [];
    if (clear.some((x) => x.part === m.id) && !between.includes(m.id))
      needs.push(...roundIds(c, u.id).slice(-1));
  }
  for (const other of c.moved) {
    const clear = wayOf(c, other)?.clear ?? [];
    if (other.id !== m.id && clear.some((x) => x.part === m.id)) needs.push(refittedId(other.id));
  }
  if (m.id === c.targetId)
    for (const b of c.undone.filter((u) => u.bench)) needs.push(...roundIds(c, b.id).slice(-1));
  return needs;
};

const backReason = (c: Context, m: Moved): string => {
  const before = c.moved.filter((o) =>
    (wayOf(c, o)?.clear ?? []).some((x) => x.part === m.id && o.id !== m.id),
  );
  const names = before.map((o) => lower(partOf(c, o.id).name));
  return names.length > 0 ? c.say('backAfter', names) : c.say('backWhy');
};

const itemIn = (c: Context, m: Moved, at: number): DraftStep[] => {
  const name = partOf(c, m.id).name;
  const fresh = c.does !== 'overhaul' || m.id !== c.targetId;
  const compare = `check/compare:${m.id}`;
  const first = step({
    verb: 'checked',
    thing: compare,
    phase: 'fit',
    rank: at - 2,
    text: fresh ? c.say('sideBySide', lower(name)) : c.say('asItIs', name),
    reason: c.say(fresh ? 'sideBySideWhy' : 'asItIsWhy'),
    needs: [stepId('item-out', `item/${m.id}`)],
    asks: [resultAsk('the same', 'differs')],
  });
  const second = step({
    verb: 'item-in',
    thing: `item/${m.id}`,
    phase: 'fit',
    rank: at - 1,
    text: c.say('toBeFitted', name),
    reason: c.say('toBeFittedWhy'),
    needs: [stepId('checked', compare)],
    asks: [{ name: 'serial', label: 'Serial, or “unreadable”', kind: 'text', optional: true }],
  });
  return [first, second];
};

export const resultAsk = (good: string, bad: string) => ({
  name: 'result',
  label: 'Seen',
  kind: 'choice' as const,
  choices: [good, bad],
});

const tempSteps = (
  c: Context,
  m: Moved,
  at: number,
  temps: readonly Temporary[],
  jointRank: (j: string) => number,
): DraftStep[] =>
  temps
    .filter((t) => t.part === m.id)
    .flatMap((t) => {
      const away = (needs: string[], rank: number, text: string) =>
        step({
          verb: 'taken-away',
          thing: `temp/${t.n}`,
          phase: 'box-up',
          rank,
          text,
          reason: c.say('awayWhy'),
          needs: [stepId('put-in', `temp/${t.n}`), ...needs],
        });
      if (t.kind === 'blank' || t.kind === 'other')
        return [away(openEndReady(c, m), at + 5, c.say('blankOff', t.name, t.n, t.where))];
      if (t.before === true) {
        const held = c.moved.find((x) => x.id === m.id) ?? m;
        const joints = holdingJoints(c, held);
        const started = joints.flatMap((j) => roundIds(c, j).slice(0, 1));
        const rank = Math.max(at + 15, ...joints.map((j) => jointRank(j) + 20.2));
        return [away([refittedId(m.id), ...started], rank, c.say('weightOff', t.name, t.n))];
      }
      if (t.kind === 'support')
        return [away([refittedId(m.id)], at + 15, c.say('supportAway', t.name, t.n))];
      const put = step({
        verb: 'put-in',
        thing: `temp/${t.n}`,
        phase: 'fit',
        rank: at + 6,
        text: c.say('guidesIn', t.name, t.n, t.where.toLowerCase()),
        reason: c.say('guidesInWhy'),
        needs: [movedId(c, m.id)],
        fixed: { name: t.name, where: t.where },
      });
      return [put, away([refittedId(m.id)], at + 12, c.say('guidesAway', t.name, t.n))];
    });

/** A blank stays on until the parts that go back before this one are in. */
const openEndReady = (c: Context, m: Moved): string[] => refitNeeds(c, m);

/** Rules of the trade, common practice without a source; each gives way to what access demands. */
const tradeRules = (c: Context): Preference[] => {
  const { mounting, pipes } = targetJoints(c);
  const rules: Preference[] = [];
  const tightening = (j: string) => roundIds(c, j).filter((_, i, all) => i > 0 || all.length === 1);
  for (const j of mounting) {
    const [firstTight] = tightening(j);
    const final = roundIds(c, j).at(-1);
    for (const p of pipes) {
      rules.push({ first: undoneId(p), next: undoneId(j), why: 'pipes off before the mounting' });
      const [hand] = roundIds(c, p);
      const [pipeTight] = tightening(p);
      const names = c.say('bothNamed', jointOf(c, p).name, jointOf(c, j).name.toLowerCase());
      if (hand !== undefined && firstTight !== undefined && hand !== pipeTight)
        rules.push({ first: hand, next: firstTight, why: 'start by hand', names });
      if (final !== undefined && pipeTight !== undefined)
        rules.push({ first: final, next: pipeTight, why: 'mounting first', names });
    }
  }
  return rules;
};

/** Says where a trade rule gave way: the pipe stands in the way of the mounting. */
export const boxUpNotes = (c: Context, given: readonly Preference[]): string[] =>
  given
    .filter((p) => p.why === 'start by hand')
    .map((p) => c.say('pipeInTheWay', p.names ?? ''))
    .concat(squareNote(c));

const squareNote = (c: Context): string[] =>
  c.undone.some((u) => squareId(c, u.id) !== null) ? [c.say('mountingFirst')] : [];
