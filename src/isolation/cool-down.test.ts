// Cooling against published examples, made readings of a known constant, and every row of limits.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { runCalc } from '../calc/register.ts';
import { recheckWorking } from '../quantity/expression.ts';
import type { Working } from '../quantity/types.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import type { CoolDownOut } from './cool-down-model.ts';
import { MATERIALS } from './tables/burns.ts';

async function cool(raw: unknown): Promise<CoolDownOut> {
  const answer = await runCalc('cool-down', raw, { solver: solveWithHighs });
  if (!answer.ok) throw new Error(JSON.stringify(answer.error));
  const result = answer.result as unknown as CoolDownOut;
  expect(recheckWorking(result.working as Working)).toEqual([]);
  expect(JSON.stringify(result)).not.toMatch(/NaN|Infinity/);
  return result;
}

async function paths(raw: unknown): Promise<string[]> {
  const answer = await runCalc('cool-down', raw, { solver: solveWithHighs });
  if (answer.ok) throw new Error('it was taken');
  return answer.error.error.problems.map(({ path }) => path).sort();
}

test('time follows Holman 4.1: steel ball 50 mm, 450 to 150 °C in 100 °C, 5,818 s', async () => {
  const timeConstant = (7_800 * 460 * 0.05) / 6 / 10 / 60;
  const found = await cool({
    readings: { start: 450, timeConstant },
    ambient: 100,
    openLimit: 150,
  });
  expect((found.openAfter?.value ?? 0) * 60).toBeCloseTo(5_818, -0.5);
  expect(found.estimate).toBe(true);
});

test('time follows Çengel 4-2: 37 to 25 °C in 20 °C, 12.2 h (book value from memory)', async () => {
  const [radius, long] = [0.15, 1.7];
  const volume = Math.PI * radius ** 2 * long;
  const surface = 2 * Math.PI * radius * long + 2 * Math.PI * radius ** 2;
  const timeConstant = (996 * 4_178 * volume) / (8 * surface) / 60;
  const found = await cool({ start: 37, timeConstant, ambient: 20, openLimit: 25 });
  expect((found.openAfter?.value ?? 0) / 60).toBeCloseTo(12.2, 1);
});

// Housings as lumped bodies: m c / (h A), computed apart from this code.
test.each([
  [28, 880, 9, 0.32, 45, 82, 51, 15_563.91],
  [95, 470, 8, 0.9, 38, 90, 48, 10_223.97],
  [1.2, 900, 15, 0.03, 20, 65, 43, 1_610.804],
  [28, 880, 9, 0.32, 48, 82, 48.5, 36_100.23],
])(
  'a lumped body of %d kg, %d J/(kg.K), in %d W/(m2.K)',
  async (m, c, h, a, ta, t0, t, seconds) => {
    const timeConstant = (m * c) / (h * a) / 60;
    const given = { start: t0, timeConstant, ambient: ta, touchLimit: t };
    const found = await cool(given);
    expect((found.touchAfter?.value ?? 0) * 60).toBeCloseTo(seconds, 1);
  },
);

const curve = (minutes: readonly number[], start: number, ambient: number, constant: number) =>
  minutes.map((minute) => ({
    minute,
    temperature: ambient + (start - ambient) * Math.exp(-minute / constant),
  }));

