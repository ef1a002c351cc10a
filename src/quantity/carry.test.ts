// Uncertainty carried through: against the sum that a pencil gives, and against given figures.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { carry } from './carry.ts';
import type { Quantity } from './types.ts';

type Sides = { readonly a: Quantity; readonly b: Quantity };
const product = ({ a, b }: Sides) => ({ area: { value: a.value * b.value, unit: 'm2' }, note: 1 });

test('a product: relative uncertainties add in squares', () => {
  const positive = fc.double({ min: 0.5, max: 50, noNaN: true });
  const law = fc.property(positive, positive, (a, b) => {
    const input: Sides = {
      a: { value: a, unit: 'm', u: a / 100 },
      b: { value: b, unit: 'm', u: b / 50 },
    };
    const area: Quantity = carry(input, product).area;
    expect(area.u).toBeCloseTo(a * b * Math.hypot(0.01, 0.02), 8);
  });
  fc.assert(law, { seed: 20261125, numRuns: process.env.LONG ? 1_000 : 100 });
});

test('nothing uncertain: the answer is left as it is', () => {
  const input: Sides = { a: { value: 2, unit: 'm' }, b: { value: 3, unit: 'm' } };
  expect(carry(input, product)).toEqual({ area: { value: 6, unit: 'm2' }, note: 1 });
});

test('what was typed stays beside its uncertainty; a working is not touched', () => {
  const answer = carry({ f: { value: 5, unit: 'kN', u: 0.5, given: '5 kN' } }, ({ f }) => ({
    f: { value: f.value, unit: 'kN', ...('given' in f ? { given: f.given } : {}) },
    list: [{ value: 2 * f.value, unit: 'kN' }],
    working: [{ value: f.value, unit: 'kN' }],
  }));
  expect(answer).toMatchObject({ f: { value: 5, u: 0.5, given: '5 kN' }, list: [{ u: 1 }] });
  expect(answer.working).toEqual([{ value: 5, unit: 'kN' }]);
});

test('where one end has no answer the step to the other counts, and nothing is endless', () => {
  const one = { a: { value: 1, unit: 'm', u: 1 } };
  const answer = carry(one, ({ a }) => ({ over: { value: 1 / a.value, unit: '1' } }));
  expect(answer).toEqual({ over: { value: 1, unit: '1', u: 0.5 } });
});
