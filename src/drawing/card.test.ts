// A screen measured with a card: sizes by hand, and that no scale makes a control too small.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CARD_LENGTH_MM, cardPx, controlSizes, readScale, withCard } from './card.ts';

test('a frame of 514 px is a screen of 6 px to the millimetre, and a control 121 px', () => {
  const scale = 514 / CARD_LENGTH_MM;
  expect(scale).toBeCloseTo(6.0047, 4);
  expect(cardPx(scale)).toBe(514);
  expect(controlSizes(scale)).toEqual({ mainPx: 124, keyPx: 121 });
  expect(controlSizes(8)).toEqual({ mainPx: 160, keyPx: 160 });
  expect(controlSizes(null)).toEqual({ mainPx: 124, keyPx: 76 });
});

test('whatever a screen measures, a main control is 20 mm and never under 120 px', () => {
  fc.assert(
    fc.property(fc.double({ min: 2, max: 12, noNaN: true }), (scale) => {
      const { mainPx } = controlSizes(scale);
      expect(mainPx / scale).toBeGreaterThanOrEqual(20);
      expect(mainPx).toBeGreaterThanOrEqual(120);
    }),
    { seed: 20260314, numRuns: 300 },
  );
});

test('each tap moves the frame by what it says, and stops at the ends', () => {
  expect(cardPx(withCard(6, 1))).toBe(cardPx(6) + 1);
  expect(cardPx(withCard(withCard(6, 10), -10))).toBe(cardPx(6));
  expect(withCard(12, 10)).toBe(12);
  expect(withCard(2, -10)).toBe(2);
});

test.each(['', 'x', '0', '1.9', '12.1', 'NaN'])('"%s" is no scale', (kept) => {
  expect(readScale(kept)).toBeNull();
});
