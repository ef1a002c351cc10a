// `decide` by printed examples of JCGM 106 and of calibration risk tables, and by laws.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chance, normals } from '../quantity/chance.ts';
import { chances } from '../quantity/conformity.ts';
import { normalAbove, normalBelow } from '../quantity/distribution.ts';
import { recheckWorking } from '../quantity/expression.ts';
import type { Working } from '../quantity/types.ts';
import { decide } from './decide.ts';
import { decideInput } from './decide-model.ts';

const SEED = 20261125;
const options = { seed: SEED, numRuns: process.env.LONG ? 5_000 : 500 };

function solved(raw: unknown) {
  const answer = decide(decideInput.parse(raw));
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer.result;
}
const paths = (raw: unknown) => {
  const answer = decide(decideInput.parse(raw));
  return answer.ok ? [] : answer.problems.map(({ path }) => path);
};

describe('JCGM 106:2012, examples (figures from memory)', () => {
  test.each([
    ['7.3.3 Example 1', { measured: -5.47, u: 0.05, upper: -5.4 }, 0.92, 2],
    ['7.3.3 Example 2', { measured: 509.7, u: 8.6, lower: 490 }, 0.99, 2],
    ['7.4', { measured: 13.6, u: 1.8, lower: 12.5, upper: 16.3 }, 0.66, 2],
  ])('%s', (_, raw, conforming, digits) => {
    expect(solved(raw).probabilityConforming.value).toBeCloseTo(conforming, digits);
  });

  test('guard band for 95 % at one limit: 1.65 u, 0.83 U (ISO 14253-1:2017, from memory)', () => {
    const raw = { measured: 5, u: 0.5, lower: 0, rule: 'guarded-accept', maxRisk: 0.05 };
    const found = solved(raw);
    expect(found.guardFactor?.value).toBeCloseTo(1.65, 1);
    expect(found.guardBand?.value).toBeCloseTo(0.83 * 2 * 0.5, 1);
    expect(found.riskAtLimit?.value).toBeCloseTo(0.05, 12);
  });
});

describe('printed tables that were read', () => {
  test.each([
    [10, 0.01242, 0.00621, 0.00621],
    [10.5, 0.10574, 0.00009, 0.10565],
    [12, 0.99379, 0, 0.99379],
  ])('a specific-risk table: %d in 9 to 11 with 0.4', (measured, risk, below, above) => {
    const found = solved({ measured, u: 0.4, lower: 9, upper: 11 });
    expect(found.probabilityConforming.value).toBeCloseTo(1 - risk, 5);
    expect(found.below.value).toBeCloseTo(below, 5);
    expect(found.above.value).toBeCloseTo(above, 5);
  });

  test('five readings: 3.75 for 1 % where the normal gives 2.33; 4.5 u buy 0.54 %', () => {
    const raw = { measured: 9, u: 1, lower: 0, rule: 'guarded-accept' };
    const few = solved({ ...raw, degreesOfFreedom: 4, maxRisk: 0.01 });
    expect(few.guardFactor?.value).toBeCloseTo(3.75, 2);
    expect(solved({ ...raw, maxRisk: 0.01 }).guardFactor?.value).toBeCloseTo(2.33, 2);
    const bought = solved({ ...raw, degreesOfFreedom: 4, guardFactor: 4.5 });
    expect(bought.riskAtLimit?.value).toBeCloseTo(0.0054, 4);
    const normal = solved({ ...raw, guardFactor: 4.5 });
    expect(normal.riskAtLimit?.value).toBeCloseTo(3.4e-6, 7);
  });

  // NCSLI RP-19 (draft): the true value normal, the test's spread a quarter of its.
  test.each([
    [0.7, 3.92234109, 5.72322042],
    [0.8, 2.85583037, 3.63227145],
    [0.9, 1.59995312, 1.7988043],
    [0.95, 0.87100925, 0.92389664],
  ])('false accepts in the long run, %d in tolerance', (share, wrong, ofAccepted) => {
    let [low, high] = [0.1, 10];
    for (let halve = 0; halve < 100; halve += 1) {
      const sigma = (low + high) / 2;
      if (1 - 2 * normalAbove(1 / sigma) > share) low = sigma;
      else high = sigma;
    }
    const sigma = low;
    const u = sigma / 4;
    const steps = 20_000;
    let [accepted, falsely] = [0, 0];
    for (let at = 0; at <= steps; at += 1) {
      const value = sigma * (-8 + (16 * at) / steps);
      const weight = Math.exp(-0.5 * (value / sigma) ** 2) * (at % 2 === 1 ? 4 : 2);
      // Seen from the value: the chance that its reading is inside.
      const belief = { kind: 'normal', measured: value, u, degreesOfFreedom: null } as const;
      const inside = chances(belief, { lower: -1, upper: 1 }).conforming;
      accepted += weight * inside;
      if (Math.abs(value) > 1) falsely += weight * inside;
    }
    const scale = 16 / (3 * steps * Math.sqrt(2 * Math.PI));
    expect(100 * falsely * scale).toBeCloseTo(wrong, 2);
    expect((100 * falsely) / accepted).toBeCloseTo(ofAccepted, 2);
  });
});

