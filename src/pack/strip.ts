// The steps that take things off, in the order of the removal plan.

import { limits } from '../limits.ts';
import type { Hazard } from '../quantity/authority.ts';
import { asFoundStep } from './as-found.ts';
import {
  accessOf,
  type Context,
  isWet,
  jointOf,
  type Moved,
  movedBetween,
  opensLine,
  partOf,
  placeName,
  targetJoints,
  type Undone,
  wayOf,
} from './context.ts';
import { holdingJoints, holdsWeight, mustBeHeld } from './holding.ts';
import { isolatedBy } from './isolate.ts';
import { joined } from './joint-shape.ts';
import { isolationLook } from './looks.ts';
import type { DraftStep } from './order.ts';
import { easingOf, slackenedIn } from './slacken.ts';
import { step, stepId } from './step.ts';
import type { Temporary } from './temporary.ts';
import type { Thing } from './types.ts';
import { unitOf } from './values.ts';

export const undoneId = (joint: string): string => stepId('undone', `joint/${joint}`);

/** The last step that moved a part in stripping. */
export const movedId = (c: Context, part: string): string => {
  const last = c.moved.filter((m) => m.id === part).at(-1);
  return stepId(last?.as === 'aside' ? 'moved-aside' : 'moved-off', `part/${part}`);
};

export const stripSteps = (c: Context, temps: readonly Temporary[]): DraftStep[] => {
  const steps: DraftStep[] = [marksStep(c)];
  c.undone.forEach((u) => {
    const at = rankOf(c, u.id, 'undo');
    steps.push(...foundSettings(c, u.id, at), undoStep(c, u, at, heldBy(c, u, temps)));
    steps.push(...sealsOut(c, u.id, at));
  });
  c.moved.forEach((m) => {
    const at = rankOf(c, m.id, m.as);
    steps.push(moveStep(c, m, at, temps));
    for (const t of temps.filter((x) => x.part === m.id && x.kind !== 'guide studs'))
      if (t.before !== true) steps.push(putInStep(c, t, at));
  });
  c.moved.forEach((m) => {
    const own = temps.filter((t) => t.before === true && t.part === m.id && mustBeHeld(c, m));
    const first = Math.min(...holdingJoints(c, m).map((j) => rankOf(c, j, 'undo')));
    const at = Number.isFinite(first) ? first - 3 : rankOf(c, m.id, m.as) - 1;
    for (const t of own) steps.push(holdStep(c, m, t, at));
  });
  for (const part of c.items) if (c.moved.some((m) => m.id === part)) steps.push(itemOut(c, part));
  steps.push(asFoundStep(c, (thing) => rankOfThing(c, thing)));
  return steps;
};

/** Ranks follow the plan's own order, bench work after it. */
const rankOf = (c: Context, id: string, what: 'undo' | 'off' | 'aside'): number => {
  let rank = 1_000;
  for (const plan of c.plans)
    for (const row of plan.order) {
      rank += 10;
      const same = row.do === 'undo' ? row.joint === id : String(row.part) === id;
      if (same && row.do === what) return rank;
    }
  return rank;
};

/** The rank of the step that takes a thing off, for what comes right after it. */
const rankOfThing = (c: Context, thing: Thing): number => {
  const [sort = '', id = ''] = thing.split('/');
  const moved = c.moved.findLast((m) => m.id === id);
  return sort === 'joint' ? rankOf(c, id, 'undo') : rankOf(c, id, moved?.as ?? 'off');
};

const marksStep = (c: Context): DraftStep =>
  step({
    verb: 'checked',
    thing: 'check/marks',
    phase: 'strip',
    rank: 1_000,
    text: marksText(c),
    reason: c.say('matchMarkWhy'),
  });

/** One look for a target that moves with pipes, answered in one tap or with photos. */
const marksText = (c: Context): string => {
  const name = partOf(c, c.targetId).name.toLowerCase();
  return targetJoints(c).pipes.length === 0
    ? c.say('matchMark', name)
    : c.say('matchMarkPipes', name);
};

const foundSettings = (c: Context, joint: string, at: number): DraftStep[] =>
  Object.entries(jointOf(c, joint).settings ?? {}).map(([id, setting]) =>
    step({
      verb: 'measured',
      thing: `setting/${joint}:${id}`,
      round: 'found',
      phase: 'strip',
      rank: at - 1,
      text: c.say('measureFound', setting.name ?? setting.kind),
      reason: c.say('measureFoundWhy'),
      asks: [settingAsk(c, setting.value, setting.kind)],
    }),
  );

