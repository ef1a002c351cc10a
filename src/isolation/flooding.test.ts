// Flooding and bilge mains against published tables, worked examples and a step-by-step solution.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { runCalc } from '../calc/register.ts';
import { recheckWorking } from '../quantity/expression.ts';
import type { Quantity, Working } from '../quantity/types.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import generated from './tables/flooding.generated.json' with { type: 'json' };
import published from './tables/flooding.published.json' with { type: 'json' };

type Result = {
  readonly inflow: Quantity;
  readonly force: Quantity;
  readonly timeToLevel: Quantity | null;
  readonly levelLimit: Quantity;
  readonly margin: Quantity;
  readonly working: Working;
  readonly cautions: readonly string[];
  readonly notWorkedOut: readonly { readonly output: string; readonly needs: readonly string[] }[];
};

async function flood(raw: unknown): Promise<Result> {
  const answer = await runCalc('flooding', raw, { solver: solveWithHighs });
  if (!answer.ok) throw new Error(JSON.stringify(answer.error));
  const result = answer.result as unknown as Result;
  expect(recheckWorking(result.working)).toEqual([]);
  expect(JSON.stringify(result)).not.toMatch(/NaN|Infinity/);
  return result;
}

async function paths(raw: unknown, name = 'flooding'): Promise<string[]> {
  const answer = await runCalc(name, raw, { solver: solveWithHighs });
  if (answer.ok) throw new Error('it was taken');
  return answer.error.error.problems.map(({ path }) => path).sort();
}

const near = (value: number, expected: number, relative: number) =>
  expect(Math.abs(value / expected - 1)).toBeLessThan(relative);

const GALLON_M3 = 0.003785411784;

test.each(published.tables.map((row) => [`${row.inches} in at ${row.feet} ft`, row] as const))(
  'inflow follows the published table with no contraction, %s',
  async (_, { inches, feet, gallonsPerMinute }) => {
    const hole = { diameter: `${inches} in`, depth: `${feet} ft`, coefficient: 1 };
    const { inflow } = await flood(hole);
    near(inflow.value / GALLON_M3 / 60, gallonsPerMinute, 0.0125);
  },
);

test('inflow at 0.6 is the 47 gal/min quoted for 2 in at 1 ft', async () => {
  const { inflow } = await flood({ diameter: '2 in', depth: '1 ft' });
  near(inflow.value / GALLON_M3 / 60, 47, 0.005);
});

test('force follows TM 55-1915-200-SDC 8-8, 5 in at 9 ft: 78.5 lb', async () => {
  const { force } = await flood({ diameter: '5 in', depth: '9 ft', density: 64 * 16.018463 });
  near(force.value / 4.4482216, 78.5, 0.001);
});

test('inflow follows Subramanya 13.1: 40 mm, 2 m, 0.598: 4.707 l/s', async () => {
  const { inflow } = await flood({ diameter: 40, depth: 2, coefficient: 0.598, density: 1_000 });
  near(inflow.value / 3.6, 4.707, 0.001);
});

test('falling head follows Schaschke 6.6: 0.3 to 0.1 m in 44.957 s', async () => {
  const two = { spaceArea: (8 * 4) / (8 + 4), toLevel: 0.2 };
  const hole = { area: 10_000, depth: 0.3, coefficient: 0.62, density: 1_000 };
  const { inflow, timeToLevel } = await flood({ ...hole, ...two });
  near(inflow.value / 3_600, 0.01504, 0.0005);
  near((timeToLevel?.value ?? 0) * 60, 44.957, 0.0005);
});

test('falling head follows Lal 3.6: 6 to 2 ft through 2 in, 0.619, in 4 min', async () => {
  const tank = { spaceArea: Math.PI * 4 * 0.3048 ** 2, toLevel: '4 ft' };
  const { timeToLevel } = await flood({
    diameter: '2 in',
    depth: '6 ft',
    coefficient: 0.619,
    ...tank,
  });
  near(timeToLevel?.value ?? 0, 4, 0.002);
});

test('falling head follows UFC 4-213-10: 1.8 to 0.4 m in 8155.6 s', async () => {
  const { timeToLevel } = await flood({ diameter: 50, depth: 1.8, spaceArea: 30, toLevel: 1.4 });
  near((timeToLevel?.value ?? 0) * 60, 8_155.573, 1e-6);
});

test.each(generated.flooding.map((one) => [one.id, one] as const))(
  'generated: the differential equation solved step by step, %s',
  async (_, one) => {
    const found = await flood({
      diameter: one.d_m * 1_000,
      depth: one.h0_m,
      holeHeight: one.hole_above_sole_m,
      coefficient: one.Cd,
      spaceArea: one.A_m2,
      permeability: one.permeability,
      toLevel: one.H_m,
      pumps: [{ value: one.Q_pump_m3_s * 3_600, unit: 'm3/h' }],
    });
    near(found.inflow.value, one.Q0_m3_h, 1e-6);
    expect(found.levelLimit.value).toBeCloseTo(one.level_limit_m, 5);
    expect(found.notWorkedOut).toEqual([]);
    if (one.t_to_H_s === null) expect(found.timeToLevel).toBeNull();
    else near((found.timeToLevel?.value ?? 0) * 60, one.t_to_H_s, 1e-5);
  },
);

const hole = { diameter: 50, depth: 0.9, holeHeight: 0.2 };

