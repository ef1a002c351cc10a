// What `wrench-setting` takes and gives: the shapes at its border.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { commonOut, figure, figureOut } from '../quantity/border.ts';

const torque = (says: string) => figure('N.m', { above: 0, says });
const length = (bound: { above?: number; min?: number }, from: string) =>
  figure('mm', {
    ...bound,
    max: limits.bolting.leverMm,
    says: `from the drive square to ${from}: beyond all sense as a length, or a slip of the unit`,
  });
const day = z.string().describe('a day, as 2026-11-25');

export const wrenchInput = z.strictObject({
  min: figure('N.m', { min: 0, says: 'a wrench begins at nought or above' }).optional(),
  max: torque('a wrench ends above nought').optional(),
  tolerance: figure('1', { min: 0, below: 1, says: 'a tolerance is a fraction' }).optional(),
  calibratedOn: day.optional(),
  intervalMonths: z.int().min(1).max(120).optional().describe('12 unless given'),
  intervalCycles: z.int().min(1).optional().describe('5000 unless given'),
  cyclesSince: z.int().min(0).optional(),
});

export const wrenchSettingInput = z.strictObject({
  torque: torque('a torque to tighten with is more than nought').optional(),
  setting: torque('a wrench is set to more than nought').optional(),
  runDown: figure('N.m', {
    min: 0,
    says: 'the torque that turns a nut down is nought or more',
  }).optional(),
  includesRunDown: z.boolean().default(false),
  wrenchLength: length({ above: 0 }, 'the middle of the hand').optional(),
  adapterLength: length({ min: 0 }, 'the axis of the bolt').optional(),
  adapterAngle: figure('deg', {
    min: 0,
    max: 180,
    says: '0 is straight ahead, 90 square to the wrench, 180 pointing back',
  }).optional(),
  wrench: wrenchInput.optional(),
  on: day.optional(),
});

export type WrenchSettingInput = z.infer<typeof wrenchSettingInput>;

export const wrenchSettingOutput = z.strictObject({
  setting: figureOut('N.m').nullable(),
  torque: figureOut('N.m').nullable(),
  factor: figureOut('1').nullable(),
  gripPoint: figureOut('mm').nullable(),
  usable: z.boolean().nullable(),
  reasons: z.array(z.string()),
  ...commonOut,
});
