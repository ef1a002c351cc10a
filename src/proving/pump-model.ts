// What `pump-test` takes and gives: the shapes at its border.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { FLUID_SPELLINGS, FLUIDS } from '../media/fluid.ts';
import { commonOut, figure, figureOut } from '../quantity/border.ts';
import { VERDICTS } from '../quantity/conformity.ts';
import { GRADES } from './tables/iso9906.ts';

const more = (unit: string, says: string, max = 1e9) => figure(unit, { above: 0, max, says });
const least = (unit: string, says: string, max = 1e9) => figure(unit, { min: 0, max, says });

const speed = more('1/min', 'a speed is more than nought', 1e6);
const flow = least('m3/h', 'a flow is nought or more', 1e7);
const gauge = figure('kPa', {
  min: -101.4,
  max: 1e6,
  says: 'gauge pressure, never below a vacuum',
});
const head = figure('m', { min: -1e4, max: 1e5, says: 'no pump gives such a head' });
const power = least('kW', 'a power is nought or more', 1e6);
const bore = more('mm', 'a bore is more than nought', 1e4);

const rotodynamic = z.strictObject({
  kind: z.enum(['centrifugal', 'rotodynamic']).optional(),
  speed: speed.optional(),
  points: z
    .array(z.strictObject({ flow, head, power: power.optional() }))
    .max(limits.proving.points)
    .optional(),
});

const displacement = z.strictObject({
  kind: z.enum(['positive-displacement', 'flexible-impeller']),
  displacement: more('L', 'a displacement is more than nought', 1e5).describe('litres a turn'),
  points: z
    .array(
      z.strictObject({
        speed,
        pressure: figure('kPa', { min: -1e4, max: 1e6, says: 'discharge less suction' }),
        flow,
      }),
    )
    .max(limits.proving.points)
    .optional(),
});

const byTime = z.strictObject({
  volume: more('L', 'a volume is more than nought'),
  time: more('s', 'a time is more than nought'),
});

export const readingInput = z.strictObject({
  speed: speed.optional(),
  suction: gauge.optional(),
  discharge: gauge.optional(),
  head: head.optional(),
  flow: z.union([flow, byTime]).optional(),
  power: power.optional(),
});

const share = z.union([
  figure('1', { min: 0, max: 1, says: 'a tolerance is a fraction, as 0.05' }),
  z.tuple([figure('1'), figure('1')]),
]);
const tolerances = z.strictObject({
  headTolerance: share.optional(),
  flowTolerance: share.optional(),
});

export const OUTPUTS = [
  'head',
  'headAtCurveSpeed',
  'flowAtCurveSpeed',
  'powerAtCurveSpeed',
  'theoreticalFlow',
  'slip',
  'deviation',
  'npshAvailable',
] as const;
export type OutputName = (typeof OUTPUTS)[number];

export const UNITS: Readonly<Record<OutputName, string>> = {
  head: 'm',
  headAtCurveSpeed: 'm',
  flowAtCurveSpeed: 'm3/h',
  powerAtCurveSpeed: 'kW',
  theoreticalFlow: 'm3/h',
  slip: '1',
  deviation: '1',
  npshAvailable: 'm',
};

const bound = z.union([z.number(), z.string(), z.looseObject({ value: z.number() })]);
const limit = z.strictObject({
  of: z.enum(OUTPUTS),
  lower: bound.optional(),
  upper: bound.optional(),
  reading: z.int().min(0).optional().describe('of this reading alone, counted from 0'),
});

const instrument = (unit: string) => {
  const spread = z.union([
    figure(unit, { min: 0, says: 'no spread is below nought' }),
    z.string().regex(/^\s*[\d.]+\s*%\s*$/, 'a share of the reading, as "1 %"'),
  ]);
  return z.union([
    z.strictObject({ standard: spread }),
    z.strictObject({ expanded: spread, k: z.number().positive() }),
  ]);
};

export const pumpTestInput = z.strictObject({
  curve: z.union([displacement, rotodynamic]).optional(),
  readings: z.array(readingInput).min(1).max(limits.proving.readings),
  suctionBore: bore.optional(),
  dischargeBore: bore.optional(),
  gaugeHeights: z
    .strictObject({ suction: head.optional(), discharge: head.optional() })
    .optional()
    .describe("above the pump's datum; 0 unless given"),
  atmospheric: more('kPa', 'absolute, so above nought', 1e3)
    .optional()
    .describe('absolute; 101.325 unless given'),
  fluid: z
    .union([
      z.enum([...FLUIDS, ...FLUID_SPELLINGS]),
      z.strictObject({
        name: z.enum([...FLUIDS, ...FLUID_SPELLINGS]),
        temperature: figure('Cel', { min: -50, max: 150, says: 'no cooling water' }).optional(),
        salinity: figure('g/kg', { min: 0, max: 120, says: 'no sea holds that much' }).optional(),
      }),
      z.strictObject({
        density: more('kg/m3', 'a density is more than nought', 3e4).optional(),
        vapourPressure: least('kPa', 'absolute, so nought or more').optional(),
      }),
    ])
    .optional(),
  grade: z.union([z.enum(GRADES), tolerances]).optional(),
  headTolerance: share.optional(),
  flowTolerance: share.optional(),
  limits: z.array(limit).max(100).optional(),
  instruments: z
    .strictObject({
      suction: instrument('kPa').optional(),
      discharge: instrument('kPa').optional(),
      speed: instrument('1/min').optional(),
      flow: instrument('m3/h').optional(),
      head: instrument('m').optional(),
      power: instrument('kW').optional(),
    })
    .optional(),
  seed: z.int().min(0).max(4_294_967_295).optional().describe('of the draws; 1 unless given'),
});

export type PumpTestInput = z.infer<typeof pumpTestInput>;
export type ReadingInput = z.infer<typeof readingInput>;

const found = (unit: string) =>
  figureOut(unit)
    .extend({
      monteCarlo: z
        .strictObject({ u: z.number(), 'p2.5': z.number(), 'p97.5': z.number() })
        .optional(),
    })
    .nullable();

export const pumpTestOutput = z.strictObject({
  readings: z.array(
    z.strictObject({
      head: found('m'),
      headAtCurveSpeed: found('m'),
      flowAtCurveSpeed: found('m3/h'),
      powerAtCurveSpeed: found('kW'),
      theoreticalFlow: found('m3/h'),
      slip: found('1'),
      deviation: found('1'),
      npshAvailable: found('m'),
      verdict: z.enum(VERDICTS).nullable(),
      probabilityConforming: figureOut('1').nullable(),
    }),
  ),
  verdict: z.enum(VERDICTS).nullable(),
  probabilityConforming: figureOut('1').nullable().describe('of the least likely requirement'),
  settledBy: z
    .strictObject({ reading: z.int(), measure: z.string(), why: z.string() })
    .nullable()
    .describe('the one reading that would settle a verdict of cannot tell'),
  restsOn: z.string().nullable().describe('the weakest source of the limits'),
  ...commonOut,
});

export type PumpTestOutput = z.infer<typeof pumpTestOutput>;
