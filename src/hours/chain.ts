// The likeliest chain of readings that one meter, or one after another, can have shown.

import { limits } from '../limits.ts';
import { meantBy } from './digits.ts';
import { DAY_MS } from './instant.ts';

export type Point = {
  /** Index in the input. */
  readonly reading: number;
  readonly ms: number;
  readonly hours: number;
};

/** Between two readings the meter was exchanged: hours to add from here on, or not known. */
export type Exchanged = { readonly offset: number | null };

export type Link = {
  readonly kind: 'same meter' | 'exchanged' | 'restart' | 'jump';
  /** Hours run between the two; null: the figures do not say. */
  readonly ran: number | null;
};

export type Chain = {
  readonly kept: readonly number[];
  readonly links: readonly Link[];
  readonly skipped: readonly number[];
};

export type Meter = {
  readonly points: readonly Point[];
  readonly resolution: number;
  readonly exchangedBetween: (from: Point, to: Point) => Exchanged | null;
};

/** Prices in ln: what is rare costs much; the cheapest chain is the likeliest. */
const PRICE = { explained: 5.5, odd: 14, restart: 9, jump: 26, exchanged: 1, impossible: 60 };

type Cost = { readonly cost: number; readonly link: Link };

/** A meter can't run back, nor more than a day's hours a day; one step of it is its rounding. */
function linkOf(meter: Meter, from: Point, to: Point): Cost {
  const days = (to.ms - from.ms) / DAY_MS;
  const slack = meter.resolution * 1.5;
  const exchanged = meter.exchangedBetween(from, to);
  const raw = to.hours - from.hours;
  if (exchanged !== null) {
    if (exchanged.offset === null) {
      return { cost: PRICE.exchanged, link: { kind: 'exchanged', ran: null } };
    }
    const ran = raw + exchanged.offset;
    const can = ran >= -slack && ran <= 24 * days + slack;
    const cost = can ? PRICE.exchanged : PRICE.impossible;
    return { cost, link: { kind: 'exchanged', ran: can ? Math.max(0, ran) : null } };
  }
  if (raw >= -slack / 3 && raw <= 24 * days + slack) {
    return { cost: 0, link: { kind: 'same meter', ran: Math.max(0, raw) } };
  }
  const low = raw < 0 && to.hours <= 24 * days + slack;
  if (low) return { cost: PRICE.restart, link: { kind: 'restart', ran: null } };
  return { cost: PRICE.jump, link: { kind: 'jump', ran: null } };
}

export function median(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? null;
}

/** What leaving a reading out costs: little where a slip of the pen explains it. */
function skipCosts({ points, resolution }: Meter): number[] {
  return points.map((point, at) => {
    const before = points[at - 1] ?? points[at + 2];
    const after = points[at + 1] ?? points[at - 2];
    if (before === undefined || after === undefined) return PRICE.odd;
    const [low, high] = [before, after].sort((a, b) => a.ms - b.ms);
    if (low === undefined || high === undefined) return PRICE.odd;
    const slack = resolution * 1.5;
    const fits = ({ hours }: { readonly hours: number }) => {
      const days = (point.ms - low.ms) / DAY_MS;
      if (point.ms > high.ms) {
        return hours >= high.hours - slack && hours - high.hours <= 24 * days + slack;
      }
      if (point.ms < low.ms) {
        return hours <= low.hours + slack && low.hours - hours <= slack - 24 * days;
      }
      return hours >= low.hours - slack && hours <= high.hours + slack;
    };
    const told =
      !fits(point) &&
      meantBy(point.hours).some(
        (meant) =>
          (meant.kind !== 'wrong digit' || Math.abs(meant.hours - point.hours) >= LEAST_HOURS) &&
          fits(meant),
      );
    if (told) return PRICE.explained;
    // Of two that can't both be, the one that went back is the odd one.
    const previous = points[at - 1];
    return previous !== undefined && point.hours < previous.hours ? PRICE.odd - 1 : PRICE.odd;
  });
}

