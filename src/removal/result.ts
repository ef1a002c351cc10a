// Words and arithmetic of a removal plan: reasons of each step, working rows, cautions.

import { limits } from '../limits.ts';
import type { Working, WorkingRow } from '../quantity/types.ts';
import { say } from '../words/heard.ts';
import type { ChosenSet, Done } from './chosen.ts';
import { COMPUTED, type Machine, type Need, type OrderStep } from './model.ts';

/** Rows that add up terms, a limited number a row, the last row being the sum of all. */
export function sumRows(
  symbol: string,
  text: string,
  terms: readonly string[],
  values: readonly number[],
): WorkingRow[] {
  const row = (name: string, expression: string, value: number): WorkingRow => ({
    symbol: name,
    text,
    expression,
    value,
    unit: 'min',
    source: COMPUTED,
  });
  const each = limits.removal.termsInARow;
  const add = (from: readonly number[]) => from.reduce((sum, value) => sum + value, 0);
  if (terms.length <= each) {
    return [row(symbol, terms.length === 0 ? '0' : terms.join(' + '), add(values))];
  }
  const rows: WorkingRow[] = [];
  for (let at = 0; at < terms.length; at += each) {
    const before = rows[rows.length - 1];
    const expression = [before?.symbol, ...terms.slice(at, at + each)].filter(Boolean).join(' + ');
    const value = (before?.value ?? 0) + add(values.slice(at, at + each));
    const last = at + each >= terms.length;
    rows.push(row(last ? symbol : `${symbol}${rows.length + 1}`, expression, value));
  }
  return rows;
}

const listOr = (names: readonly string[]): string =>
  names.length === 0 ? say('none') : say('listed', names);

/** The minutes of a chosen set, with the rows that make them. */
export function minutesOf(machine: Machine, set: ChosenSet): { minutes: number; working: Working } {
  const joints = set.joints.flatMap((at) => machine.joints[at] ?? []);
  const ways = set.moves.flatMap(({ part, way }) => machine.parts[part]?.ways[way] ?? []);
  const rows = [
    ...sumRows(
      'J',
      say('jointsMade', listOr(joints.map(({ name }) => name))),
      joints.map(({ undo, make }) => `(${undo} + ${make})`),
      joints.map(({ undo, make }) => undo + make),
    ),
  ];
  const jointMinutes = rows[rows.length - 1]?.value ?? 0;
  const moved = set.moves.map(({ part }) => machine.parts[part]?.name ?? '');
  const wayRows = sumRows(
    'W',
    say('partsAway', listOr(moved)),
    ways.map((way) => `${way.minutes}`),
    ways.map((way) => way.minutes),
  );
  const minutes = jointMinutes + (wayRows[wayRows.length - 1]?.value ?? 0);
  const total = {
    symbol: 'minutes',
    text: say('inAll'),
    expression: 'J + W',
    value: minutes,
    unit: 'min',
    source: COMPUTED,
  };
  const assumed: WorkingRow[] =
    assumedIn(machine, set).length === 0
      ? []
      : [
          {
            symbol: 'assumed',
            text: say('minutesCounted'),
            expression: `${machine.unknownMinutes}`,
            value: machine.unknownMinutes,
            unit: 'min',
            source: { kind: 'common practice, no source' },
          },
        ];
  return { minutes, working: [...assumed, ...rows, ...wayRows, total] };
}

/** What of the plan rests on assumed minutes, in words. */
export function assumedIn(machine: Machine, set: ChosenSet): string[] {
  const keys = [
    ...set.joints.map((joint) => `joint/${machine.joints[joint]?.id}`),
    ...set.moves.map(({ part, way }) => {
      const of = machine.parts[part];
      return `way/${of?.id}/${of?.ways[way]?.id}`;
    }),
  ];
  return keys.flatMap((key) => machine.assumed.get(key) ?? []);
}

export function cautionsOf(machine: Machine, set: ChosenSet, proven: boolean): string[] {
  const cautions: string[] = [];
  const all = [...machine.assumed.values()];
  if (all.length > 0) {
    cautions.push(say('minutesAssumed', proven, machine.unknownMinutes, all));
  }
  const unseen = set.joints.flatMap((at) => {
    const joint = machine.joints[at];
    return joint?.accesses === null ? [joint.name] : [];
  });
  if (unseen.length > 0) {
    cautions.push(say('noAccessStated', unseen));
  }
  const unknown = machine.parts.filter((part) => !part.waysKnown && !part.stays);
  if (unknown.length > 0) {
    cautions.push(
      say(
        'noWayKnown',
        unknown.map(({ name }) => name),
      ),
    );
  }
  return cautions;
}

/** Steps in words: what later step each one is there for. */
export function stepsInWords(machine: Machine, done: readonly Done[]): OrderStep[] {
  return done.map((step, at) => {
    const later = done.slice(at + 1);
    if (step.kind === 'undo') {
      const joint = machine.joints[step.joint];
      const access = step.access === null ? null : (joint?.accesses?.[step.access]?.id ?? null);
      const reason = whyUndone(machine, step.joint, later);
      return { do: 'undo', joint: joint?.id ?? '', access, reason };
    }
    const part = machine.parts[step.part];
    const way = part?.ways[step.way];
    const id = machine.plain ? step.part : (part?.id ?? '');
    return {
      do: way?.gives ?? 'off',
      part: id,
      way: machine.plain ? step.way : (way?.id ?? null),
      reason: whyMoved(machine, step.part, later),
    };
  });
}

function whyUndone(machine: Machine, joint: number, later: readonly Done[]): string {
  for (const step of later) {
    if (step.kind !== 'move') continue;
    const part = machine.parts[step.part];
    const way = part?.ways[step.way];
    if (way?.joints.includes(joint))
      return say('holdsUntil', part?.name ?? '', way.gives === 'off');
  }
  return say('withItsWay');
}

/** Does moving `moved` bring about this demand, directly or because the part sits on it? */
function meets(machine: Machine, moved: number, need: Need): boolean {
  for (let at: number | null = need.part; at !== null; at = machine.parts[at]?.on ?? null) {
    if (at === moved) return true;
  }
  return false;
}

function whyMoved(machine: Machine, part: number, later: readonly Done[]): string {
  if (machine.targets.some((target) => target.part === part)) return say('theTarget');
  for (const step of later) {
    if (step.kind === 'undo') {
      const joint = machine.joints[step.joint];
      const access = step.access === null ? undefined : joint?.accesses?.[step.access];
      if (access?.clear.some((need) => meets(machine, part, need))) {
        return say('inTheWayOfJoint', joint?.name ?? '');
      }
      continue;
    }
    const other = machine.parts[step.part];
    if (other?.ways[step.way]?.clear.some((need) => meets(machine, part, need))) {
      const name = machine.plain ? `part ${other.name}` : other.name;
      return say('inTheWayOf', name);
    }
  }
  return say('clearForNext');
}
