// Checks the tightening order against the published rows that could be read, and its laws.

import { describe, expect, test } from 'vitest';
import { boltOrder, insideOutOrder, layoutPoints, ringOrder } from './pattern.ts';
import { knownRows } from './tables/cross-pattern.ts';

const counts = Array.from({ length: 62 }, (_, i) => i + 3);
const upTo = (n: number) => Array.from({ length: n }, (_, i) => i + 1);
const sorted = (order: readonly number[]) => [...order].sort((a, b) => a - b);

describe('cross order of a ring', () => {
  for (const { bolts, sequence, had } of knownRows) {
    const says = had === 'read' ? 'as read' : 'as remembered (no check by itself)';
    test(`${bolts} bolts follow the ASME PCC-1 legacy cross-pattern row ${says}`, () => {
      expect(ringOrder(bolts)).toEqual(sequence);
    });
  }

  test('6 bolts follow the common shop order, read in a public text (not in PCC-1)', () => {
    expect(ringOrder(6)).toEqual([1, 4, 2, 5, 3, 6]);
  });

  test('5 bolts are a star: common practice, no source', () => {
    expect(ringOrder(5)).toEqual([1, 3, 5, 2, 4]);
  });

  test.each(counts)('%i bolts: each once', (n) => {
    expect(sorted(ringOrder(n))).toEqual(upTo(n));
  });

  test.each(counts.filter((n) => n % 2 === 0))('%i bolts: pairs are opposite', (n) => {
    const order = ringOrder(n);
    for (let i = 0; i < n; i += 2) {
      expect(Math.abs((order[i] ?? 0) - (order[i + 1] ?? 0))).toBe(n / 2);
    }
  });

  test.each(counts.filter((n) => n % 4 === 0))('%i bolts: fours stand at quarter turns', (n) => {
    const order = ringOrder(n);
    for (let i = 0; i < n; i += 4) {
      const [first = 0, , third = 0] = order.slice(i, i + 4);
      expect((third - first + n) % n).toBe(n / 4);
    }
  });

  test.each(counts.filter((n) => n % 4 === 2))(
    '%i bolts, no quarter turn: the second pair as near to it as a bolt lies',
    (n) => {
      const [first = 0, , third = 0] = ringOrder(n);
      expect(Math.abs(third - first - n / 4)).toBeLessThanOrEqual(0.5);
    },
  );

  test.each(counts.filter((n) => n % 2 === 1))('%i bolts: the second is nearest opposite', (n) => {
    const [first = 0, second = 0] = ringOrder(n);
    expect(Math.abs(second - first - n / 2)).toBe(0.5);
  });

  test('one and two bolts, and none', () => {
    expect([ringOrder(0), ringOrder(1), ringOrder(2)]).toEqual([[], [1], [1, 2]]);
  });
});

describe('rows, rectangles and free positions', () => {
  test('rows are tightened from the middle outwards, across', () => {
    const points = layoutPoints({ kind: 'rows', rows: 2, columns: 3 }, 6);
    expect(insideOutOrder(points ?? [])).toEqual([2, 5, 1, 6, 3, 4]);
    expect(boltOrder({ kind: 'rows', rows: 1, columns: 5 }, 5)).toEqual([3, 2, 4, 1, 5]);
    expect(boltOrder({ kind: 'rows', rows: 2, columns: 4 }, 8)).toEqual([2, 7, 3, 6, 1, 8, 4, 5]);
  });

  test('no bolt of rows or a rectangle comes before one nearer the middle', () => {
    for (const kind of ['rows', 'rectangle'] as const) {
      for (let rows = 1; rows <= 6; rows += 1) {
        for (let columns = 1; columns <= 8; columns += 1) {
          const n = kind === 'rows' ? rows * columns : rimOf(rows, columns);
          const points = layoutPoints({ kind, rows, columns }, n);
          expect(points).toHaveLength(n);
          const order = boltOrder({ kind, rows, columns }, n) ?? [];
          expect(sorted(order)).toEqual(upTo(n));
          const [cx, cy] = [(columns - 1) * 30, (rows - 1) * 30];
          const away = order.map((k) => {
            const [x, y] = points?.[k - 1] ?? [0, 0];
            return Math.hypot(x - cx, y - cy);
          });
          const most = Math.max(...away);
          away.slice(1).forEach((one, i) => {
            expect(one).toBeGreaterThanOrEqual((away[i] ?? 0) - 0.021 * most);
          });
        }
      }
    }
  });

  test('free positions that lie on a ring get the cross order of the ring', () => {
    for (const n of [4, 6, 8, 12]) {
      const mm = upTo(n).map((k) => {
        const angle = (2 * Math.PI * (k - 1)) / n;
        return [Math.round(800 * Math.sin(angle)) / 10, Math.round(800 * Math.cos(angle)) / 10];
      }) as unknown as readonly (readonly [number, number])[];
      expect(boltOrder({ kind: 'positions', mm }, n)).toEqual(ringOrder(n));
    }
  });

  test('a layout that does not fit the count is unknown, not guessed', () => {
    expect(layoutPoints({ kind: 'rectangle', rows: 2, columns: 2 }, 5)).toBeNull();
    expect(layoutPoints({ kind: 'rectangle', rows: 3, columns: 3 }, 8)).toHaveLength(8);
    expect(boltOrder({ kind: 'rows', rows: 2, columns: 2 }, 5)).toBeNull();
  });
});

const rimOf = (rows: number, columns: number): number =>
  rows === 1 || columns === 1 ? rows * columns : 2 * (rows + columns) - 4;

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
