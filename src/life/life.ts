// Lives of items: the law that agrees best, each figure with both kinds of limits, the table.

import { normalFor } from '../quantity/distribution.ts';
import type { Problem } from '../quantity/types.ts';
import { cautionsOf } from './cautions.ts';
import { type LifeData, type LifeRecord, lifeData } from './data.ts';
import { type Fit, fitLaw } from './fit.ts';
import {
  type Asked,
  atQuantile,
  likelihoodLimits,
  lnFigure,
  lognormalMean,
  weibullMean,
} from './interval.ts';
import type { LawName, LifeFigure, LifeInput, LifeOutput } from './life-model.ts';
import { lifeWorking } from './life-working.ts';
import type { Law, Prior } from './likelihood.ts';
import { readRecords } from './records.ts';
import { isExact, kaplanMeier, turnbull } from './survival.ts';

export type LifeAnswer =
  | { readonly ok: true; readonly result: LifeOutput }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export const SHARES = { b1: 0.01, b5: 0.05, b10: 0.1, b50: 0.5, b90: 0.9 } as const;
type Share = keyof typeof SHARES;

/** Why a law is not settled by the records, in words. */
export type Unsettled = { readonly needs: readonly string[]; readonly why: string };

export type Found = {
  readonly name: LawName;
  readonly fit: Fit;
  readonly prior: Prior | null;
  readonly parameters: number;
};

export function lifeOf(input: LifeInput): LifeAnswer {
  const { records, problems } = readRecords(input.records, input.units);
  if (problems.length > 0) return { ok: false, problems };
  const data = lifeData(records);
  const found = settle(input, data);
  const z = normalFor((1 - input.level) / 2);
  const figures = 'fit' in found ? figuresOf(input, found, data, z) : noFigures(input);
  const needs = 'fit' in found ? ['records: lives less far apart'] : found.needs;
  const notWorkedOut = Object.entries(figures)
    .filter(([, figure]) => figure === null)
    .map(([output]) => ({ output, needs: [...needs] }));
  if ('fit' in found) notWorkedOut.push(...openEnds(figures));
  const working = 'fit' in found ? lifeWorking({ input, found, data, figures, z }) : [];
  const result: LifeOutput = {
    distribution: input.distribution ?? null,
    items: data.items,
    failures: data.failures,
    level: input.level,
    ...figures,
    tableBy: isExact(records) ? 'Kaplan-Meier' : 'Turnbull',
    table: tableOf(records, input.units, z),
    prior: priorWords(input),
    working,
    cautions: [...cautionsOf({ input, found, data, records, figures })],
    notWorkedOut,
  };
  return { ok: true, result };
}

export function priorOf({ distribution, prior }: LifeInput): Prior | null {
  if (distribution === 'exponential') return { lnSigma: 0, spread: 0 };
  if (prior === undefined) return null;
  const lnSigma = prior.sigma === undefined ? -Math.log(prior.shape ?? 1) : Math.log(prior.sigma);
  return { lnSigma, spread: prior.factor === undefined ? 0 : Math.log(prior.factor) / SIDES };
}

/** 95 % of a normal lies within so many standard deviations. */
const SIDES = normalFor(0.025);

function priorWords({ prior }: LifeInput): string | null {
  if (prior === undefined) return null;
  const [name, value] = prior.sigma === undefined ? ['shape', prior.shape] : ['sigma', prior.sigma];
  const how = prior.factor === undefined ? 'held' : `95 % sure within a factor of ${prior.factor}`;
  return `${name} ${value}, ${how}, by ${prior.from}`;
}

function settle(input: LifeInput, data: LifeData): Found | Unsettled {
  const { distribution: name } = input;
  if (name === undefined) {
    return { needs: ['distribution'], why: 'no law was asked for: only the table is worked out' };
  }
  const prior = priorOf(input);
  const parameters = prior?.spread === 0 ? 1 : 2;
  const least = parameters === 2 && prior === null ? 2 : 1;
  const orPrior = name === 'exponential' ? [] : ['or a prior'];
  if (data.failures < least) {
    const words = `${data.failures === 1 ? 'one failure' : 'no failure'} among ${data.items} items`;
    const needs = [`records: at least ${least} failure${least === 1 ? '' : 's'}`, ...orPrior];
    return { needs, why: `Not enough to say: ${words} settles no ${name} law.` };
  }
  const law: Law = name === 'lognormal' ? 'lognormal' : 'weibull';
  const fit = fitLaw(law, data, prior);
  if (fit !== null) return { name, fit, prior, parameters };
  const why =
    'Not enough to say: any closer or wider spread agrees better and better with these records, ' +
    'so that no law is settled.';
  return { needs: ['records: failures at ages that differ', ...orPrior], why };
}

