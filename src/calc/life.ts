// `life` as the register shows it: lives of items, exact or cut short, and the law they follow.

import { lifeOf } from '../life/life.ts';
import { lifeInput, lifeOutput } from '../life/life-model.ts';
import { simple } from './simple.ts';

export const lifeCalculation = simple({
  name: 'life',
  summary: 'lives of items, some not yet failed: their law, its limits and the table',
  help: [
    'records: {t, type: exact or right, n}, or {lower, upper, type: exact, right, left, interval,',
    'n}: left failed by upper, right lived beyond lower, interval failed between. units: any text.',
    'distribution: weibull, lognormal or exponential (without it the table alone). level 0.95.',
    'prior: {from: whose figure it is, shape or sigma, factor: 95 % sure within it}.',
  ],
  input: lifeInput,
  output: lifeOutput,
  solve: lifeOf,
  example: {
    records: [
      { t: 3200, type: 'exact' },
      { t: 4700, type: 'exact' },
      { t: 5100, type: 'exact' },
      { t: 6400, type: 'exact' },
      { t: 6000, type: 'right', n: 3 },
      { t: 2500, type: 'right' },
    ],
    units: 'h',
    distribution: 'weibull',
  },
});