describe('what is settled and what is not', () => {
  test('without space or level the time is named as wanting, the rest stands', async () => {
    const found = await flood(hole);
    expect(found.timeToLevel).toBeNull();
    const [only] = found.notWorkedOut;
    expect(only).toEqual({ output: 'timeToLevel', needs: ['spaceArea', 'toLevel'] });
    expect(found.levelLimit.value).toBeCloseTo(1.1, 12);
    expect(found.margin.value).toBe(-found.inflow.value);
  });

  test('a level that is never come to is null and settled', async () => {
    const above = await flood({ ...hole, spaceArea: 14, toLevel: 1.2 });
    expect(above).toMatchObject({ timeToLevel: null, notWorkedOut: [] });
    const to = { spaceArea: 14, toLevel: 0.1 };
    const kept = await flood({ ...hole, ...to, pumps: ['10 m3/h', 10] });
    expect(kept).toMatchObject({ timeToLevel: null, notWorkedOut: [], levelLimit: { value: 0 } });
    expect(kept.margin.value).toBeGreaterThan(0);
  });

  test('the outside level itself is come to in a stated time without pumps', async () => {
    const found = await flood({ ...hole, spaceArea: 14, toLevel: 1.1 });
    expect(found.timeToLevel?.value).toBeGreaterThan(0);
  });

  test('the spread of the coefficients is explained', async () => {
    const { cautions, working } = await flood(hole);
    expect(cautions.some((text) => text.includes('0.6 (sharp edge) to 1'))).toBe(true);
    expect(working.filter(({ symbol }) => /^Q_/.test(symbol)).length).toBe(2);
  });

  test('the uncertainty of the depth is carried: half of it in the inflow', async () => {
    const depth = { value: 1, unit: 'm', u: 0.1 };
    const { inflow, force } = await flood({ diameter: 50, depth });
    near((inflow.u ?? 0) / inflow.value, 0.05, 0.01);
    near((force.u ?? 0) / force.value, 0.1, 1e-6);
  });

  test('everything wrong comes at once', async () => {
    const bad = {
      diameter: -1,
      depth: -1,
      coefficient: 2,
      permeability: 0,
      pumps: [-1],
      colour: 1,
    };
    const expected = ['coefficient', 'colour', 'depth', 'diameter', 'permeability', 'pumps/0'];
    expect(await paths(bad)).toEqual(expected);
    expect(await paths({ depth: 1 })).toEqual(['diameter']);
    expect(await paths({ depth: 1, diameter: 20, area: 300 })).toEqual(['area']);
    expect(await paths({ diameter: 20 })).toEqual(['depth']);
  });
});

const runs = process.env.LONG ? 2_000 : 200;
const SEED = 620;
test(`laws over ${runs} holes, seed ${SEED}: pumps delay, and the rising ends`, async () => {
  const within = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
  const any = fc.record({
    diameter: within(5, 300),
    depth: within(0.01, 8),
    holeHeight: within(0, 3),
    spaceArea: within(1, 200),
    toLevel: within(0.001, 6),
    pump: within(0, 400),
  });
  const law = fc.asyncProperty(any, async ({ pump, ...given }) => {
    const without = await flood({ ...given, pumps: [] });
    const pumped = await flood({ ...given, pumps: [pump] });
    expect(pumped.levelLimit.value).toBeLessThanOrEqual(without.levelLimit.value + 1e-9);
    const never = given.toLevel > pumped.levelLimit.value;
    if (never) expect(pumped.timeToLevel).toBeNull();
    if (pumped.timeToLevel === null) return;
    const least = (without.timeToLevel?.value ?? 0) * (1 - 1e-9);
    expect(pumped.timeToLevel.value).toBeGreaterThanOrEqual(least);
    // It can never rise faster than the inflow of the start lets it.
    const fastest = (given.spaceArea * given.toLevel * 60) / pumped.inflow.value;
    expect(pumped.timeToLevel.value).toBeGreaterThanOrEqual(fastest * (1 - 1e-9));
  });
  await fc.assert(law, { seed: SEED, numRuns: runs });
});

test.each(generated.bilge.map((one) => [one.id, one] as const))(
  'bilge main follows SOLAS II-1/35-1 (from memory) and plain arithmetic, %s',
  async (_, { L_m: length, B_m: breadth, D_m: depth, d_mm: bore, Q_m3_h: flow }) => {
    const given = { length, breadth, depth };
    const answer = await runCalc('bilge-main', given, { solver: solveWithHighs });
    if (!answer.ok) throw new Error('it was refused');
    const { diameter, capacity, cautions, working } = answer.result as unknown as {
      diameter: Quantity;
      capacity: Quantity;
      cautions: string[];
      working: Working;
    };
    near(diameter.value, bore, 2e-6);
    near(capacity.value, flow, 1e-5);
    // Q = 0.00565 d² as the codes print it.
    near(capacity.value, 0.00565 * bore ** 2, 0.002);
    expect(recheckWorking(working)).toEqual([]);
    expect(cautions.some((text) => text.includes('50 mm'))).toBe(bore < 50);
  },
);

test('bilge main: everything wrong comes at once', async () => {
  expect(await paths({ length: 0, breadth: '3 kg', speed: -1 }, 'bilge-main')).toEqual([
    'breadth',
    'depth',
    'length',
    'speed',
  ]);
});
