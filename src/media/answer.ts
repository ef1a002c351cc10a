// `sea-water`: what water and sea water are at a temperature, and where they boil.

import { missing, quantity } from '../quantity/sheet.ts';
import type { Problem } from '../quantity/types.ts';
import { densityKgM3, heatCapacityJKgK, SURFACE_PA } from './gibbs.ts';
import type { SeaWaterInput, SeaWaterOutput } from './model.ts';
import {
  BOILS_TO_C,
  type Boils,
  boilsAt,
  EXACT_TO_C,
  FIT_VAPOUR_C,
  GIBBS_VAPOUR_C,
  HIGHEST_C,
  LOWEST_C,
  vapourPressurePa,
  viscosityPas,
} from './sea-water.ts';
import { seaWaterRows } from './working.ts';

export type SeaWaterAnswer =
  | { readonly ok: true; readonly result: SeaWaterOutput }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const FREE_SALT = 0.042;
const FREE_PRESSURE_PA = 300_000;
const LOW_PRESSURE_PA = 1e7;

export function seaWater(input: SeaWaterInput): SeaWaterAnswer {
  const salinity = input.salinity.value / 1_000;
  const pressurePa =
    input.pressure === undefined
      ? SURFACE_PA
      : Number((input.pressure.value * 1e6).toPrecision(15));
  const t = input.temperature?.value ?? null;
  const vapourPressure = t === null ? null : vapourPressurePa(salinity, t);
  if (vapourPressure !== null && pressurePa < vapourPressure) {
    const expected = `more than ${(vapourPressure / 1e6).toPrecision(4)} MPa absolute`;
    const why = 'at this temperature it would all be steam: its vapour pressure is higher';
    const got = input.pressure?.value ?? null;
    return { ok: false, problems: [{ path: 'pressure', got, expected, why }] };
  }
  const boils = boilsAt(salinity, pressurePa);
  if (t === null && boils === null) {
    const why = 'without a temperature only the boiling point is asked, and it lies outside';
    const expected = `a pressure at which it boils between ${LOWEST_C} and ${BOILS_TO_C} °C`;
    const got = input.pressure?.value ?? null;
    return { ok: false, problems: [{ path: 'pressure', got, expected, why }] };
  }
  const rho = t === null ? null : densityKgM3({ salinity, temperatureC: t, pressurePa });
  const cp = t === null ? null : heatCapacityJKgK({ salinity, temperatureC: t, pressurePa });
  const mu = t === null ? null : viscosityPas(salinity, t);
  const out = (value: number | null, unit: string) =>
    value === null ? null : quantity(value, unit);
  const result = {
    density: out(rho, 'kg/m3'),
    heatCapacity: out(cp, 'J/(kg.K)'),
    viscosity: out(mu, 'Pa.s'),
    kinematicViscosity: out(mu === null || rho === null ? null : mu / rho, 'm2/s'),
    vapourPressure: out(vapourPressure, 'Pa'),
    boilsAt: out(boils?.temperatureC ?? null, 'Cel'),
  };
  const need = ['temperature'];
  const needs = {
    ...{ density: need, heatCapacity: need, viscosity: need },
    ...{ kinematicViscosity: need, vapourPressure: need },
    boilsAt: [`a pressure at which it boils between ${LOWEST_C} and ${BOILS_TO_C} °C`],
  };
  const shown = { viscosity: mu, vapourPressure, boils };
  return {
    ok: true,
    result: {
      ...result,
      working: [...seaWaterRows({ salinity, pressurePa }, t, shown)],
      cautions: cautionsOf(salinity, pressurePa, t, boils),
      notWorkedOut: [...missing(result, needs)],
    } as SeaWaterOutput,
  };
}

function cautionsOf(
  salinity: number,
  pressurePa: number,
  t: number | null,
  boils: Boils | null,
): string[] {
  const said: string[] = [];
  if (t !== null && t > EXACT_TO_C) {
    said.push(
      `Above ${EXACT_TO_C} °C, to ${HIGHEST_C} °C, heat capacity is within 0.001 of its value ` +
        'and density within 0.0000011 of the formulation for all pure water.',
    );
  }
  if (t !== null && t < 0) {
    said.push('The fit of the viscosity holds from 0 to 180 °C; this is below.');
    const freezes = freezesAt(1_000 * salinity);
    if (t < freezes) {
      said.push(`It would freeze at about ${freezes.toFixed(1)} °C (from memory).`);
    }
  }
  const wide = salinity > FREE_SALT || (t !== null && t > EXACT_TO_C);
  if (t !== null && wide && salinity > 0 && pressurePa > FREE_PRESSURE_PA) {
    said.push(
      'Above 42 g/kg or 40 °C the formulation is stated near atmospheric pressure (from memory).',
    );
  }
  if (t !== null && pressurePa > LOW_PRESSURE_PA) {
    said.push('The viscosity is that at atmospheric pressure.');
  }
  if (boils !== null && boils.by === 'fit') {
    const beyond = boils.temperatureC > FIT_VAPOUR_C ? ', and here beyond it' : '';
    said.push(
      `It boils above ${GIBBS_VAPOUR_C} °C, where a published fit stands in for the Gibbs ` +
        `function; the fit holds to ${FIT_VAPOUR_C} °C${beyond}.`,
    );
  }
  return said;
}

/** °C, near enough for a warning (UNESCO 1983 form, from memory), S g/kg. */
const freezesAt = (salt: number): number =>
  -0.0575 * salt + 1.710523e-3 * salt ** 1.5 - 2.154996e-4 * salt ** 2;
