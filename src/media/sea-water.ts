// Sea and fresh water: viscosity, vapour pressure, boiling point, and where each formula ends.

import { KELVIN, potentialShift } from './gibbs.ts';
import { balancePa } from './steam.ts';
import { vapour, viscosity } from './tables/correlations.ts';

/** The most the formulas of density and heat capacity are taken to. */
export const HIGHEST_C = 60;
export const EXACT_TO_C = 40;
export const LOWEST_C = -6;
/** Up to here vapour comes from equal chemical potential, above from a fit to 180 °C. */
export const GIBBS_VAPOUR_C = 80;
export const FIT_VAPOUR_C = 180;
/** A boiling point beyond the fit is given to here, and said to be beyond. */
export const BOILS_TO_C = 200;
/** Absolute salinity of standard sea water, g/kg, and over practical salinity. */
export const STANDARD_SALINITY = 35.16504;

export function viscosityPas(salinity: number, temperatureC: number): number {
  const [c0, c1, c2, c3] = viscosity.water;
  const [a0, a1, a2] = viscosity.a;
  const [b0, b1, b2] = viscosity.b;
  const t = temperatureC;
  const pure = c0 + 1 / (c1 * (t + c2) ** 2 + c3);
  const a = a0 + a1 * t + a2 * t * t;
  const b = b0 + b1 * t + b2 * t * t;
  return pure * (1 + a * salinity + b * salinity * salinity);
}

/** By equal chemical potential of the water in the sea water and of steam, at that pressure. */
export const vapourPressurePa = (salinity: number, temperatureC: number): number =>
  balancePa(temperatureC + KELVIN, (pressurePa) =>
    salinity === 0 ? 0 : potentialShift({ salinity, temperatureC, pressurePa }),
  );

/** By the fit of Nayar 2016. */
export function fittedVapourPa(salinity: number, temperatureC: number): number {
  const [a1, a2, a3, a4, a5, a6] = vapour.water;
  const [s1, s2] = vapour.salt;
  const kelvin = temperatureC + KELVIN;
  const water =
    a1 / kelvin + a2 + a3 * kelvin + a4 * kelvin ** 2 + a5 * kelvin ** 3 + a6 * Math.log(kelvin);
  const s = 1_000 * salinity;
  return Math.exp(water + s1 * s + s2 * s * s);
}

export type Boils = { readonly temperatureC: number; readonly by: 'gibbs' | 'fit' };

/** Null where it lies outside both formulas. */
export function boilsAt(salinity: number, pressurePa: number): Boils | null {
  if (pressurePa < vapourPressurePa(salinity, LOWEST_C)) return null;
  if (pressurePa <= vapourPressurePa(salinity, GIBBS_VAPOUR_C)) {
    const temperatureC = root((t) => vapourPressurePa(salinity, t), pressurePa, [
      LOWEST_C,
      GIBBS_VAPOUR_C,
    ]);
    return { temperatureC, by: 'gibbs' };
  }
  if (pressurePa > fittedVapourPa(salinity, BOILS_TO_C)) return null;
  const ends = [GIBBS_VAPOUR_C - 1, BOILS_TO_C] as const;
  const temperatureC = root((t) => fittedVapourPa(salinity, t), pressurePa, ends);
  return { temperatureC, by: 'fit' };
}

/** Where a pressure that grows with temperature is met: its logarithm is nearly straight in 1/T. */
function root(
  pressureOf: (temperatureC: number) => number,
  wanted: number,
  [from, to]: readonly [number, number],
): number {
  const off = (inverse: number) => Math.log(pressureOf(1 / inverse - KELVIN) / wanted);
  let [before, now] = [1 / (from + KELVIN), 1 / (to + KELVIN)];
  let offBefore = off(before);
  for (let tries = 0; tries < 40; tries += 1) {
    const offNow = off(now);
    if (offNow === offBefore) break;
    const next = now - (offNow * (now - before)) / (offNow - offBefore);
    before = now;
    offBefore = offNow;
    now = next;
    if (Math.abs(now - before) < 1e-14 * now) break;
  }
  return 1 / now - KELVIN;
}
