// What is shared out is as much as any sharing could: against trying everything on small cases.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { allocate, type Want } from './allocate.ts';

const runs = process.env.LONG === '1' ? 5_000 : 500;
const things = ['a', 'b', 'c'];

/** The most that can be met, by trying every way of giving units one after another. */
function most(wants: readonly Want[], stock: ReadonlyMap<string, number>): number {
  const units = wants.flatMap(({ count, may }) => Array.from({ length: count }, () => may));
  const seen = new Map<string, number>();
  const best = (at: number, left: readonly number[]): number => {
    const may = units[at];
    if (may === undefined) return 0;
    const key = `${at} ${left}`;
    const before = seen.get(key);
    if (before !== undefined) return before;
    const ways = may.flatMap((thing) => {
      const index = things.indexOf(thing);
      if ((left[index] ?? 0) < 1) return [];
      return [
        1 +
          best(
            at + 1,
            left.map((n, i) => (i === index ? n - 1 : n)),
          ),
      ];
    });
    const answer = Math.max(best(at + 1, left), ...ways);
    seen.set(key, answer);
    return answer;
  };
  return best(
    0,
    things.map((thing) => stock.get(thing) ?? 0),
  );
}

test('as much is met as can be, nothing twice or unfitting, seed 52_010', () => {
  const want = fc.record({
    count: fc.integer({ min: 1, max: 3 }),
    may: fc.uniqueArray(fc.constantFrom(...things), { maxLength: 3 }),
  });
  const stock = fc.tuple(fc.nat(4), fc.nat(4), fc.nat(4));
  fc.assert(
    fc.property(fc.array(want, { maxLength: 5 }), stock, (wants, held) => {
      const left = new Map(things.map((thing, at) => [thing, held[at] ?? 0]));
      const given = allocate(wants, left);
      const all = given.flatMap((own) => [...own.values()]);
      expect(all.reduce((a, b) => a + b, 0)).toBe(most(wants, left));
      given.forEach((own, at) => {
        const sum = [...own.values()].reduce((a, b) => a + b, 0);
        expect(sum).toBeLessThanOrEqual(wants[at]?.count ?? 0);
        for (const thing of own.keys()) expect(wants[at]?.may).toContain(thing);
      });
      for (const [thing, n] of left) {
        const used = given.reduce((sum, own) => sum + (own.get(thing) ?? 0), 0);
        expect(used).toBeLessThanOrEqual(n);
      }
    }),
    { numRuns: runs, seed: 52_010 },
  );
});

test('the first that fits is used first', () => {
  const [given] = allocate(
    [{ count: 2, may: ['b', 'a'] }],
    new Map([
      ['a', 5],
      ['b', 1],
    ]),
  );
  expect([...(given ?? [])]).toEqual([
    ['b', 1],
    ['a', 1],
  ]);
});
