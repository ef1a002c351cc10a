// Checks the slackening order: far side first whichever way one stands, every nut on till broken.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layoutPoints, type Point } from './pattern.ts';
import { slackening } from './pattern-slacken.ts';

const ring = (n: number): readonly Point[] => layoutPoints('ring', n) ?? [];
const below: Point = [0, 1];

describe('far side first', () => {
  test('a ring of eight worked on from below: the top bolt first, the lowest last', () => {
    const found = slackening(8, ring(8), below);
    expect(found.ease[0]).toBe(1);
    expect(found.ease.slice(1, 3).sort()).toEqual([2, 8]);
    expect(found.ease[7]).toBe(5);
    expect([...found.farSide].sort()).toEqual([1, 2, 8]);
    expect(found.asks).toEqual([]);
  });

  test('two rows worked on from above: the lower row first', () => {
    const points = layoutPoints({ kind: 'rows', rows: 2, columns: 3 }, 6);
    const { ease, farSide } = slackening(6, points, [0, -5]);
    expect([...ease.slice(0, 3)].sort()).toEqual([4, 5, 6]);
    expect([...farSide].sort()).toEqual([4, 5, 6]);
    // The outer ones before the middle one.
    expect(ease[2]).toBe(5);
  });

  test('every bolt once, none before one clearly farther, from any side, seed 41_004', () => {
    const point = fc.tuple(
      fc.integer({ min: -300, max: 300 }),
      fc.integer({ min: -300, max: 300 }),
    );
    const places = fc.uniqueArray(point, { minLength: 2, maxLength: 24, selector: String });
    const angle = fc.double({ min: 0, max: 6.28, noNaN: true });
    fc.assert(
      fc.property(places, angle, (points, from) => {
        const stands: Point = [Math.cos(from), Math.sin(from)];
        const { ease, takeOff } = slackening(points.length, points, stands);
        const numbers = points.map((_, i) => i + 1);
        expect([...ease].sort((a, b) => a - b)).toEqual(numbers);
        expect([...takeOff].sort((a, b) => a - b)).toEqual(numbers);
        const reach = ease.map((bolt) => {
          const [x, y] = points[bolt - 1] ?? [0, 0];
          return x * stands[0] + y * stands[1];
        });
        const span = Math.max(...reach) - Math.min(...reach);
        reach.slice(1).forEach((one, i) => {
          expect(one).toBeGreaterThanOrEqual((reach[i] ?? 0) - 0.011 * span - 1e-9);
        });
      }),
      { numRuns: 300, seed: 41_004 },
    );
  });
});

describe('what is not known is asked', () => {
  test('where one stands: nobody is told that a side is far', () => {
    const found = slackening(8, ring(8), null);
    expect(found.farSide).toEqual([]);
    expect(found.asks).toEqual([expect.stringContaining('the far side opens first')]);
    expect(found.nutsOnWhenBroken).toBe(true);
  });

  test('where the bolts lie: in the order of their numbers', () => {
    const found = slackening(3, null, below);
    expect(found.ease).toEqual([1, 2, 3]);
    expect(found.asks).toEqual(['where the bolts lie']);
    expect(slackening(1, [[0, 0]], below).ease).toEqual([1]);
  });
});
