// The sums behind a fitted law: the equations its parameters solve, and each figure from them.

import { limits } from '../limits.ts';
import { entered, newSheet, type Sheet } from '../quantity/sheet.ts';
import type { Source, WorkingRow } from '../quantity/types.ts';
import { type LifeData, sum } from './data.ts';
import { type Asked, atQuantile, lnFigure, lognormalMean, weibullMean } from './interval.ts';
import { type Found, type LifeFigures, quantileOf, SHARES } from './life.ts';
import type { LifeFigure, LifeInput } from './life-model.ts';
import { between } from './likelihood.ts';
import { byFunction, bySum, byTop, likelihoodSource, newtonSource } from './tables/sources.ts';

type Case = {
  readonly input: LifeInput;
  readonly found: Found;
  readonly data: LifeData;
  readonly figures: LifeFigures;
  readonly z: number;
};

export function lifeWorking(given: Case): readonly WorkingRow[] {
  const sheet = newSheet();
  const { input, found, data, z } = given;
  const { fit } = found;
  const unit = input.units;
  const spread: Source =
    input.prior === undefined ? newtonSource : { kind: 'entered', by: input.prior.from };
  sheet.take('N', 'items', data.items, '1', entered);
  sheet.take('r', 'failures', data.failures, '1', entered);
  if (fit.law === 'weibull') {
    const rule: Source = found.name === 'exponential' ? likelihoodSource : spread;
    sheet.take('β', 'shape', Math.exp(-fit.lnSigma), '1', rule);
    sheet.work('σ', 'spread of ln life', '1/β', 1 / Math.exp(-fit.lnSigma), '1', likelihoodSource);
    sheet.take('η', 'scale', Math.exp(fit.mu), unit, newtonSource);
    if (data.to.length === 0) countedScore(sheet, given);
    else mixedScore(sheet, given);
  } else {
    sheet.take('μ', 'mean of ln life', fit.mu, '1', newtonSource);
    sheet.take('σ', 'spread of ln life', Math.exp(fit.lnSigma), '1', spread);
    lognormalScore(sheet, given);
  }
  sheet.take('z', `limits of ${100 * input.level} %`, z, '1', byFunction);
  sheet.take('v_m', 'variance of the place', fit.vmm, '1', byTop);
  sheet.take('v_s', 'variance of ln σ', fit.vss, '1', byTop);
  sheet.take('c', 'covariance of the two', fit.vms, '1', byTop);
  figureRows(sheet, given);
  return sheet.rows;
}

type Term = readonly [n: number, lnT: number];

const termsOf = (lnT: Float64Array, n: Float64Array): readonly Term[] =>
  [...lnT].map((one, at) => [n[at] ?? 0, one]);

const times = (n: number, what: string): string => (n === 1 ? what : `${n}*${what}`);

/**
 * Σ (t/η)^β = r and 1/β = Σ (t/η)^β ln t / r − mean ln t of the failed: both parameters come out
 * of the sums they were put into.
 */
