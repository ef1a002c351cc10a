// What `renewal-age` takes in and gives out: the shapes at its border.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { commonOut, figure, figureOut } from '../quantity/border.ts';
import type { Working } from '../quantity/types.ts';

const { life } = limits;

export const POLICIES = ['age', 'minimal-repair'] as const;
export const DECISIONS = ['renew at age', 'run to failure'] as const;

const cost = (says: string) => figure('1', { above: 0, max: 1e15, says });

export const shapeIn = figure('1', { min: 0.05, max: 50, says: 'no law of lives has that shape' });
export const hoursIn = (says: string) => figure('h', { above: 0, max: life.most, says });

export const renewalInput = z.strictObject({
  shape: shapeIn.describe('of the Weibull law of lives'),
  scale: hoursIn('a scale is more than nought').describe('of the Weibull law of lives'),
  costPlanned: cost('a renewal costs something').describe(
    'of a planned renewal; minimal-repair: of the overhaul; any money, both costs in the same',
  ),
  costFailure: cost('a failure costs something').describe(
    'of a failure with all it brings; minimal-repair: of each repair between',
  ),
  policy: z.enum(POLICIES).default('age'),
  at: z
    .array(hoursIn('an age is more than nought'))
    .max(life.ages)
    .optional()
    .describe('ages to be weighed beside the best'),
});
export type RenewalInput = z.infer<typeof renewalInput>;

const settled = (unit: string) => figureOut(unit).nullable();

export const renewalOutput = z.strictObject({
  decision: z.enum(DECISIONS).describe('run to failure where renewing saves under 1e-6'),
  age: settled('h').describe('null: run to failure'),
  costRate: figureOut('1/h').describe('cost an hour, in the long run'),
  costRateToFailure: settled('1/h').describe('null: minimal-repair'),
  saving: settled('1').describe('1 − costRate/costRateToFailure; null: minimal-repair'),
  failureChance: figureOut('1').describe('before the age; run to failure: 1'),
  atGiven: z.array(
    z.strictObject({
      age: figureOut('h'),
      costRate: settled('1/h').describe('null: beyond all numbers'),
      failureChance: figureOut('1'),
    }),
  ),
  ...commonOut,
});
export type RenewalOutput = Omit<z.infer<typeof renewalOutput>, 'working'> & {
  readonly working: Working;
};
