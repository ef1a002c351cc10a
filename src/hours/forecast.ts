// When a number of hours will be reached: the swarm is held to the history and then let run.

import { meanAndSd } from '../quantity/chance.ts';
import { DAY_MS } from './instant.ts';
import {
  evenOut,
  evidenceOf,
  kindNames,
  newSwarm,
  observe,
  type Stretch,
  type Swarm,
  step,
} from './swarm.ts';

/** A reading that stood the check, hours of the machine itself; null joins: not known across. */
export type Known = { readonly ms: number; readonly hours: number; readonly joined: boolean };

export type Ask = {
  readonly history: readonly Known[];
  /** Last reading of the history is at or before this. */
  readonly onMs: number;
  /** Hours still to run from `fromMs`: the last reading, or an instant after it up to `on`. */
  readonly left: number;
  readonly fromMs: number;
  /** Hours that must have run from the last reading up to `on`, known otherwise. */
  readonly leastToOn: number;
  readonly horizonDays: number;
  readonly resolution: number;
  readonly seed: number;
  /** Members of each kind. */
  readonly members: number;
  /** Members let run from where they stand: no more than there are of a kind. */
  readonly runs: number;
  /** Hours of a day by plan; null: as the machine is used. */
  readonly planned: (ms: number) => number | null;
};

export type Forecast = {
  /** Days from `on`, sorted; infinite where the horizon is passed. */
  readonly days: Float64Array;
  readonly hoursToOn: number;
  readonly hoursToOnSd: number;
  readonly kinds: ReadonlyMap<string, number>;
};

export function dayOfYear(ms: number): number {
  const date = new Date(ms);
  return Math.floor((ms - Date.UTC(date.getUTCFullYear(), 0, 1)) / DAY_MS);
}

/** One reading a day is enough, and cells of a day are counted back from the last reading. */
function stretchesOf({ history, resolution }: Ask): { list: Stretch[]; firstMs: number } {
  const last = history.at(-1);
  if (last === undefined) return { list: [], firstMs: 0 };
  const cell = (ms: number) => Math.round((ms - last.ms) / DAY_MS);
  const off = (ms: number) => Math.abs((ms - last.ms) / DAY_MS - cell(ms));
  const kept: Known[] = [];
  for (const each of history) {
    const before = kept.at(-1);
    const same = before !== undefined && cell(before.ms) === cell(each.ms);
    if (!same) kept.push(each);
    else if (!each.joined) kept.splice(-1, 1, each);
    else if (off(each.ms) <= off(before.ms)) kept.splice(-1, 1, { ...each, joined: before.joined });
  }
  const list = kept.slice(1).map((each, index): Stretch => {
    const before = kept[index] ?? each;
    const rounding = resolution * resolution * (1 / 6);
    const rate =
      Math.max(0, each.hours - before.hours) / Math.max(0.5, (each.ms - before.ms) / DAY_MS);
    const beside = (rate * (off(each.ms) + off(before.ms))) ** 2;
    const hours = each.joined ? each.hours - before.hours : null;
    return { days: cell(each.ms) - cell(before.ms), hours, sd: Math.sqrt(rounding + beside) };
  });
  return { list, firstMs: last.ms + cell(kept[0]?.ms ?? last.ms) * DAY_MS };
}

/** The mean hours a day of what is joined. */
export function meanRate(history: readonly Known[]): number | null {
  let [hours, ms] = [0, 0];
  history.forEach((each, at) => {
    const before = history[at - 1];
    if (before === undefined || !each.joined) return;
    hours += each.hours - before.hours;
    ms += each.ms - before.ms;
  });
  return ms > 0 ? hours / (ms / DAY_MS) : null;
}

type Share = { readonly swarm: Swarm; readonly share: number };

/** A kind so much less likely than the best (in ln) is given up. */
const GIVEN_UP = 12;