export const settingAsk = (c: Context, value: string | undefined, kind: string) => {
  const unit = value === undefined ? null : unitOf(c.machine.values[value]);
  const stated = value === undefined ? undefined : c.machine.values[value]?.value;
  if (kind === 'direction of rotation' && stated !== undefined) {
    const choices = [stated, c.say('otherWayRound')];
    return { name: 'text', label: c.say('askSeen'), kind: 'choice' as const, choices };
  }
  return kind === 'direction of rotation' || unit === null
    ? { name: 'text', label: c.say('askSeen'), kind: 'text' as const }
    : { name: 'value', label: c.say('askMeasured'), kind: 'number' as const, unit };
};

/** What must hold the parts that this joint mounts before it is loose. */
const heldBy = (c: Context, u: Undone, temps: readonly Temporary[]): string[] =>
  c.moved.flatMap((m) =>
    mustBeHeld(c, m) && u.bench === m.bench && holdingJoints(c, m).includes(u.id)
      ? holdIds(temps, m)
      : [],
  );

const holdIds = (temps: readonly Temporary[], m: Moved): string[] =>
  temps
    .filter((t) => t.before === true && t.part === m.id)
    .map((t) => stepId('put-in', `temp/${t.n}`));

/** The weight is taken before the joints that hold it are loose. */
const holdStep = (c: Context, m: Moved, t: Temporary, at: number): DraftStep =>
  step({
    verb: 'put-in',
    thing: `temp/${t.n}`,
    phase: 'strip',
    rank: at,
    text: c.say('takeWeight', t.where, t.name, t.n),
    reason: c.say('takeWeightWhy'),
    needs: m.id === c.targetId ? [stepId('checked', 'check/marks')] : [],
    fixed: { name: t.name, where: t.where },
    hazards: ['lifting'],
  });

const undoStep = (c: Context, u: Undone, at: number, held: readonly string[]): DraftStep => {
  const joint = jointOf(c, u.id);
  const shape = c.shapes[u.id];
  const access = accessOf(c, u);
  const wet = !u.bench && isWet(c.machine, u.id);
  const iso = isolatedBy(c);
  const touchesTarget = (joint.between ?? []).includes(c.targetId);
  const energised = (joint.hazards ?? []).some((h) => h !== 'lifting' && h !== 'heat');
  const needs = [
    ...(access?.clear ?? []).map((x) => movedId(c, x.part)),
    ...Object.keys(joint.settings ?? {}).map((s) =>
      stepId('measured', `setting/${u.id}:${s}`, 'found'),
    ),
    ...(wet || touchesTarget || energised ? iso.tags : []),
    ...(wet ? [...iso.proof, ...isolationLook(c)] : []),
    ...(touchesTarget ? [stepId('checked', 'check/marks')] : []),
    ...(u.bench ? [movedId(c, c.targetId)] : []),
    ...held,
  ];
  const weight = weightTaken(c, u);
  const hazards: Hazard[] = [
    ...(joint.hazards ?? []),
    ...(wet ? (['flooding'] as const) : []),
    ...(weight === null ? [] : (['lifting'] as const)),
  ];
  return step({
    verb: 'undone',
    thing: `joint/${u.id}`,
    phase: 'strip',
    rank: at,
    text: undoText(c, u, weight),
    reason: u.reason,
    place: u.bench ? 'bench' : placeName(c, access?.place),
    tool: access?.tool ?? null,
    needs,
    count: shape && shape.holes.length > 0 ? { n: shape.holes.length, what: shape.words } : null,
    holes: slackenedIn(c, u),
    minutes: joint.undoMinutes ?? null,
    hazards,
    stop: wet ? 'isolation' : null,
  });
};

/** What carries a part before the joint that mounts it lets go; null where none is stated. */
const weightTaken = (c: Context, u: Undone): string | null => {
  for (const m of c.moved) {
    const way = wayOf(c, m);
    const carried = partOf(c, m.id).carriedBy ?? (m.as === 'aside' ? undefined : way?.support);
    if (carried !== undefined && holdsWeight(c, way?.joints ?? []).includes(u.id)) return carried;
  }
  return null;
};

const undoText = (c: Context, u: Undone, weight: string | null): string => {
  const joint = jointOf(c, u.id);
  const words = c.shapes[u.id]?.words ?? '';
  const careful = !u.bench && opensLine(c.machine, u.id);
  const leave = joint.doNotDisturb ?? null;
  const eased = easingOf(c, u);
  if (eased !== null) {
    const { order, far, known } = eased;
    return c.say('slacken', joint.name, words, known, order, far, careful, leave, weight);
  }
  return c.say('undo', joint.name, words === '' ? null : words, careful, leave, weight);
};

