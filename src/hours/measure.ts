// Measures the forecast on meters it was not fitted to: share inside the spread, days off, loss.

import { limits } from '../limits.ts';
import { checkReadings, type Reading } from './faults.ts';
import { forecast, type Known, meanRate, quantile } from './forecast.ts';
import { DAY_MS } from './instant.ts';

export type Real = {
  readonly id: string;
  readonly dailyMinutes: readonly number[];
  readonly readings: readonly (readonly number[])[];
};

/** One forecast beside what came. */
export type Scored = {
  readonly more: number;
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  readonly came: number;
  /** By the mean rate of the whole history. */
  readonly byMean: number;
};

const SEED = 20_261_125;
const HORIZON = 800;

function spread(history: readonly Known[], resolution: number, onMs: number, more: number) {
  const found = forecast({
    history,
    onMs,
    left: more,
    fromMs: onMs,
    leastToOn: 0,
    horizonDays: HORIZON,
    resolution,
    seed: SEED,
    members: limits.hours.members,
    runs: limits.hours.members,
    planned: () => null,
  });
  const at = (share: number) => Math.min(HORIZON, quantile(found.days, share));
  return { low: at(0.1), middle: at(0.5), high: at(0.9) };
}

const ORIGINS = [150, 200, 250, 300];

/** Each real meter from four days of the year, for 25, 50 and 100 h more. */
export function scoreReal(unit: Real, start: number): Scored[] {
  const sums = [0];
  for (const minutes of unit.dailyMinutes) sums.push((sums.at(-1) ?? 0) + minutes / 60);
  return ORIGINS.flatMap((origin) => {
    const readings = unit.readings.filter(([day = 0]) => day <= origin);
    const [lastDay = 0] = readings.at(-1) ?? [];
    if (readings.length < 6) return [];
    const rows: Reading[] = readings.map(([day = 0, hours = 0]) => ({
      ms: start + day * DAY_MS,
      hours,
    }));
    const { history, resolution } = checkReadings(rows, []);
    const rate = meanRate(history) ?? 0;
    return [25, 50, 100].flatMap((more): Scored[] => {
      const wanted = (sums[lastDay] ?? 0) + more;
      const day = sums.findIndex((sum, at) => at >= lastDay && sum >= wanted);
      if (day < 0) return [];
      const step = (sums[day] ?? 0) - (sums[day - 1] ?? 0);
      const came = day - ((sums[day] ?? 0) - wanted) / Math.max(1e-9, step) - lastDay;
      const found = spread(history, resolution, start + lastDay * DAY_MS, more);
      return [{ more, ...found, came, byMean: more / rate }];
    });
  });
}

export type Vessel = {
  readonly id: string;
  readonly profile: string;
  readonly historyDays: number;
  readonly exchangedOnDay: number | null;
  readonly resolution: number;
  readonly readings: readonly (readonly number[])[];
  readonly oracle: Readonly<Record<string, readonly number[]>>;
  readonly reached: Readonly<Record<string, number>>;
};

export type Loss = { readonly more: number; readonly ours: number; readonly oracle: number };

const SHARES = [0.1, 0.5, 0.9];

function lossOf(days: readonly number[], came: number): number {
  return SHARES.reduce((sum, share, at) => {
    const miss = came - (days[at] ?? 0);
    return sum + Math.max(share * miss, (share - 1) * miss);
  }, 0);
}

/** Each generated vessel from the end of its history; readings as they are, faults and all. */
export function scoreVessel(vessel: Vessel, start: number): Loss[] {
  const rows: Reading[] = vessel.readings.map(([day = 0, hours = 0]) => ({
    ms: start + day * DAY_MS,
    hours,
  }));
  const day = vessel.exchangedOnDay;
  const exchanges =
    day === null ? [] : [{ ms: start + day * DAY_MS, oldLast: null, newFirst: null }];
  const { history, resolution } = checkReadings(rows, exchanges);
  return Object.entries(vessel.reached).flatMap(([more, came]) => {
    const onMs = start + vessel.historyDays * DAY_MS;
    const { low, middle, high } = spread(history, resolution, onMs, Number(more));
    const oracle = lossOf(vessel.oracle[more] ?? [], came);
    return [{ more: Number(more), ours: lossOf([low, middle, high], came), oracle }];
  });
}
