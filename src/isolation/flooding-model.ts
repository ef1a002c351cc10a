// What `flooding` takes in and gives out: the shapes at its border.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { commonOut, figure, figureOut } from '../quantity/border.ts';
import { at, type Rule, withRules } from '../quantity/rules.ts';

const most = limits.isolation;

const shape = z.strictObject({
  diameter: figure('mm', { above: 0, max: most.holeMm, says: 'that is no hole to flood through' })
    .optional()
    .describe('of the hole; or its area'),
  area: figure('mm2', {
    above: 0,
    max: most.holeMm ** 2,
    says: 'that is no hole to flood through',
  }).optional(),
  depth: figure('m', { min: 0, max: 200, says: 'the hole lies below the outside water' }).describe(
    'of the middle of the hole below the outside water',
  ),
  holeHeight: figure('m', { min: 0, max: 100, says: 'above the sole, nought or more' }).default({
    value: 0,
    unit: 'm',
  }),
  coefficient: figure('1', { above: 0, max: 1, says: 'no hole passes more than its own area does' })
    .default({ value: 0.6, unit: '1' })
    .describe('of discharge; 0.6 to 1.0 are published'),
  density: figure('kg/m3', { min: 500, max: 2_000, says: 'that is no water' }).default({
    value: 1_025,
    unit: 'kg/m3',
  }),
  spaceArea: figure('m2', { above: 0, max: 1e6 }).optional().describe('of the space, level'),
  permeability: figure('1', {
    above: 0,
    max: 1,
    says: 'a share of the space, above 0 to 1',
  }).default({
    value: 1,
    unit: '1',
  }),
  toLevel: figure('m', { min: 0, max: 200, says: 'above the sole, nought or more' })
    .optional()
    .describe('above the sole: the floor plates, the starter'),
  pumps: z
    .array(figure('m3/h', { min: 0, max: 1e6, says: 'a pump gives nought or more' }))
    .max(most.pumps)
    .optional()
    .describe('what each gives; none unless given'),
});

const given = (value: unknown, field: string): boolean => at(value, field) !== undefined;

const rules: readonly Rule[] = [
  {
    path: ['area'],
    why: 'the hole is given twice, and the two may disagree',
    expected: 'diameter or area',
    broken: (value) => given(value, 'diameter') && given(value, 'area'),
  },
  {
    path: ['diameter'],
    why: 'without the hole nothing can be worked out',
    expected: 'diameter or area',
    broken: (value) => !given(value, 'diameter') && !given(value, 'area'),
  },
];

export const floodingIn = withRules(shape, rules);
export type FloodingIn = z.infer<typeof shape>;

export const floodingOut = z.strictObject({
  inflow: figureOut('m3/h').describe('at the start, the hole not yet covered inside'),
  force: figureOut('N').describe('on the hole, to be held by whoever plugs it'),
  timeToLevel: figureOut('min')
    .nullable()
    .describe('null and not in notWorkedOut: the level never gets there'),
  levelLimit: figureOut('m').describe('above the sole, where the rising ends'),
  margin: figureOut('m3/h').describe('pumps less inflow at the start'),
  ...commonOut,
});
export type FloodingOut = z.infer<typeof floodingOut>;
