// Finds the law that agrees best with the records, and how sharply it does.

import { limits } from '../limits.ts';
import { type LifeData, sum } from './data.ts';
import { type Law, type Likelihood, likelihood, type Prior } from './likelihood.ts';

export type Fit = {
  readonly law: Law;
  readonly mu: number;
  readonly lnSigma: number;
  /** σ was given and not found. */
  readonly fixed: boolean;
  /** Log-likelihood of the data alone, and with what a prior adds. */
  readonly logLikelihood: number;
  readonly best: number;
  /** Covariance of μ and ln σ: inverse of the observed information. */
  readonly vmm: number;
  readonly vms: number;
  readonly vss: number;
};

const { life } = limits;

/** Null where the records settle no law: then more failures are needed, or a prior. */
export function fitLaw(law: Law, data: LifeData, prior: Prior | null): Fit | null {
  const fixed = prior !== null && prior.spread === 0;
  if (data.failures === 0) return null;
  const found = fixed
    ? climb(law, data, prior, [startMu(data), prior.lnSigma], true)
    : startsOf(law, data, prior).reduce<Top | null>((best, start) => {
        if (best !== null) return best;
        return climb(law, data, prior, start, false);
      }, null);
  if (found === null) return null;
  const { mu, lnSigma, at } = found;
  const alone = prior === null || fixed ? at : likelihood(law, data, mu, lnSigma);
  const spread = fixed ? { vmm: -1 / at.mm, vms: 0, vss: 0 } : inverse(at);
  if (spread === null) return null;
  return { law, mu, lnSigma, fixed, logLikelihood: alone.value, best: at.value, ...spread };
}

function inverse({ mm, ms, ss }: Likelihood) {
  const determinant = mm * ss - ms * ms;
  if (!(determinant > 0) || !(mm < 0)) return null;
  return { vmm: -ss / determinant, vms: ms / determinant, vss: -mm / determinant };
}

type Start = readonly [number, number];
type Top = { readonly mu: number; readonly lnSigma: number; readonly at: Likelihood };

const middleOf = (from: number, to: number): number =>
  Number.isFinite(from) ? Math.log((Math.exp(from) + Math.exp(to)) / 2) : to;

function startMu(data: LifeData): number {
  let all = 0;
  const weigh = (lnT: number, n: number | undefined) => {
    all += lnT * (n ?? 0);
  };
  data.exact.forEach((lnT, at) => {
    weigh(lnT, data.exactN[at]);
  });
  data.right.forEach((lnT, at) => {
    weigh(lnT, data.rightN[at]);
  });
  data.to.forEach((to, at) => {
    weigh(middleOf(data.from[at] ?? 0, to), data.betweenN[at]);
  });
  const items = sum(data.exactN) + sum(data.rightN) + sum(data.betweenN);
  // Half a unit up: what has not failed yet will live longer.
  return all / items + 0.5;
}

function startsOf(law: Law, data: LifeData, prior: Prior | null): readonly Start[] {
  if (law === 'weibull' && prior === null && data.to.length === 0) {
    const quick = weibullStart(data);
    return quick === null ? [] : [quick];
  }
  let most = Number.NEGATIVE_INFINITY;
  for (const column of [data.exact, data.right, data.to]) {
    for (const lnT of column) most = Math.max(most, lnT);
  }
  const spread = prior?.lnSigma ?? 0;
  return [
    [startMu(data), spread],
    [most, spread],
    [most + 1, Math.log(0.5)],
    [most + 2, Math.log(0.7)],
  ];
}

/**
 * With exact and right records alone the scale drops out, and the shape is the only root of
 * 1/β + mean ln t of the failed = Σ t^β ln t / Σ t^β, which falls in β.
 */
