// Faults in readings of running hours: found, named, explained; repaired only by exchanges given.

import { limits } from '../limits.ts';
import { type Chain, type Exchanged, median, type Point, withoutUnlikely } from './chain.ts';
import { isNotAvailable, type Meant, meantBy } from './digits.ts';
import type { Known } from './forecast.ts';
import { DAY_MS } from './instant.ts';

export const FAULTS = [
  'wrong digit',
  'transposed',
  'restart',
  'unit x1000',
  'gap',
  'duplicate',
  'clock behind',
  'not available',
  'goes back',
] as const;
export type FaultKind = (typeof FAULTS)[number];

export type Fault = {
  readonly kind: FaultKind;
  readonly reading: number;
  readonly ms: number;
  readonly why: string;
};

export type Reading = { readonly ms: number; readonly hours: number | null };
export type Exchange = {
  readonly ms: number;
  readonly oldLast: number | null;
  readonly newFirst: number | null;
};

export type Checked = {
  /** What stood the check, in order of time, on the figures of the meter now fitted. */
  readonly history: readonly Known[];
  readonly faults: readonly Fault[];
  readonly resolution: number;
};

export function checkReadings(
  readings: readonly Reading[],
  exchanges: readonly Exchange[],
): Checked {
  const faults: Fault[] = [];
  const say = (kind: FaultKind, reading: number, why: string) => {
    faults.push({ kind, reading, ms: readings[reading]?.ms ?? 0, why });
  };
  const there = readings.flatMap(({ ms, hours }, reading): Point[] => {
    if (hours !== null && !isNotAvailable(hours)) return [{ reading, ms, hours }];
    say('not available', reading, 'the figure means that the source had no value');
    return [];
  });
  const points = inTime(there, say);
  const resolution = points.every(({ hours }) => Number.isInteger(hours)) ? 1 : 0.1;
  const chain = withoutUnlikely({
    points,
    resolution,
    exchangedBetween: (from, to) => between(exchanges, from, to),
  });
  const skipped = new Set(chain.skipped);
  for (const at of chain.skipped) sayOdd(points, skipped, at, resolution, say);
  chain.links.forEach(({ kind }, index) => {
    const at = chain.kept[index + 1] ?? 0;
    const [before, now] = [points[chain.kept[index] ?? 0], points[at]];
    if ((kind !== 'restart' && kind !== 'jump') || before === undefined || now === undefined)
      return;
    const why =
      `the figures go on from ${now.hours} h after ${before.hours} h, with no exchange given: ` +
      'what ran between is not known';
    say('restart', now.reading, why);
  });
  sayGaps(points, say);
  const history = onOneMeter(points, chain);
  return { history, faults: faults.sort((a, b) => a.reading - b.reading), resolution };
}

type Say = (kind: FaultKind, reading: number, why: string) => void;

/** In order of time; what was noted twice, or by a clock that was behind, is left out. */
function inTime(points: readonly Point[], say: Say): Point[] {
  const backward = points.filter((point, at) => point.ms < (points[at - 1]?.ms ?? point.ms)).length;
  const stream = backward <= Math.max(1, points.length * 0.05) && points.length > 2;
  const kept: Point[] = [];
  const seen = new Map<number, Point>();
  let latest: Point | null = null;
  for (const point of points) {
    const twin = seen.get(point.ms);
    const behind = latest !== null && point.ms < latest.ms;
    if (behind && stream && latest !== null && isBehind(kept, point, latest, twin)) {
      const why = 'its clock stands before that of the reading before it, its hours do not';
      say('clock behind', point.reading, why);
      continue;
    }
    if (twin !== undefined && twin.hours === point.hours) {
      say('duplicate', point.reading, `the same as reading ${twin.reading}`);
      continue;
    }
    seen.set(point.ms, point);
    kept.push(point);
    if (latest === null || point.ms > latest.ms) latest = point;
  }
  return kept.sort((a, b) => a.ms - b.ms);
}

/** An old reading noted late fits where its date puts it; one of a slow clock does not. */
function isBehind(
  kept: readonly Point[],
  point: Point,
  latest: Point,
  twin: Point | undefined,
): boolean {
  if (twin !== undefined) return point.hours >= latest.hours - 0.01 || twin.hours !== point.hours;
  const after = kept.filter(({ ms }) => ms > point.ms).map(({ hours }) => hours);
  return after.length > 0 && point.hours > Math.min(...after) && point.hours >= latest.hours - 0.01;
}

function between(exchanges: readonly Exchange[], from: Point, to: Point): Exchanged | null {
  const inside = exchanges.filter(({ ms }) => from.ms < ms && ms <= to.ms);
  const [first, ...more] = inside;
  if (first === undefined) return null;
  const known = first.oldLast !== null && more.length === 0;
  return { offset: known ? (first.oldLast ?? 0) - (first.newFirst ?? 0) : null };
}

