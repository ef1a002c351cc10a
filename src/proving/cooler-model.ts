// What `cooler` takes and gives: the shapes at its border.

import { z } from 'zod';
import { FLUID_SPELLINGS, FLUIDS } from '../media/fluid.ts';
import { commonOut, figure, figureOut } from '../quantity/border.ts';

const count = z.int().min(1).max(20);
const KINDS = ['counterflow', 'parallel', 'shell-and-tube', 'crossflow', 'plate'] as const;

const layout = {
  shells: count.optional().describe('shell-and-tube; 1 unless given'),
  tubePasses: count.optional().describe('in each shell; 2 unless given'),
  hotMixed: z.boolean().optional().describe('crossflow; false unless given'),
  coldMixed: z.boolean().optional(),
  hotPasses: count.optional().describe('plate; 1 unless given'),
  coldPasses: count.optional(),
};

const positive = (unit: string, says: string, max = 1e12) => figure(unit, { above: 0, max, says });
const temperature = figure('Cel', {
  min: -273.15,
  max: 2_000,
  says: 'below the absolute zero, or hotter than any cooler',
});

const mass = positive('kg/s', 'a flow is more than nought', 1e6);
const volume = positive('m3/s', 'a flow is more than nought', 1e4);
const flow = z.union([mass, volume]);

const heatCapacity = positive('J/(kg.K)', 'a heat capacity is more than nought', 1e6);
const latentHeat = positive('kJ/kg', 'a latent heat is more than nought', 1e5);
const density = positive('kg/m3', 'a density is more than nought', 3e4);
const name = z.enum([...FLUIDS, ...FLUID_SPELLINGS]);
const salinity = figure('g/kg', { min: 0, max: 120, says: 'no sea holds that much salt' });

const fluid = z.union([
  name,
  z.strictObject({ name, salinity: salinity.optional() }),
  z.strictObject({ heatCapacity, density: density.optional() }),
  z.strictObject({ latentHeat, density: density.optional() }),
]);

export const sideInput = z.strictObject({
  fluid: fluid.optional(),
  heatCapacity: heatCapacity.optional(),
  latentHeat: latentHeat.optional().describe('condensing or boiling: in is out'),
  density: density.optional().describe('for a volume flow'),
  flow: flow.optional().describe('kg/s, or a volume flow with its unit'),
  in: temperature.optional(),
  out: temperature.optional(),
});

export type SideInput = z.infer<typeof sideInput>;

export const coolerInput = z.strictObject({
  arrangement: z
    .union([z.enum(KINDS), z.strictObject({ kind: z.enum(KINDS), ...layout })])
    .optional(),
  ...layout,
  hot: sideInput.optional(),
  cold: sideInput.optional(),
  duty: positive('kW', 'a duty is more than nought').optional(),
  effectiveness: figure('1', {
    above: 0,
    max: 1,
    says: 'a share of the greatest possible duty is above 0 and at most 1',
  }).optional(),
  area: positive('m2', 'an area is more than nought').optional(),
  cleanU: positive('W/(m2.K)', 'it is more than nought').optional(),
  U: positive('W/(m2.K)', 'it is more than nought').optional(),
  fouling: figure('m2.K/W', {
    min: 0,
    max: 10,
    says: 'fouling resists, so it is nought or more',
  }).optional(),
});

export type CoolerInput = z.infer<typeof coolerInput>;

const settled = (unit: string) => figureOut(unit).nullable();
const sideOutput = z.strictObject({
  flow: settled('kg/s'),
  in: settled('Cel'),
  out: settled('Cel'),
});

export const coolerOutput = z.strictObject({
  duty: settled('kW'),
  lmtd: settled('K').describe('before correction'),
  correction: settled('1'),
  ua: settled('W/K'),
  effectiveness: settled('1'),
  ntu: settled('1'),
  capacityRatio: settled('1'),
  U: settled('W/(m2.K)'),
  area: settled('m2'),
  fouling: settled('m2.K/W'),
  hot: sideOutput,
  cold: sideOutput,
  solved: z.array(z.string()).describe('inputs that were not given and are worked out'),
  ...commonOut,
});

export type CoolerOutput = z.infer<typeof coolerOutput>;