function weibullStart(data: LifeData): Start | null {
  const { exact, exactN, right, rightN, failures } = data;
  let [top, mean] = [Number.NEGATIVE_INFINITY, 0];
  for (let at = 0; at < exact.length; at += 1) {
    top = Math.max(top, exact[at] ?? top);
    mean += ((exactN[at] ?? 0) * (exact[at] ?? 0)) / failures;
  }
  const lastFailure = top;
  for (let at = 0; at < right.length; at += 1) top = Math.max(top, right[at] ?? top);
  // All failed at one time and nothing lived longer: any greater shape agrees better.
  if (mean >= top - 1e-12 * Math.max(1, Math.abs(top)) && lastFailure >= top) return null;
  let [low, high] = [0, Number.POSITIVE_INFINITY];
  let shape = 1;
  for (let round = 0; round < life.rounds; round += 1) {
    const [s0, s1, s2] = weighed([exact, right], [exactN, rightN], shape, top);
    const off = 1 / shape + (mean - top) - s1 / s0;
    if (off > 0) low = shape;
    else high = shape;
    const slope = -1 / (shape * shape) - (s2 / s0 - (s1 / s0) ** 2);
    let next = shape - off / slope;
    if (!(next > low && next < high)) {
      next = high === Number.POSITIVE_INFINITY ? shape * 2 : (low + high) / 2;
    }
    const moved = Math.abs(next / shape - 1);
    shape = next;
    if (moved < 1e-9) break;
  }
  const [s0] = weighed([exact, right], [exactN, rightN], shape, top);
  return [top + Math.log(s0 / failures) / shape, -Math.log(shape)];
}

/** Σ n w, Σ n w y, Σ n w y² with y = ln t − ln of the longest, w = e^(β y): nothing overflows. */
function weighed(
  columns: readonly Float64Array[],
  counts: readonly Float64Array[],
  shape: number,
  top: number,
): readonly [number, number, number] {
  let [s0, s1, s2] = [0, 0, 0];
  columns.forEach((column, which) => {
    const count = counts[which] ?? column;
    for (let at = 0; at < column.length; at += 1) {
      const y = (column[at] ?? 0) - top;
      const w = (count[at] ?? 0) * Math.exp(shape * y);
      s0 += w;
      s1 += w * y;
      s2 += w * y * y;
    }
  });
  return [s0, s1, s2];
}

/** Newton's steps, shortened towards the slope where the top is not yet near. */
function climb(
  law: Law,
  data: LifeData,
  prior: Prior | null,
  start: Start,
  fixed: boolean,
): Top | null {
  let [mu, lnSigma] = start;
  let at = likelihood(law, data, mu, lnSigma, prior);
  let damping = 0;
  for (let round = 0; round < life.rounds; round += 1) {
    if (!Number.isFinite(at.value)) return null;
    const [dm, ds] = step(at, damping, fixed);
    const next = likelihood(law, data, mu + dm, lnSigma + ds, prior);
    const good = next.value >= at.value - 1e-11 * Math.abs(at.value);
    if (!good || Number.isNaN(next.value)) {
      damping = Math.max(damping * 4, 1e-3 * Math.max(-at.mm, -at.ss, 1e-6));
      continue;
    }
    [mu, lnSigma, at] = [mu + dm, lnSigma + ds, next];
    if (Math.abs(lnSigma) > life.lnSigma) return null;
    const small = Math.max(Math.abs(dm), Math.abs(ds)) < 1e-11 * Math.max(1, Math.abs(mu));
    if (small && damping < 1e-12 * Math.max(-at.mm, 1)) return { mu, lnSigma, at };
    damping = damping < 1e-9 * Math.max(-at.mm, 1) ? 0 : damping / 8;
  }
  return null;
}

function step({ m, s, mm, ms, ss }: Likelihood, damping: number, fixed: boolean): Start {
  if (fixed) {
    const bend = Math.min(mm, 0) - damping;
    return bend === 0 ? [0, 0] : [capped(-m / bend), 0];
  }
  let more = damping;
  for (let round = 0; round < 60; round += 1) {
    const [a, b] = [mm - more, ss - more];
    const determinant = a * b - ms * ms;
    if (a < 0 && determinant > 0) {
      return [capped(-(b * m - ms * s) / determinant), capped(-(a * s - ms * m) / determinant)];
    }
    more = Math.max(more * 3, 1e-3 * (Math.abs(mm) + Math.abs(ss) + Math.abs(ms)), 1e-9);
  }
  return [0, 0];
}

const capped = (by: number): number => Math.max(-2, Math.min(2, by));
