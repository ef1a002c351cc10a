// Checks the tightening order against the published rows that could be read, and its laws.

import { describe, expect, test } from 'vitest';
import { insideOutOrder, layoutPoints, ringOrder } from './pattern.ts';

// ASME PCC-1 cross-pattern (legacy) sequence table; rows 4, 8 and 16 read in public texts that
// state they match the table. Rows above 16 were only had from memory and are no check here.
const published: Record<number, number[]> = {
  4: [1, 3, 2, 4],
  8: [1, 5, 3, 7, 2, 6, 4, 8],
  16: [1, 9, 5, 13, 3, 11, 7, 15, 2, 10, 6, 14, 4, 12, 8, 16],
};

describe('cross order of a ring', () => {
  for (const [n, sequence] of Object.entries(published)) {
    test(`${n} bolts follow the PCC-1 legacy cross-pattern row as read`, () => {
      expect(ringOrder(Number(n))).toEqual(sequence);
    });
  }

  test('every count from 1 to 64 is a permutation; even counts go to the opposite bolt', () => {
    for (let n = 1; n <= 64; n += 1) {
      const order = ringOrder(n);
      expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: n }, (_, i) => i + 1));
      if (n % 2 === 1) continue;
      for (let i = 0; i < n; i += 2)
        expect(Math.abs((order[i] ?? 0) - (order[i + 1] ?? 0))).toBe(n / 2);
    }
  });
});

describe('rows and rectangles', () => {
  test('rows are tightened from the middle outwards', () => {
    const points = layoutPoints({ kind: 'rows', rows: 2, columns: 3 }, 6);
    expect(points).not.toBeNull();
    expect(insideOutOrder(points ?? []).slice(0, 2)).toEqual([2, 5]);
  });

  test('a layout that does not fit the count is unknown, not guessed', () => {
    expect(layoutPoints({ kind: 'rectangle', rows: 2, columns: 2 }, 5)).toBeNull();
    expect(layoutPoints({ kind: 'rectangle', rows: 3, columns: 3 }, 8)).toHaveLength(8);
  });
});

test('positions are given with y up and drawn with y down', () => {
  const mm = [
    [0, 10],
    [0, -10],
  ] as const;
  expect(layoutPoints({ kind: 'positions', mm }, 2)).toEqual([
    [0, -10],
    [0, 10],
  ]);
});