/** Each kind of use held to the history, and how likely it is after it. */
function held(ask: Ask): Share[] {
  const { list, firstMs } = stretchesOf(ask);
  const rate = Math.max(meanRate(ask.history) ?? 0, 0.01);
  let swarms = kindNames.map((_, kind) => newSwarm(kind, ask.members, rate, ask.seed));
  let at = firstMs;
  list.forEach((stretch, index) => {
    const from = at;
    const days = Float64Array.from({ length: stretch.days }, (_, day) =>
      dayOfYear(from + day * DAY_MS),
    );
    for (const swarm of swarms) observe(swarm, stretch, days);
    at += stretch.days * DAY_MS;
    if (index % 4 !== 3) return;
    const told = swarms.map(evidenceOf);
    const most = Math.max(...told);
    swarms = swarms.filter((_, kind) => (told[kind] ?? 0) > most - GIVEN_UP);
  });
  const told = swarms.map(evidenceOf);
  const most = Math.max(...told);
  const sum = told.reduce((all, each) => all + Math.exp(each - most), 0);
  for (const swarm of swarms) evenOut(swarm);
  return swarms.map((swarm, kind) => ({
    swarm,
    share: Math.exp((told[kind] ?? 0) - most) / sum,
  }));
}

type Days = { readonly ofYear: number[]; readonly plan: (number | null)[] };

/** One member let run from the last reading: days from `on` to the hours asked for. */
function run(ask: Ask, days: Days, swarm: Swarm, member: number) {
  const lastMs = ask.history.at(-1)?.ms ?? ask.onMs;
  const gap = (ask.onMs - lastMs) / DAY_MS;
  const start = (ask.fromMs - lastMs) / DAY_MS;
  const most = gap + ask.horizonDays;
  let [sum, toOn, reached] = [0, 0, Number.POSITIVE_INFINITY];
  for (let day = 0; day < most; day += 1) {
    days.ofYear[day] ??= dayOfYear(lastMs + day * DAY_MS);
    if (days.plan[day] === undefined) days.plan[day] = ask.planned(lastMs + day * DAY_MS);
    const own = step(swarm, member, days.ofYear[day] ?? 0);
    const hours = days.plan[day] ?? own;
    toOn += hours * Math.min(1, Math.max(0, gap - day));
    // The share of this day that lies before the counting begins.
    const before = Math.min(1, Math.max(0, start - day));
    const counted = hours * (1 - before);
    if (reached === Number.POSITIVE_INFINITY && before < 1 && sum + counted >= ask.left) {
      const part = counted > 0 ? Math.max(0, ask.left - sum) / counted : 0;
      reached = day + before + part * (1 - before) - gap;
    }
    sum += counted;
    if (reached < Number.POSITIVE_INFINITY && day + 1 >= gap) break;
  }
  return { reached: reached > ask.horizonDays ? Number.POSITIVE_INFINITY : reached, toOn };
}

export function forecast(ask: Ask): Forecast {
  const shares = held(ask);
  const days: Days = { ofYear: [], plan: [] };
  const found: { readonly reached: number; readonly toOn: number }[] = [];
  for (const { swarm, share } of shares) {
    const runs = Math.round(share * ask.runs);
    for (let at = 0; at < runs; at += 1) {
      found.push(run(ask, days, swarm, Math.floor((at * swarm.size) / runs)));
    }
  }
  const can = found.filter(({ toOn }) => toOn >= ask.leastToOn);
  // Where hardly a run agrees with what is known, the known hours stand at `on`.
  const kept = can.length >= found.length / 20 ? can : found;
  const { mean, sd } = meanAndSd(kept.map(({ toOn }) => toOn));
  return {
    days: Float64Array.from(kept, ({ reached }) => reached).sort(),
    hoursToOn: Math.max(mean, ask.leastToOn),
    hoursToOnSd: sd,
    kinds: new Map(shares.map(({ swarm, share }) => [kindNames[swarm.kind] ?? '', share])),
  };
}

/** Quantile with linear interpolation; infinite where it meets what lies beyond the horizon. */
export function quantile(sorted: Float64Array, share: number): number {
  const rank = share * (sorted.length - 1);
  const low = sorted[Math.floor(rank)] ?? Number.POSITIVE_INFINITY;
  const high = sorted[Math.ceil(rank)] ?? Number.POSITIVE_INFINITY;
  return high === Number.POSITIVE_INFINITY && rank > Math.floor(rank)
    ? high
    : low + (rank - Math.floor(rank)) * (high - low || 0);
}