type Figures = Pick<
  LifeOutput,
  | 'shape'
  | 'scale'
  | 'mu'
  | 'sigma'
  | 'mean'
  | 'logLikelihood'
  | 'aic'
  | 'b1'
  | 'b5'
  | 'b10'
  | 'b50'
  | 'b90'
>;
export type LifeFigures = Figures;

function noFigures({ distribution }: LifeInput): Figures {
  const both =
    distribution === 'lognormal'
      ? { mu: null, sigma: null }
      : distribution === 'exponential' || distribution === undefined
        ? {}
        : { shape: null, scale: null };
  const shares = { b1: null, b5: null, b10: null, b50: null, b90: null };
  return { ...both, mean: null, ...shares, logLikelihood: null, aic: null };
}

export const quantileOf = (law: Law, share: number): number =>
  law === 'weibull' ? Math.log(-Math.log1p(-share)) : -normalFor(share);

function figuresOf(input: LifeInput, found: Found, data: LifeData, z: number): Figures {
  const { fit, prior, name, parameters } = found;
  const figure = (asked: Asked, unit: string): LifeFigure | null => {
    const [ln, error] = lnFigure(fit, asked);
    const value = Math.exp(ln);
    if (!Number.isFinite(value * (1 + error))) return null;
    if (asked.kind === 'spread' && fit.fixed) {
      return { value, unit, standardError: null, delta: null, likelihood: null };
    }
    const [low, high] = likelihoodLimits(fit, data, prior, asked, z);
    return {
      value,
      unit,
      standardError: value * error,
      delta: [antilog(ln - z * error), antilog(ln + z * error)],
      likelihood: [low === null ? null : antilog(low), high === null ? null : antilog(high)],
    };
  };
  const share = (one: Share) => figure(atQuantile(quantileOf(fit.law, SHARES[one])), input.units);
  const shares = { b1: share('b1'), b5: share('b5'), b10: share('b10') };
  const { logLikelihood } = fit;
  const rest = {
    ...shares,
    ...{ b50: share('b50'), b90: share('b90') },
    logLikelihood,
    aic: 2 * parameters - 2 * logLikelihood,
  };
  if (name === 'exponential') return { mean: figure(atQuantile(0), input.units), ...rest };
  if (name === 'weibull') {
    return {
      shape: figure({ kind: 'spread', sign: -1 }, '1'),
      scale: figure(atQuantile(0), input.units),
      mean: figure(weibullMean, input.units),
      ...rest,
    };
  }
  const sigma = figure({ kind: 'spread', sign: 1 }, '1');
  return {
    mu: muOf(fit, data, prior, z),
    sigma,
    mean: figure(lognormalMean, input.units),
    ...rest,
  };
}

/** What is beyond all numbers is no limit. */
function antilog(ln: number): number | null {
  const value = Math.exp(ln);
  return Number.isFinite(value) ? value : null;
}

/** μ is the log of the median already: its limits are those of that log. */
function muOf(fit: Fit, data: LifeData, prior: Prior | null, z: number): LifeFigure {
  const [value, standardError] = lnFigure(fit, atQuantile(0));
  const [low, high] = likelihoodLimits(fit, data, prior, atQuantile(0), z);
  const delta: [number, number] = [value - z * standardError, value + z * standardError];
  return { value, unit: '1', standardError, delta, likelihood: [low, high] };
}

/** A limit there is none of is named, as every null is. */
function openEnds(figures: Figures) {
  return Object.entries(figures).flatMap(([output, figure]) => {
    if (figure === null || figure === undefined || typeof figure === 'number') return [];
    return (['standardError', 'delta', 'likelihood'] as const).flatMap((part) => {
      const found = figure[part];
      if (found === null) {
        return [{ output: `${output}/${part}`, needs: ['a prior that leaves it open'] }];
      }
      if (typeof found === 'number') return [];
      return found.flatMap((end, at) =>
        end === null
          ? [{ output: `${output}/${part}/${at}`, needs: ['records: more failures'] }]
          : [],
      );
    });
  });
}

function tableOf(records: readonly LifeRecord[], unit: string, z: number): LifeOutput['table'] {
  const ratio = (value: number) => ({ value, unit: '1' as const });
  const rows = isExact(records) ? kaplanMeier(records, z) : turnbull(records);
  return rows.map(({ t, survival, counted }) => {
    const row = { t: { value: t, unit }, survival: ratio(survival) };
    if (counted === undefined) return row;
    const { atRisk, failed, standardError, limits: ends } = counted;
    return {
      ...row,
      atRisk,
      failed,
      standardError: standardError === null ? null : ratio(standardError),
      lower: ends === null ? null : ratio(ends[0]),
      upper: ends === null ? null : ratio(ends[1]),
    };
  });
}
