// What `sea-water` takes and gives: the shapes at its border.

import { z } from 'zod';
import { commonOut, figure, figureOut } from '../quantity/border.ts';
import { HIGHEST_C, LOWEST_C } from './sea-water.ts';

export const MOST_SALT_G_KG = 120;
export const MOST_PRESSURE_MPA = 100;

export const seaWaterInput = z.strictObject({
  temperature: figure('Cel', {
    min: LOWEST_C,
    max: HIGHEST_C,
    says: `the formulas of density and heat capacity hold from ${LOWEST_C} to ${HIGHEST_C} °C`,
  }).optional(),
  salinity: figure('g/kg', {
    min: 0,
    max: MOST_SALT_G_KG,
    says: 'no sea holds that much salt, and the formulas end there',
  }).describe('absolute: 35.16504/35 times the practical salinity; 0 is fresh water'),
  pressure: figure('MPa', {
    above: 0,
    max: MOST_PRESSURE_MPA,
    says: 'an absolute pressure is above nought, and the formulas end at 100 MPa',
  })
    .optional()
    .describe('absolute; 0.101325 unless given'),
});

export type SeaWaterInput = z.infer<typeof seaWaterInput>;

const settled = (unit: string) => figureOut(unit).nullable();

export const seaWaterOutput = z.strictObject({
  density: settled('kg/m3'),
  heatCapacity: settled('J/(kg.K)'),
  viscosity: settled('Pa.s'),
  kinematicViscosity: settled('m2/s'),
  vapourPressure: settled('Pa'),
  boilsAt: settled('Cel'),
  ...commonOut,
});

export type SeaWaterOutput = z.infer<typeof seaWaterOutput>;
