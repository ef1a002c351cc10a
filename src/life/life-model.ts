// What `life` takes in and gives out: the shapes at its border.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { commonOut } from '../quantity/border.ts';
import { at, type Rule, withRules } from '../quantity/rules.ts';
import type { Working } from '../quantity/types.ts';

const { life } = limits;

/** A bare number in the unit of the data, or a figure with a unit that converts to it. */
export const timeIn = z.union([
  z.number().describe('in units'),
  z.string().max(limits.quantity.textLength).describe('a figure with its unit'),
  z.strictObject({ value: z.number(), unit: z.string(), given: z.string().optional() }),
]);
export type TimeIn = z.infer<typeof timeIn>;

export const unitsIn = z
  .string()
  .min(1)
  .max(life.unitLength)
  .default('h')
  .describe('of all times; any text, passed through');

export const levelIn = z.number().gt(0).lt(1).default(0.95).describe('of all limits: 0.95 is 95 %');

const count = z.int().min(1).max(1e9).default(1).describe('so many items alike');

const recordIn = z.union([
  z.strictObject({ t: timeIn, type: z.enum(['exact', 'right']), n: count }),
  z.strictObject({
    lower: timeIn.nullable().optional(),
    upper: timeIn.nullable().optional(),
    type: z.enum(['exact', 'right', 'left', 'interval']),
    n: count,
  }),
]);
export type RecordIn = z.infer<typeof recordIn>;

export const LAWS = ['weibull', 'lognormal', 'exponential'] as const;
export type LawName = (typeof LAWS)[number];

const priorIn = z
  .strictObject({
    from: z.string().min(1).max(life.nameLength).describe('whose figure it is, by name'),
    shape: z.number().gt(0.05).lt(50).optional().describe('of a Weibull law'),
    sigma: z.number().gt(0.02).lt(20).optional().describe('of a lognormal law'),
    factor: z
      .number()
      .gt(1)
      .max(100)
      .optional()
      .describe('95 % sure within this factor to either side; without it the figure is held'),
  })
  .describe('what is known of the spread of lives beforehand; shown wherever it is used');

const shape = z.strictObject({
  records: z.array(recordIn).min(1).max(life.records),
  units: unitsIn,
  distribution: z.enum(LAWS).optional(),
  level: levelIn,
  prior: priorIn.optional(),
});

const needsFor = (value: unknown): 'shape' | 'sigma' | null => {
  const law = at(value, 'distribution');
  return law === 'weibull' ? 'shape' : law === 'lognormal' ? 'sigma' : null;
};

const rules: readonly Rule[] = [
  {
    path: ['prior'],
    why: 'a prior speaks of the shape of a Weibull or the sigma of a lognormal law',
    expected: 'prior/shape with weibull, prior/sigma with lognormal, none else',
    broken: (value) => {
      if (at(value, 'prior') === undefined) return false;
      const needs = needsFor(value);
      if (needs === null) return true;
      const other = needs === 'shape' ? 'sigma' : 'shape';
      const given = at(value, 'prior', needs) !== undefined;
      return !given || at(value, 'prior', other) !== undefined;
    },
  },
];

export const lifeInput = withRules(shape, rules);
export type LifeInput = z.infer<typeof shape>;

const ends = z.tuple([z.number().nullable(), z.number().nullable()]);

export const lifeFigure = z.strictObject({
  value: z.number(),
  unit: z.string(),
  standardError: z.number().min(0).nullable().describe('null: it was given, not found'),
  delta: ends.nullable().describe('limits on the log scale; of mu, itself a log, on its own'),
  likelihood: ends.nullable().describe('limits where the likelihood falls off; null: no limit'),
});
export type LifeFigure = z.infer<typeof lifeFigure>;

const settled = lifeFigure.nullable();
const named = settled.optional();
const share = z.strictObject({ value: z.number(), unit: z.literal('1') });

export const survivalOut = z.strictObject({
  t: z.strictObject({ value: z.number(), unit: z.string() }),
  atRisk: z.int().optional(),
  failed: z.int().optional(),
  survival: share,
  standardError: share.nullable().optional().describe('by Greenwood; null once none is left'),
  lower: share.nullable().optional().describe('log-log limits'),
  upper: share.nullable().optional(),
});

export const lifeOutput = z.strictObject({
  distribution: z.enum(LAWS).nullable(),
  items: z.int(),
  failures: z.int().describe('exact, left and interval records'),
  level: z.number(),
  shape: named.describe('of a Weibull law'),
  scale: named.describe('of a Weibull law'),
  mu: named.describe('of a lognormal law'),
  sigma: named.describe('of a lognormal law'),
  mean: settled,
  b1: settled.describe('the age by which 1 % have failed'),
  b5: settled,
  b10: settled,
  b50: settled,
  b90: settled,
  logLikelihood: z.number().nullable().describe('of the data alone, with all constants'),
  aic: z.number().nullable(),
  tableBy: z.enum(['Kaplan-Meier', 'Turnbull']),
  table: z.array(survivalOut),
  prior: z.string().nullable().describe('what a prior added, and whose it is'),
  ...commonOut,
});
export type LifeOutput = Omit<z.infer<typeof lifeOutput>, 'working'> & {
  readonly working: Working;
};
