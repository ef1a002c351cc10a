// `spares` as the register shows it: how many to hold so that they last with a stated chance.

import { sparesOf } from '../life/spares.ts';
import { sparesInput, sparesOutput } from '../life/spares-model.ts';
import { simple } from './simple.ts';

export const sparesCalculation = simple({
  name: 'spares',
  summary: 'how many spares to hold so that they last with a stated chance',
  help: [
    'fitted: places alike, each new at the start. rate (1/h) of each, or shape and scale (h) of a',
    'Weibull law of lives. hours: each runs before the stock is filled up again. serviceLevel: the',
    'chance that no more is asked for than the stock.',
  ],
  input: sparesInput,
  output: sparesOutput,
  solve: sparesOf,
  example: { fitted: 4, shape: 2.5, scale: 8000, hours: 6000, serviceLevel: 0.95 },
});
