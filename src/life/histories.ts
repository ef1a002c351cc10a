// Repair histories as they are read, and everything wrong with any of them.

import { limits } from '../limits.ts';
import type { Problem } from '../quantity/types.ts';
import type { TimeIn } from './life-model.ts';
import { readTime } from './records.ts';
import type { RecurrenceInput, SystemIn } from './recurrence-model.ts';

/** One system watched from start to end; `values` are 1 where only repairs are counted. */
export type History = {
  readonly start: number;
  readonly end: number;
  readonly times: readonly number[];
  readonly values: readonly number[];
};

export function readHistories({ systems, units, termination }: RecurrenceInput) {
  const problems: Problem[] = [];
  const ids = new Map<string, number>();
  const histories = systems.map((system, index) => {
    const path = `systems/${index}`;
    const time = (given: TimeIn, name: string): number => {
      const read = readTime(given, units, `${path}/${name}`);
      if ('value' in read) return read.value;
      problems.push(read.problem);
      return Number.NaN;
    };
    const history = {
      start: time(system.start, 'start'),
      end: time(system.end, 'end'),
      times: system.times.map((one, at) => time(one, `times/${at}`)),
      values: system.values ?? system.times.map(() => 1),
    };
    problems.push(...wrongWith(history, system, path, termination));
    if (system.id !== undefined) {
      const id = String(system.id);
      const first = ids.get(id);
      if (first !== undefined) {
        const why = `system ${first} has that id already`;
        problems.push({ path: `${path}/id`, got: system.id, expected: 'another id', why });
      }
      ids.set(id, index);
    }
    return history;
  });
  const distinct = new Set(histories.flatMap(({ times }) => times)).size;
  if (distinct * systems.length > limits.life.historyCells) {
    const expected = `systems × distinct times at most ${limits.life.historyCells}`;
    const why = 'there are more than are worked through at once';
    problems.push({ path: 'systems', got: distinct * systems.length, expected, why });
  }
  return { histories, problems };
}

function wrongWith(
  { start, end, times }: History,
  system: SystemIn,
  path: string,
  termination: RecurrenceInput['termination'],
): readonly Problem[] {
  const problems: Problem[] = [];
  if (end <= start) {
    const why = 'it ends before it begins';
    problems.push({ path: `${path}/end`, got: system.end, expected: `more than ${start}`, why });
  }
  times.forEach((time, at) => {
    if (!(time <= start || time > end)) return;
    const why = 'the event lies outside the time the system was watched';
    const got = system.times[at] ?? null;
    const expected = `more than ${start}, at most ${end}`;
    problems.push({ path: `${path}/times/${at}`, got, expected, why });
  });
  if (system.values !== undefined && system.values.length !== times.length) {
    const why = 'each event has one value';
    const expected = `${times.length} values`;
    problems.push({ path: `${path}/values`, got: system.values.length, expected, why });
  }
  if (termination === 'failure' && !Number.isNaN(end) && lastOf(times) !== end) {
    const why = 'it is said to end at a failure, and no event lies at its end';
    problems.push({ path: `${path}/end`, got: system.end, expected: 'the last of times', why });
  }
  return problems;
}

const lastOf = (times: readonly number[]): number =>
  times.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