describe('verdicts', () => {
  const limits = { lower: 2.2, u: 0.05, maxRisk: 0.05 };
  test.each([
    ['simple', 2.21, 'pass'],
    ['simple', 2.19, 'fail'],
    ['guarded-accept', 2.29, 'pass'],
    ['guarded-accept', 2.27, 'cannot tell'],
    ['guarded-accept', 2.19, 'fail'],
    ['guarded-reject', 2.21, 'pass'],
    ['guarded-reject', 2.15, 'cannot tell'],
    ['guarded-reject', 2.1, 'fail'],
  ])('%s: %d is %s', (rule, measured, verdict) => {
    expect(solved({ ...limits, rule, measured }).verdict).toBe(verdict);
  });

  test('limits too close for the instrument: nothing passes, and it is said', () => {
    const raw = { measured: 10, u: 1, lower: 9, upper: 11, rule: 'guarded-accept', maxRisk: 0.05 };
    const found = solved(raw);
    expect(found.verdict).toBe('cannot tell');
    expect(found.cautions.join()).toContain('too close');
  });

  test('what is not said is named, what can not be is refused', () => {
    expect(solved({ measured: 3, u: 1, lower: 2 }).notWorkedOut).toHaveLength(4);
    const open = solved({ measured: 3, u: 1, lower: 2, rule: 'guarded-accept' });
    expect(open.notWorkedOut[0]?.needs).toEqual(['maxRisk or guardFactor']);
    expect(paths({ measured: 3, lower: 2 })).toEqual(['u']);
    expect(paths({ measured: 3, u: 1 })).toEqual(['']);
    expect(paths({ measured: 3, u: -1, lower: 4, upper: 2, maxRisk: 0.6 })).toEqual([
      'u',
      'lower',
      'maxRisk',
    ]);
    expect(paths({ measured: '3 bar', u: '1 mm', lower: 2 })).toEqual(['u']);
    expect(paths({ measured: 3, u: 1, lower: 2, maxRisk: 0.1, guardFactor: 2 })).toEqual([
      'guardFactor',
    ]);
  });

  test('units: one for all, spreads without the offset of a temperature', () => {
    const found = solved({
      ...{ measured: '68 °F', u: '0.5 K', lower: '19 °C', rule: 'guarded-accept', maxRisk: 0.05 },
    });
    expect(found.guardBand).toMatchObject({ unit: '[degF]' });
    expect(found.guardBand?.value).toBeCloseTo(1.6448536 * 0.9, 6);
    expect(found.below.value).toBeCloseTo(normalAbove(2), 9);
    const carried = { value: 2.3, unit: 'bar', expanded: 0.1, k: 2 };
    expect(solved({ measured: carried, lower: '2200 mbar' }).below.value).toBeCloseTo(
      normalAbove(2),
      9,
    );
  });
});

describe('laws', () => {
  const figure = fc.double({ min: -100, max: 100, noNaN: true });
  const spread = fc.double({ min: 0.01, max: 50, noNaN: true });
  const rules = fc.constantFrom('simple', 'guarded-accept', 'guarded-reject');
  const kinds = fc.constantFrom(
    {},
    { distribution: 'rectangular' },
    { degreesOfFreedom: 3 },
    { degreesOfFreedom: 80 },
  );

  test('chances add up, workings come out, a pass keeps its promise', () => {
    fc.assert(
      fc.property(
        figure,
        spread,
        figure,
        spread,
        rules,
        kinds,
        (measured, u, lower, wide, rule, k) => {
          const raw = { measured, u, lower, upper: lower + wide, rule, maxRisk: 0.05, ...k };
          const found = solved(raw);
          const sum = found.below.value + found.above.value + found.probabilityConforming.value;
          expect(sum).toBeCloseTo(1, 9);
          expect(recheckWorking(found.working as Working, 1e-8)).toEqual([]);
          if (rule === 'guarded-accept' && found.verdict === 'pass') {
            expect(found.probabilityConforming.value).toBeGreaterThanOrEqual(0.95 - 1e-9);
          }
          if (rule === 'guarded-reject' && found.verdict === 'fail') {
            expect(found.probabilityConforming.value).toBeLessThanOrEqual(0.05 + 1e-9);
          }
        },
      ),
      options,
    );
  });

  test(`a bad part passes at most as often as promised (seed ${SEED})`, () => {
    const tests = process.env.LONG ? 200_000 : 20_000;
    const normal = normals(chance(SEED));
    // At the limit itself, the worst place for a part that just fails.
    let passed = 0;
    for (let at = 0; at < tests; at += 1) {
      const measured = 2.2 + 0.05 * normal();
      const raw = { measured, u: 0.05, lower: 2.2, rule: 'guarded-accept', maxRisk: 0.05 } as const;
      const answer = decide({ ...raw, distribution: 'normal' });
      if (answer.ok && answer.result.verdict === 'pass') passed += 1;
    }
    const chanceSpread = Math.sqrt((0.05 * 0.95) / tests);
    expect(passed / tests).toBeLessThan(0.05 + 3 * chanceSpread);
    expect(passed / tests).toBeGreaterThan(0.05 - 3 * chanceSpread);
    expect(normalBelow(-1.6448536269514722)).toBeCloseTo(0.05, 12);
  });
});
