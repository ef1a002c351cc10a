// `sea-water` by TEOS-10's grid, the releases' check values, printed tables, and by laws.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { recheckWorking } from '../quantity/expression.ts';
import type { Working } from '../quantity/types.ts';
import { seaWater } from './answer.ts';
import { densityKgM3, heatCapacityJKgK, potentialShift, type State } from './gibbs.ts';
import { freezesAtC, glycolMixture } from './glycol.ts';
import { seaWaterInput } from './model.ts';
import { boilsAt, fittedVapourPa, vapourPressurePa, viscosityPas } from './sea-water.ts';
import { densityOf, potentialJKg } from './steam.ts';
import data from './tables/sea-water.published.json' with { type: 'json' };

const options = { seed: 20261125, numRuns: process.env.LONG ? 1_000 : 100 };

const { grid, boiling, published } = data;
const rows = grid.rows as readonly (readonly number[])[];
type Checked = { readonly inputs: Record<string, number>; readonly published: unknown };
const printed = (id: string) => {
  const found = published.find((one) => one.id === id);
  if (found === undefined) throw new Error(id);
  const { inputs, published: says } = found as unknown as Checked;
  return { inputs, says: says as Readonly<Record<string, number>> };
};
const off = (found: number, wanted: number | undefined) =>
  Math.abs(found / (wanted ?? Number.NaN) - 1);

function solved(raw: unknown) {
  const answer = seaWater(seaWaterInput.parse(raw));
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer.result;
}

describe('the grid of TEOS-10 (936 states)', () => {
  const worst = { rho: 0, cp: 0, rhoWarm: 0, cpWarm: 0, mu: 0, vapour: 0 };
  for (const [s = 0, t = 0, p = 0, rho, cp, mu, pv] of rows) {
    const state: State = { salinity: s / 1_000, temperatureC: t, pressurePa: p * 1e6 };
    const warm = t > 40 ? 'Warm' : '';
    const keep = (name: keyof typeof worst, value: number) => {
      worst[name] = Math.max(worst[name], value);
    };
    keep(`rho${warm}`, off(densityKgM3(state), rho));
    keep(`cp${warm}`, off(heatCapacityJKgK(state), cp));
    keep('mu', off(viscosityPas(s / 1_000, t), mu));
    keep('vapour', off(vapourPressurePa(s / 1_000, t || 0.01), pv));
  }

  test('to 40 °C density within 1e-6, heat capacity within 1e-5', () => {
    expect(rows).toHaveLength(936);
    expect(worst.rho).toBeLessThan(1e-8);
    expect(worst.cp).toBeLessThan(2e-8);
  });

  test('to 60 °C within what the contract states', () => {
    expect(worst.rhoWarm).toBeLessThan(1.1e-6);
    expect(worst.cpWarm).toBeLessThan(1.02e-3);
    expect(worst.cpWarm).toBeGreaterThan(1e-4);
  });

  test('viscosity as printed, vapour pressure within 2e-6', () => {
    expect(worst.mu).toBeLessThan(5e-6);
    expect(worst.vapour).toBeLessThan(2e-6);
  });
});