describe('readings', () => {
  const readings = curve([0, 10, 20, 35], 92, 38, 71);

  test('exact readings give back their constant, on their own clock', async () => {
    const found = await cool({ readings, ambient: 38, touchLimit: 51, openLimit: 60 });
    expect(found.timeConstant.value).toBeCloseTo(71, 9);
    expect(found.estimate).toBe(false);
    expect(found.touchAfter?.value).toBeCloseTo(71 * Math.log(54 / 13), 9);
    expect(found.openAfter?.value).toBeCloseTo(71 * Math.log(54 / 22), 9);
    const later = readings.map((one) => ({ ...one, minute: one.minute + 15 }));
    const moved = await cool({ readings: later, ambient: 38, touchLimit: 51 });
    expect(moved.touchAfter?.value).toBeCloseTo(15 + (found.touchAfter?.value ?? 0), 9);
  });

  test('what was read before the peak is left out and said', async () => {
    const rising = [
      { minute: 0, temperature: 85 },
      { minute: 4, temperature: 90 },
    ];
    const later = readings.map((one) => ({ ...one, minute: one.minute + 6 }));
    const found = await cool({ readings: [...rising, ...later], ambient: 38, touchLimit: 51 });
    expect(found.timeConstant.value).toBeCloseTo(71, 9);
    expect(found.cautions.some((text) => text.startsWith('2 readings before'))).toBe(true);
  });

  test('a limit at or below the ambient is never come to: null and settled', async () => {
    const found = await cool({ readings, ambient: 38, touchLimit: 38, openLimit: 20 });
    expect(found).toMatchObject({ touchAfter: null, openAfter: null, notWorkedOut: [] });
  });

  test('cool enough already: the minute of the first reading', async () => {
    const found = await cool({ readings, ambient: 38, touchLimit: 95 });
    expect(found.touchAfter?.value).toBe(0);
    expect(found.notWorkedOut.map(({ output }) => output)).toContain('openAfter');
  });

  test('the uncertainty of a reading is carried', async () => {
    const [first, ...rest] = readings;
    const unsure = { ...first, temperature: { value: 92, unit: 'Cel', u: 0.5 } };
    const found = await cool({ readings: [unsure, ...rest], ambient: 38, touchLimit: 51 });
    expect(found.timeConstant.u).toBeGreaterThan(0);
    expect(found.touchAfter?.u).toBeGreaterThan(0);
  });

  test('everything wrong comes at once', async () => {
    const bad = [
      { minute: 5, temperature: 80 },
      { minute: 5, temperature: 30 },
    ];
    expect(await paths({ readings: bad, ambient: 38 })).toEqual([
      'readings/1/minute',
      'readings/1/temperature',
    ]);
    expect(await paths({ readings })).toEqual(['ambient']);
    expect(await paths({ readings: [...readings].slice(0, 1), ambient: 38 })).toEqual(['readings']);
    const rising = readings.map((one, at) => ({ ...one, temperature: 60 + at }));
    expect(await paths({ readings: rising, ambient: 38 })).toEqual(['readings']);
    expect(await paths({ ambient: 38, material: 'ice', contactTime: 0 })).toEqual([
      'contactTime',
      'material',
      'readings',
    ]);
    expect(await paths({ start: 30, timeConstant: 5, ambient: 38 })).toEqual(['start']);
    expect(await paths({ readings, start: 90, ambient: 38 })).toEqual(['start']);
  });
});

describe('touch limits, ISO 13732-1 from memory', () => {
  const [metal, coated, stone, wood] = MATERIALS;
  test.each([
    [metal, 0.4, 65],
    [metal, 1, 65],
    [metal, 5, 55],
    [metal, 10, 55],
    [metal, 11, 51],
    [metal, 60, 51],
    [coated, 1, 51],
    [stone, 60, 56],
    [wood, 2, 60],
    [wood, 61, 48],
    [stone, 600, 48],
    [coated, 3_600, 43],
    [metal, 100_000, 43],
  ])('%s for %d s: %d °C', async (material, contactTime, expected) => {
    const given = { start: 90, timeConstant: 60, ambient: 30, material, contactTime };
    const { limitsUsed, cautions } = await cool(given);
    expect(limitsUsed.touch).toEqual({ value: expected, unit: 'Cel' });
    expect(limitsUsed.touchFrom).toMatch(/^from memory/);
    expect(cautions.some((text) => text.includes('0.5 s'))).toBe(contactTime < 0.5);
  });

  test('a limit above the threshold is used as entered, and warned of', async () => {
    const given = { start: 90, timeConstant: 60, ambient: 30, touchLimit: 60 };
    const found = await cool({ ...given, material: metal, contactTime: 60 });
    expect(found.limitsUsed).toMatchObject({ touch: { value: 60 }, touchFrom: 'entered' });
    expect(found.cautions.some((text) => text.includes('skin burns'))).toBe(true);
  });
});

const runs = process.env.LONG ? 2_000 : 200;
const SEED = 137;
test(`${runs} made coolings, readings off by up to 0.2 K, seed ${SEED}`, async () => {
  const any = fc.record({
    start: fc.double({ min: 60, max: 120, noNaN: true }),
    ambient: fc.double({ min: 0, max: 45, noNaN: true }),
    constant: fc.double({ min: 20, max: 200, noNaN: true }),
    off: fc.array(fc.double({ min: -0.2, max: 0.2, noNaN: true }), { minLength: 9, maxLength: 9 }),
  });
  const law = fc.asyncProperty(any, async ({ start, ambient, constant, off }) => {
    const minutes = off.map((_, at) => (at * constant) / 8);
    const readings = curve(minutes, start, ambient, constant).map((one, at) => ({
      ...one,
      temperature: one.temperature + (off[at] ?? 0),
    }));
    const found = await cool({ readings, ambient, openLimit: (start + ambient) / 2 });
    // 0.2 K on the least fall of 15 K·0.63 within the readings.
    expect(Math.abs(found.timeConstant.value / constant - 1)).toBeLessThan(0.1);
    const exact = constant * Math.log(2);
    expect(Math.abs((found.openAfter?.value ?? 0) / exact - 1)).toBeLessThan(0.1);
  });
  await fc.assert(law, { seed: SEED, numRuns: runs });
});
