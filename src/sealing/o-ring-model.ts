// What `o-ring` takes in and gives out: the shapes at its border.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { commonOut, figure, figureOut } from '../quantity/border.ts';
import { at, both, numberAt, type Rule, withRules } from '../quantity/rules.ts';
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

const shape = z.strictObject({
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
  hardness: figure('1', { min: 0, max: 100, says: 'on the scale of IRHD, 0 to 100' }).optional(),
  gap: figure('mm', { min: 0, max: 50 }).optional().describe('radial, the greatest'),
});

const inOrder = (field: string): Rule => ({
  path: ['groove', field],
  why: 'the least is above the greatest',
  expected: 'the least first',
  broken: (value) => {
    const ends = ['least', 'greatest'] as const;
    const [least, most] = ends.map((end) => numberAt(value, `groove/${field}`, end));
    return both(least, most, (a, b) => a > b);
  },
});

const leavesSome = (tolerance: string, of: string): Rule => ({
  path: ['ring', tolerance],
  why: 'a tolerance as large as the size itself leaves nothing',
  expected: `less than ${of}`,
  broken: (value) =>
    both(numberAt(value, `ring/${tolerance}`), numberAt(value, `ring/${of}`), (a, b) => a >= b),
});

export const oRingInput = withRules(shape, [
  ...['diameter', 'outerDiameter', 'depth', 'width'].map(inOrder),
  leavesSome('innerTolerance', 'inner'),
  leavesSome('sectionTolerance', 'section'),
  {
    path: ['groove', 'outerDiameter'],
    why: 'the wall about the ring is no larger than what its inside goes over',
    expected: 'more than diameter',
    broken: (value) =>
      both(
        numberAt(value, 'groove/outerDiameter', 'greatest'),
        numberAt(value, 'groove/diameter'),
        (outer, inner) => outer <= inner,
      ),
  },
  {
    path: ['gap'],
    why: 'the gap is as large as the whole depth, of which it is a part',
    expected: 'less than groove/depth',
    broken: (value) =>
      both(
        numberAt(value, 'gap'),
        numberAt(value, 'groove/depth', 'greatest'),
        (gap, depth) => gap >= depth,
      ),
  },
  {
    path: ['groove'],
    why: 'which rings fit is not to be said without the kind, depth and width of the groove',
    expected: 'kind, depth and width',
    broken: (value) =>
      at(value, 'ring') === ANY_RING &&
      ['kind', 'depth', 'width'].some((field) => at(value, 'groove', field) === undefined),
  },
]);

export type ORingInput = z.infer<typeof shape>;

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
