// What share lives on, without any law: Kaplan and Meier; Turnbull where failures lie between.

import { limits } from '../limits.ts';
import type { LifeRecord } from './data.ts';

export type SurvivalRow = {
  readonly t: number;
  readonly survival: number;
  /** Of Kaplan and Meier alone. */
  readonly counted?: {
    readonly atRisk: number;
    readonly failed: number;
    /** Null once none is left: the formula has no answer there. */
    readonly standardError: number | null;
    readonly limits: readonly [number, number] | null;
  };
};

export const isExact = (records: readonly LifeRecord[]): boolean =>
  records.every(({ type }) => type === 'exact' || type === 'right');

/** Greenwood's standard error; limits on the log-log scale, z standard deviations to each side. */
export function kaplanMeier(records: readonly LifeRecord[], z: number): readonly SurvivalRow[] {
  const failed = new Map<number, number>();
  const leaving = new Map<number, number>();
  let atRisk = 0;
  for (const { type, lower, n } of records) {
    atRisk += n;
    leaving.set(lower, (leaving.get(lower) ?? 0) + n);
    if (type === 'exact') failed.set(lower, (failed.get(lower) ?? 0) + n);
  }
  let [survival, greenwood] = [1, 0];
  const rows: SurvivalRow[] = [];
  for (const t of [...leaving.keys()].sort((a, b) => a - b)) {
    const d = failed.get(t) ?? 0;
    if (d > 0) {
      survival *= 1 - d / atRisk;
      if (d === atRisk) survival = 0;
      else greenwood += d / (atRisk * (atRisk - d));
      const none = survival === 0;
      const standardError = none ? null : survival * Math.sqrt(greenwood);
      const by = (z * Math.sqrt(greenwood)) / Math.abs(Math.log(survival));
      const both = [survival ** Math.exp(by), survival ** Math.exp(-by)] as const;
      const counted = { atRisk, failed: d, standardError, limits: none ? null : both };
      rows.push({ t, survival, counted });
    }
    atRisk -= leaving.get(t) ?? 0;
  }
  return rows;
}

type End = { readonly at: number; readonly rank: 0 | 1 | 2; readonly from: number };
type Span = { readonly low: number; readonly high: number; readonly mark: number };
type Cover = { readonly first: number; readonly last: number; readonly n: number };

/**
 * Turnbull: chance lies only in the spans that begin with some record's lower end and go to the
 * next upper end; how much in each is found by expectation and maximisation.
 */
export function turnbull(records: readonly LifeRecord[]): readonly SurvivalRow[] {
  const spans = innermost(records);
  const covers = records.map((one) => coverOf(one, spans));
  const mass = masses(covers, spans.length);
  const marks = new Map<number, number>();
  spans.forEach(({ mark }, at) => {
    if (Number.isFinite(mark)) marks.set(mark, (marks.get(mark) ?? 0) + (mass[at] ?? 0));
  });
  for (const { type, lower } of records) {
    if (type === 'right' && lower > 0 && !marks.has(lower)) marks.set(lower, 0);
  }
  let left = 1;
  return [...marks]
    .sort(([a], [b]) => a - b)
    .map(([t, gone]) => {
      left = Math.max(0, left - gone);
      return { t, survival: left < 1e-12 ? 0 : left };
    });
}

const lowOf = ({ type, lower }: LifeRecord): number =>
  type === 'left' ? Number.NEGATIVE_INFINITY : lower;

const highOf = ({ type, lower, upper }: LifeRecord): number =>
  type === 'right' ? Number.POSITIVE_INFINITY : type === 'exact' ? lower : upper;

// A life at a point begins there; an upper end counts; a lower end does not.
function innermost(records: readonly LifeRecord[]): readonly Span[] {
  const ends = records.flatMap((one): readonly End[] => [
    { at: lowOf(one), rank: one.type === 'exact' ? 0 : 2, from: lowOf(one) },
    { at: highOf(one), rank: 1, from: Number.NaN },
  ]);
  const sorted = ends.toSorted((a, b) => (a.at === b.at ? a.rank - b.rank : a.at < b.at ? -1 : 1));
  const spans: Span[] = [];
  for (let at = 1; at < sorted.length; at += 1) {
    const [low, high] = [sorted[at - 1], sorted[at]];
    if (low === undefined || high === undefined || low.rank === 1 || high.rank !== 1) continue;
    spans.push({ low: low.at, high: high.at, mark: markOf(low.at, high.at) });
  }
  return spans;
}