/** Names what a left-out reading most likely is, by what its neighbours allow. */
function sayOdd(
  points: readonly Point[],
  skipped: ReadonlySet<number>,
  at: number,
  resolution: number,
  say: Say,
) {
  const point = points[at];
  if (point === undefined) return;
  let [left, right] = [at - 1, at + 1];
  while (left >= 0 && skipped.has(left)) left -= 1;
  while (right < points.length && skipped.has(right)) right += 1;
  const [before, after] = [points[left], points[right]];
  const wanted = expected(point, before, after);
  const slack = resolution * 1.5;
  const low = before === undefined ? 0 : before.hours - slack;
  const reach = before === undefined ? 0 : (24 * (point.ms - before.ms)) / DAY_MS;
  const high = Math.min(
    after === undefined ? Number.POSITIVE_INFINITY : after.hours + slack,
    before === undefined ? Number.POSITIVE_INFINITY : before.hours + reach + slack,
  );
  const small = before !== undefined && before.hours - point.hours < SMALL;
  const back = before !== undefined && point.hours < before.hours;
  // Two digits changed about, or one place up or down, is likelier than one digit for any other.
  const wide = Math.max(5, Math.min(high - low, 200) / 4);
  const far = ({ kind, hours }: Meant) => {
    const steps = Math.log10(Math.abs(hours - point.hours));
    const plain =
      kind !== 'wrong digit' || (Math.abs(steps - Math.round(steps)) < 1e-6 && steps > 1.5);
    return Math.abs(hours - wanted) + (plain ? 0 : wide);
  };
  const likely = meantBy(point.hours)
    .filter(({ hours }) => hours >= low && hours <= high)
    .sort((a, b) => far(a) - far(b))[0];
  if (likely !== undefined && !(small && back))
    return say(likely.kind, point.reading, meant(likely));
  if (back) {
    const why = `${point.hours} h after ${before.hours} h, and the next goes on as before`;
    return say('goes back', point.reading, why);
  }
  const why = `${point.hours} h does not fit between the readings beside it`;
  return say(
    after !== undefined && point.hours > after.hours ? 'wrong digit' : 'goes back',
    point.reading,
    why,
  );
}

/** Below so many hours back it is no slip of a digit that counts. */
const SMALL = 10;

const meant = ({ kind, hours }: Meant): string => {
  const figure = Number(hours.toPrecision(12));
  if (kind === 'transposed') return `two digits changed about: ${figure} h would fit`;
  if (kind === 'unit x1000') return `a thousand times over or under: ${figure} h would fit`;
  return `one digit wrong: ${figure} h would fit`;
};

function expected(point: Point, before: Point | undefined, after: Point | undefined): number {
  if (before === undefined) return after?.hours ?? point.hours;
  if (after === undefined) return before.hours + (8 * (point.ms - before.ms)) / DAY_MS;
  const share = (point.ms - before.ms) / Math.max(1, after.ms - before.ms);
  return before.hours + share * (after.hours - before.hours);
}

/** Much longer than the rest: three steps of an even stream, or a quarter of a year. */
function sayGaps(points: readonly Point[], say: Say): void {
  const steps = points.slice(1).map(({ ms }, at) => ms - (points[at]?.ms ?? ms));
  const middle = median(steps) ?? 0;
  const even = steps.filter((step) => Math.abs(step - middle) <= middle / 4).length;
  const regular = steps.length >= 10 && even >= 0.9 * steps.length;
  const most = regular ? 3 * middle : Math.max(limits.hours.gapDays * DAY_MS, 6 * middle);
  steps.forEach((step, at) => {
    if (middle === 0 || step < most) return;
    const point = points[at + 1];
    const long = step >= DAY_MS ? `${(step / DAY_MS).toFixed(1)} days` : `${step / 3_600_000} h`;
    if (point !== undefined) say('gap', point.reading, `no reading for ${long} before it`);
  });
}

/** Earlier figures are moved to the meter now fitted, so that all are on one scale. */
function onOneMeter(points: readonly Point[], chain: Chain): Known[] {
  const history: Known[] = [];
  let next: number | null = null;
  for (let index = chain.kept.length - 1; index >= 0; index -= 1) {
    const point = points[chain.kept[index] ?? 0];
    if (point === undefined) continue;
    const after = chain.links[index];
    const hours: number =
      next === null || after === undefined ? point.hours : next - (after.ran ?? 0);
    const joined = index > 0 && (chain.links[index - 1]?.ran ?? null) !== null;
    history.unshift({ ms: point.ms, hours, joined });
    next = hours;
  }
  return history;
}
