// What `recurrence` takes in and gives out: the shapes at its border.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { commonOut } from '../quantity/border.ts';
import type { Working } from '../quantity/types.ts';
import { levelIn, timeIn, unitsIn } from './life-model.ts';

const { life } = limits;

export const VARIANCES = ['robust', 'nelson', 'increments', 'poisson'] as const;
export type VarianceName = (typeof VARIANCES)[number];

const systemIn = z.strictObject({
  id: z.union([z.string().max(life.nameLength), z.number()]).optional(),
  start: timeIn.default(0).describe('when it was first watched'),
  end: timeIn.describe('until when it was watched'),
  times: z.array(timeIn).max(life.events).describe('of its repairs, after start and to end'),
  values: z
    .array(z.number().min(0).max(life.most))
    .optional()
    .describe('what each cost; for the mean cumulative function alone'),
});
export type SystemIn = z.infer<typeof systemIn>;

export const recurrenceInput = z.strictObject({
  systems: z.array(systemIn).min(1).max(life.systems),
  units: unitsIn,
  termination: z
    .enum(['time', 'failure'])
    .optional()
    .describe('whether watching ended at a set time or at a failure'),
  variance: z.enum(VARIANCES).default('robust').describe('which of the four of the mean function'),
  level: levelIn,
});
export type RecurrenceInput = z.infer<typeof recurrenceInput>;

const plain = z.strictObject({ value: z.number(), unit: z.string() });
const pair = z.tuple([plain, plain]).nullable();

const figure = z
  .strictObject({
    value: z.number(),
    unit: z.string(),
    standardError: z.number().min(0),
    limits: z.tuple([z.number().nullable(), z.number().nullable()]).describe('on the log scale'),
  })
  .nullable();

const chance = z.number().min(0).max(1);

export const recurrenceOutput = z.strictObject({
  systems: z.int(),
  events: z.int(),
  level: z.number(),
  variance: z.enum(VARIANCES).describe('which variance stands in mcf'),
  mcf: z.array(
    z.strictObject({
      t: plain,
      atRisk: z.int(),
      events: z.int(),
      mcf: plain.describe('mean number, or mean cost, of each system up to t'),
      variance: plain.nullable().describe('null: under 2 at risk'),
      normal: pair,
      log: pair.describe('limits on the log scale'),
    }),
  ),
  powerLaw: z
    .strictObject({
      shape: figure,
      scale: figure,
      lambda: figure,
      t: plain.describe('the greatest end, at which the next three are'),
      intensity: figure.describe('failures in a unit of time, of each system'),
      mtbfNow: figure,
      mtbfCumulative: figure,
      unbiased: z.strictObject({ shape: plain, lambda: plain, mtbfNow: plain }).nullable(),
      cramerVonMises: plain.nullable().describe('how far the events lie from the law'),
    })
    .nullable(),
  constant: z.strictObject({
    rate: plain,
    mtbf: plain.nullable().describe('null: no event'),
    limits: z.tuple([plain, plain.nullable()]).describe('of the mtbf, by chi-squared'),
  }),
  trend: z.strictObject({
    laplace: z
      .strictObject({
        value: z.number(),
        unit: z.literal('1'),
        pTwoSided: chance.describe('chance of as much or more where there is no trend'),
      })
      .nullable()
      .describe('above 0: events come ever faster'),
    milHdbk189: z
      .strictObject({
        value: z.number(),
        unit: z.literal('1'),
        degreesOfFreedom: z.int(),
        pLower: chance.describe('small: events come ever faster'),
        pUpper: chance.describe('small: they come ever more slowly'),
      })
      .nullable(),
  }),
  ...commonOut,
});
export type RecurrenceOutput = Omit<z.infer<typeof recurrenceOutput>, 'working'> & {
  readonly working: Working;
};
