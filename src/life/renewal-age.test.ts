// Renewal by age against a table of 72 rows, printed answers, a search of its own, and laws.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { runCalc } from '../calc/register.ts';
import { recheckWorking } from '../quantity/expression.ts';
import { ageCostRate, bestAge, costRateOf, renewalOf, toFailureRate } from './renewal-age.ts';
import { renewalInput } from './renewal-model.ts';
import table from './tables/renewal.published.json' with { type: 'json' };

const SEED = 20261125;
const options = { seed: SEED, numRuns: process.env.LONG ? 2_000 : 200 };
const lent = { solver: () => Promise.reject(new Error('no solver is needed here')) };

function renewal(raw: unknown) {
  const { result } = renewalOf(renewalInput.parse(raw));
  expect(recheckWorking(result.working, 1e-8)).toEqual([]);
  expect(JSON.stringify(result)).not.toMatch(/NaN|Infinity/);
  return result;
}

const near = (got: number | undefined, want: number, relative: number) =>
  expect(Math.abs((got ?? Number.NaN) / want - 1)).toBeLessThan(relative);

test('there are 72 rows', () => expect(table.table).toHaveLength(72));

test.each(table.table.map((row) => [row.beta, row.cost_ratio_cf_cp, row] as const))(
  'shape %f, cost ratio %f: the table by first-order condition and direct search',
  (shape, ratio, row) => {
    const found = renewal({ shape, scale: 1, costPlanned: 1, costFailure: ratio });
    near(found.costRateToFailure?.value, row.run_to_failure_rate_times_eta_over_cp, 1e-9);
    near(found.costRate.value, row.cost_rate_times_eta_over_cp, 1e-6);
    expect(Math.abs((found.saving?.value ?? 0) - row.saving_fraction)).toBeLessThan(1e-6);
    const age = bestAge({ shape, scale: 1, planned: 1, failure: ratio });
    near(age ?? 0, row.t_over_eta, 1e-6);
    const renews = row.saving_fraction >= 1e-6;
    expect(found.decision).toBe(renews ? 'renew at age' : 'run to failure');
    if (renews) near(found.age?.value, row.t_over_eta, 1e-6);
    else expect(found).toMatchObject({ age: null, failureChance: { value: 1 } });
  },
);

test.each(table.special.map((row) => [row.id, row] as const))('%s', (_, row) => {
  const found = renewal({
    shape: row.beta,
    scale: row.eta,
    costPlanned: row.cp,
    costFailure: row.cf,
  });
  near(found.costRate.value, row.exact.cost, 1e-9);
  if (row.exact.t === null) expect(found.decision).toBe('run to failure');
  else near(found.age?.value, row.exact.t, 1e-6);
  if (row.published === undefined) return;
  // The printed age is the best of a grid of 0.3 h.
  expect(Math.abs((found.age?.value ?? 0) - row.published.t)).toBeLessThan(0.3);
  near(found.costRate.value, row.published.cost, 1e-6);
});

test.each(table.minimal_repair.map((row) => [row.beta, row] as const))(
  'overhaul with repairs between, shape %f',
  (shape, row) => {
    const found = renewal({
      shape,
      scale: row.eta,
      costPlanned: row.c_overhaul,
      costFailure: row.c_minimal_repair,
      policy: 'minimal-repair',
    });
    near(found.age?.value, row.T, 1e-9);
    near(found.costRate.value, row.cost, 1e-9);
    expect(found).toMatchObject({ costRateToFailure: null, saving: null });
    if (row.published) near(found.age?.value, row.published.T, 1e-9);
  },
);

test('Jardine & Tsang ch. 2 problem 2: a uniform law by the same sum, to printed places', () => {
  const span = 40_000;
  const rate = (age: number) =>
    costRateOf({ planned: 100, failure: 200 }, 1 - age / span, age / span, age - age ** 2 / 80_000);
  const { t, cost } = table.uniform.own.C;
  expect(t.map((age) => Number(rate(age).toFixed(4)))).toEqual([0.0143, 0.01, 0.0093, 0.01]);
  t.forEach((age, at) => {
    near(rate(age), cost[at] ?? 0, 1e-12);
  });
  const { continuous_optimum_t, continuous_optimum_cost } = table.uniform.own;
  near(rate(continuous_optimum_t), continuous_optimum_cost, 1e-12);
});

