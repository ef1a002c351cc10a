// The steps that take things off, in the order of the removal plan.

import { limits } from '../limits.ts';
import type { Hazard } from '../quantity/authority.ts';
import {
  accessOf,
  type Context,
  isPipeJoint,
  isWet,
  jointOf,
  type Moved,
  movedBetween,
  opensLine,
  partOf,
  placeName,
  type Undone,
  wayOf,
} from './context.ts';
import { isolatedBy } from './isolate.ts';
import { joined } from './joint-shape.ts';
import type { DraftStep } from './order.ts';
import { step, stepId } from './step.ts';
import type { Temporary } from './temporary.ts';
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
    steps.push(...foundSettings(c, u.id, at), undoStep(c, u, at));
    steps.push(...sealsOut(c, u.id, at));
  });
  c.moved.forEach((m) => {
    const at = rankOf(c, m.id, m.as);
    steps.push(moveStep(c, m, at));
    for (const t of temps.filter((x) => x.part === m.id && x.kind !== 'guide studs'))
      steps.push(putInStep(c, t, at));
  });
  for (const part of c.items) if (c.moved.some((m) => m.id === part)) steps.push(itemOut(c, part));
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

const marksStep = (c: Context): DraftStep =>
  step({
    verb: 'checked',
    thing: 'check/marks',
    phase: 'strip',
    rank: 1_000,
    text:
      `Match-mark ${partOf(c, c.targetId).name.toLowerCase()}, note which way its ports face, ` +
      'and take a photo before the first bolt.',
    reason: 'it can go back upside down, and then the flow turns round',
  });

const foundSettings = (c: Context, joint: string, at: number): DraftStep[] =>
  Object.entries(jointOf(c, joint).settings ?? {}).map(([id, setting]) =>
    step({
      verb: 'measured',
      thing: `setting/${joint}:${id}`,
      round: 'found',
      phase: 'strip',
      rank: at - 1,
      text: `Measure ${setting.name ?? setting.kind} as found, before it is disturbed.`,
      reason: 'as found tells wear; as left is compared with it',
      asks: [settingAsk(c, setting.value, setting.kind)],
    }),
  );

export const settingAsk = (c: Context, value: string | undefined, kind: string) => {
  const unit = value === undefined ? null : unitOf(c.machine.values[value]);
  return kind === 'direction of rotation' || unit === null
    ? { name: 'text', label: 'Seen', kind: 'text' as const }
    : { name: 'value', label: 'Measured', kind: 'number' as const, unit };
};

const undoStep = (c: Context, u: Undone, at: number): DraftStep => {
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
    ...(wet ? iso.proof : []),
    ...(touchesTarget ? [stepId('checked', 'check/marks')] : []),
    ...(u.bench ? [movedId(c, c.targetId)] : []),
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
    text: `${undoText(c, u)}${weight === null ? '' : ` Weight taken first: ${weight}.`}`,
    reason: u.reason,
    place: u.bench ? 'bench' : placeName(c, access?.place),
    tool: access?.tool ?? null,
    needs,
    count: shape && shape.holes.length > 0 ? { n: shape.holes.length, what: shape.words } : null,
    holes: shape?.holes ?? [],
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

/** Of the joints a part leaves by, those that mount it: no pipe joint, with the most fasteners. */
const holdsWeight = (c: Context, joints: readonly string[]): string[] => {
  const mounts = joints.filter((j) => !isPipeJoint(c.machine, j));
  const holes = (j: string) => c.shapes[j]?.holes.length ?? 0;
  const most = Math.max(0, ...mounts.map(holes));
  return mounts.filter((j) => holes(j) === most);
};

const undoText = (c: Context, u: Undone): string => {
  const joint = jointOf(c, u.id);
  const words = c.shapes[u.id]?.words ?? '';
  const what = words === '' ? `Undo ${joint.name}` : `${joint.name}: undo ${words}`;
  const careful =
    !u.bench && opensLine(c.machine, u.id)
      ? '. Slacken the far side first, break the joint with the fasteners still on, watch; ' +
        'only then take them off'
      : '';
  const shared =
    joint.doNotDisturb === undefined ? '' : `. DO NOT DISTURB without leave: ${joint.doNotDisturb}`;
  return `${what}${careful}${shared}.`;
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
      text: `${spec.name}: ${seal.count} old ${seal.name ?? seal.kind} out. How many came out?`,
      reason: 'an old one left in the groove can’t be seen once the new one is on top',
      tool: seal.kind === 'ring' ? 'pick that is softer than the groove' : null,
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
      text: `${spec.name}: ${part.count} × ${part.name ?? part.kind} out and bagged.`,
      reason: 'loose parts are counted like bolts',
      needs,
      count: { n: part.count, what: part.name ?? part.kind },
      asks: [{ name: 'count', label: 'Came out', kind: 'count', expected: part.count }],
    }),
  );
  return [...seals, ...loose];
};

