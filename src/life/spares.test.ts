// Spares against Poisson rows, renewal counts, a count by chance, brute force and laws.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { runCalc } from '../calc/register.ts';
import { chance } from '../quantity/chance.ts';
import { recheckWorking } from '../quantity/expression.ts';
import { renewalsBy } from './demand.ts';
import { sparesOf } from './spares.ts';
import { sparesInput } from './spares-model.ts';
import published from './tables/spares.published.json' with { type: 'json' };

const SEED = 20261125;
const options = { seed: SEED, numRuns: process.env.LONG ? 1_000 : 100 };
const lent = { solver: () => Promise.reject(new Error('no solver is needed here')) };

function spares(raw: unknown) {
  const { result } = sparesOf(sparesInput.parse(raw));
  expect(recheckWorking(result.working)).toEqual([]);
  expect(JSON.stringify(result)).not.toMatch(/NaN|Infinity/);
  return result;
}

const { poisson, weibull } = published;

test('there are 105 Poisson rows', () => expect(poisson.table).toHaveLength(105));

test.each(poisson.table.map((row) => [row.mean, row.level, row] as const))(
  'Poisson, mean %f at %f: R qpois and ppois, checked against the gamma identity',
  (mean, serviceLevel, row) => {
    const found = spares({ fitted: 1, rate: mean / 100, hours: 100, serviceLevel });
    expect(found.stock).toBe(row.spares);
    expect(found.achieved.value).toBeCloseTo(row.prob, 12);
    expect(found.expectedDemand.value).toBeCloseTo(mean, 10);
    const relative = found.expectedShort.value / row.expected_backorders;
    // The reference takes a difference, which loses digits where it is small.
    if (row.expected_backorders > 1e-6) expect(relative).toBeCloseTo(1, 6);
    const below = found.table.find(({ stock }) => stock === row.spares - 1);
    if (row.spares > 0) expect(below?.probability.value).toBeCloseTo(row.prob_one_less, 12);
  },
);

test.each(poisson.published_example.rows.map((row) => [row.mtbf_h, row] as const))(
  '45 places for 90 days, %d h between failures; the printed normal rule holds one too many once',
  (mtbf, row) => {
    const found = spares({ fitted: 45, rate: 1 / mtbf, hours: '90 d', serviceLevel: 0.95 });
    expect(found.stock).toBe(row.poisson_spares_95);
    expect(found.achieved.value).toBeCloseTo(row.prob, 12);
    const off = row.published_normal_approximation - found.stock;
    expect(off).toBe(mtbf === 300_000 ? 1 : 0);
  },
);

describe('renewals of a Weibull law', () => {
  test.each(weibull.rows.map((row) => [row.beta, row.eta, row.T, row] as const))(
    'shape %f, scale %f, %f h: within the bracket of the reference',
    (shape, scale, hours, row) => {
      const found = spares({ fitted: 1, shape, scale, hours, serviceLevel: 0.95 });
      expect(found.stock).toBe(row.spares95);
      const serves = found.table.find(({ probability }) => probability.value >= 0.9);
      expect(serves?.stock).toBe(row.spares90);
      const exact = row.exact_poisson ?? row.P_Nle;
      const within = row.exact_poisson ? 1e-8 : Math.min(row.bracket_halfwidth, 1e-7);
      exact.forEach((want, at) => {
        const got = found.table.find(({ stock }) => stock === at)?.probability.value ?? 0;
        expect(Math.abs(got - want)).toBeLessThan(within);
      });
      // The reference adds up twelve renewals only.
      expect(found.expectedDemand.value).toBeCloseTo(row.renewals_expected, 4);
    },
  );

  test('a count by chance of 40,000 histories of three places, printed seed', () => {
    const next = chance(SEED);
    const [shape, scale, hours, fitted] = [1.7, 3_000, 8_000, 3];
    const runs = process.env.LONG ? 400_000 : 40_000;
    const counts = new Map<number, number>();
    for (let run = 0; run < runs; run += 1) {
      let count = 0;
      for (let place = 0; place < fitted; place += 1) {
        for (let at = 0; ; count += 1) {
          at += scale * (-Math.log(1 - next())) ** (1 / shape);
          if (at > hours) break;
        }
      }
      counts.set(count, (counts.get(count) ?? 0) + 1);
    }
    const found = spares({ fitted, shape, scale, hours, serviceLevel: 0.95 });
    let sum = 0;
    for (const { stock, probability } of found.table) {
      sum += (counts.get(stock) ?? 0) / runs;
      const spread = Math.sqrt((probability.value * (1 - probability.value)) / runs);
      expect(Math.abs(sum - probability.value)).toBeLessThan(4.5 * spread + 1e-6);
    }
  });

  test('shape 1 is the Poisson law, for one place and for many', () => {
    for (const fitted of [1, 300]) {
      const rest = { fitted, hours: 2_000, serviceLevel: 0.99 };
      const a = spares({ ...rest, rate: 1 / 5_000 });
      const b = spares({ ...rest, shape: 1, scale: 5_000 });
      expect(b.stock).toBe(a.stock);
      expect(b.achieved.value).toBeCloseTo(a.achieved.value, 7);
      expect(b.expectedShort.value).toBeCloseTo(a.expectedShort.value, 7);
    }
  });

  test('the first renewal is the law of lives itself; each next is less likely', () => {
    for (const shape of [0.4, 1, 2.5, 8]) {
      const by = renewalsBy({ shape, scale: 1_000 }, 4_000);
      expect(by[0]).toBeCloseTo(-Math.expm1(-(4 ** shape)), 12);
      by.slice(1).forEach((one, at) => {
        expect(one).toBeLessThanOrEqual((by[at] ?? 0) + 1e-12);
      });
    }
  });
});

