// A fluid by its name, as pumps and coolers meet it: density, heat capacity, vapour pressure.

import { densityKgM3, heatCapacityJKgK, SURFACE_PA } from './gibbs.ts';
import { glycolMixture } from './glycol.ts';
import { HIGHEST_C, LOWEST_C, STANDARD_SALINITY, vapourPressurePa } from './sea-water.ts';

export const FLUIDS = [
  'fresh water',
  'sea water',
  'ethylene glycol coolant 30 %',
  'ethylene glycol coolant 40 %',
  'ethylene glycol coolant 50 %',
] as const;
export type FluidName = (typeof FLUIDS)[number];

/** Spellings people use; a coolant without its share is taken as no fluid. */
export const FLUID_SPELLINGS = ['water', 'seawater', 'freshwater'] as const;
export type FluidSpelling = FluidName | (typeof FLUID_SPELLINGS)[number];

export type Fluid = {
  readonly densityKgM3: number;
  readonly heatCapacityJKgK: number;
  /** Null where no formula is kept here. */
  readonly vapourPressurePa: number | null;
};

const fraction: Readonly<Record<string, number>> = {
  'ethylene glycol coolant 30 %': 0.3,
  'ethylene glycol coolant 40 %': 0.4,
  'ethylene glycol coolant 50 %': 0.5,
};

/** The widest that a fluid is known for, °C. */
export const FLUID_RANGE_C = { water: [LOWEST_C, HIGHEST_C], glycol: [0, 100] } as const;

/** Null outside its range. Fresh water above 60 °C has no formula here. */
export function fluidOf(
  name: FluidSpelling,
  temperatureC: number,
  saltGKg = STANDARD_SALINITY,
): Fluid | null {
  const glycol = fraction[name];
  if (glycol !== undefined) {
    const mixture = glycolMixture(glycol, temperatureC);
    return mixture === null ? null : { ...mixture, vapourPressurePa: null };
  }
  if (temperatureC < LOWEST_C || temperatureC > HIGHEST_C) return null;
  const salinity = name === 'sea water' || name === 'seawater' ? saltGKg / 1_000 : 0;
  const state = { salinity, temperatureC, pressurePa: SURFACE_PA };
  return {
    densityKgM3: densityKgM3(state),
    heatCapacityJKgK: heatCapacityJKgK(state),
    vapourPressurePa: vapourPressurePa(salinity, temperatureC),
  };
}
