// Reads the records of an input: times in one unit, and everything wrong with any of them.

import { limits } from '../limits.ts';
import { readQuantity } from '../quantity/quantity.ts';
import type { Problem } from '../quantity/types.ts';
import { unitOf } from '../quantity/units.ts';
import type { LifeRecord } from './data.ts';
import type { RecordIn, TimeIn } from './life-model.ts';

export type ReadTime = { readonly value: number } | { readonly problem: Problem };

/** A time in the unit of the data; texts are converted where that unit is one that is known. */
export function readTime(given: TimeIn, units: string, path: string): ReadTime {
  const problem = (why: string, expected: string): ReadTime => ({
    problem: { path, got: given, expected, why },
  });
  if (typeof given === 'number') return bounded(given, given, path);
  const unit = unitOf(units);
  if (unit === undefined) {
    return problem(`units is "${units}", which nothing converts to`, 'a bare number');
  }
  const read = readQuantity(given, unit.code, path);
  if (read.ok) return bounded(read.quantity.value, given, path);
  const [first] = read.problems;
  return problem(first?.why ?? 'it is no figure', first?.expected ?? 'a number');
}

function bounded(value: number, got: unknown, path: string): ReadTime {
  const { most } = limits.life;
  if (value >= 0 && value <= most) return { value };
  const why = value < 0 ? 'nothing lives for less than nought' : 'that is longer than is taken';
  return { problem: { path, got, expected: `0 to ${most}`, why } };
}

type Ends = { readonly lower: number | null; readonly upper: number | null };

export function readRecords(given: readonly RecordIn[], units: string) {
  const problems: Problem[] = [];
  const records: LifeRecord[] = [];
  given.forEach((one, index) => {
    const path = `records/${index}`;
    const time = (value: TimeIn | null | undefined, name: string): number | null => {
      if (value === undefined || value === null) return null;
      const read = readTime(value, units, `${path}/${name}`);
      if ('value' in read) return read.value;
      problems.push(read.problem);
      return Number.NaN;
    };
    const ends: Ends =
      't' in one
        ? { lower: time(one.t, 't'), upper: null }
        : { lower: time(one.lower, 'lower'), upper: time(one.upper, 'upper') };
    if (Number.isNaN(ends.lower) || Number.isNaN(ends.upper)) return;
    const why = wrongWith(one.type, ends);
    if (why !== null) {
      const [name, reason, expected] = why;
      const field = 't' in one ? 't' : name;
      const got = 't' in one ? one.t : (one[name] ?? null);
      problems.push({ path: `${path}/${field}`, got, expected, why: reason });
      return;
    }
    records.push({ type: one.type, n: one.n, ...settledEnds(one.type, ends) });
  });
  return { records, problems };
}

function settledEnds(type: LifeRecord['type'], { lower, upper }: Ends) {
  if (type === 'exact') {
    const t = lower ?? upper ?? 0;
    return { lower: t, upper: t };
  }
  if (type === 'left') return { lower: 0, upper: upper ?? 0 };
  return { lower: lower ?? 0, upper: type === 'right' ? 0 : (upper ?? 0) };
}

type Wrong = readonly ['lower' | 'upper', string, string] | null;

function wrongWith(type: LifeRecord['type'], { lower, upper }: Ends): Wrong {
  const { least } = limits.life;
  switch (type) {
    case 'exact': {
      const t = lower ?? upper;
      if (t === null) return ['lower', 'when it failed is missing', 'a time'];
      if (lower !== null && upper !== null && lower !== upper) {
        return ['upper', 'an exact life has one time, and here are two', `${lower}`];
      }
      if (t >= least) return null;
      const remedy = 'more than 0; a failure before the first reading is a left record';
      return ['lower', 'a life of nought fits no law of lives', remedy];
    }
    case 'right':
      if (lower === null) return ['lower', 'how long it lived so far is missing', 'a time'];
      return upper === null
        ? null
        : ['upper', 'a right record has not failed, so it has no upper end', 'null'];
    case 'left':
      if (upper === null || upper < least) {
        return ['upper', 'by when it had failed is missing', 'a time above 0'];
      }
      return lower === null || lower === 0
        ? null
        : ['lower', 'what lived to there is an interval record', 'null or 0'];
    case 'interval':
      if (lower === null) return ['lower', 'how long it surely lived is missing', 'a time'];
      if (upper === null) return ['upper', 'by when it had failed is missing', 'a time'];
      return upper > lower && upper >= least
        ? null
        : ['upper', 'the interval ends before it begins', `more than ${lower}`];
  }
}
