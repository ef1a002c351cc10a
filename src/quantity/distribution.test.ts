// Normal and Student's t by printed tables, by values of another library, and by laws.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { normalAbove, normalBelow, normalFor, studentAbove, studentFor } from './distribution.ts';
import { evaluate } from './expression.ts';

const options = { seed: 20261125, numRuns: process.env.LONG ? 5_000 : 300 };

describe('Student, GUM (JCGM 100:2008) Table G.2, from memory', () => {
  // Two-sided 95.45 %, 95 % and 99 % by degrees of freedom.
  test.each([
    [1, 12.71, 63.66, 13.97],
    [2, 4.3, 9.92, 4.53],
    [4, 2.78, 4.6, 2.87],
    [10, 2.23, 3.17, 2.28],
    [16, 2.12, 2.92, 2.17],
    [50, 2.01, 2.68, 2.05],
  ])('%i degrees', (degrees, at95, at99, at9545) => {
    expect(studentFor(0.025, degrees)).toBeCloseTo(at95, 2);
    expect(studentFor(0.005, degrees)).toBeCloseTo(at99, 2);
    expect(Math.abs(studentFor(0.02275, degrees) - at9545)).toBeLessThan(0.0051);
  });
});

describe('values of another public library (scipy 1.17)', () => {
  test.each([
    [1, 0.15865525393145707],
    [1.75, 0.040059156863817086],
    [4.5, 3.3976731247300535e-6],
    [10, 7.619853024160525e-24],
    [-0.3, 0.6179114221889526],
  ])('normal above %d', (z, wanted) => {
    expect(Math.abs(normalAbove(z) / wanted - 1)).toBeLessThan(1e-12);
  });

  test.each([
    [1e-6, 4.753424308822899],
    [0.025, 1.9599639845400545],
    [0.05, 1.6448536269514729],
    [0.3, 0.5244005127080407],
  ])('normal figure with %d above', (risk, wanted) => {
    expect(Math.abs(normalFor(risk) / wanted - 1)).toBeLessThan(1e-12);
  });

  test.each([
    [0.005, 2, 9.924843200918287],
    [0.005, 4, 4.604094871349993],
    [0.05, 16.75, 1.7411017541680573],
    [0.05, 1000, 1.6463788172854643],
    [0.005, 1e5, 2.5758784699083757],
  ])('Student: %d above with %d degrees', (risk, degrees, wanted) => {
    const within = degrees === 16.75 ? 1e-8 : 1e-10;
    expect(Math.abs(studentFor(risk, degrees) / wanted - 1)).toBeLessThan(within);
  });
});

describe('laws', () => {
  const z = fc.double({ min: -8, max: 8, noNaN: true });
  const degrees = fc.double({ min: 0.5, max: 1e6, noNaN: true });

  test('both sides together are one', () => {
    fc.assert(
      fc.property(z, degrees, (x, nu) => {
        expect(normalAbove(x) + normalBelow(x)).toBeCloseTo(1, 13);
        expect(studentAbove(x, nu) + studentAbove(-x, nu)).toBeCloseTo(1, 11);
      }),
      options,
    );
  });

  test('the figure for a chance has that chance above it', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 0.5, noNaN: true }), degrees, (risk, nu) => {
        expect(studentAbove(studentFor(risk, nu), nu) / risk).toBeCloseTo(1, 9);
        expect(normalAbove(normalFor(risk)) / risk).toBeCloseTo(1, 10);
      }),
      options,
    );
  });

  test('one degree of freedom is the arc tangent, many are the normal', () => {
    fc.assert(
      fc.property(z, (x) => {
        expect(studentAbove(x, 1)).toBeCloseTo(0.5 - Math.atan(x) / Math.PI, 12);
        expect(studentAbove(x, 1e10)).toBe(normalAbove(x));
      }),
      options,
    );
  });

  test('a working may use both', () => {
    expect(evaluate('Φ(1.96)')).toBeCloseTo(0.9750021, 6);
    expect(evaluate('Φt(-4.5,4)')).toBeCloseTo(0.0054113, 6);
    expect(() => evaluate('Φ(1,2)')).toThrow();
  });
});
