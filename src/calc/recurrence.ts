// `recurrence` as the register shows it: repair histories, and whether repairs come ever faster.

import { recurrenceOf } from '../life/recurrence.ts';
import { recurrenceInput, recurrenceOutput } from '../life/recurrence-model.ts';
import { simple } from './simple.ts';

export const recurrenceCalculation = simple({
  name: 'recurrence',
  summary: 'repair histories: how many by an age, and whether they come ever faster',
  help: [
    'systems: {id, start (0), end, times, values: cost of each, for the mean function alone}.',
    'units: any text. termination: time or failure (else no trend test). variance of the mean',
    'function: robust, nelson, increments or poisson. level 0.95.',
  ],
  input: recurrenceInput,
  output: recurrenceOutput,
  solve: recurrenceOf,
  example: {
    systems: [
      { id: 'port', end: 21_000, times: [4100, 9800, 13_200, 17_600, 20_100] },
      { id: 'starboard', end: 20_400, times: [7300, 12_900, 18_800] },
    ],
    units: 'h',
    termination: 'time',
    variance: 'robust',
  },
});
