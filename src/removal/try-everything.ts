// Checks that share nothing with removal: every state of a small machine, every order of a set.

import type { Demand, FullInput, RemovalPlan } from './model.ts';

const SPARED = ['fuel', 'lube oil', 'hot-pressure'];

/** A machine as it stands: how far each part has moved by itself, and which joints are undone. */
type Standing = {
  readonly level: Readonly<Record<string, number>>;
  readonly undone: ReadonlySet<string>;
};

const rank = (as: 'off' | 'aside') => (as === 'off' ? 2 : 1);

function holds(input: FullInput, standing: Standing, { part, as }: Demand): boolean {
  let at: string | undefined = part;
  while (at !== undefined) {
    if ((standing.level[at] ?? 0) >= rank(as)) return true;
    at = input.parts[at]?.on;
  }
  return false;
}

/** A target is wanted in hand: going along with what it sits on does not count. */
const reached = (input: FullInput, standing: Standing): boolean =>
  input.targets.every(({ part, as }) => (standing.level[part] ?? 0) >= rank(as));

function begin(input: FullInput): Standing {
  const level: Record<string, number> = {};
  for (const part of Object.keys(input.parts)) level[part] = 0;
  for (const part of input.already?.aside ?? []) level[part] = 1;
  for (const part of input.already?.off ?? []) level[part] = 2;
  return { level, undone: new Set(input.already?.joints ?? []) };
}

const stated = (input: FullInput, minutes: number | null | undefined): number =>
  minutes ?? input.unknownMinutes ?? 15;

export function jointCost(input: FullInput, id: string): { spared: number; minutes: number } {
  const joint = input.joints[id];
  const spared = Boolean(joint?.doNotDisturb) || SPARED.includes(joint?.medium ?? '');
  const minutes = stated(input, joint?.undoMinutes) + stated(input, joint?.makeMinutes);
  return { spared: spared ? 1 : 0, minutes };
}

type Cost = { readonly spared: number; readonly minutes: number };

/** The cheapest way to the targets by walking every state; null: there is none. */
export function bestByStates(input: FullInput, sparing = true): Cost | null {
  const weight = sparing ? 1_000_000 : 0;
  const keyOf = (one: Standing) =>
    `${Object.values(one.level).join('')}|${[...one.undone].sort().join(',')}`;
  type Seen = { at: Standing; cost: number; spared: number; minutes: number; closed: boolean };
  const start = begin(input);
  const seen = new Map<string, Seen>([
    [keyOf(start), { at: start, cost: 0, spared: 0, minutes: 0, closed: false }],
  ]);
  for (;;) {
    let now: Seen | undefined;
    for (const one of seen.values()) {
      if (!one.closed && (now === undefined || one.cost < now.cost)) now = one;
    }
    if (now === undefined) return null;
    now.closed = true;
    if (reached(input, now.at)) return { spared: now.spared, minutes: now.minutes };
    for (const { next, spared, minutes } of moves(input, now.at)) {
      const cost = now.cost + spared * weight + minutes;
      const key = keyOf(next);
      if ((seen.get(key)?.cost ?? Number.POSITIVE_INFINITY) <= cost) continue;
      seen.set(key, {
        at: next,
        cost,
        spared: now.spared + spared,
        minutes: now.minutes + minutes,
        closed: false,
      });
    }
  }
}

function moves(input: FullInput, at: Standing): (Cost & { next: Standing })[] {
  const found: (Cost & { next: Standing })[] = [];
  for (const [id, joint] of Object.entries(input.joints)) {
    if (at.undone.has(id)) continue;
    const open =
      joint.accesses === undefined ||
      joint.accesses.some(({ clear }) => (clear ?? []).every((need) => holds(input, at, need)));
    if (!open) continue;
    found.push({ next: { ...at, undone: new Set([...at.undone, id]) }, ...jointCost(input, id) });
  }
  for (const [id, part] of Object.entries(input.parts)) {
    if (part.stays) continue;
    for (const way of part.ways ?? []) {
      if ((at.level[id] ?? 0) >= rank(way.gives)) continue;
      if (!(way.joints ?? []).every((joint) => at.undone.has(joint))) continue;
      if (!(way.clear ?? []).every((need) => holds(input, at, need))) continue;
      const next = { ...at, level: { ...at.level, [id]: rank(way.gives) } };
      found.push({ next, spared: 0, minutes: stated(input, way.minutes) });
    }
  }
  return found;
}

