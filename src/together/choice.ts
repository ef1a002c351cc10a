// The choice as numbers: which jobs may be done now, what they need, what a set of them costs.

import type { CombineInput, Job } from './model.ts';

export type Thing = {
  readonly kind: 'joint' | 'closure';
  readonly id: string;
  readonly minutes: number;
  readonly u: number;
};

export type Choice = {
  /** Jobs whose window holds the moment of the work. */
  readonly jobs: readonly Job[];
  readonly things: readonly Thing[];
  /** By job, which things it needs, each once. */
  readonly needs: readonly (readonly number[])[];
  readonly limit: number;
};

export type Window = 'open' | 'not yet due' | 'overdue';

/** A day as an end of the window counts to its last moment; work on a day may be at any hour. */
export function windowOf({ due }: Job, on: CombineInput['on']): Window {
  if (due?.earliest && on.endMs < due.earliest.ms) return 'not yet due';
  if (due?.latest && on.ms > due.latest.endMs) return 'overdue';
  return 'open';
}

export function choiceOf(input: CombineInput): Choice {
  const jobs = input.jobs.filter((job) => windowOf(job, input.on) === 'open');
  const things: Thing[] = [];
  const places = new Map<string, number>();
  const place = (kind: Thing['kind'], id: string): number => {
    const key = `${kind} ${id}`;
    const known = places.get(key);
    if (known !== undefined) return known;
    const table = kind === 'joint' ? input.jointMinutes : input.closureMinutes;
    const { value = 0, u = 0 } = Object.hasOwn(table, id) ? (table[id] ?? {}) : {};
    things.push({ kind, id, minutes: value, u });
    places.set(key, things.length - 1);
    return things.length - 1;
  };
  const needs = jobs.map(({ joints, closures }) => [
    ...new Set([
      ...joints.map((id) => place('joint', id)),
      ...closures.map((id) => place('closure', id)),
    ]),
  ]);
  return { jobs, things, needs, limit: input.limit?.value ?? Number.POSITIVE_INFINITY };
}

export type Sum = {
  readonly minutes: number;
  readonly saved: number;
  readonly value: number;
  readonly count: number;
};

/** What a set of jobs comes to; sums run in the order given, so that equal sets agree. */
export function sumOf(choice: Choice, set: readonly number[]): Sum {
  const paid = new Set<number>();
  let [minutes, saved, value] = [0, 0, 0];
  for (const at of set) {
    minutes += choice.jobs[at]?.minutes.value ?? 0;
    value += choice.jobs[at]?.value?.value ?? 0;
    for (const thing of choice.needs[at] ?? []) {
      const each = choice.things[thing]?.minutes ?? 0;
      if (paid.has(thing)) saved += each;
      else minutes += each;
      paid.add(thing);
    }
  }
  return { minutes, saved, value, count: set.length };
}

/** Sums of decimals end in digits of rounding that decide nothing. */
const ROUNDING = 1e-9;
export const fits = (choice: Choice, minutes: number): boolean =>
  minutes <= choice.limit + ROUNDING * Math.max(1, Math.abs(choice.limit));
