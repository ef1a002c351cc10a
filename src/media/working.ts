// The arithmetic of sea water row by row, made from the same tables as the figures.

import { newSheet, type Sheet } from '../quantity/sheet.ts';
import type { Source, WorkingRow } from '../quantity/types.ts';
import {
  CELSIUS_UNIT,
  densityKgM3,
  groupsOf,
  heatCapacityJKgK,
  KELVIN,
  PRESSURE_UNIT_PA,
  reduced,
  type State,
  SURFACE_PA,
  UNIT_SALINITY,
} from './gibbs.ts';
import { fittedVapourPa, vapourPressurePa, viscosityPas } from './sea-water.ts';
import { powerSum, powerSumText, type Term } from './sum.ts';
import { vapour, viscosity } from './tables/correlations.ts';
import { type GibbsTerm, provenance, saline, water } from './tables/gibbs.ts';

const entered: Source = { kind: 'entered', by: 'the input' };
const computed: Source = { kind: 'computed', by: 'sea-water' };
const release = (part: keyof typeof provenance): Source => {
  const { title, edition, place } = provenance[part];
  return { kind: 'published', title, edition, place };
};

/** How a term changes when it is differentiated by temperature. */
type Change = (j: number, g: number) => Term;

const saltText = (i: number): string =>
  i === 0 ? '1' : i === 1 ? 'x^2*ln(x)' : i === 2 ? 'x^2' : `x^${i}`;
const saltValue = (x: number, i: number): number =>
  i === 0 ? 1 : i === 1 ? x * x * Math.log(x) : x ** i;

type Part = { readonly value: number; readonly text: string };

function partOf(terms: readonly GibbsTerm[], change: Change, x: number, tau: number): Part {
  const powers = [...new Set(terms.map(([i]) => i))];
  let value = 0;
  const texts: string[] = [];
  for (const i of powers) {
    const sum = terms.filter((term) => term[0] === i).map(([, j, , g]) => change(j, g));
    value += powerSum(sum, tau) * saltValue(x, i);
    const text = powerSumText(sum, 'tau');
    texts.push(i === 0 ? text : `(${text})*${saltText(i)}`);
  }
  return { value, text: texts.join('+') };
}

// Rows w0, w1, … and s0, s1, …: what stands before each power of the pressure.
function groupRows({ work }: Sheet, letter: string, state: State, change: Change, least: number) {
  const { x, tau } = reduced(state);
  const rows: { readonly k: number; readonly symbols: string[] }[] = [];
  const from = (part: 'water' | 'saline', terms: readonly GibbsTerm[], sign: string) => {
    const kept = terms.filter(([, j]) => j >= least);
    for (const { k, terms: group } of groupsOf(kept)) {
      const { value, text } = partOf(group, change, x, tau);
      const symbol = `${letter}${sign}${k}`;
      const what = part === 'water' ? 'pure water' : 'salt';
      work(symbol, `${what}, before π to the power ${k}`, text, value, 'J/kg', release(part));
      const row = rows.find((one) => one.k === k);
      if (row === undefined) rows.push({ k, symbols: [symbol] });
      else row.symbols.push(symbol);
    }
  };
  from('water', water, 'w');
  if (state.salinity > 0) from('saline', saline, 's');
  return rows;
}

const bracket = (symbols: readonly string[]): string => `(${symbols.join('+')})`;

function densityRows(sheet: Sheet, state: State, rho: number): void {
  const rows = groupRows(sheet, 'v', state, (j, g) => [g, j], 0).filter(({ k }) => k > 0);
  const sum = rows
    .map(({ k, symbols }) => {
      const power = k === 1 ? '' : k === 2 ? '*pi_' : `*pi_^${k - 1}`;
      return `${k === 1 ? '' : `${k}*`}${bracket(symbols)}${power}`;
    })
    .join('+');
  const volume = `(${sum})/${PRESSURE_UNIT_PA}`;
  sheet.work('v', 'specific volume, ∂g/∂p', volume, 1 / rho, 'm3/kg', release('water'));
  sheet.work('rho', 'density', '1/v', rho, 'kg/m3', computed);
}

function heatRows(sheet: Sheet, state: State, cp: number): void {
  const change: Change = (j, g) => [g * j * (j - 1), j - 2];
  const rows = groupRows(sheet, 'c', state, change, 2);
  const sum = rows
    .map(({ k, symbols }) => {
      const power = k === 0 ? '' : k === 1 ? '*pi_' : `*pi_^${k}`;
      return `${bracket(symbols)}${power}`;
    })
    .join('+');
  const expression = `-(t+${KELVIN})/${CELSIUS_UNIT}^2*(${sum})`;
  sheet.work('cp', 'heat capacity, −T ∂²g/∂T²', expression, cp, 'J/(kg.K)', release('water'));
}

