// What `combine` takes in and gives out: the shapes at its border.

import { z } from 'zod';
import { moment } from '../hours/instant.ts';
import { limits } from '../limits.ts';
import { commonOut, figure, figureOut } from '../quantity/border.ts';

const bounds = limits.together;

const minutesIn = () => figure('min', { min: 0, max: bounds.minutes });
const name = () => z.union([z.string().max(bounds.idLength), z.number()]).transform(String);
const names = (what: string) => z.array(name()).max(bounds.things).default([]).describe(what);

const jobIn = z.strictObject({
  id: name(),
  due: z
    .strictObject({ earliest: moment().nullish(), latest: moment().nullish() })
    .optional()
    .describe('first and last day or instant; without an end the window is open there'),
  minutes: minutesIn().describe('of the job itself, its joints and closures not counted'),
  joints: names('undone and made up for it'),
  closures: names('shut, tagged and opened again for it'),
  value: figure('1', { min: -bounds.value, max: bounds.value })
    .optional()
    .describe('what doing it now is worth, any one measure for all; none: minutes saved decide'),
});

const minutesOf = (what: string) =>
  z.record(z.string().max(bounds.idLength), minutesIn()).default({}).describe(what);

export const combineInput = z.strictObject({
  jobs: z.array(jobIn).min(1).max(bounds.jobs),
  jointMinutes: minutesOf('minutes to undo and make up each joint'),
  closureMinutes: minutesOf('minutes to shut, tag and open each closure'),
  limit: minutesIn().optional().describe('minutes there are; without it all that is due fits'),
  on: moment().describe('the day or instant of the work'),
});

export type CombineInput = z.infer<typeof combineInput>;
export type Job = CombineInput['jobs'][number];

export const LEFT = ['not yet due', 'overdue', 'no room', 'worth nothing here'] as const;

export const combineOutput = z.strictObject({
  chosen: z.array(z.string()).describe('ids, in the order given'),
  left: z.array(z.strictObject({ id: z.string(), why: z.enum(LEFT) })),
  minutes: figureOut('min').describe('together, each joint and closure paid once'),
  minutesSaved: figureOut('min').describe('against each of the chosen done by itself'),
  objective: z.enum(['value', 'minutes saved']).describe('what the choice makes greatest'),
  value: figureOut('1').nullable().describe('of the chosen, summed'),
  bound: z
    .union([figureOut('1'), figureOut('min')])
    .describe('no choice has more of the objective than this'),
  proven: z.boolean(),
  gap: z.number().min(0).describe('(bound − found)/bound'),
  shared: z
    .array(
      z.strictObject({
        kind: z.enum(['joint', 'closure']),
        id: z.string(),
        jobs: z.array(z.string()),
      }),
    )
    .describe('what more than one of the chosen needs'),
  ...commonOut,
});

export type CombineOutput = z.infer<typeof combineOutput>;
