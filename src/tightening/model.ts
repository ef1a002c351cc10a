// What `tightening` takes in and gives out: the shapes at its border.

import { z } from 'zod';
import { commonOut, figure, figureOut } from '../quantity/border.ts';
import { readStrength } from './strength.ts';
import { surfaces } from './tables/friction-ranges.ts';
import { holeMaterials } from './tables/hole-materials.ts';
import { givenThread, readThread, type Thread } from './thread.ts';

/** Nothing is as small as this: what is smaller is a slip of the unit. */
const LEAST = 1e-9;
const above = (unit: string, max: number) => figure(unit, { above: LEAST, max });

const threadFigures = z.strictObject({
  diameter: above('mm', 1_000),
  pitch: above('mm', 100).optional(),
  stressArea: above('mm2', 1_000_000).optional(),
});

const refuse = (context: z.RefinementCtx, input: unknown, why: string, expected: string) => {
  context.addIssue({ code: 'custom', message: why, input, params: { expected } });
  return z.NEVER;
};

type Figures = z.output<typeof threadFigures>;

export type ThreadIn = {
  readonly thread: Thread;
  /** What was given in figures keeps them, so that their uncertainty is carried on. */
  readonly figures: Figures | null;
};

export const threadOfFigures = ({ diameter, pitch, stressArea }: Figures) =>
  givenThread(diameter.value, pitch?.value ?? null, stressArea?.value);

const threadIn = z
  .union([z.string().max(60), threadFigures])
  .transform((given, context): ThreadIn => {
    const figures = typeof given === 'string' ? null : given;
    const read = figures === null ? readThread(String(given)) : threadOfFigures(figures);
    if (!read.ok) return refuse(context, given, read.why, read.expected);
    return { thread: read.thread, figures };
  })
  .describe('"M10", "M10x1.25", "3/8-16 UNC", or {diameter, pitch (mm), stressArea (mm2)}');

const ANY_SIZE_MM = 10;

const strengthIn = z
  .union([
    z
      .string()
      .max(60)
      .transform((name, context): string => {
        const read = readStrength(name, ANY_SIZE_MM);
        return read.ok ? name : refuse(context, name, read.why, read.expected);
      }),
    z.strictObject({
      proof: above('N/mm2', 5_000).optional(),
      yield: above('N/mm2', 5_000).optional(),
      tensile: above('N/mm2', 5_000).optional(),
    }),
  ])
  .describe('"8.8", "A4-70", "SAE 5", or {proof, yield, tensile (N/mm2)}');

const insertIn = z
  .union([z.boolean(), z.string().max(60)])
  .describe('a thread insert: true, or its outer thread, "M12x1.75"');

const frictionIn = figure('1', { min: 0, max: 1, says: 'no bolt has such a friction' });

export const holeNames = holeMaterials.map(({ name }) => name);

const shape = z.strictObject({
  thread: threadIn,
  strengthClass: strengthIn.optional(),
  frictionThread: frictionIn.optional(),
  frictionHead: frictionIn.optional(),
  surface: z.enum(surfaces).optional().describe('gives a sourced range of friction'),
  nutFactor: figure('1', {
    above: LEAST,
    max: 1,
    says: 'no bolt has such a nut factor',
  }).optional(),
  bearingOuter: above('mm', 2_000).optional().describe('default: washer face of ISO 4014'),
  hole: above('mm', 2_000).optional().describe('default: medium hole of ISO 273'),
  utilisation: figure('1', { above: LEAST, max: 1, says: 'it is a share of yield' })
    .optional()
    .describe('share of yield, torsion included; 0.9 where no tightness is given'),
  proofShare: figure('1', {
    above: LEAST,
    max: 1,
    says: 'it is a share of the proof load',
  }).optional(),
  preload: above('kN', 100_000).optional(),
  issuedTorque: above('N.m', 1_000_000).optional(),
  toolScatter: figure('1', { min: 0, below: 1, says: 'it is a fraction, 0.04 for 4 %' }).optional(),
  scatterFactor: figure('1', { min: 1, max: 10, says: 'it is greatest over least' }).optional(),
  clampNeeded: figure('kN', { min: 0, max: 100_000 }).optional(),
  threadInto: z
    .strictObject({
      material: z.enum(holeNames).optional(),
      shearStrength: above('N/mm2', 3_000).optional(),
      engagement: above('mm', 1_000).optional(),
      insert: insertIn.optional(),
    })
    .optional(),
});

const oneOf: readonly (readonly [what: string, fields: readonly (readonly string[])[]])[] = [
  ['friction', [['frictionThread', 'frictionHead'], ['surface'], ['nutFactor']]],
  ['tightness', [['utilisation'], ['proofShare'], ['preload']]],
  ['scatter', [['toolScatter'], ['scatterFactor']]],
];

const has = (value: unknown, field: string): boolean =>
  typeof value === 'object' &&
  value !== null &&
  (value as Readonly<Record<string, unknown>>)[field] !== undefined;

/** Said besides whatever else is wrong, so that all of it comes at once. */
const always = { when: () => true };

const someOf = (value: unknown, fields: readonly string[]) => fields.some((one) => has(value, one));

/** Each field that says again what one before it says is a problem of its own. */
const again = oneOf.flatMap(([what, groups]) =>
  groups.slice(1).map((group, index) => ({
    fields: group,
    before: groups.slice(0, index + 1).flat(),
    says: {
      ...always,
      error: `${what} is given more than once, and the two may disagree`,
      path: group.slice(0, 1),
      params: { expected: `one of ${groups.map((g) => g.join(' with ')).join(', or ')}` },
    },
  })),
);

const once = <T extends z.ZodType>(schema: T): T =>
  again.reduce(
    (made, { fields, before, says }) =>
      made.refine((value) => !(someOf(value, fields) && someOf(value, before)), says),
    schema,
  );

export const tighteningInput = once(shape).refine(
  (value) =>
    !(
      has(value, 'threadInto') &&
      has(value.threadInto, 'material') &&
      has(value.threadInto, 'shearStrength')
    ),
  {
    ...always,
    error: 'what the hole is of is given twice, and the two may disagree',
    path: ['threadInto', 'shearStrength'],
    params: { expected: 'material or shearStrength' },
  },
);

export type TighteningInput = z.infer<typeof shape>;

const settled = (unit: string) => figureOut(unit).nullable();

export const VERDICTS = ['cannot be right', 'may yield', 'may strip', 'too loose', 'fits'] as const;
export type Verdict = (typeof VERDICTS)[number];

export const tighteningOutput = z.strictObject({
  pitchDiameter: settled('mm'),
  rootDiameter: settled('mm'),
  minorDiameter: settled('mm'),
  stressArea: settled('mm2'),
  proofLoad: settled('kN'),
  breakingLoad: settled('kN'),
  yieldPoint: settled('N/mm2'),
  preload: settled('kN'),
  preloadMin: settled('kN'),
  torque: settled('N.m'),
  nutFactor: settled('1'),
  stripping: z
    .strictObject({
      load: figureOut('kN'),
      share: settled('1').describe('preload over load'),
      weaker: z.enum(['hole', 'bolt']).describe('whose thread shears first'),
    })
    .nullable(),
  issued: z
    .strictObject({
      preloadMin: figureOut('kN'),
      preloadMax: figureOut('kN'),
      yieldShareMin: settled('1'),
      yieldShareMax: settled('1'),
      verdict: z.enum(VERDICTS).nullable(),
    })
    .nullable(),
  ...commonOut,
});

export type TighteningOutput = z.infer<typeof tighteningOutput>;