describe('check values of the releases', () => {
  test.each(['IAPWS08-A5', 'IAPWS08-A6', 'IAPWS08-A7'])('%s: potential of the water', (id) => {
    const { inputs, says } = printed(id);
    const kelvin = inputs.T_K ?? 0;
    const pressurePa = (inputs.p_MPa ?? 0) * 1e6;
    const state = {
      ...{ salinity: inputs.S_kg_per_kg ?? 0, temperatureC: kelvin - 273.15, pressurePa },
    };
    const pure = potentialJKg(densityOf('liquid', pressurePa, kelvin), kelvin);
    expect(off(pure + potentialShift(state), says.mu_w_J_kg)).toBeLessThan(1e-9);
    // Beyond 40 °C the water part is not the one these values are of.
    if (state.temperatureC > 60) return;
    expect(off(densityKgM3(state), says.rho_kg_m3)).toBeLessThan(3e-8);
    expect(off(heatCapacityJKgK(state), says.cp_J_kgK)).toBeLessThan(1e-5);
  });

  test.each(published.filter(({ id }) => id.startsWith('GSW')))(
    '$id, example of the reference toolbox',
    ({ id }) => {
      const { inputs, says } = printed(id);
      const state = {
        salinity: (inputs.SA_g_kg ?? 0) / 1_000,
        temperatureC: inputs.t_C ?? 0,
        pressurePa: (inputs.p_dbar ?? 0) * 1e4 + 101_325,
      };
      expect(off(densityKgM3(state), says.rho_kg_m3)).toBeLessThan(1e-13);
      expect(off(heatCapacityJKgK(state), says.cp_J_kgK)).toBeLessThan(1e-13);
    },
  );

  test('vapour pressure and boiling point of the TEOS-10 library', () => {
    expect(off(vapourPressurePa(0.035, 274 - 273.15), 638.044692615)).toBeLessThan(1e-10);
    expect((boilsAt(0.035, 640)?.temperatureC ?? 0) + 273.15).toBeCloseTo(274.042416829, 5);
  });

  test('boiling points by equal potential and by the published fit', () => {
    for (const [s, p, equal, fit] of boiling.rows as readonly (readonly (number | null)[])[]) {
      const found = boilsAt((s ?? 0) / 1_000, p ?? 0);
      expect(found?.by).toBe(equal === null ? 'fit' : 'gibbs');
      const wanted = equal ?? fit ?? Number.NaN;
      expect(Math.abs((found?.temperatureC ?? 0) - wanted)).toBeLessThan(1e-4);
    }
  });
});

describe('printed tables, within what they round to or differ by', () => {
  test.each(published.filter(({ id }) => id.startsWith('EOS80-cp')))('$id', ({ id }) => {
    // An older equation of state: up to 1e-3 away, as its recomputation shows.
    const { inputs, says } = printed(id);
    const salinity = ((inputs.S_PSS78 ?? 0) * 35.16504) / 35_000;
    const state = { salinity, temperatureC: inputs.t_IPTS68_C ?? 0, pressurePa: 101_325 };
    expect(off(heatCapacityJKgK(state), says.cp_J_kgK)).toBeLessThan(1e-3);
  });

  test.each(published.filter(({ id }) => id.startsWith('NavalArch')))('$id', ({ id }) => {
    const { inputs, says } = printed(id);
    const t = inputs.t_C ?? 0;
    const at = (salinity: number) => ({ salinity, temperatureC: t, pressurePa: 101_325 });
    expect(off(densityKgM3(at(0)), says.rho_fresh)).toBeLessThan(1.2e-4);
    expect(off(densityKgM3(at(0.03516504)), says.rho_salt)).toBeLessThan(1.2e-4);
    const nu = viscosityPas(0.035, t) / densityKgM3(at(0.035));
    expect(off(1e6 * nu, says.nu_salt_1e6)).toBeLessThan(0.015);
  });

  test.each(published.filter(({ id }) => id.startsWith('LSBU')))('$id', ({ id }) => {
    const { inputs, says } = printed(id);
    const t = inputs.t_C ?? 0;
    const state = { salinity: 0, temperatureC: t, pressurePa: 101_325 };
    expect(Math.abs(densityKgM3(state) - (says.rho ?? 0))).toBeLessThan(0.06);
    expect(Math.abs(vapourPressurePa(0, t) / 1_000 - (says.pv_kPa ?? 0))).toBeLessThan(0.0015);
    expect(Math.abs(1_000 * viscosityPas(0, t) - (says.mu_mPas ?? 0))).toBeLessThan(0.002);
  });
});

