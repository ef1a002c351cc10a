// What `decide` takes and gives: the shapes at its border.

import { z } from 'zod';
import { commonOut, figureOut } from '../quantity/border.ts';
import { RULES, VERDICTS } from '../quantity/conformity.ts';

/** A figure in any unit; bare numbers are in the unit the others are given in. */
const anyFigure = z.union([
  z.number(),
  z.string().describe('a figure with its unit'),
  z.strictObject({
    value: z.number(),
    unit: z.string().optional(),
    u: z.number().min(0).optional().describe('standard uncertainty, in the same unit'),
    expanded: z.number().min(0).optional(),
    k: z.number().positive().optional(),
    given: z.string().optional(),
  }),
]);

export type AnyFigure = z.infer<typeof anyFigure>;

export const decideInput = z.strictObject({
  measured: anyFigure,
  u: anyFigure.optional().describe('standard uncertainty; needed unless measured carries it'),
  lower: anyFigure.optional(),
  upper: anyFigure.optional(),
  degreesOfFreedom: z.number().positive().max(1e12).optional().describe('none: infinite'),
  distribution: z.enum(['normal', 'rectangular']).default('normal'),
  rule: z.enum(RULES).optional(),
  maxRisk: z
    .union([z.number(), z.string()])
    .optional()
    .describe('the greatest chance taken that the word is wrong, above 0, to 0.5'),
  guardFactor: z.number().min(0).max(100).optional().describe('guard band over u'),
});

export type DecideInput = z.infer<typeof decideInput>;

const chance = figureOut('1');

export const decideOutput = z.strictObject({
  verdict: z.enum(VERDICTS).nullable(),
  probabilityConforming: chance,
  below: chance.describe('the chance that the true value is below lower'),
  above: chance.describe('the chance that the true value is above upper'),
  guardFactor: chance.nullable().describe('guard band over u'),
  guardBand: z.strictObject({ value: z.number(), unit: z.string() }).nullable(),
  riskAtLimit: chance
    .nullable()
    .describe('the chance that the word is wrong for a reading just at the acceptance limit'),
  ...commonOut,
});

export type DecideOutput = z.infer<typeof decideOutput>;
