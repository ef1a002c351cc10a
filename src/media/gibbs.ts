// Sea water by its Gibbs function (TEOS-10): density, heat capacity, potential of its water.

import { type GibbsTerm, saline, water } from './tables/gibbs.ts';

export const KELVIN = 273.15;
export const SURFACE_PA = 101_325;
/** Salinity of the standard sea water of the formulation, times 40/35, kg/kg. */
export const UNIT_SALINITY = (0.035_165_04 * 40) / 35;
export const CELSIUS_UNIT = 40;
export const PRESSURE_UNIT_PA = 1e8;

export type State = {
  /** Absolute salinity, a mass fraction. */
  readonly salinity: number;
  readonly temperatureC: number;
  readonly pressurePa: number;
};

/** One group of terms with the same power of the pressure: what stands before π^k. */
export type Group = { readonly k: number; readonly terms: readonly GibbsTerm[] };

export const groupsOf = (terms: readonly GibbsTerm[]): readonly Group[] =>
  [...new Set(terms.map(([, , k]) => k))].map((k) => ({
    k,
    terms: terms.filter((term) => term[2] === k),
  }));

type Reduced = { readonly x: number; readonly tau: number; readonly pi: number };

export const reduced = ({ salinity, temperatureC, pressurePa }: State): Reduced => ({
  x: Math.sqrt(salinity / UNIT_SALINITY),
  tau: temperatureC / CELSIUS_UNIT,
  pi: (pressurePa - SURFACE_PA) / PRESSURE_UNIT_PA,
});

// x² ln x goes to nought with x.
const salt = (x: number, i: number): number => {
  if (i === 0) return 1;
  if (x === 0) return 0;
  return i === 1 ? x * x * Math.log(x) : x ** i;
};

const all: readonly GibbsTerm[] = [...water, ...saline];

/** m³/kg: the first derivative by pressure. */
export function specificVolume(state: State): number {
  const { x, tau, pi } = reduced(state);
  let sum = 0;
  for (const [i, j, k, g] of all) {
    if (k > 0) sum += g * salt(x, i) * tau ** j * k * pi ** (k - 1);
  }
  return sum / PRESSURE_UNIT_PA;
}

export const densityKgM3 = (state: State): number => 1 / specificVolume(state);

/** J/(kg·K): −T times the second derivative by temperature. */
export function heatCapacityJKgK(state: State): number {
  const { x, tau, pi } = reduced(state);
  let sum = 0;
  for (const [i, j, k, g] of all) {
    if (j > 1) sum += g * salt(x, i) * j * (j - 1) * tau ** (j - 2) * pi ** k;
  }
  return (-(state.temperatureC + KELVIN) * sum) / CELSIUS_UNIT ** 2;
}

/** J/kg: by how much the salt lowers the chemical potential of the water, g − S ∂g/∂S. */
export function potentialShift(state: State): number {
  const { x, tau, pi } = reduced(state);
  let sum = 0;
  for (const [i, j, k, g] of saline) {
    const left = i === 1 ? -(x * x) / 2 : (1 - i / 2) * salt(x, i);
    sum += g * left * tau ** j * pi ** k;
  }
  return sum;
}