/** What is wrong with a plan; empty when it can be carried out and counts its minutes rightly. */
export function faultsOf(input: FullInput, plan: RemovalPlan): string[] {
  const faults: string[] = [];
  let at = begin(input);
  let minutes = 0;
  let changes = 0;
  const hand: { tool: string | null; place: string | null } = { tool: null, place: null };
  for (const step of plan.order) {
    if (step.do === 'undo') {
      if (at.undone.has(step.joint)) faults.push(`${step.joint} undone twice`);
      const joint = input.joints[step.joint];
      const access = joint?.accesses?.find(({ id }) => id === step.access);
      if (joint?.accesses !== undefined && access === undefined) faults.push('no such access');
      for (const need of access?.clear ?? []) {
        if (!holds(input, at, need)) faults.push(`${step.joint}: ${need.part} not clear`);
      }
      for (const field of ['tool', 'place'] as const) {
        const value = access?.[field] ?? null;
        if (value === null) continue;
        if (hand[field] !== null && hand[field] !== value) changes += 1;
        hand[field] = value;
      }
      at = { ...at, undone: new Set([...at.undone, step.joint]) };
      minutes += jointCost(input, step.joint).minutes;
      continue;
    }
    const id = `${step.part}`;
    const part = input.parts[id];
    const way = part?.ways?.find((one) => one.id === step.way);
    if (way === undefined || part?.stays || way.gives !== step.do) {
      faults.push(`${id}: no such way`);
      continue;
    }
    if ((at.level[id] ?? 0) >= rank(way.gives)) faults.push(`${id} was already ${way.gives}`);
    for (const joint of way.joints ?? []) {
      if (!at.undone.has(joint)) faults.push(`${id} moves before ${joint} is undone`);
    }
    for (const need of way.clear ?? []) {
      if (!holds(input, at, need)) faults.push(`${id} moves before ${need.part} is clear`);
    }
    at = { ...at, level: { ...at.level, [id]: rank(way.gives) } };
    minutes += stated(input, way.minutes);
  }
  if (!reached(input, at)) faults.push('a target is not reached');
  if (minutes !== plan.minutes.value) faults.push(`minutes ${plan.minutes.value}, not ${minutes}`);
  if (changes !== plan.changes) faults.push(`changes ${plan.changes}, not ${changes}`);
  faults.push(...listFaults(input, plan, at));
  if (plan.order.some(({ reason }) => reason === '')) faults.push('a step without a reason');
  return faults;
}

function listFaults(input: FullInput, plan: RemovalPlan, end: Standing): string[] {
  const before = begin(input);
  const moved = (level: number) =>
    Object.keys(input.parts).filter(
      (id) => end.level[id] === level && (before.level[id] ?? 0) !== level,
    );
  const joints = [...end.undone].filter((id) => !before.undone.has(id));
  const same = (a: readonly unknown[], b: readonly unknown[]) =>
    JSON.stringify([...a].sort()) === JSON.stringify([...b].sort());
  return [
    ...(same(plan.off, moved(2)) ? [] : ['off is not what the steps take off']),
    ...(same(plan.aside, moved(1)) ? [] : ['aside is not what the steps put aside']),
    ...(same(plan.joints, joints) ? [] : ['joints are not what the steps undo']),
  ];
}

/** The fewest changes over every order and access of the plan's own joints and ways. */
export function fewestByTrying(input: FullInput, plan: RemovalPlan): number {
  const ways = plan.order.flatMap((step) =>
    step.do === 'undo' ? [] : [{ part: `${step.part}`, way: step.way }],
  );
  const settle = (at: Standing): Standing => {
    let now = at;
    for (let grown = true; grown; ) {
      grown = false;
      for (const move of ways) {
        const way = input.parts[move.part]?.ways?.find((one) => one.id === move.way);
        if (way === undefined || (now.level[move.part] ?? 0) >= rank(way.gives)) continue;
        if (!(way.joints ?? []).every((joint) => now.undone.has(joint))) continue;
        if (!(way.clear ?? []).every((need) => holds(input, now, need))) continue;
        now = { ...now, level: { ...now.level, [move.part]: rank(way.gives) } };
        grown = true;
      }
    }
    return now;
  };
  const walk = (from: Standing, tool: string | null, place: string | null): number => {
    const at = settle(from);
    let best = plan.joints.every((joint) => at.undone.has(joint)) ? 0 : Number.POSITIVE_INFINITY;
    for (const joint of plan.joints) {
      if (at.undone.has(joint)) continue;
      for (const access of input.joints[joint]?.accesses ?? [{ id: '' }]) {
        const { clear = [], tool: nextTool = null, place: nextPlace = null } = access;
        if (!clear.every((need) => holds(input, at, need))) continue;
        const price =
          (tool !== null && nextTool !== null && tool !== nextTool ? 1 : 0) +
          (place !== null && nextPlace !== null && place !== nextPlace ? 1 : 0);
        const next = { ...at, undone: new Set([...at.undone, joint]) };
        best = Math.min(best, price + walk(next, nextTool ?? tool, nextPlace ?? place));
      }
    }
    return best;
  };
  return walk(begin(input), null, null);
}
