// Gamma, incomplete gamma, digamma and chi-squared against printed tables and identities.

import { describe, expect, test } from 'vitest';
import { lnGamma, normalAbove } from './distribution.ts';
import {
  chiSquaredAbove,
  chiSquaredBelow,
  chiSquaredFor,
  digamma,
  gamma,
  gammaAbove,
  gammaBelow,
  lnNormalAbove,
  trigamma,
} from './special.ts';

const near = (got: number, want: number, relative: number) =>
  expect(Math.abs(got / want - 1)).toBeLessThan(relative);

describe('special functions', () => {
  test('chi-squared quantiles as tables print them (from memory), one as R prints it', () => {
    // Upper 0.05 and lower 0.05 of 1, 2, 10 and 100 degrees; printed to three places.
    for (const [degrees, upper, lower] of [
      [1, 3.841, 0.004],
      [2, 5.991, 0.103],
      [10, 18.307, 3.94],
      [100, 124.342, 77.929],
    ] as const) {
      expect(chiSquaredFor(0.95, degrees)).toBeCloseTo(upper, 3);
      expect(chiSquaredFor(0.05, degrees)).toBeCloseTo(lower, 3);
    }
    // As printed to ten digits beside the reference lives (R, qchisq).
    near(chiSquaredFor(0.95, 1), 3.841458821, 1e-9);
  });

  test('closed forms: Γ(1/2), ψ(1), ψ′(1), P(1, x), two degrees', () => {
    near(gamma(0.5), Math.sqrt(Math.PI), 1e-14);
    near(gamma(7), 720, 1e-13);
    near(digamma(1), -0.5772156649015329, 1e-13);
    near(trigamma(1), Math.PI ** 2 / 6, 1e-13);
    near(digamma(0.5), -0.5772156649015329 - 2 * Math.LN2, 1e-13);
    for (const x of [0.001, 0.3, 1, 4, 30]) {
      near(gammaBelow(1, x), -Math.expm1(-x), 1e-13);
      near(gammaAbove(1, x), Math.exp(-x), 1e-13);
      near(chiSquaredAbove(x, 2), Math.exp(-x / 2), 1e-13);
    }
    near(chiSquaredFor(0.5, 2), 2 * Math.LN2, 1e-13);
  });

  test('both sides add up to one; slopes are slopes; the normal is a chi-squared', () => {
    for (const a of [0.2, 0.7, 3, 40, 900]) {
      for (const x of [0.01, 0.5, 3, 40, 900]) {
        expect(gammaBelow(a, x) + gammaAbove(a, x)).toBeCloseTo(1, 12);
      }
      const step = a * 1e-5;
      near(digamma(a), (lnGamma(a + step) - lnGamma(a - step)) / (2 * step), 1e-6);
      near(trigamma(a), (digamma(a + step) - digamma(a - step)) / (2 * step), 1e-6);
    }
    for (const z of [0.5, 2, 6]) near(2 * normalAbove(z), chiSquaredAbove(z * z, 1), 1e-12);
    near(lnNormalAbove(29.999999), lnNormalAbove(30.000001), 1e-6);
    expect(lnNormalAbove(60)).toBeCloseTo(-1805.0135607, 6);
    for (const degrees of [1, 5, 60]) {
      for (const p of [0.001, 0.3, 0.999]) {
        near(chiSquaredBelow(chiSquaredFor(p, degrees), degrees), p, 1e-11);
      }
    }
  });
});