function countedScore(sheet: Sheet, { data, found, input }: Case): void {
  const { fit, prior } = found;
  const shape = Math.exp(-fit.lnSigma);
  const failed = termsOf(data.exact, data.exactN);
  const all = [...failed, ...termsOf(data.right, data.rightN)];
  const share = (lnT: number) => Math.exp(shape * (lnT - fit.mu));
  const short = all.length <= limits.life.termsInARow;
  const row = (symbol: string, text: string, terms: readonly (readonly [string, number])[]) => {
    const value = terms.reduce((sums, [, one]) => sums + one, 0);
    const said = short ? terms.map(([one]) => one).join(' + ') : String(value);
    sheet.work(symbol, text, said, value, '1', short ? likelihoodSource : bySum);
    return value;
  };
  const t = (lnT: number) => plain(Math.exp(lnT));
  const power = (lnT: number) => `(${t(lnT)}/η)^β`;
  const w = row(
    'W',
    'hazard that all have lived through',
    all.map(([n, lnT]) => [times(n, power(lnT)), n * share(lnT)] as const),
  );
  const scale = Math.exp(fit.mu) * (w / data.failures) ** (1 / shape);
  sheet.work(
    'η_s',
    'scale out of its own equation',
    'η*(W/r)^(1/β)',
    scale,
    input.units,
    likelihoodSource,
  );
  if (prior !== null) return;
  const wl = row(
    'W_l',
    'the same, each times ln (t/η)',
    all.map(([n, lnT]) => {
      return [times(n, `${power(lnT)}*ln(${t(lnT)}/η)`), n * share(lnT) * (lnT - fit.mu)] as const;
    }),
  );
  const a = row(
    'A',
    'sum of ln (t/η) of the failed',
    failed.map(([n, lnT]) => [times(n, `ln(${t(lnT)}/η)`), n * (lnT - fit.mu)] as const),
  );
  const shapeAgain = data.failures / (wl - a);
  sheet.work(
    'β_s',
    'shape out of its own equation',
    'r/(W_l - A)',
    shapeAgain,
    '1',
    likelihoodSource,
  );
}

/** The shortest text of a life that was typed, though its logarithm is what is kept. */
const plain = (value: number): string => String(Number(value.toPrecision(14)));

/** What is expected of (T/η)^β, given what each record tells, is 1 on the average. */
function mixedScore(sheet: Sheet, { data, found, input }: Case): void {
  const { fit } = found;
  const sigma = Math.exp(fit.lnSigma);
  const at = (lnT: number) => (lnT - fit.mu) / sigma;
  let w = 0;
  data.exact.forEach((lnT, i) => {
    w += (data.exactN[i] ?? 0) * Math.exp(at(lnT));
  });
  data.right.forEach((lnT, i) => {
    w += (data.rightN[i] ?? 0) * (Math.exp(at(lnT)) + 1);
  });
  data.to.forEach((to, i) => {
    const [, low, high] = between('weibull', at(data.from[i] ?? 0), at(to));
    w += (data.betweenN[i] ?? 0) * (1 + low - high);
  });
  const items = sum(data.exactN) + sum(data.rightN) + sum(data.betweenN);
  const text = 'sum of the (T/η)^β to be expected after what each record tells';
  sheet.take('W', text, w, '1', bySum);
  sheet.take('N_w', 'items that tell something', items, '1', entered);
  const scale = Math.exp(fit.mu) * (w / items) ** sigma;
  const said = 'scale out of its own equation';
  sheet.work('η_s', said, 'η*(W/N_w)^(1/β)', scale, input.units, likelihoodSource);
}

/** μ and σ² are mean and variance of the ln T to be expected after what each record tells. */
function lognormalScore(sheet: Sheet, { data, found }: Case): void {
  const { fit, prior } = found;
  const sigma = Math.exp(fit.lnSigma);
  let [one, two] = [0, 0];
  const add = (n: number, first: number, second: number) => {
    one += n * first;
    two += n * second;
  };
  const at = (lnT: number) => (lnT - fit.mu) / sigma;
  data.exact.forEach((lnT, i) => {
    add(data.exactN[i] ?? 0, at(lnT), at(lnT) ** 2);
  });
  const cut = (n: number, from: number, to: number) => {
    const [, low, high] = between('lognormal', from, to);
    const ends = (Number.isFinite(from) ? from * low : 0) - (Number.isFinite(to) ? to * high : 0);
    add(n, low - high, 1 + ends);
  };
  data.right.forEach((lnT, i) => {
    cut(data.rightN[i] ?? 0, at(lnT), Number.POSITIVE_INFINITY);
  });
  data.to.forEach((to, i) => {
    cut(data.betweenN[i] ?? 0, at(data.from[i] ?? 0), at(to));
  });
  const items = sum(data.exactN) + sum(data.rightN) + sum(data.betweenN);
  sheet.take('N_w', 'items that tell something', items, '1', entered);
  sheet.take('E_1', 'sum of the (ln T − μ)/σ to be expected of each record', one, '1', bySum);
  const mu = fit.mu + (sigma * one) / items;
  sheet.work('μ_s', 'μ out of its own equation', 'μ + σ*E_1/N_w', mu, '1', likelihoodSource);
  if (prior !== null) return;
  sheet.take('E_2', 'sum of its squares to be expected', two, '1', bySum);
  const spread = sigma * Math.sqrt(two / items);
  const said = 'σ out of its own equation';
  sheet.work('σ_s', said, 'σ*sqrt(E_2/N_w)', spread, '1', likelihoodSource);
}

