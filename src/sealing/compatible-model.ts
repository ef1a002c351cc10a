// What `compatible` takes in and gives out: the shapes at its border.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { commonOut, figure, figureOut } from '../quantity/border.ts';
import { isDay } from '../quantity/day.ts';
import { at, withRules } from '../quantity/rules.ts';
import { readCured } from './storage.ts';
import { GREASES, MEDIA, RATED } from './tables/compounds.ts';
import { STORAGE_RULES, storedCompounds } from './tables/storage.ts';

const { sealing } = limits;

export const COMPOUNDS: readonly string[] = [...new Set([...RATED, ...storedCompounds])];

const text = (is: (text: string) => boolean, why: string, expected: string) =>
  z
    .string()
    .max(sealing.wordLength)
    .refine(is, { error: why, params: { expected } })
    .describe(expected);

const shape = z.strictObject({
  compound: z.enum(COMPOUNDS as [string, ...string[]]),
  media: z.array(z.enum(MEDIA)).max(sealing.media).optional(),
  grease: z.enum(GREASES).optional(),
  temperature: figure('Cel', {
    min: -273.15,
    max: 1_000,
    says: 'nothing is colder than −273.15 °C, and no seal is as hot',
  }).optional(),
  cured: text(
    (given) => readCured(given) !== null,
    'it is neither a quarter nor a day of the calendar',
    'a quarter as 3Q2024, or a day as 2024-08-15',
  ).optional(),
  on: text(isDay, 'it is no day of the calendar', 'a day as 2026-11-25').optional(),
  storageRule: z.enum(STORAGE_RULES).optional(),
});

export const compatibleInput = withRules(shape, [
  {
    path: ['cured'],
    why: 'the seal is cured after the day it is asked for',
    expected: 'on, or before',
    broken: (value) => {
      const [cured, on] = [at(value, 'cured'), at(value, 'on')];
      if (typeof cured !== 'string' || typeof on !== 'string' || !isDay(on)) return false;
      return (readCured(cured)?.from ?? '') > on;
    },
  },
]);

export type CompatibleInput = z.infer<typeof shape>;

export const COMPATIBLE_VERDICTS = [
  'unsuitable',
  'expired',
  'doubtful',
  'inspect before use',
  'suitable',
] as const;
export type CompatibleVerdict = (typeof COMPATIBLE_VERDICTS)[number];

const rating = z.int().min(1).max(4);

export const compatibleOutput = z.strictObject({
  ratings: z
    .array(rating)
    .nullable()
    .describe('1 satisfactory, 2 fair, 3 doubtful, 4 unsatisfactory; order of media'),
  greaseRating: rating.nullable(),
  temperatureRange: z.tuple([figureOut('Cel'), figureOut('Cel')]).nullable(),
  storage: z
    .strictObject({
      rule: z.enum(STORAGE_RULES),
      group: z.string(),
      countedFrom: z.string().nullable(),
      limited: z.boolean().describe('false: the rule sets no limit'),
      expiresOn: z.string().nullable().describe('null besides where the rule sets no limit'),
      extendableTo: z.string().nullable().describe('null besides where the rule extends nothing'),
    })
    .nullable(),
  verdict: z.enum(COMPATIBLE_VERDICTS).nullable(),
  reasons: z.array(z.string()),
  restsOn: z.string().nullable().describe('the weakest source that the verdict rests on'),
  ...commonOut,
});

export type CompatibleOutput = z.infer<typeof compatibleOutput>;
