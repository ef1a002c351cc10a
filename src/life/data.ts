// Lives as they are known: exact, not yet failed, failed before it was looked at, or between two.

import { limits } from '../limits.ts';

/** One record in the unit of its data; `n` items alike. */
export type LifeRecord = {
  readonly type: 'exact' | 'right' | 'left' | 'interval';
  /** Exact: the life. Right: it lives beyond this. Interval: it lives beyond this. */
  readonly lower: number;
  /** Left and interval: it failed by this. */
  readonly upper: number;
  readonly n: number;
};

/** Logarithms of lives with how many items each stands for, ready to be summed. */
export type LifeData = {
  readonly exact: Float64Array;
  readonly exactN: Float64Array;
  readonly right: Float64Array;
  readonly rightN: Float64Array;
  /** Lower end; −∞ where it failed before it was first looked at. */
  readonly from: Float64Array;
  readonly to: Float64Array;
  readonly betweenN: Float64Array;
  readonly failures: number;
  readonly items: number;
};

export function lifeData(records: readonly LifeRecord[]): LifeData {
  const exact = together(records, (one) => one.type === 'exact');
  // What lives beyond nought says nothing yet.
  const right = together(records, (one) => one.type === 'right' && one.lower > 0);
  const between = records.filter(({ type }) => type === 'left' || type === 'interval');
  const from = between.map(({ type, lower }) => (type === 'left' ? -Infinity : Math.log(lower)));
  const betweenN = Float64Array.from(between, ({ n }) => n);
  return {
    ...{ exact: exact.lnT, exactN: exact.n, right: right.lnT, rightN: right.n },
    from: Float64Array.from(from),
    to: Float64Array.from(between, ({ upper }) => Math.log(upper)),
    betweenN,
    failures: sum(exact.n) + sum(betweenN),
    items: records.reduce((all, { n }) => all + n, 0),
  };
}

/** Equal lives are summed once, where that is soon done. */
function together(records: readonly LifeRecord[], is: (one: LifeRecord) => boolean) {
  if (records.length > limits.life.summedOnce) return apart(records, is);
  const counts = new Map<number, number>();
  for (const one of records) {
    if (is(one)) counts.set(one.lower, (counts.get(one.lower) ?? 0) + one.n);
  }
  return {
    lnT: Float64Array.from(counts.keys(), Math.log),
    n: Float64Array.from(counts.values()),
  };
}

function apart(records: readonly LifeRecord[], is: (one: LifeRecord) => boolean) {
  const lnT = new Float64Array(records.length);
  const n = new Float64Array(records.length);
  let count = 0;
  for (const one of records) {
    if (!is(one)) continue;
    lnT[count] = Math.log(one.lower);
    n[count] = one.n;
    count += 1;
  }
  return { lnT: lnT.subarray(0, count), n: n.subarray(0, count) };
}

export function sum(values: Float64Array): number {
  let all = 0;
  for (let at = 0; at < values.length; at += 1) all += values[at] ?? 0;
  return all;
}

/** Where the lives of the data begin and end, in their unit. */
export function spanOf(records: readonly LifeRecord[]): readonly [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, 0];
  for (const { type, lower, upper } of records) {
    const seen = type === 'exact' ? lower : type === 'right' ? null : upper;
    if (seen !== null) low = Math.min(low, seen);
    high = Math.max(high, type === 'exact' || type === 'right' ? lower : upper);
  }
  return [low, high];
}
