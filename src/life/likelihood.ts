// How well a law of lives agrees with the records: log-likelihood, its slopes and its curvature.

import { lnNormalAbove } from '../quantity/special.ts';
import type { LifeData } from './data.ts';

/** ln T = μ + σ ε; Weibull: η = e^μ, β = 1/σ. The exponential law is Weibull with σ = 1. */
export type Law = 'weibull' | 'lognormal';

/** In μ and s = ln σ: value, slopes, curvatures. */
export type Likelihood = {
  readonly value: number;
  readonly m: number;
  readonly s: number;
  readonly mm: number;
  readonly ms: number;
  readonly ss: number;
};

/** What is believed of ln σ before the data: middle and spread; spread 0 is a rule, no belief. */
export type Prior = { readonly lnSigma: number; readonly spread: number };

const HALF_LN_TWO_PI = 0.5 * Math.log(2 * Math.PI);

type Sums = { value: number; m: number; s: number; mm: number; ms: number; ss: number };

/** Adds a term of z = (ln t − μ)/σ, of which value and two slopes in z are known. */
function add(sums: Sums, n: number, z: number, one: number, two: number, sigma: number): void {
  sums.m -= (n * one) / sigma;
  sums.s -= n * one * z;
  sums.mm += (n * two) / (sigma * sigma);
  sums.ms += (n * (two * z + one)) / sigma;
  sums.ss += n * (two * z * z + one * z);
}

export function likelihood(
  law: Law,
  data: LifeData,
  mu: number,
  lnSigma: number,
  prior: Prior | null = null,
): Likelihood {
  const sums: Sums = { value: 0, m: 0, s: 0, mm: 0, ms: 0, ss: 0 };
  const sigma = Math.exp(lnSigma);
  if (law === 'weibull') addWeibull(sums, data, mu, lnSigma, sigma);
  else addLognormal(sums, data, mu, lnSigma, sigma);
  for (let at = 0; at < data.to.length; at += 1) {
    const n = data.betweenN[at] ?? 0;
    addBetween(sums, law, n, ((data.from[at] ?? 0) - mu) / sigma, (data.to[at] ?? 0) - mu, sigma);
  }
  if (prior !== null && prior.spread > 0) {
    const off = (lnSigma - prior.lnSigma) / prior.spread;
    sums.value -= 0.5 * off * off;
    sums.s -= off / prior.spread;
    sums.ss -= 1 / (prior.spread * prior.spread);
  }
  return sums;
}

function addWeibull(sums: Sums, data: LifeData, mu: number, lnSigma: number, sigma: number) {
  const { exact, exactN, right, rightN } = data;
  for (let at = 0; at < exact.length; at += 1) {
    const n = exactN[at] ?? 0;
    const lnT = exact[at] ?? 0;
    const z = (lnT - mu) / sigma;
    const w = Math.exp(z);
    sums.value += n * (z - w - lnSigma - lnT);
    sums.s -= n;
    add(sums, n, z, 1 - w, -w, sigma);
  }
  for (let at = 0; at < right.length; at += 1) {
    const n = rightN[at] ?? 0;
    const z = ((right[at] ?? 0) - mu) / sigma;
    const w = Math.exp(z);
    sums.value -= n * w;
    add(sums, n, z, -w, -w, sigma);
  }
}

function addLognormal(sums: Sums, data: LifeData, mu: number, lnSigma: number, sigma: number) {
  const { exact, exactN, right, rightN } = data;
  for (let at = 0; at < exact.length; at += 1) {
    const n = exactN[at] ?? 0;
    const lnT = exact[at] ?? 0;
    const z = (lnT - mu) / sigma;
    sums.value += n * (-0.5 * z * z - HALF_LN_TWO_PI - lnSigma - lnT);
    sums.s -= n;
    add(sums, n, z, -z, -1, sigma);
  }
  for (let at = 0; at < right.length; at += 1) {
    const n = rightN[at] ?? 0;
    const z = ((right[at] ?? 0) - mu) / sigma;
    const lnAbove = lnNormalAbove(z);
    const hazard = Math.exp(-0.5 * z * z - HALF_LN_TWO_PI - lnAbove);
    sums.value += n * lnAbove;
    add(sums, n, z, -hazard, hazard * (z - hazard), sigma);
  }
}

/** ln of the chance to fail between, with the density at both ends over that chance. */
export function between(law: Law, low: number, high: number): readonly [number, number, number] {
  if (law === 'weibull') {
    const from = Math.exp(low);
    const width = Math.exp(high) - from;
    const inside = -Math.expm1(-width);
    const lnChance = Math.log(inside) - from;
    return [lnChance, from / inside, Math.exp(high - width) / inside];
  }
  const lnChance = lnNormalBetween(low, high);
  const over = (z: number) =>
    Number.isFinite(z) ? Math.exp(-0.5 * z * z - HALF_LN_TWO_PI - lnChance) : 0;
  return [lnChance, over(low), over(high)];
}

/** From the side on which both chances are small. */
function lnNormalBetween(low: number, high: number): number {
  if (low === Number.NEGATIVE_INFINITY) return lnNormalAbove(-high);
  const [near, far] = low + high > 0 ? [low, high] : [-high, -low];
  const lnNear = lnNormalAbove(near);
  return lnNear + Math.log(-Math.expm1(lnNormalAbove(far) - lnNear));
}

function addBetween(
  sums: Sums,
  law: Law,
  n: number,
  low: number,
  highTimesSigma: number,
  sigma: number,
): void {
  const high = highTimesSigma / sigma;
  const [lnChance, fromLow, atHigh] = between(law, low, high);
  const first = Number.isFinite(low);
  // z f vanishes at −∞.
  const z = first ? low : 0;
  const bend = (at: number) => (law === 'weibull' ? 1 - Math.exp(at) : -at);
  const lowBend = first ? fromLow * bend(low) : 0;
  const highBend = atHigh * bend(high);
  const m = -(atHigh - fromLow) / sigma;
  const s = -(atHigh * high - fromLow * z);
  const ms = (highBend * high - lowBend * z) / sigma + (atHigh - fromLow) / sigma;
  const ss = highBend * high * high - lowBend * z * z + (atHigh * high - fromLow * z);
  sums.value += n * lnChance;
  sums.m += n * m;
  sums.s += n * s;
  sums.mm += n * ((highBend - lowBend) / (sigma * sigma) - m * m);
  sums.ms += n * (ms - m * s);
  sums.ss += n * (ss - s * s);
}