/** Where a span is set down: in its middle; at its end where it has no beginning. */
function markOf(low: number, high: number): number {
  if (low === Number.NEGATIVE_INFINITY) return high;
  return high === Number.POSITIVE_INFINITY ? high : (low + high) / 2;
}

function coverOf(one: LifeRecord, spans: readonly Span[]): Cover {
  const first = firstAt(spans, (span) => span.low >= lowOf(one));
  const after = firstAt(spans, (span) => span.high > highOf(one));
  // A point span lies at the lower end of an open one and is not in it.
  const open = one.type !== 'exact';
  const start = spans[first];
  const skips = open && start !== undefined && start.low === start.high && start.low === lowOf(one);
  return { first: skips ? first + 1 : first, last: after - 1, n: one.n };
}

function firstAt(spans: readonly Span[], is: (span: Span) => boolean): number {
  let [low, high] = [0, spans.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    const span = spans[middle];
    if (span !== undefined && is(span)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/**
 * Chance that ought to be nought goes there ever more slowly. So what is small is taken out, and
 * stays out where the records agree no worse without it and nothing taken out would come back.
 */
function masses(covers: readonly Cover[], count: number): Float64Array {
  const { emRounds, emFirstRounds, emSmall } = limits.life;
  const first = repeated(covers, new Float64Array(count).fill(1 / count), emFirstRounds);
  const plain = agreement(covers, first);
  for (const small of emSmall) {
    const bold = first.map((mass) => (mass < small ? 0 : mass));
    const without = repeated(covers, bold, emRounds);
    const other = agreement(covers, without);
    if (other.value >= plain.value - 1e-12 && other.greatest < 1 + 1e-6) return without;
  }
  return repeated(covers, first, emRounds);
}

function repeated(covers: readonly Cover[], start: Float64Array, rounds: number): Float64Array {
  let mass = start;
  for (let round = 0; round < rounds; round += 1) {
    const next = expected(covers, mass);
    let moved = 0;
    for (let at = 0; at < mass.length; at += 1) {
      moved = Math.max(moved, Math.abs((next[at] ?? 0) - (mass[at] ?? 0)));
    }
    mass = next;
    if (moved < 1e-13) break;
  }
  return mass;
}

/** Log-likelihood, and the greatest factor by which a span's chance would grow. */
function agreement(covers: readonly Cover[], mass: Float64Array) {
  const upTo = summed(mass);
  const value = covers.reduce((all, { first, last, n }) => {
    return all + n * Math.log((upTo[last + 1] ?? 0) - (upTo[first] ?? 0));
  }, 0);
  return { value, greatest: factors(covers, upTo).reduce((a, b) => Math.max(a, b), 0) };
}

function summed(mass: Float64Array): Float64Array {
  const upTo = new Float64Array(mass.length + 1);
  for (let at = 0; at < mass.length; at += 1) upTo[at + 1] = (upTo[at] ?? 0) + (mass[at] ?? 0);
  return upTo;
}

/** By how much each span's chance grows in a round: one pass over records, one over spans. */
function factors(covers: readonly Cover[], upTo: Float64Array): Float64Array {
  const change = new Float64Array(upTo.length);
  let items = 0;
  for (const { first, last, n } of covers) {
    items += n;
    const inside = (upTo[last + 1] ?? 0) - (upTo[first] ?? 0);
    if (!(inside > 0)) continue;
    change[first] = (change[first] ?? 0) + n / inside;
    change[last + 1] = (change[last + 1] ?? 0) - n / inside;
  }
  const found = new Float64Array(upTo.length - 1);
  let share = 0;
  for (let at = 0; at < found.length; at += 1) {
    share += change[at] ?? 0;
    found[at] = share / items;
  }
  return found;
}

const expected = (covers: readonly Cover[], mass: Float64Array): Float64Array => {
  const by = factors(covers, summed(mass));
  return mass.map((one, at) => one * (by[at] ?? 0));
};
