// What `lift` takes in and gives out: the shapes at its border.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { commonOut, figure, figureOut } from '../quantity/border.ts';
import { at, both, numberAt, type Rule, withRules } from '../quantity/rules.ts';
import { COUPLINGS, DURATIONS, SETS } from './tables/niosh.ts';

const { lifting } = limits;
const reach = (says: string) => figure('cm', { min: 0, max: lifting.lengthCm, says });

const endIn = z.strictObject({
  h: reach('the hands ahead of the ankles, nought or more').optional(),
  v: reach('the hands above the floor, nought or more').optional(),
  asymmetry: figure('deg', { min: 0, max: 180, says: 'the twist to either side, 0 to 180' })
    .optional()
    .describe('0 unless given'),
});

const word = z.string().min(1).max(lifting.wordLength);

const shape = z.strictObject({
  weight: figure('kg', { above: 0, max: lifting.weightKg, says: 'a weight is more than nought' })
    .optional()
    .describe('with all that hangs on it, wet'),
  origin: endIn.optional(),
  destination: endIn.optional(),
  travel: reach('how far the hands go up or down').optional().describe('without destination'),
  coupling: z.enum(COUPLINGS).optional(),
  frequency: figure('1/min', { min: 0, max: lifting.perMinute }).optional(),
  spell: z
    .strictObject({
      perMinute: figure('1/min', { min: 0, max: lifting.perMinute }),
      minutes: figure('min', { above: 0, max: 15, says: 'of each 15 minutes' }),
    })
    .optional()
    .describe('in place of frequency: lifting for some minutes of each 15'),
  duration: figure('h', { above: 0, max: 24, says: 'hours of lifting in a day' }).optional(),
  recovery: figure('h', { min: 0, max: lifting.recoveryH })
    .optional()
    .describe('light work after it; taken as enough unless given'),
  constants: z.enum(SETS).default('metric'),
  people: z.int().min(1).max(lifting.people).default(1),
  posture: word.optional().describe('"standing"; any other takes it outside the method'),
  hands: z
    .union([z.literal(1), z.literal(2), word])
    .optional()
    .describe('2, or "both"; any other takes it outside the method'),
  footing: word
    .optional()
    .describe('"firm", "good" or "dry"; any other takes it outside the method'),
  headroom: figure('cm', { above: 0, max: lifting.headroomCm }).optional(),
  heat: figure('Cel', { min: -60, max: 100, says: 'no air to work in' })
    .optional()
    .describe('of the air'),
  moving: z.boolean().optional().describe('the floor moves, as at sea'),
  hold: figure('s', { min: 0, max: 86_400 }).optional().describe('held before it is put down'),
});

/** Two figures of one length may differ by this much through rounding of units. */
const SAME_CM = 0.5;

const tooHigh = (end: string): Rule => ({
  path: [end, 'v'],
  why: 'the hands are above the headroom',
  expected: 'at most the headroom',
  broken: (value) =>
    both(numberAt(value, `${end}/v`), numberAt(value, 'headroom'), (v, room) => v > room),
});

export const liftInput = withRules(shape, [
  {
    path: ['spell'],
    why: 'how often is given twice, and the two may disagree',
    expected: 'frequency or spell',
    broken: (value) => at(value, 'frequency') !== undefined && at(value, 'spell') !== undefined,
  },
  {
    path: ['travel'],
    why: 'the travel is not what lies between origin and destination',
    expected: 'no travel where destination says it',
    broken: (value) => {
      const [from, to] = [numberAt(value, 'origin/v'), numberAt(value, 'destination/v')];
      if (from === undefined || to === undefined) return false;
      const between = Math.abs(to - from);
      return both(numberAt(value, 'travel'), between, (a, b) => Math.abs(a - b) > SAME_CM);
    },
  },
  tooHigh('origin'),
  tooHigh('destination'),
]);

export type LiftInput = z.infer<typeof shape>;

export const VERDICTS = [
  'fits',
  'too heavy for some',
  'too heavy for nearly all',
  'outside the method: use gear or a second person',
] as const;
export type LiftVerdict = (typeof VERDICTS)[number];

export const FIGURES = ['within the method', 'best case on a dry floor'] as const;

export const MULTIPLIERS = ['hm', 'vm', 'dm', 'am', 'fm', 'cm'] as const;
export type Multiplier = (typeof MULTIPLIERS)[number];

const settled = (unit: string) => figureOut(unit).nullable();

const endOut = z
  .strictObject({
    rwl: settled('kg'),
    li: settled('1').describe('share over rwl; null when rwl is 0'),
    multipliers: z.strictObject({
      hm: settled('1'),
      vm: settled('1'),
      dm: settled('1'),
      am: settled('1'),
      fm: settled('1'),
      cm: settled('1'),
    }),
  })
  .nullable();

export const liftOutput = z.strictObject({
  frequencyUsed: settled('1/min'),
  durationClass: z.enum(DURATIONS).nullable(),
  recoveryNeeded: settled('min').describe('for the class of this duration'),
  origin: endOut,
  destination: endOut,
  share: settled('kg').describe('what each person counts for, by the rule of teams'),
  figure: z.enum(FIGURES),
  verdict: z.enum(VERDICTS).nullable(),
  reasons: z.array(z.string()),
  restsOn: z.string().nullable().describe('the weakest source that the verdict rests on'),
  whatHelpsMost: z
    .strictObject({
      multiplier: z.enum(MULTIPLIERS).nullable().describe('null: each is 1 already'),
      at: z.enum(['origin', 'destination']),
      advice: z.string(),
    })
    .nullable(),
  ...commonOut,
});

export type LiftOutput = z.infer<typeof liftOutput>;
