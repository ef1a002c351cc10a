// What `joint` takes in and gives out: the shapes at its border.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { commonOut, figure, figureOut } from '../quantity/border.ts';

/** Nothing is as small as this: what is smaller is a slip of the unit. */
const LEAST = 1e-9;
const above = (unit: string, max: number) => figure(unit, { above: LEAST, max });
const modulus = above('GPa', 2_000);
const stiffness = above('kN/mm', 1_000_000_000);
const { layers } = limits.tightening;

const shape = z.strictObject({
  bolt: z
    .array(z.strictObject({ area: above('mm2', 1_000_000), length: above('mm', 20_000) }))
    .min(1)
    .max(layers)
    .optional()
    .describe('the pieces of the bolt between head and nut, one after the other'),
  modulus: modulus.optional().describe('of the bolt'),
  boltStiffness: stiffness.optional(),
  clamped: z
    .array(z.strictObject({ modulus, thickness: above('mm', 20_000) }))
    .min(1)
    .max(layers)
    .optional()
    .describe('the layers from head to nut'),
  diameter: above('mm', 1_000).optional(),
  method: z.enum(['cone', 'wileman']).optional().describe('default: cone'),
  clampedStiffness: stiffness.optional(),
  preload: figure('kN', { min: 0, max: 1_000_000 }).optional(),
  load: figure('kN', { min: 0, max: 1_000_000 }).optional().describe('a bolt, pulling it open'),
  proofLoad: above('kN', 1_000_000).optional(),
  embedding: figure('um', { min: 0, max: 1_000 }).optional(),
});

const has = (value: unknown, field: string): boolean =>
  typeof value === 'object' &&
  value !== null &&
  (value as Readonly<Record<string, unknown>>)[field] !== undefined;

const ofTwo = (worked: string, given: string) =>
  [
    (value: unknown) => !(has(value, worked) && has(value, given)),
    {
      // Said besides whatever else is wrong, so that all of it comes at once.
      when: () => true,
      error: `${given} is given, and ${worked} to work it out from: they may disagree`,
      path: [given] as PropertyKey[],
      params: { expected: `${given} or ${worked}` },
    },
  ] as const;

export const jointInput = shape
  .refine(...ofTwo('bolt', 'boltStiffness'))
  .refine(...ofTwo('clamped', 'clampedStiffness'));

export type JointInput = z.infer<typeof shape>;

const settled = (unit: string) => figureOut(unit).nullable();

export const jointOutput = z.strictObject({
  boltStiffness: settled('kN/mm'),
  clampedStiffness: settled('kN/mm'),
  loadShare: settled('1').describe('of the load that pulls, what the bolt sees'),
  boltLoad: settled('kN'),
  residualClamp: settled('kN').describe('below nought: the joint opens'),
  embeddingLoss: settled('kN'),
  proofFactor: settled('1'),
  loadFactor: settled('1'),
  separationFactor: settled('1'),
  ...commonOut,
});

export type JointOutput = z.infer<typeof jointOutput>;
