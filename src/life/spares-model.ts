// What `spares` takes in and gives out: the shapes at its border.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { commonOut, figure, figureOut } from '../quantity/border.ts';
import { at, both, numberAt, type Rule, withRules } from '../quantity/rules.ts';
import type { Working } from '../quantity/types.ts';
import { hoursIn, shapeIn } from './renewal-model.ts';

const { life } = limits;

const shape = z.strictObject({
  fitted: z.int().min(1).max(life.fitted).describe('places alike, each new at the start'),
  rate: figure('1/h', { min: 0, max: 1e6 }).optional().describe('failures an hour of each'),
  shape: shapeIn.optional().describe('with scale in place of rate: a Weibull law of lives'),
  scale: hoursIn('a scale is more than nought').optional(),
  hours: hoursIn('there is no time to last for').describe('each runs, before stock is filled up'),
  serviceLevel: z.number().gt(0).lt(1).describe('chance that demand is at most the stock'),
});

const given = (value: unknown, name: string): boolean => at(value, name) !== undefined;
const law = (value: unknown): boolean => given(value, 'shape') || given(value, 'scale');

const rules: readonly Rule[] = [
  {
    path: ['rate'],
    why: 'nothing says how often they fail',
    expected: 'rate, or shape and scale',
    broken: (value) => !given(value, 'rate') && !law(value),
  },
  {
    path: ['rate'],
    why: 'how often they fail is given twice, and the two may disagree',
    expected: 'rate, or shape and scale',
    broken: (value) => given(value, 'rate') && law(value),
  },
  ...(['shape', 'scale'] as const).map(
    (name): Rule => ({
      path: [name],
      why: 'shape and scale belong together',
      expected: 'shape and scale',
      broken: (value) => !given(value, 'rate') && law(value) && !given(value, name),
    }),
  ),
  {
    path: ['hours'],
    why: 'that is more lives one after the other than are folded together',
    expected: `at most ${life.lives} times the scale`,
    broken: (value) =>
      both(numberAt(value, 'hours'), numberAt(value, 'scale'), (h, s) => h > life.lives * s),
  },
  {
    path: ['hours'],
    why: 'that comes to more demand than is counted',
    expected: `at most ${life.demand} in all`,
    broken: (value) => {
      const places = Number(at(value, 'fitted'));
      const most = life.demand / places;
      return both(numberAt(value, 'hours'), numberAt(value, 'rate'), (h, r) => h * r > most);
    },
  },
];

export const sparesInput = withRules(shape, rules);
export type SparesInput = z.infer<typeof shape>;

export const sparesOutput = z.strictObject({
  stock: z.int().describe('the least that serves'),
  achieved: figureOut('1').describe('chance that this stock is enough'),
  expectedDemand: figureOut('1'),
  expectedShort: figureOut('1').describe('how many are short on the average'),
  table: z.array(
    z.strictObject({
      stock: z.int(),
      probability: figureOut('1').describe('that this stock is enough'),
    }),
  ),
  ...commonOut,
});
export type SparesOutput = Omit<z.infer<typeof sparesOutput>, 'working'> & {
  readonly working: Working;
};
