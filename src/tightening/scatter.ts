// Monte Carlo of one tightened joint: torque and friction vary, preload, yield and clamp follow.

import { limits } from '../limits.ts';
import { chance, meanAndSd, quantile } from '../quantity/chance.ts';
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
