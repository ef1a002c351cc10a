// What `cool-down` takes in and gives out: the shapes at its border.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { commonOut, figure, figureOut } from '../quantity/border.ts';
import { at, type Rule, withRules } from '../quantity/rules.ts';
import { MATERIALS } from './tables/burns.ts';

const celsius = (says: string) => figure('Cel', { min: -60, max: 1_500, says });
const minutes = { min: 0, max: 100_000 };
const timeConstant = figure('min', { above: 0, max: 1e6, says: 'it cools in some time' });

const reading = z.strictObject({
  minute: figure('min', { ...minutes, says: 'minutes on one clock, from nought on' }),
  temperature: celsius('no surface to be touched is so'),
});

const shape = z.strictObject({
  readings: z
    .union([
      z.array(reading).min(2).max(limits.isolation.readings),
      z.strictObject({ start: celsius('no surface to be touched is so'), timeConstant }),
    ])
    .optional()
    .describe('after the peak, two or more; or {start, timeConstant}: an estimate'),
  start: celsius('no surface to be touched is so').optional().describe('without readings'),
  timeConstant: timeConstant.optional().describe('without readings'),
  ambient: celsius('no air to work in').optional(),
  touchLimit: celsius('no limit for touching').optional().describe('or material and contactTime'),
  openLimit: celsius('no limit for opening').optional().describe('as the procedure has it'),
  material: z.enum(MATERIALS).optional(),
  contactTime: figure('s', { above: 0, max: 1e6, says: 'a touch lasts some time' }).optional(),
});

const given = (value: unknown, field: string): boolean => at(value, field) !== undefined;

const rules: readonly Rule[] = [
  {
    path: ['readings'],
    why: 'there are neither readings nor an estimate to cool from',
    expected: 'readings, or start with timeConstant',
    broken: (value) =>
      !given(value, 'readings') && !(given(value, 'start') && given(value, 'timeConstant')),
  },
  {
    path: ['start'],
    why: 'readings and an estimate are both given, and may disagree',
    expected: 'readings, or start with timeConstant',
    broken: (value) =>
      given(value, 'readings') && (given(value, 'start') || given(value, 'timeConstant')),
  },
];

export const coolDownIn = withRules(shape, rules);
export type CoolDownIn = z.infer<typeof shape>;

export const coolDownOut = z.strictObject({
  timeConstant: figureOut('min'),
  estimate: z.boolean().describe('true: from a time constant that was given, not from readings'),
  touchAfter: figureOut('min')
    .nullable()
    .describe(
      'on the clock of the readings; null and not in notWorkedOut: never, ambient too warm',
    ),
  openAfter: figureOut('min').nullable().describe('as touchAfter'),
  limitsUsed: z.strictObject({
    touch: figureOut('Cel').nullable(),
    touchFrom: z.string().nullable(),
    open: figureOut('Cel').nullable(),
    openFrom: z.string().nullable(),
  }),
  ...commonOut,
});
export type CoolDownOut = z.infer<typeof coolDownOut>;
