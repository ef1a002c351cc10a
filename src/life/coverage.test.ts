// How often 95 % limits of lives hold what they say, for 10, 30 and 100 items, counted by chance.

import { expect, test } from 'vitest';
import { chance } from '../quantity/chance.ts';
import { normalFor } from '../quantity/distribution.ts';
import { lifeData } from './data.ts';
import { fitLaw } from './fit.ts';
import { type Asked, atQuantile, likelihoodLimits, lnFigure } from './interval.ts';

const SEED = 20261125;
const RUNS = process.env.LONG ? 10_000 : 1_000;
const Z = normalFor(0.025);
const SHAPE = 2;
const W10 = Math.log(-Math.log(0.9));

const asked: readonly (readonly [string, Asked, number])[] = [
  ['shape', { kind: 'spread', sign: -1 }, Math.log(SHAPE)],
  ['scale', atQuantile(0), 0],
  ['b10', atQuantile(W10), W10 / SHAPE],
];

/** Shares in which the true figure lay within its limits; `none` where nothing could be said. */
function coverage(items: number, livesShare: number) {
  const next = chance(SEED + items);
  const stop = (-Math.log(livesShare)) ** (1 / SHAPE);
  const held = asked.map(() => ({ delta: 0, likelihood: 0 }));
  let none = 0;
  for (let run = 0; run < RUNS; run += 1) {
    const records = Array.from({ length: items }, () => {
      const t = (-Math.log(1 - next())) ** (1 / SHAPE);
      const lower = Math.min(t, stop);
      return {
        type: t > stop ? ('right' as const) : ('exact' as const),
        lower,
        upper: lower,
        n: 1,
      };
    });
    const data = lifeData(records);
    const fit = data.failures < 2 ? null : fitLaw('weibull', data, null);
    if (fit === null) {
      none += 1;
      continue;
    }
    asked.forEach(([, what, truth], at) => {
      const count = held[at];
      if (count === undefined) return;
      const [best, error] = lnFigure(fit, what);
      if (Math.abs(truth - best) <= Z * error) count.delta += 1;
      const [low, high] = likelihoodLimits(fit, data, null, what, Z);
      if ((low ?? -Infinity) <= truth && truth <= (high ?? Infinity)) count.likelihood += 1;
    });
  }
  const said = RUNS - none;
  const shares = held.map(({ delta, likelihood }) => [delta / said, likelihood / said] as const);
  return { none, shares };
}

// As counted in 10,000 runs from the printed seed on 2026-11-25, and stated in the document.
const COUNTED: readonly (readonly [number, number, readonly (readonly [number, number])[]])[] = [
  [
    10,
    1e-9,
    [
      [0.9028, 0.9206],
      [0.8974, 0.9256],
      [0.8839, 0.9312],
    ],
  ],
  [
    30,
    1e-9,
    [
      [0.9391, 0.9451],
      [0.9364, 0.9439],
      [0.9289, 0.9452],
    ],
  ],
  [
    100,
    1e-9,
    [
      [0.9452, 0.9482],
      [0.9444, 0.9465],
      [0.9456, 0.9485],
    ],
  ],
  [
    10,
    0.5,
    [
      [0.9239, 0.9398],
      [0.9018, 0.9487],
      [0.8695, 0.9447],
    ],
  ],
  [
    30,
    0.5,
    [
      [0.9443, 0.9507],
      [0.9395, 0.9501],
      [0.9183, 0.9483],
    ],
  ],
  [
    100,
    0.5,
    [
      [0.9455, 0.9476],
      [0.9501, 0.9518],
      [0.939, 0.9471],
    ],
  ],
];

test.each(COUNTED)(`%i items, share %f living on, seed ${SEED}`, (items, share, want) => {
  const { none, shares } = coverage(items, share);
  expect(none / RUNS).toBeLessThan(0.025);
  shares.forEach((pair, at) => {
    pair.forEach((one, which) => {
      const stated = want[at]?.[which] ?? 0;
      // Four and a half standard deviations of the count, and half a digit of what is stated.
      const spread = Math.sqrt((stated * (1 - stated)) / RUNS);
      expect(Math.abs(one - stated)).toBeLessThan(4.5 * spread + 0.0006);
    });
  });
});