/** Cheapest path over the readings in order of time, each kept or left out. */
export function likeliest(meter: Meter): Chain {
  const { points } = meter;
  const skip = skipCosts(meter);
  const best = points.map(() => Number.POSITIVE_INFINITY);
  const from = points.map(() => -1);
  const links = new Map<number, Link>();
  let leftOut = 0;
  points.forEach((to, at) => {
    best[at] = leftOut;
    leftOut += skip[at] ?? 0;
    let between = 0;
    for (let back = 1; back <= limits.hours.chainBack && at - back >= 0; back += 1) {
      const before = points[at - back];
      if (before === undefined) break;
      const { cost, link } = linkOf(meter, before, to);
      const whole = (best[at - back] ?? 0) + between + cost;
      if (whole < (best[at] ?? 0) || (from[at] === -1 && whole === best[at])) {
        best[at] = whole;
        from[at] = at - back;
        links.set(at, link);
      }
      between += skip[at - back] ?? 0;
    }
  });
  return readBack(points, skip, best, from, links);
}

/** So many times the usual miss is too far off, so few is near; below so many hours none counts. */
const FAR = 8;
const NEARBY = 2;
const LEAST_HOURS = 50;

/** Readings that could be, but that a slip explains far better: left out of the chain as well. */
export function withoutUnlikely(meter: Meter): Chain {
  const chain = likeliest(meter);
  const kept = chain.kept.flatMap((at) => meter.points[at] ?? []);
  const missOf = (at: number, hours: number): number | null => {
    const [a, b] = [kept[at - 1], kept[at + 1]];
    const point = kept[at];
    const same = [at - 1, at].every((link) => chain.links[link]?.kind === 'same meter');
    if (a === undefined || b === undefined || point === undefined || !same) return null;
    const [one, two] = [(point.ms - a.ms) / DAY_MS, (b.ms - point.ms) / DAY_MS];
    if (one <= 0 || two <= 0) return null;
    const between = a.hours + ((b.hours - a.hours) * one) / (one + two);
    return Math.abs(hours - between) / Math.sqrt((one * two) / (one + two));
  };
  const misses = kept.flatMap(({ hours }, at) => missOf(at, hours) ?? []).sort((a, b) => a - b);
  if (misses.length < 5) return chain;
  const share = (part: number) => misses[Math.floor(part * (misses.length - 1))] ?? 0;
  const usual = Math.max(1.48 * share(0.5), share(0.8) / 1.28, meter.resolution);
  const unlikely = kept.flatMap((point, at) => {
    const miss = missOf(at, point.hours);
    if (miss === null || miss < FAR * usual) return [];
    const slip = meantBy(point.hours).some(
      ({ hours }) =>
        Math.abs(hours - point.hours) >= LEAST_HOURS &&
        (missOf(at, hours) ?? Number.POSITIVE_INFINITY) < NEARBY * usual,
    );
    return slip ? [point] : [];
  });
  if (unlikely.length === 0) return chain;
  const out = new Set(unlikely);
  const places = meter.points.flatMap((point, at) => (out.has(point) ? [] : [at]));
  const again = likeliest({ ...meter, points: places.flatMap((at) => meter.points[at] ?? []) });
  const place = (at: number): number => places[at] ?? 0;
  const left = [...again.skipped.map(place)];
  meter.points.forEach((point, at) => {
    if (out.has(point)) left.push(at);
  });
  return { kept: again.kept.map(place), links: again.links, skipped: left.sort((a, b) => a - b) };
}

function readBack(
  points: readonly Point[],
  skip: readonly number[],
  best: readonly number[],
  from: readonly number[],
  links: ReadonlyMap<number, Link>,
): Chain {
  let end = -1;
  let least = Number.POSITIVE_INFINITY;
  let after = 0;
  for (let at = points.length - 1; at >= 0; at -= 1) {
    const whole = (best[at] ?? 0) + after;
    if (whole < least) [least, end] = [whole, at];
    after += skip[at] ?? 0;
  }
  const kept: number[] = [];
  for (let at = end; at >= 0; at = from[at] ?? -1) kept.unshift(at);
  const chosen = new Set(kept);
  const nothing: Link = { kind: 'same meter', ran: null };
  return {
    kept,
    links: kept.slice(1).map((at) => links.get(at) ?? nothing),
    skipped: points.flatMap((_, at) => (chosen.has(at) ? [] : [at])),
  };
}
