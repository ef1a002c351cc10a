// How far a figure of a fitted law may lie from its best: delta limits, likelihood limits.

import { limits } from '../limits.ts';
import { lnGamma } from '../quantity/distribution.ts';
import { digamma, trigamma } from '../quantity/special.ts';
import type { LifeData } from './data.ts';
import type { Fit } from './fit.ts';
import { likelihood, type Prior } from './likelihood.ts';

/**
 * `place`: ln of the figure is μ + h(σ), with h and its two slopes in ln σ; `spread`: it is ±ln σ.
 */
export type Asked =
  | {
      readonly kind: 'place';
      readonly h: (sigma: number) => readonly [number, number, number];
    }
  | { readonly kind: 'spread'; readonly sign: 1 | -1 };

/** ln of a quantile: μ + w σ. */
export const atQuantile = (w: number): Asked => ({
  kind: 'place',
  h: (sigma) => [w * sigma, w * sigma, w * sigma],
});

/** ln of the mean life of a Weibull law: μ + ln Γ(1 + σ). */
export const weibullMean: Asked = {
  kind: 'place',
  h: (sigma) => {
    const slope = sigma * digamma(1 + sigma);
    return [lnGamma(1 + sigma), slope, slope + sigma * sigma * trigamma(1 + sigma)];
  },
};

/** ln of the mean life of a lognormal law: μ + σ²/2. */
export const lognormalMean: Asked = {
  kind: 'place',
  h: (sigma) => [(sigma * sigma) / 2, sigma * sigma, 2 * sigma * sigma],
};

/** ln of the figure at the best fit, and its standard error. */
export function lnFigure(fit: Fit, asked: Asked): readonly [number, number] {
  if (asked.kind === 'spread') return [asked.sign * fit.lnSigma, Math.sqrt(fit.vss)];
  const [h, slope] = asked.h(Math.exp(fit.lnSigma));
  const variance = fit.vmm + 2 * slope * fit.vms + slope * slope * fit.vss;
  return [fit.mu + h, Math.sqrt(Math.max(0, variance))];
}

type Point = { readonly value: number; readonly slope: number; readonly bend: number };

/** The greatest likelihood there is with the figure held at `held`. */
function profile(fit: Fit, data: LifeData, prior: Prior | null, asked: Asked) {
  let start = asked.kind === 'spread' ? fit.mu : fit.lnSigma;
  const at = (held: number, free: number): Point => {
    if (asked.kind === 'spread') {
      const found = likelihood(fit.law, data, free, asked.sign * held, prior);
      return { value: found.value, slope: found.m, bend: found.mm };
    }
    const [h, h1, h2] = asked.h(Math.exp(free));
    const found = likelihood(fit.law, data, held - h, free, prior);
    const { value, m, s, mm, ms, ss } = found;
    return { value, slope: s - m * h1, bend: mm * h1 * h1 - 2 * ms * h1 + ss - m * h2 };
  };
  return (held: number): number => {
    if (asked.kind === 'place' && fit.fixed) return at(held, fit.lnSigma).value;
    const top = climbOne((free) => at(held, free), start);
    start = top.at;
    return top.value;
  };
}

function climbOne(of: (x: number) => Point, from: number): { at: number; value: number } {
  let x = from;
  let here = of(x);
  for (let round = 0; round < limits.life.rounds; round += 1) {
    const aim = here.bend < 0 ? -here.slope / here.bend : Math.sign(here.slope) * 0.5;
    let by = Math.max(-1, Math.min(1, aim));
    let next = of(x + by);
    const least = here.value - 1e-13 * Math.abs(here.value);
    while (!(next.value >= least) && Math.abs(by) > 1e-12) {
      by /= 2;
      next = of(x + by);
    }
    if (!(next.value >= least)) break;
    x += by;
    here = next;
    if (Math.abs(by) < 1e-9) break;
  }
  return { at: x, value: here.value };
}

/** ln of both likelihood limits; null on a side where the data set no limit. */
export function likelihoodLimits(
  fit: Fit,
  data: LifeData,
  prior: Prior | null,
  asked: Asked,
  z: number,
): readonly [number | null, number | null] {
  const [best, error] = lnFigure(fit, asked);
  const side = (sign: 1 | -1): number | null => {
    const greatest = profile(fit, data, prior, asked);
    // Nearly straight in the figure, so that few trials are needed.
    const short = (held: number) => Math.sqrt(Math.max(0, 2 * (fit.best - greatest(held)))) - z;
    return crossing(short, best, sign * Math.max(error, 1e-12) * z, -z);
  };
  return [side(-1), side(1)];
}

/** Where a rising figure passes nought, by the rule of false position (Illinois). */
function crossing(
  of: (x: number) => number,
  from: number,
  firstStep: number,
  atFrom: number,
): number | null {
  let [a, fa] = [from, atFrom];
  let step = firstStep;
  let b = from + step;
  let fb = of(b);
  for (let widen = 0; fb < 0; widen += 1) {
    if (widen >= limits.life.widenings || Math.abs(b - from) > 600) return null;
    [a, fa] = [b, fb];
    step *= 1.4;
    b += step;
    fb = of(b);
  }
  let side = 0;
  for (let round = 0; round < limits.life.rounds; round += 1) {
    const c = fb === Number.POSITIVE_INFINITY ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa);
    const fc = of(c);
    if (Math.abs(b - a) < 1e-11 * Math.abs(firstStep) || Math.abs(fc) < 1e-11) return c;
    if (fc > 0) {
      [b, fb] = [c, fc];
      if (side === 1) fa /= 2;
      side = 1;
    } else {
      [a, fa] = [c, fc];
      if (side === -1) fb /= 2;
      side = -1;
    }
  }
  return (a + b) / 2;
}
