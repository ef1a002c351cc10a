// What `due` takes in and gives out: the shapes at its border.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { commonOut, figure, figureOut } from '../quantity/border.ts';
import { FAULTS } from './faults.ts';
import { moment } from './instant.ts';

const bounds = limits.hours;
const hoursIn = () => figure('h', { min: 0, max: bounds.most });

export const dueInput = z.strictObject({
  readings: z
    .array(z.strictObject({ at: moment(), hours: hoursIn().nullable() }))
    .min(1)
    .max(bounds.readings)
    .describe('in the order they came in; hours as shown, null where the source had none'),
  exchanges: z
    .array(
      z.strictObject({
        at: moment().describe('readings from then on are of the new meter'),
        oldLast: hoursIn().optional().describe('last figure of the old meter'),
        newFirst: hoursIn().optional().describe('first figure of the new one, 0'),
      }),
    )
    .max(bounds.exchanges)
    .default([]),
  interval: figure('h', { above: 0, max: 1_000_000 }).optional().describe('issued interval'),
  lastDoneAt: hoursIn().optional().describe('hours shown when it was last done'),
  lastDoneOn: moment().optional().describe('when it was last done, hours not read'),
  on: moment().optional().describe('the day or instant of asking'),
  horizon: figure('d', { above: 0, max: bounds.horizonDays })
    .default({ value: 730, unit: 'd' })
    .describe('days looked ahead'),
  voyagePlan: z
    .array(
      z.strictObject({
        from: moment(),
        to: moment().describe('a day as an end is inside'),
        hoursPerDay: figure('h/d', { min: 0, max: 24 }),
      }),
    )
    .max(bounds.planned)
    .optional()
    .describe('hours a day planned, by dates; between them the machine goes on as it was used'),
});

export type DueInput = z.infer<typeof dueInput>;

const instantOut = z.string().nullable();

export const dueOutput = z.strictObject({
  dueOn: z
    .strictObject({ p10: instantOut, p50: instantOut, p90: instantOut })
    .nullable()
    .describe('instants; null: beyond the horizon'),
  hoursLeft: figureOut('h').nullable().describe('at `on`, below nought when overdue'),
  ratePerDay: figureOut('h/d').nullable().describe('mean over the readings that stood the check'),
  kinds: z
    .array(z.strictObject({ kind: z.string(), share: z.number() }))
    .describe('how likely each kind of use is after these readings'),
  faults: z.array(
    z.strictObject({
      kind: z.enum(FAULTS),
      reading: z.number().int(),
      at: z.string(),
      why: z.string(),
    }),
  ),
  ...commonOut,
});

export type DueOutput = z.infer<typeof dueOutput>;