describe(`laws, seed ${SEED}`, () => {
  const shapes = fc.double({ min: 0.3, max: 12, noNaN: true });
  const ratios = fc.double({ min: 0.5, max: 200, noNaN: true });

  test('no age is cheaper; another scale or money changes nothing else', () => {
    fc.assert(
      fc.property(shapes, ratios, (shape, failure) => {
        const law = { shape, scale: 1, planned: 1, failure };
        const found = renewal({ shape, scale: 1, costPlanned: 1, costFailure: failure });
        const best = found.costRate.value;
        expect(best).toBeLessThanOrEqual(toFailureRate(law) * (1 + 1e-12));
        for (let at = 1; at <= 60; at += 1) {
          expect(ageCostRate(law, at / 20)).toBeGreaterThan(best * (1 - 1.1e-6));
        }
        const scaled = { shape, scale: 900, costPlanned: 7, costFailure: 7 * failure };
        const other = renewal(scaled);
        expect(other.decision).toBe(found.decision);
        if (found.age) near(other.age?.value, 900 * found.age.value, 1e-9);
      }),
      options,
    );
  });

  test('the area under survival by 20,000 steps of its own', () => {
    const law = { shape: 2.7, scale: 5_000, planned: 300, failure: 2_000 };
    const age = 3_100;
    let area = 0;
    const steps = 20_000;
    for (let at = 0; at < steps; at += 1) {
      area += (Math.exp(-((((at + 0.5) * age) / steps / 5_000) ** 2.7)) * age) / steps;
    }
    const lives = Math.exp(-((age / 5_000) ** 2.7));
    near(ageCostRate(law, age), (300 * lives + 2_000 * (1 - lives)) / area, 1e-8);
  });
});

test('hours so early are the age itself; a cost beyond all numbers is null', () => {
  const law = { shape: 50, scale: 30_000, costPlanned: 2, costFailure: 9 };
  near(renewal({ ...law, at: [0.001] }).atGiven[0]?.costRate?.value, 2_000, 1e-12);
  const far = renewal({ ...law, scale: 4, policy: 'minimal-repair', at: [6_000_000] });
  // (6,000,000/4)^50 = 10^308.8.
  expect(far.atGiven[0]?.costRate).toBeNull();
  expect(far.notWorkedOut.map(({ output }) => output)).toContain('atGiven/0/costRate');
});

describe('as it is called', () => {
  test('all that is wrong is listed at once', async () => {
    const raw = { shape: 0, scale: '5 kg', costPlanned: -1, policy: 'never', at: [0], speed: 1 };
    const answer = await runCalc('renewal-age', raw, lent);
    if (answer.ok) throw new Error('it was taken');
    expect(answer.error.error.problems.map(({ path }) => path).sort()).toEqual([
      'at/0',
      'costFailure',
      'costPlanned',
      'policy',
      'scale',
      'shape',
      'speed',
    ]);
  });

  test('the uncertainty of the fit is carried into the advice; ages keep what was typed', () => {
    const found = renewal({
      shape: { value: 3, unit: '1', u: 0.4 },
      scale: { value: 8_000, unit: 'h', u: 500 },
      costPlanned: 300,
      costFailure: 1_500,
      at: ['3000 h'],
    });
    expect(found.age?.u).toBeGreaterThan(100);
    expect(found.costRate.u).toBeGreaterThan(0);
    expect(found.atGiven[0]?.age).toMatchObject({ value: 3_000, given: '3000 h' });
  });

  test('first worked case of its document', () => {
    const found = renewal({ shape: 3, scale: 8_000, costPlanned: 300, costFailure: 1_500 });
    expect(found.age?.value).toBeCloseTo(4_020.877, 3);
    expect(found.costRate.value).toBeCloseTo(0.113677, 6);
    expect(found.saving?.value).toBeCloseTo(0.4586, 4);
    expect(found.failureChance.value).toBeCloseTo(0.1192, 4);
  });

  test('second worked case of its document', () => {
    const found = renewal({
      shape: 2,
      scale: 4_000,
      costPlanned: 2_000,
      costFailure: 300,
      policy: 'minimal-repair',
      at: [8_000],
    });
    expect(found.age?.value).toBeCloseTo(10_327.956, 3);
    expect(found.costRate.value).toBeCloseTo(0.387298, 6);
    // (2000 + 300 × 4)/8000.
    expect(found.atGiven[0]?.costRate?.value).toBeCloseTo(0.4, 12);
  });
});
