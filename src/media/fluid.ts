// A fluid by its name, as pumps and coolers meet it: density, heat capacity, vapour pressure.

import { densityKgM3, heatCapacityJKgK, KELVIN, SURFACE_PA } from './gibbs.ts';
import { glycolMixture } from './glycol.ts';
import { HIGHEST_C, LOWEST_C, STANDARD_SALINITY, vapourPressurePa } from './sea-water.ts';
import { densityOf, potentialJKg } from './steam.ts';

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

/** Fresh water is known further than sea water, by IAPWS-95. */
export const FRESH_TO_C = 120;

// Heat capacity by the second difference of the potential over a degree to each side.
function hotFreshWater(temperatureC: number): Fluid {
  const at = (by: number) => {
    const kelvin = temperatureC + KELVIN + by;
    return potentialJKg(densityOf('liquid', HOT_PA, kelvin), kelvin);
  };
  const bend = at(1) - 2 * at(0) + at(-1);
  return {
    densityKgM3: densityOf('liquid', HOT_PA, temperatureC + KELVIN),
    heatCapacityJKgK: -(temperatureC + KELVIN) * bend,
    vapourPressurePa: vapourPressurePa(0, temperatureC),
  };
}

// So that it is liquid to 120 °C; heat capacity and density hardly feel the pressure.
const HOT_PA = 250_000;

/** What a fluid of this name is at a temperature; null outside its range. */
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
  const salinity = name === 'sea water' || name === 'seawater' ? saltGKg / 1_000 : 0;
  const highest = salinity === 0 ? FRESH_TO_C : HIGHEST_C;
  if (temperatureC < LOWEST_C || temperatureC > highest) return null;
  if (temperatureC > HIGHEST_C) return hotFreshWater(temperatureC);
  const state = { salinity, temperatureC, pressurePa: SURFACE_PA };
  return {
    densityKgM3: densityKgM3(state),
    heatCapacityJKgK: heatCapacityJKgK(state),
    vapourPressurePa: vapourPressurePa(salinity, temperatureC),
  };
}