test(`brute force over all stocks: no lesser one serves, seed ${SEED}`, () => {
  const level = fc.double({ min: 0.5, max: 0.999, noNaN: true });
  const mean = fc.double({ min: 0, max: 30, noNaN: true });
  fc.assert(
    fc.property(mean, level, (m, serviceLevel) => {
      const found = spares({ fitted: 1, rate: m, hours: 1, serviceLevel });
      let [term, sum, stock] = [Math.exp(-m), Math.exp(-m), 0];
      while (sum < serviceLevel) {
        stock += 1;
        term *= m / stock;
        sum += term;
      }
      expect(found.stock).toBe(stock);
      expect(found.achieved.value).toBeCloseTo(sum, 10);
    }),
    options,
  );
});

describe('as it is called', () => {
  test.each([
    ['nothing of failures', { fitted: 1, hours: 5, serviceLevel: 0.9 }, ['rate']],
    ['a shape alone', { fitted: 1, shape: 2, hours: 5, serviceLevel: 0.9 }, ['scale']],
    [
      'both laws',
      { fitted: 1, rate: 1, shape: 2, scale: 9, hours: 5, serviceLevel: 0.9 },
      ['rate'],
    ],
    ['too many lives', { fitted: 1, shape: 2, scale: 1, hours: 5e3, serviceLevel: 0.9 }, ['hours']],
    [
      'all wrong',
      { fitted: 0.5, rate: -1, hours: 0, serviceLevel: 1 },
      ['fitted', 'hours', 'rate', 'serviceLevel'],
    ],
  ])('bad input: %s', async (_, raw, paths) => {
    const answer = await runCalc('spares', raw, lent);
    if (answer.ok) throw new Error('it was taken');
    expect(answer.error.error.problems.map(({ path }) => path).sort()).toEqual(paths);
  });

  test('the uncertainty of the rate is carried, the stock held', () => {
    const rate = { value: 1e-4, unit: '1/h', u: 2e-5 };
    const found = spares({ fitted: 2, rate, hours: 5_000, serviceLevel: 0.95 });
    expect(found.expectedDemand.u).toBeCloseTo(0.2, 9);
    expect(found.achieved.u).toBeGreaterThan(0);
  });

  test('first worked case of its document', () => {
    const found = spares({ fitted: 4, rate: '0.0001/h', hours: 5_000, serviceLevel: 0.95 });
    // e^−2 (1 + 2 + 2 + 4/3 + 2/3 + 4/15) = 0.98344.
    expect(found.stock).toBe(5);
    expect(found.achieved.value).toBeCloseTo(0.98344, 5);
    // 2 − 5 + e^−2 (5 + 8 + 6 + 8/3 + 2/3) = 0.02249.
    expect(found.expectedShort.value).toBeCloseTo(0.02249, 5);
  });

  test('second worked case of its document', () => {
    const found = spares({
      fitted: 1,
      shape: 2,
      scale: 4_000,
      hours: 6_000,
      serviceLevel: 0.95,
    });
    expect(found.stock).toBe(3);
    expect(found.achieved.value).toBeCloseTo(0.99434, 5);
    expect(found.table[0]?.probability.value).toBeCloseTo(Math.exp(-2.25), 12);
    expect(found.table[2]?.probability.value).toBeCloseTo(0.9369, 4);
  });
});