function viscosityRows({ work }: Sheet, mu: number, t: number): void {
  const [c0, c1, c2, c3] = viscosity.water;
  const [a0, a1, a2] = viscosity.a;
  const [b0, b1, b2] = viscosity.b;
  const pure = `${c0}+1/(${c1}*(t+${c2})^2+${c3})`.replaceAll('+-', '-');
  const { source } = viscosity;
  work('muw', 'viscosity of pure water', pure, viscosityPas(0, t), 'Pa.s', source);
  const factor = `(1+(${a0}+${a1}*t+${a2}*t^2)*s+(${b0}+${b1}*t+${b2}*t^2)*s^2)`;
  work('mu', 'viscosity', `muw*${factor.replaceAll('+-', '-')}`, mu, 'Pa.s', source);
}

function vapourRows({ take, work }: Sheet, pv: number, t: number, s: number): void {
  const text = 'vapour pressure, by equal chemical potential of water and steam';
  const pure = vapourPressurePa(0, t);
  take('pw', 'vapour pressure of pure water, the same way', pure, 'Pa', release('steam'));
  take('pv', text, pv, 'Pa', release('steam'));
  const [s1, s2] = vapour.salt;
  const fit = `pw*exp(${s1}*1000*s+${s2}*(1000*s)^2)`.replaceAll('+-', '-');
  const salt = 1_000 * s;
  const value = pure * Math.exp(s1 * salt + s2 * salt * salt);
  work('pf', 'the same by a published fit, to compare', fit, value, 'Pa', vapour.source);
}

function boilingRows({ take, work }: Sheet, boils: number, byFit: boolean, s: number): void {
  const source = byFit ? vapour.source : release('steam');
  take('tb', 'where the vapour pressure is p', boils, 'Cel', source);
  if (!byFit) return;
  const [a1, a2, a3, a4, a5, a6] = vapour.water;
  const [s1, s2] = vapour.salt;
  const line = `${a1}/(tb+${KELVIN})+${a2}+${a3}*(tb+${KELVIN})+${a4}*(tb+${KELVIN})^2`;
  const more = `+${a5}*(tb+${KELVIN})^3+${a6}*ln(tb+${KELVIN})`;
  const salt = `+${s1}*1000*s+${s2}*(1000*s)^2`;
  const sum = `exp(${line}${more}${salt})`.replaceAll('+-', '-');
  work('pb', 'vapour pressure there', sum, fittedVapourPa(s, boils), 'Pa', source);
}

export type Shown = {
  readonly viscosity: number | null;
  readonly vapourPressure: number | null;
  readonly boils: { readonly temperatureC: number; readonly by: 'gibbs' | 'fit' } | null;
};

/** All rows; without a temperature those of the boiling point alone. */
export function seaWaterRows(
  given: { readonly salinity: number; readonly pressurePa: number },
  temperatureC: number | null,
  shown: Shown,
): readonly WorkingRow[] {
  const sheet = newSheet();
  const s = given.salinity;
  sheet.take('s', 'salt, a mass fraction', s, '1', entered);
  sheet.take('p', 'absolute pressure', given.pressurePa, 'Pa', entered);
  if (temperatureC !== null) {
    const state: State = { ...given, temperatureC };
    const { x, tau, pi } = reduced(state);
    const reducing = release('saline');
    sheet.take('t', 'temperature', temperatureC, 'Cel', entered);
    if (s > 0) {
      sheet.work('x', 'root of reduced salinity', `sqrt(s/${UNIT_SALINITY})`, x, '1', reducing);
    }
    sheet.work('tau', 'reduced temperature', `t/${CELSIUS_UNIT}`, tau, '1', reducing);
    const ratio = `(p-${SURFACE_PA})/${PRESSURE_UNIT_PA}`;
    sheet.work('pi_', 'reduced pressure π', ratio, pi, '1', reducing);
    densityRows(sheet, state, densityKgM3(state));
    heatRows(sheet, state, heatCapacityJKgK(state));
    if (shown.viscosity !== null) {
      viscosityRows(sheet, shown.viscosity, temperatureC);
      const kinematic = shown.viscosity / densityKgM3(state);
      sheet.work('nu', 'kinematic viscosity', 'mu/rho', kinematic, 'm2/s', computed);
    }
    if (shown.vapourPressure !== null) vapourRows(sheet, shown.vapourPressure, temperatureC, s);
  }
  if (shown.boils !== null) {
    boilingRows(sheet, shown.boils.temperatureC, shown.boils.by === 'fit', s);
  }
  return sheet.rows;
}
