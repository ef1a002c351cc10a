// The power law of repairs: how fast they come as a machine ages, and whether that changes.

import { limits } from '../limits.ts';
import { normalAbove } from '../quantity/distribution.ts';
import { chiSquaredAbove, chiSquaredBelow } from '../quantity/special.ts';
import type { History } from './histories.ts';

/** In units of `t`, the greatest end: intensity is Λ β x^(β − 1)/t with x = age/t. */
export type PowerLaw = {
  readonly t: number;
  readonly events: number;
  readonly shape: number;
  /** Expected number from nought to t of one system. */
  readonly byT: number;
  /** Covariance of ln Λ and ln β: inverse of the observed information. */
  readonly vll: number;
  readonly vlb: number;
  readonly vbb: number;
  /** Σ ln (time/t) of all events. */
  readonly sumLn: number;
  /** Σ of end^β − start^β in units of t, and its two slopes in β. */
  readonly exposure: readonly [number, number, number];
};

export const greatestEnd = (histories: readonly History[]): number =>
  histories.reduce((most, { end }) => Math.max(most, end), 0);

const powers = (x: number, shape: number): readonly [number, number, number] => {
  if (x === 0) return [0, 0, 0];
  const ln = Math.log(x);
  const power = Math.exp(shape * ln);
  return [power, power * ln, power * ln * ln];
};

function exposureOf(histories: readonly History[], t: number, shape: number) {
  let [zero, one, two] = [0, 0, 0];
  for (const { start, end } of histories) {
    const [from, to] = [powers(start / t, shape), powers(end / t, shape)];
    zero += to[0] - from[0];
    one += to[1] - from[1];
    two += to[2] - from[2];
  }
  return [zero, one, two] as const;
}

/** Null under two events, and where no shape is the best. */
export function powerLawOf(histories: readonly History[]): PowerLaw | null {
  const t = greatestEnd(histories);
  let [events, sumLn] = [0, 0];
  for (const { times } of histories) {
    events += times.length;
    for (const time of times) sumLn += Math.log(time / t);
  }
  if (events < 2) return null;
  const off = (lnShape: number): number => {
    const shape = Math.exp(lnShape);
    const [zero, one] = exposureOf(histories, t, shape);
    return events / shape + sumLn - (events * one) / zero;
  };
  let [low, high] = [-7, 7];
  if (!(off(low) > 0) || !(off(high) < 0)) return null;
  for (let halve = 0; halve < limits.life.rounds; halve += 1) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (off(middle) > 0) low = middle;
    else high = middle;
  }
  const shape = Math.exp((low + high) / 2);
  const exposure = exposureOf(histories, t, shape);
  const [zero, one, two] = exposure;
  const byT = events / zero;
  const ll = byT * zero;
  const lb = byT * shape * one;
  const bb = -(shape * sumLn - byT * (shape * one + shape * shape * two));
  const determinant = ll * bb - lb * lb;
  if (!(determinant > 0)) return null;
  const spread = { vll: bb / determinant, vlb: -lb / determinant, vbb: ll / determinant };
  return { t, events, shape, byT, ...spread, sumLn, exposure };
}

/** All watched from nought to one and the same end: what the handbook's corrections ask for. */
export const alike = (histories: readonly History[]): boolean =>
  histories.every(({ start, end }) => start === 0 && end === histories[0]?.end);

export type Ended = 'time' | 'failure';

/** Shape with its bias taken out, and how far the events lie from the law with it. */
export function unbiasedOf(law: PowerLaw, histories: readonly History[], ended: Ended) {
  const { events, t } = law;
  const one = ended === 'failure';
  // The handbook's rule for a failure at the end is for one system.
  if (!alike(histories) || (one && histories.length > 1)) return null;
  const shape = (law.shape * (events - (one ? 2 : 1))) / events;
  if (!(shape > 0)) return null;
  const each = events / histories.length;
  const all = histories.flatMap(({ times }) => times).sort((a, b) => a - b);
  const counted = one ? all.slice(0, -1) : all;
  const many = counted.length;
  const cramerVonMises = counted.reduce(
    (sum, time, at) => sum + ((time / t) ** shape - (2 * at + 1) / (2 * many)) ** 2,
    1 / (12 * many),
  );
  return { shape, lambda: each * t ** -shape, mtbfNow: t / (each * shape), cramerVonMises };
}

/** Events that say something of a trend: one that ends the watching does not. */
function counted({ times }: History, ended: Ended): readonly number[] {
  if (ended === 'time') return times;
  return [...times].sort((a, b) => a - b).slice(0, -1);
}

/** Laplace: whether events lie late in the time that was watched. */
export function laplaceOf(histories: readonly History[], ended: Ended) {
  let [off, square] = [0, 0];
  for (const history of histories) {
    const times = counted(history, ended);
    const span = history.end - history.start;
    for (const time of times) off += time - (history.start + history.end) / 2;
    square += (times.length * span * span) / 12;
  }
  if (square === 0) return null;
  const value = off / Math.sqrt(square);
  return { value, pTwoSided: Math.min(1, 2 * normalAbove(Math.abs(value))) };
}

/** 2 Σ ln (end/time): chi-squared where there is no trend; every system from nought. */
export function handbookOf(histories: readonly History[], ended: Ended) {
  if (histories.some(({ start }) => start !== 0)) return null;
  let [value, degreesOfFreedom] = [0, 0];
  for (const history of histories) {
    for (const time of counted(history, ended)) {
      value += 2 * Math.log(history.end / time);
      degreesOfFreedom += 2;
    }
  }
  if (degreesOfFreedom === 0) return null;
  return {
    value,
    degreesOfFreedom,
    pLower: Math.min(1, chiSquaredBelow(value, degreesOfFreedom)),
    pUpper: Math.min(1, chiSquaredAbove(value, degreesOfFreedom)),
  };
}