const sealsOut = (c: Context, joint: string, at: number): DraftStep[] => {
  const needs = [undoneId(joint), ...movedBetween(c, joint).map((p) => movedId(c, p))];
  const spec = jointOf(c, joint);
  const seals = Object.entries(spec.seals ?? {}).map(([id, seal]) =>
    step({
      verb: 'seal-out',
      thing: `seal/${joint}:${id}`,
      phase: 'inspect',
      rank: 4_000 + at,
      text: c.say('sealsOut', spec.name, seal.count, seal.name ?? seal.kind),
      reason: c.say('sealsOutWhy'),
      tool: seal.kind === 'ring' ? c.say('softPick') : null,
      needs,
      count: { n: seal.count, what: seal.name ?? seal.kind },
      asks: [{ name: 'count', label: 'Came out', kind: 'count', expected: seal.count }],
    }),
  );
  const loose = Object.entries(spec.loose ?? {}).map(([id, part]) =>
    step({
      verb: 'loose-out',
      thing: `loose/${joint}:${id}`,
      phase: 'strip',
      rank: at + 5,
      text: c.say('looseOut', spec.name, part.count, part.name ?? part.kind),
      reason: c.say('looseOutWhy'),
      needs,
      count: { n: part.count, what: part.name ?? part.kind },
      asks: [{ name: 'count', label: 'Came out', kind: 'count', expected: part.count }],
    }),
  );
  return [...seals, ...loose];
};

const moveStep = (c: Context, m: Moved, at: number, temps: readonly Temporary[]): DraftStep => {
  const part = partOf(c, m.id);
  const way = wayOf(c, m);
  const needs = [
    ...(way?.joints ?? []).map(undoneId),
    ...(way?.clear ?? []).map((x) => movedId(c, x.part)),
    ...holdIds(temps, m),
  ];
  const heavy = part.mass === undefined || Number.parseFloat(part.mass) >= limits.pack.liftingKg;
  const lifting = heavy || part.carriedBy !== undefined;
  return step({
    verb: m.as === 'off' ? 'moved-off' : 'moved-aside',
    thing: `part/${m.id}`,
    phase: 'strip',
    rank: at,
    text: c.say(
      'move',
      part.name,
      part.mass ?? c.say('massNotStated'),
      m.as === 'off',
      way?.name ?? null,
      part.carriedBy ?? null,
      way?.support ?? null,
      drawOffText(c, m),
    ),
    reason: m.reason,
    place: m.bench ? 'bench' : null,
    needs: m.as === 'off' ? [...needs, ...asideFirst(c, m)] : needs,
    minutes: way?.minutes === undefined ? null : way.minutes / 2,
    hands: way?.people ?? 1,
    hazards: [...(part.hazards ?? []), ...(lifting ? (['lifting'] as const) : [])],
  });
};

/** A part that went aside before it came off does so in that order. */
const asideFirst = (c: Context, m: Moved): string[] =>
  c.moved.some((x) => x.id === m.id && x.as === 'aside')
    ? [stepId('moved-aside', `part/${m.id}`)]
    : [];

const drawOffText = (c: Context, m: Moved): string | null => {
  const studs = (wayOf(c, m)?.joints ?? []).flatMap((j) =>
    Object.values(jointOf(c, j).fasteners ?? {}).filter((f) => f.drawOff !== undefined),
  );
  const far = studs.map((f) => f.drawOff).filter((x) => x !== undefined);
  return far.length === 0 ? null : joined([...new Set(far)], c.say);
};

const putInStep = (c: Context, t: Temporary, at: number): DraftStep =>
  step({
    verb: 'put-in',
    thing: `temp/${t.n}`,
    phase: 'strip',
    rank: at + (t.kind === 'support' ? 1 : 2),
    text:
      t.kind === 'support'
        ? c.say('putSupport', t.where, t.name, t.n)
        : c.say(t.kind === 'blank' ? 'putBlank' : 'putOther', t.name, t.n, t.where),
    reason: c.say(t.kind === 'support' ? 'putSupportWhy' : 'putBlankWhy'),
    needs: [movedId(c, t.part)],
    fixed: { name: t.name, where: t.where },
  });

const itemOut = (c: Context, part: string): DraftStep =>
  step({
    verb: 'item-out',
    thing: `item/${part}`,
    phase: 'inspect',
    rank: 3_900,
    text: c.say('noteSerial', partOf(c, part).name),
    reason: c.say('noteSerialWhy'),
    needs: [movedId(c, part)],
    asks: [{ name: 'serial', label: 'Serial, or “unreadable”', kind: 'text', optional: true }],
  });