function figureRows(sheet: Sheet, given: Case): void {
  const { found, figures } = given;
  const { fit, name } = found;
  const one = (symbol: string, text: string, expression: string, asked: Asked, slope: string) =>
    figureRow(sheet, given, { symbol, text, expression, asked, slope });
  if (figures.mean !== null && name === 'weibull') {
    const sigma = Math.exp(fit.lnSigma);
    const [h, slope] = weibullMean.kind === 'place' ? weibullMean.h(sigma) : [0, 0];
    sheet.take('Γ', 'gamma function of 1 + 1/β', Math.exp(h), '1', byFunction);
    sheet.take('Γ_s', 'slope of its logarithm in ln σ', slope, '1', byFunction);
    one('mean', 'mean life', 'η*Γ', weibullMean, 'Γ_s');
  }
  if (figures.mean !== null && name === 'lognormal') {
    one('mean', 'mean life', 'exp(μ + σ^2/2)', lognormalMean, 'σ^2');
  }
  if (name === 'exponential') one('mean', 'mean life', 'η', atQuantile(0), '0');
  for (const [share, chance] of Object.entries(SHARES)) {
    const w = quantileOf(fit.law, chance);
    const text = `age by which ${chance} have failed`;
    if (fit.law === 'weibull') {
      const w_ = `w_${share}`;
      sheet.work(w_, `place of ${share}`, `ln(-ln(1 - ${chance}))`, w, '1', likelihoodSource);
      one(share, text, `η*exp(${w_}/β)`, atQuantile(w), `${w_}*σ`);
    } else {
      sheet.take(`w_${share}`, `place of ${share}`, w, '1', byFunction);
      one(share, text, `exp(μ + w_${share}*σ)`, atQuantile(w), `w_${share}*σ`);
    }
  }
  if (figures.aic !== null && figures.logLikelihood !== null) {
    sheet.take('L', 'log-likelihood', figures.logLikelihood, '1', bySum);
    const said = `${2 * found.parameters} - 2*L`;
    sheet.work('AIC', 'criterion of Akaike', said, figures.aic, '1', likelihoodSource);
  }
}

type Figure = {
  readonly symbol: string;
  readonly text: string;
  readonly expression: string;
  readonly asked: Asked;
  /** How ln of the figure moves with ln σ. */
  readonly slope: string;
};

function figureRow(sheet: Sheet, given: Case, { symbol, text, expression, asked, slope }: Figure) {
  const { found, figures, input } = given;
  const figure = figures[symbol as keyof LifeFigures] as LifeFigure | null | undefined;
  if (figure === null || figure === undefined || figure.standardError === null) return;
  const unit = input.units;
  sheet.work(symbol, text, expression, figure.value, unit, likelihoodSource);
  const [, error] = lnFigure(found.fit, asked);
  const variance = found.fit.fixed ? 'v_m' : `v_m + 2*${slope}*c + (${slope})^2*v_s`;
  const said = `standard error of ln ${symbol}`;
  sheet.work(`e_${symbol}`, said, `sqrt(${variance})`, error, '1', likelihoodSource);
  figure.delta?.forEach((end, at) => {
    if (end === null) return;
    const [tail, sign] = at === 0 ? ['lower', '-'] : ['upper', '+'];
    const sum = `exp(ln(${symbol}) ${sign} z*e_${symbol})`;
    sheet.work(`${symbol}_${tail}`, `${tail} limit (delta)`, sum, end, unit, likelihoodSource);
  });
}
