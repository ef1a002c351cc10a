// Stiffness by another road: the cones summed slice by slice, the bolt circle bolt by bolt.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  FACE,
  frustaOf,
  frustumStiffness,
  inARow,
  type Layer,
  momentOnCircleN,
  pieceStiffness,
  wilemanRow,
  wilemanStiffness,
} from './stiffness.ts';

const SEED = 20261125;
const options = { seed: SEED, numRuns: process.env.LONG ? 500 : 50 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const layer = fc.record({ modulusGPa: between(50, 220), thicknessMm: between(1, 40) });

/** Thin discs of the double cone: each as stiff as its ring, layers where they lie. */
function sliced(layers: readonly Layer[], d: number): number {
  const whole = layers.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0);
  const slope = Math.tan(Math.PI / 6);
  let softness = 0;
  let from = 0;
  for (const { modulusGPa, thicknessMm } of layers) {
    const slices = 4_000;
    const thin = thicknessMm / slices;
    for (let at = 0; at < slices; at += 1) {
      const deep = from + (at + 0.5) * thin;
      const wide = FACE * d + 2 * slope * Math.min(deep, whole - deep);
      softness += thin / (modulusGPa * (Math.PI / 4) * (wide ** 2 - d ** 2));
    }
    from += thicknessMm;
  }
  return 1 / softness;
}

describe(`seed ${SEED}`, () => {
  test('cones agree with thin slices, whatever the layers', () => {
    const law = fc.property(
      fc.array(layer, { minLength: 1, maxLength: 5 }),
      between(4, 40),
      (layers, d) => {
        const found = inARow(frustaOf(layers, d).map((one) => frustumStiffness(one, d)));
        expect(found / sliced(layers, d)).toBeCloseTo(1, 4);
      },
    );
    fc.assert(law, options);
  });

  test('cutting a layer in two changes nothing, by cones and by the fit', () => {
    const law = fc.property(layer, between(4, 40), between(0.1, 0.9), (one, d, share) => {
      const { modulusGPa, thicknessMm } = one;
      const cut = [share, 1 - share].map((part) => ({
        modulusGPa,
        thicknessMm: part * thicknessMm,
      }));
      const cones = (layers: readonly Layer[]) =>
        inARow(frustaOf(layers, d).map((frustum) => frustumStiffness(frustum, d)));
      expect(cones(cut) / cones([one])).toBeCloseTo(1, 9);
      const fitted = (layers: readonly Layer[]) =>
        inARow(layers.map((part) => wilemanStiffness(part, d, thicknessMm)));
      expect(fitted(cut) / fitted([one])).toBeCloseTo(1, 9);
    });
    fc.assert(law, options);
  });
});

test('pieces of a bolt in a row: two halves are the whole', () => {
  const whole = pieceStiffness({ areaMm2: 58, lengthMm: 40 }, 205);
  const half = pieceStiffness({ areaMm2: 58, lengthMm: 20 }, 205);
  expect(inARow([half, half])).toBeCloseTo(whole, 9);
});

test('a moment on a circle: bolt by bolt, forces as their height, balance it', () => {
  for (let bolts = 3; bolts <= 64; bolts += 1) {
    const greatest = momentOnCircleN(1_000_000, 200, bolts);
    let balance = 0;
    for (let at = 0; at < bolts; at += 1) {
      const height = 100 * Math.sin((2 * Math.PI * at) / bolts);
      balance += greatest * (height / 100) * height;
    }
    expect(balance).toBeCloseTo(1_000_000, 4);
  }
});

test('the fit takes the material that the modulus tells, else the general pair', () => {
  const named = [207, 200, 71, 69, 100, 96.5, 119, 45, 150].map((one) => wilemanRow(one)[0]);
  expect(named).toEqual([
    'steel',
    'steel',
    'aluminium',
    'aluminium',
    'grey cast iron',
    'grey cast iron',
    'copper',
    'any material',
    'any material',
  ]);
});