const moveStep = (c: Context, m: Moved, at: number): DraftStep => {
  const part = partOf(c, m.id);
  const way = wayOf(c, m);
  const needs = [
    ...(way?.joints ?? []).map(undoneId),
    ...(way?.clear ?? []).map((x) => movedId(c, x.part)),
  ];
  const mass = part.mass === undefined ? 'mass not stated' : part.mass;
  const heavy = part.mass === undefined || Number.parseFloat(part.mass) >= limits.pack.liftingKg;
  const lifting = heavy || part.carriedBy !== undefined;
  const carried = part.carriedBy === undefined ? '' : `. Carried by ${part.carriedBy}`;
  const support = way?.support === undefined ? '' : `. Support: ${way.support}`;
  return step({
    verb: m.as === 'off' ? 'moved-off' : 'moved-aside',
    thing: `part/${m.id}`,
    phase: 'strip',
    rank: at,
    text:
      `${part.name} (${mass}) ${m.as === 'off' ? 'off' : 'aside and supported'}` +
      `${way?.name === undefined ? '' : `: ${way.name}`}` +
      `${carried}${support}${drawOffText(c, m)}.`,
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

const drawOffText = (c: Context, m: Moved): string => {
  const studs = (wayOf(c, m)?.joints ?? []).flatMap((j) =>
    Object.values(jointOf(c, j).fasteners ?? {}).filter((f) => f.drawOff !== undefined),
  );
  const far = studs.map((f) => f.drawOff).filter((x) => x !== undefined);
  return far.length === 0 ? '' : `. Draw it ${joined([...new Set(far)])} clear of the studs`;
};

const putInStep = (c: Context, t: Temporary, at: number): DraftStep =>
  step({
    verb: 'put-in',
    thing: `temp/${t.n}`,
    phase: 'strip',
    rank: at + (t.kind === 'support' ? 1 : 2),
    text:
      t.kind === 'support'
        ? `Support ${t.where}: ${t.name} (number ${t.n}).`
        : `${t.name} (number ${t.n}) ${putWord(t)} ${t.where}.`,
    reason:
      t.kind === 'support'
        ? 'what is put aside must not hang on its joints'
        : 'an open end without a blank lets the sea in and lets things fall in',
    needs: [movedId(c, t.part)],
    fixed: { name: t.name, where: t.where },
  });

const itemOut = (c: Context, part: string): DraftStep =>
  step({
    verb: 'item-out',
    thing: `item/${part}`,
    phase: 'inspect',
    rank: 3_900,
    text: `${partOf(c, part).name}: note its serial or batch and the running hours.`,
    reason: 'where it was, how long it ran: this is where life data comes from',
    needs: [movedId(c, part)],
    asks: [
      { name: 'serial', label: 'Serial, or “unreadable”', kind: 'text', optional: true },
      { name: 'hours', label: 'Running hours', kind: 'number', unit: 'h', optional: true },
    ],
  });

const putWord = (t: Temporary): string => (t.kind === 'blank' ? 'on the open end at' : 'in at');
