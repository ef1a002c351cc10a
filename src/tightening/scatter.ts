// Monte Carlo of one tightened joint: torque and friction vary, preload, yield and clamp follow.

import { limits } from '../limits.ts';
import { type TorqueParts, torquePerForceMm, torsionRatio } from './torque.ts';

export type ScatterCase = {
  readonly torqueNm: number;
  /** Half width of what the wrench really gives, a fraction; every value in it alike. */
  readonly toolScatter: number;
  readonly frictionLow: number;
  readonly frictionHigh: number;
  readonly parts: TorqueParts;
  readonly stressAreaMm2: number;
  readonly yieldMPa: number;
  readonly loadKN: number;
  /** Of the load, what the bolt sees. */
  readonly loadShare: number;
  readonly embeddingLossKN: number;
};

export type ScatterResult = {
  readonly draws: number;
  readonly seed: number;
  readonly preloadKN: { readonly mean: number; readonly sd: number };
  /** At the top of the band: this share of yield is passed by 2.5 % of the draws. */
  readonly yieldShareTop: number;
  /** At the bottom of the band: 2.5 % of the draws keep less clamp than this. */
  readonly residualClampBottomKN: number;
  readonly overYield: number;
  readonly opens: number;
};

const TAIL = 0.025;

/** Mulberry32: small, quick, the same everywhere; its stream is fixed by the seed. */
export function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Mean and sample standard deviation (n − 1). */
export function meanAndSd(values: ArrayLike<number>): { mean: number; sd: number } {
  const count = values.length;
  let sum = 0;
  for (let at = 0; at < count; at += 1) sum += values[at] ?? 0;
  const mean = sum / count;
  let squares = 0;
  for (let at = 0; at < count; at += 1) squares += ((values[at] ?? 0) - mean) ** 2;
  return { mean, sd: count > 1 ? Math.sqrt(squares / (count - 1)) : 0 };
}

/** The value at a rank, found without sorting all; it reorders what it is given. */
function valueAtRank(values: Float64Array, rank: number): number {
  let from = 0;
  let to = values.length - 1;
  while (from < to) {
    const pivot = values[(from + to) >>> 1] ?? 0;
    let left = from;
    let right = to;
    while (left <= right) {
      while ((values[left] ?? 0) < pivot) left += 1;
      while ((values[right] ?? 0) > pivot) right -= 1;
      if (left <= right) {
        const held = values[left] ?? 0;
        values[left] = values[right] ?? 0;
        values[right] = held;
        left += 1;
        right -= 1;
      }
    }
    if (rank <= right) to = right;
    else if (rank >= left) from = left;
    else break;
  }
  return values[rank] ?? 0;
}

/** Between the two nearest ranks, in proportion. */
export function quantile(values: Float64Array, share: number): number {
  const exact = share * (values.length - 1);
  const below = Math.floor(exact);
  const low = valueAtRank(values, below);
  if (exact === below) return low;
  // What stands after a rank is not below it: the next in order is the least of that.
  let next = Number.POSITIVE_INFINITY;
  for (let at = below + 1; at < values.length; at += 1) next = Math.min(next, values[at] ?? next);
  return low + (exact - below) * (next - low);
}

/**
 * Draws torque and the two frictions (thread and head apart, each alike over the range) from a
 * seed. The same seed gives the same figures everywhere.
 */
export function scatter(one: ScatterCase, draws: number, seed: number): ScatterResult {
  if (!Number.isInteger(draws) || draws < 2 || draws > limits.tightening.draws) {
    throw new RangeError(`${draws} draws (expected 2 to ${limits.tightening.draws})`);
  }
  const { parts, stressAreaMm2, yieldMPa, loadKN, loadShare, embeddingLossKN } = one;
  const next = chance(seed);
  const width = one.frictionHigh - one.frictionLow;
  const yieldKN = (stressAreaMm2 * yieldMPa) / 1_000;
  const taken = (1 - loadShare) * loadKN + embeddingLossKN;
  const preload = new Float64Array(draws);
  const shares = new Float64Array(draws);
  let overYield = 0;
  let opens = 0;
  for (let at = 0; at < draws; at += 1) {
    const torque = one.torqueNm * (1 + one.toolScatter * (2 * next() - 1));
    const thread = one.frictionLow + width * next();
    const head = one.frictionLow + width * next();
    const force = torque / torquePerForceMm(parts, thread, head);
    const torsion = torsionRatio(parts.pitchMm, parts.pitchDiameterMm, stressAreaMm2, thread);
    const share = (force * torsion) / yieldKN;
    preload[at] = force;
    shares[at] = share;
    if (share > 1) overYield += 1;
    if (force < taken) opens += 1;
  }
  const spread = meanAndSd(preload);
  return {
    draws,
    seed,
    preloadKN: spread,
    yieldShareTop: quantile(shares, 1 - TAIL),
    residualClampBottomKN: quantile(preload, TAIL) - taken,
    overYield: overYield / draws,
    opens: opens / draws,
  };
}
