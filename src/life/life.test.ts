// Parameters, errors, limits and tables of lives, against the figures that R works out.

import { describe, expect, test } from 'vitest';
import { recheckWorking } from '../quantity/expression.ts';
import { lifeOf } from './life.ts';
import { type LawName, type LifeOutput, lifeInput } from './life-model.ts';
import lives from './tables/lives.published.json' with { type: 'json' };

function life(raw: unknown): LifeOutput {
  const answer = lifeOf(lifeInput.parse(raw));
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  expect(recheckWorking(answer.result.working)).toEqual([]);
  return answer.result;
}

type Set = (typeof lives.sets)[number];

const of = ({ records, units }: Set, distribution: LawName) =>
  life({ records, units, distribution });

const near = (got: number | null | undefined, want: number, relative: number) =>
  expect(Math.abs((got ?? Number.NaN) / want - 1)).toBeLessThan(relative);

const ends = (
  got: readonly (number | null)[] | null | undefined,
  want: readonly (number | string)[],
  relative: number,
) => {
  [0, 1].forEach((at) => {
    near(got?.[at], Number(want[at]), relative);
  });
};

const NAMES: Readonly<Record<string, 'b1' | 'b5' | 'b10' | 'b50' | 'b90'>> = {
  0.01: 'b1',
  0.05: 'b5',
  0.1: 'b10',
  0.5: 'b50',
  0.9: 'b90',
};

type Quantiles = readonly {
  readonly p: number;
  readonly t: number;
  readonly se: number;
  readonly wald_log: readonly number[];
  readonly lr: readonly number[];
}[];

function compareQuantiles(found: LifeOutput, quantiles: Quantiles) {
  expect(quantiles).toHaveLength(5);
  for (const { p, t, se, wald_log, lr } of quantiles) {
    const figure = found[NAMES[p] ?? 'b1'];
    near(figure?.value, t, 1e-9);
    near(figure?.standardError, se, 1e-9);
    ends(figure?.delta, wald_log, 1e-9);
    ends(figure?.likelihood, lr, 1e-7);
  }
}

// Printed to far more digits than the five that are promised.
describe('parameters, errors and both kinds of limits, R 4.2.2 with survival 3.5-3', () => {
  const withFits = lives.sets.filter((one) => 'weibull' in one);

  test.each(withFits.map((one) => [one.id, one] as const))('weibull, %s', (_, set) => {
    const found = of(set, 'weibull');
    const want = set.weibull;
    near(found.shape?.value, want.beta, 1e-9);
    near(found.shape?.standardError, want.se_beta, 1e-9);
    ends(found.shape?.delta, want.beta_wald_log, 1e-9);
    ends(found.shape?.likelihood, want.beta_lr, 1e-7);
    near(found.scale?.value, want.eta, 1e-9);
    near(found.scale?.standardError, want.se_eta, 1e-9);
    ends(found.scale?.delta, want.eta_wald_log, 1e-9);
    ends(found.scale?.likelihood, want.eta_lr, 1e-7);
    near(found.mean?.value, want.mean_life, 1e-9);
    near((found.mean?.standardError ?? 0) / want.mean_life, want.se_log_mean, 1e-9);
    ends(found.mean?.delta, want.mean_wald_log, 1e-9);
    near(found.logLikelihood, want.loglik, 1e-11);
    near(found.aic, want.AIC, 1e-11);
    compareQuantiles(found, want.quantiles);
  });

  test.each(withFits.map((one) => [one.id, one] as const))('lognormal, %s', (_, set) => {
    const found = of(set, 'lognormal');
    const want = set.lognormal;
    near(found.mu?.value, want.mu, 1e-9);
    near(found.mu?.standardError, want.se_mu, 1e-9);
    ends(found.mu?.likelihood, want.lr_mu, 1e-7);
    near(found.sigma?.value, want.sigma, 1e-9);
    near(found.sigma?.standardError, want.se_sigma, 1e-9);
    ends(found.sigma?.likelihood, want.sigma_lr, 1e-7);
    near(found.logLikelihood, want.loglik, 1e-11);
    compareQuantiles(found, want.quantiles);
  });

  const counted = lives.sets.filter((one) => one.exponential !== undefined);
  test.each(counted.map((one) => [one.id, one] as const))('exponential, %s', (_, set) => {
    const found = of(set, 'exponential');
    near(found.mean?.value, set.exponential?.theta ?? 0, 1e-11);
    near(found.logLikelihood, set.exponential?.loglik ?? 0, 1e-11);
    near(found.mean?.standardError, (found.mean?.value ?? 0) / Math.sqrt(found.failures), 1e-9);
    expect(found.shape).toBeUndefined();
  });

  test.each(
    lives.sets.flatMap((one) => (one.kaplan_meier ? [[one.id, one.kaplan_meier, one]] : [])),
  )('Kaplan-Meier with log-log limits, %s', (_, want, set) => {
    if (typeof want === 'string' || typeof set !== 'object' || !('records' in set)) throw set;
    if (!('at_risk' in want)) throw want;
    const { table, tableBy } = life({ records: set.records, units: set.units });
    expect(tableBy).toBe('Kaplan-Meier');
    expect(table.map(({ t }) => t.value)).toEqual(want.time);
    expect(table.map(({ atRisk }) => atRisk)).toEqual(want.at_risk);
    expect(table.map(({ failed }) => failed)).toEqual(want.events);
    table.forEach((row, at) => {
      expect(row.survival.value).toBeCloseTo(want.S[at] ?? 0, 12);
      if (row.survival.value === 0) {
        expect(row).toMatchObject({ standardError: null, lower: null, upper: null });
        return;
      }
      expect(row.standardError?.value).toBeCloseTo(Number(want.greenwood_se_S[at]), 12);
      expect(row.lower?.value).toBeCloseTo(Number(want.ci_loglog.lo[at]), 12);
      expect(row.upper?.value).toBeCloseTo(Number(want.ci_loglog.hi[at]), 12);
    });
  });
});
