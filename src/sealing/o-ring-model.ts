// What `o-ring` takes in and gives out: the shapes at its border.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { commonOut, figure, figureOut } from '../quantity/border.ts';
import { KINDS } from './groove.ts';
import { RING_VERDICTS } from './judge.ts';
import { readRing } from './rings.ts';

const { sealing } = limits;
const length = () =>
  figure('mm', { above: 0, max: sealing.lengthMm, says: 'a length is more than nought' });
const tolerance = () =>
  figure('mm', { min: 0, max: sealing.lengthMm, says: 'a tolerance is nought or more' });

/** A figure, or the least and the greatest. */
const span = () => z.union([length(), z.tuple([length(), length()])]);
export type SpanIn = z.output<ReturnType<typeof span>>;

/** In place of a ring: the rings that fit are asked for. */
export const ANY_RING = 'any';

const ringIn = z
  .union([
    z
      .string()
      .max(sealing.wordLength)
      .transform((name, context): string => {
        if (name.trim().toLowerCase() === ANY_RING) return ANY_RING;
        const read = readRing(name);
        if (read.ok) return name;
        const params = { expected: read.expected };
        context.addIssue({ code: 'custom', message: read.why, input: name, params });
        return z.NEVER;
      }),
    z.strictObject({
      inner: length(),
      section: length(),
      innerTolerance: tolerance().optional(),
      sectionTolerance: tolerance().optional(),
    }),
  ])
  .describe('"AS568-214", "ISO 3601 20x2.65", its figures in mm, or "any": which would fit');

export const oRingInput = z.strictObject({
  ring: ringIn,
  groove: z
    .strictObject({
      kind: z.enum(KINDS).optional(),
      moving: z.boolean().default(false),
      diameter: span()
        .optional()
        .describe("what the ring's inside goes over: bottom of a piston's groove, rod, inner wall"),
      outerDiameter: span()
        .optional()
        .describe("the wall about its outside: bore, bottom of a rod's groove, outer wall"),
      depth: span().optional().describe('groove bottom to facing wall, clearance included'),
      width: span().optional(),
    })
    .optional(),
  pressure: figure('MPa', {
    min: -0.102,
    max: sealing.pressureMPa,
    says: 'across the ring; less than a vacuum there is none',
  }).optional(),
  pressureSide: z
    .enum(['inside', 'outside', 'both', 'internal', 'external'])
    .optional()
    .describe('of a face seal: where the pressure is'),
  temperature: figure('Cel', { min: -273.15, max: 500 }).optional(),
  hardness: figure('1', { min: 0, max: 100, says: 'IRHD is 0 to 100' }).optional(),
  gap: figure('mm', { min: 0, max: 50 }).optional().describe('radial, the greatest'),
});

export type ORingInput = z.infer<typeof oRingInput>;

const settled = (unit: string) => figureOut(unit).nullable();
const band = (unit: string) =>
  z.strictObject({ nominal: settled(unit), min: settled(unit), max: settled(unit) }).nullable();

export const oRingOutput = z.strictObject({
  ring: z
    .strictObject({
      name: z.string(),
      inner: figureOut('mm'),
      section: figureOut('mm'),
      innerTolerance: settled('mm'),
      sectionTolerance: settled('mm'),
    })
    .nullable(),
  squeeze: band('1'),
  compression: band('mm'),
  stretch: band('1').describe('fraction of the inner diameter'),
  fill: band('1'),
  sectionAfterStretch: settled('mm'),
  extrusion: z
    .strictObject({
      allowedGap: settled('mm'),
      extrudes: z.boolean().nullable(),
    })
    .nullable(),
  verdict: z.enum(RING_VERDICTS).nullable(),
  reasons: z.array(z.string()),
  restsOn: z.string().nullable().describe('the weakest source that the verdict rests on'),
  fitting: z
    .array(
      z.strictObject({
        ring: z.string(),
        squeeze: figureOut('1'),
        stretch: settled('1'),
        fill: figureOut('1'),
      }),
    )
    .describe('rings of the two series that fit the groove, best first, where this one does not'),
  ...commonOut,
});

export type ORingOutput = z.infer<typeof oRingOutput>;
