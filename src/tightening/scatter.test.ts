// Scatter of one joint: against sums on a grid, the seed that fixes it, and the spread of a wrench.

import { describe, expect, test } from 'vitest';
import { limits } from '../limits.ts';
import { chance, meanAndSd, quantile } from '../quantity/chance.ts';
import { type ScatterCase, scatter } from './scatter.ts';
import { torquePerForceMm } from './torque.ts';

const parts = { pitchMm: 1.5, pitchDiameterMm: 9.026, bearingDiameterMm: 12.8 };
const one: ScatterCase = {
  torqueNm: 48,
  toolScatter: 0.06,
  frictionLow: 0.08,
  frictionHigh: 0.16,
  parts,
  stressAreaMm2: 57.99,
  yieldMPa: 640,
  loadKN: 8,
  loadShare: 0.25,
  embeddingLossKN: 3,
};
const SEED = 20261125;
const DRAWS = process.env.LONG ? 1_000_000 : 100_000;

describe(`seed ${SEED}, ${DRAWS} draws`, () => {
  const drawn = scatter(one, DRAWS, SEED);

  test('mean and spread of preload agree with sums on a grid of the two frictions', () => {
    const steps = 200;
    const inverse: number[] = [];
    for (let i = 0; i < steps; i += 1) {
      for (let j = 0; j < steps; j += 1) {
        const at = (k: number) => 0.08 + (0.08 * (k + 0.5)) / steps;
        inverse.push(1 / torquePerForceMm(parts, at(i), at(j)));
      }
    }
    const { mean } = meanAndSd(inverse);
    const square = inverse.reduce((sum, value) => sum + value ** 2, 0) / inverse.length;
    // The wrench is even over ± 6 %: its variance is a third of the half width squared.
    const variance = 48 ** 2 * (square * (1 + 0.06 ** 2 / 3) - mean ** 2);
    const sd = Math.sqrt(variance);
    expect(Math.abs(drawn.preloadKN.mean - 48 * mean)).toBeLessThan((5 * sd) / Math.sqrt(DRAWS));
    expect(Math.abs(drawn.preloadKN.sd / sd - 1)).toBeLessThan(5 / Math.sqrt(2 * DRAWS));
  });

  test('the band lies inside the bounds of the worst case', () => {
    const least = (48 * 0.94) / torquePerForceMm(parts, 0.16, 0.16);
    expect(drawn.residualClampBottomKN).toBeGreaterThan(least - 0.75 * 8 - 3);
    expect(drawn.residualClampBottomKN).toBeLessThan(drawn.preloadKN.mean - 9);
    expect(drawn.yieldShareTop).toBeGreaterThan(1);
    expect(drawn.overYield).toBeGreaterThan(0.025);
    expect(drawn.opens).toBe(0);
  });

  test('the same seed gives the same figures, another does not', () => {
    expect(scatter(one, 1_000, 7)).toEqual(scatter(one, 1_000, 7));
    expect(scatter(one, 1_000, 7)).not.toEqual(scatter(one, 1_000, 8));
  });
});

test('no scatter, no spread', () => {
  const still = scatter({ ...one, toolScatter: 0, frictionHigh: 0.08 }, 100, SEED);
  expect(still.preloadKN.sd).toBeCloseTo(0, 9);
  expect(still.preloadKN.mean).toBeCloseTo(48 / torquePerForceMm(parts, 0.08, 0.08), 9);
});

test('a rank is what sorting gives, with many alike and with all alike', () => {
  const next = chance(SEED);
  for (let round = 0; round < 50; round += 1) {
    const values = Float64Array.from({ length: 1 + round * 3 }, () => Math.floor(next() * 20));
    const sorted = [...values].sort((a, b) => a - b);
    for (const share of [0, 0.025, 0.5, 0.975, 1]) {
      const exact = share * (values.length - 1);
      const [low, high] = [sorted[Math.floor(exact)], sorted[Math.ceil(exact)]];
      const wanted = (low ?? 0) + (exact - Math.floor(exact)) * ((high ?? 0) - (low ?? 0));
      expect(quantile(Float64Array.from(values), share)).toBeCloseTo(wanted, 12);
    }
  }
});

test('the stream of chance is even: 100,000 draws in ten parts, chi squared', () => {
  const next = chance(SEED);
  const parts10 = new Array<number>(10).fill(0);
  for (let at = 0; at < 100_000; at += 1) {
    const part = Math.floor(next() * 10);
    parts10[part] = (parts10[part] ?? 0) + 1;
  }
  const chi = parts10.reduce((sum, count) => sum + (count - 10_000) ** 2 / 10_000, 0);
  // Nine degrees of freedom: 27.9 is passed once in a thousand.
  expect(chi).toBeLessThan(27.9);
});

test('the number of draws is bounded', () => {
  for (const draws of [0, 1, 1.5, limits.tightening.draws + 1]) {
    expect(() => scatter(one, draws, SEED)).toThrow(RangeError);
  }
});