describe('the calculation', () => {
  test('its working comes out, with and without salt, above and below 80 °C of boiling', () => {
    for (const raw of [
      { temperature: 20, salinity: 35 },
      { temperature: 0, salinity: 0, pressure: 50 },
      { temperature: 59, salinity: 120, pressure: 0.03 },
      { salinity: 35, pressure: 0.02 },
    ]) {
      const working = solved(raw).working as Working;
      expect(recheckWorking(working)).toEqual([]);
      expect(working.length).toBeGreaterThan(2);
    }
  });

  test('outside its range it is refused, and says the range', () => {
    for (const [raw, path] of [
      [{ temperature: 60.1, salinity: 35 }, 'temperature'],
      [{ temperature: -7, salinity: 35 }, 'temperature'],
      [{ temperature: 20, salinity: 121 }, 'salinity'],
      [{ temperature: 20, salinity: -1 }, 'salinity'],
      [{ temperature: 20, salinity: 35, pressure: 101 }, 'pressure'],
      [{ temperature: 20, salinity: 35, pressure: 0 }, 'pressure'],
    ] as const) {
      expect(seaWaterInput.safeParse(raw).error?.issues[0]?.path).toEqual([path]);
    }
    const steam = seaWater(seaWaterInput.parse({ temperature: 50, salinity: 0, pressure: 0.01 }));
    expect(steam).toMatchObject({ ok: false, problems: [{ path: 'pressure' }] });
  });

  test('what it leaves the range of is said', () => {
    expect(solved({ temperature: 40, salinity: 35 }).cautions).toHaveLength(1);
    expect(solved({ temperature: 41, salinity: 35 }).cautions.join()).toContain('Above 40 °C');
    expect(solved({ temperature: 20, salinity: 35, pressure: 5 }).notWorkedOut).toMatchObject([
      { output: 'boilsAt' },
    ]);
    expect(solved({ salinity: 35 }).notWorkedOut).toHaveLength(5);
  });
});

describe('laws', () => {
  const salt = fc.double({ min: 0, max: 0.12, noNaN: true });
  const warmth = fc.double({ min: 0, max: 60, noNaN: true });

  test('salt makes water heavier, and harder to boil away', () => {
    fc.assert(
      fc.property(salt, warmth, (s, t) => {
        const at = (salinity: number) => ({ salinity, temperatureC: t, pressurePa: 101_325 });
        expect(densityKgM3(at(s + 1e-3))).toBeGreaterThan(densityKgM3(at(s)));
        expect(vapourPressurePa(s + 1e-3, t)).toBeLessThan(vapourPressurePa(s, t));
      }),
      options,
    );
  });

  test('it boils where its vapour pressure is the pressure', () => {
    fc.assert(
      fc.property(salt, fc.double({ min: 0, max: 79.9, noNaN: true }), (s, t) => {
        expect(boilsAt(s, vapourPressurePa(s, t))?.temperatureC).toBeCloseTo(t, 8);
      }),
      options,
    );
  });

  test('where the two formulas of vapour meet they are within 3 in a thousand', () => {
    expect(off(fittedVapourPa(0.035, 80), vapourPressurePa(0.035, 80))).toBeLessThan(3e-3);
  });
});

describe('ethylene glycol (coefficients of Melinder)', () => {
  test('30 % at 20 °C is near 1038 kg/m³, pure water near 998', () => {
    // ASHRAE Fundamentals, from memory.
    expect(glycolMixture(0.3, 20)?.densityKgM3).toBeCloseTo(1038, -1);
    expect(glycolMixture(0, 20)?.densityKgM3).toBeCloseTo(998.2, -1);
    expect(glycolMixture(0, 20)?.heatCapacityJKgK).toBeGreaterThan(4_150);
    expect(glycolMixture(0.5, 60)?.heatCapacityJKgK).toBeLessThan(3_600);
  });

  test('outside its range there is none', () => {
    expect(glycolMixture(0.61, 20)).toBeNull();
    expect(glycolMixture(0.5, 101)).toBeNull();
    expect(glycolMixture(0.3, freezesAtC(0.3) - 0.1)).toBeNull();
  });
});
