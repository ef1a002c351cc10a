// How small a photograph is made; that nothing but pixels is kept is held in the browser test.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { limits } from '../../limits.ts';
import { fitted } from './photo-size.ts';

test('by hand: a landscape, an upright, a small one, a thin strip', () => {
  expect(fitted({ width: 4_000, height: 3_000 })).toEqual({ width: 1_600, height: 1_200 });
  expect(fitted({ width: 3_024, height: 4_032 })).toEqual({ width: 1_200, height: 1_600 });
  expect(fitted({ width: 640, height: 480 })).toEqual({ width: 640, height: 480 });
  expect(fitted({ width: 9_000, height: 1 })).toEqual({ width: 1_600, height: 1 });
});

test('never larger than it was, never over the bound, the shape kept to a pixel', () => {
  const side = fc.integer({ min: 1, max: 20_000 });
  fc.assert(
    fc.property(side, side, (width, height) => {
      const small = fitted({ width, height });
      expect(Math.max(small.width, small.height)).toBeLessThanOrEqual(limits.app.photoPx);
      expect(small.width).toBeLessThanOrEqual(width);
      expect(small.height).toBeLessThanOrEqual(height);
      const share = Math.max(small.width, small.height) / Math.max(width, height);
      expect(Math.abs(small.width - width * share)).toBeLessThanOrEqual(1);
      expect(Math.abs(small.height - height * share)).toBeLessThanOrEqual(1);
    }),
    { seed: 1_600, numRuns: process.env.LONG === '1' ? 10_000 : 1_000 },
  );
});
