// How many repairs, or what cost, a system has had by an age on the average, and how surely.

import type { History } from './histories.ts';
import type { VarianceName } from './recurrence-model.ts';

export type MeanRow = {
  readonly t: number;
  readonly atRisk: number;
  readonly events: number;
  readonly value: number;
  readonly mean: number;
  /** Null under 2 at risk; `nelson` from there on. */
  readonly variance: number | null;
};

/** A system is at risk after its start and to its end, the end included. */
export function meanFunction(
  histories: readonly History[],
  variance: VarianceName,
): readonly MeanRow[] {
  const at = eventsByTime(histories);
  const times = [...at.keys()].sort((a, b) => a - b);
  const state = newState(histories.length);
  let mean = 0;
  return times.map((t) => {
    const own = at.get(t) ?? new Map<number, Event>();
    const risk = histories.flatMap(({ start, end }, i) => (t > start && t <= end ? [i] : []));
    let [events, value] = [0, 0];
    for (const one of own.values()) {
      events += one.count;
      value += one.value;
    }
    const n = risk.length;
    mean += value / n;
    const found = step[variance](state, risk, own, value / n);
    return { t, atRisk: n, events, value, mean, variance: n < 2 ? null : found };
  });
}

type Event = { readonly count: number; readonly value: number };
type Own = ReadonlyMap<number, Event>;

function eventsByTime(histories: readonly History[]): Map<number, Map<number, Event>> {
  const at = new Map<number, Map<number, Event>>();
  histories.forEach(({ times, values }, system) => {
    times.forEach((t, which) => {
      const own = at.get(t) ?? new Map<number, Event>();
      const { count, value } = own.get(system) ?? { count: 0, value: 0 };
      own.set(system, { count: count + 1, value: value + (values[which] ?? 0) });
      at.set(t, own);
    });
  });
  return at;
}

type State = {
  /** Of each system: what it adds to the mean function above its share. */
  readonly each: Float64Array;
  sum: number;
  broken: boolean;
};

const newState = (count: number): State => ({
  each: new Float64Array(count),
  sum: 0,
  broken: false,
});

type Step = (state: State, risk: readonly number[], own: Own, share: number) => number | null;

const step: Readonly<Record<VarianceName, Step>> = {
  // Lawless and Nadeau: the square of each system's whole deviation, its events taken together.
  robust: (state, risk, own, share) => {
    for (const i of risk) {
      const off = ((own.get(i)?.value ?? 0) - share) / risk.length;
      state.each[i] = (state.each[i] ?? 0) + off;
    }
    return state.each.reduce((all, one) => all + one * one, 0);
  },
  // Sample variances and covariances with n − 1, over those at risk at the later time.
  nelson: (state, risk, own, share) => {
    const n = risk.length;
    if (n < 2) state.broken = true;
    if (state.broken) return null;
    let [square, cross] = [0, 0];
    for (const i of risk) {
      const off = (own.get(i)?.value ?? 0) - share;
      square += off * off;
      cross += off * (state.each[i] ?? 0);
    }
    state.sum += (square / n + 2 * cross) / (n - 1);
    for (const i of risk) {
      state.each[i] = (state.each[i] ?? 0) + (own.get(i)?.value ?? 0) / n;
    }
    return state.sum;
  },
  increments: (state, risk, own, share) => {
    for (const i of risk) {
      const off = ((own.get(i)?.value ?? 0) - share) / risk.length;
      state.sum += off * off;
    }
    return state.sum;
  },
  poisson: (state, risk, own) => {
    for (const { value } of own.values()) state.sum += (value / risk.length) ** 2;
    return state.sum;
  },
};
