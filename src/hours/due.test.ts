// `due` as it is called: worked cases, what it refuses and leaves open, meters that change.

import { describe, expect, test } from 'vitest';
import { findCalculation, runCalc } from '../calc/register.ts';
import { recheckWorking } from '../quantity/expression.ts';
import type { Working } from '../quantity/types.ts';
import type { DueOutput } from './model.ts';
import stream from './tables/run-time-stream.json' with { type: 'json' };

const lent = { solver: () => Promise.reject(new Error('no solver is needed here')) };

async function asked(raw: object): Promise<DueOutput> {
  const answer = await runCalc('due', raw, lent);
  if (!answer.ok) throw new Error(JSON.stringify(answer.error));
  const text = JSON.stringify(answer.result);
  expect(text).not.toMatch(/NaN|Infinity/);
  return answer.result as unknown as DueOutput;
}

async function refused(raw: object): Promise<string[]> {
  const answer = await runCalc('due', raw, lent);
  if (answer.ok) throw new Error('it was taken');
  return answer.error.error.problems.map(({ path }) => path).sort();
}

/** Eight hours on each day from the first of January, read every week. */
const even = (weeks: number, from = 1_000) =>
  Array.from({ length: weeks }, (_, week) => ({
    at: new Date(Date.UTC(2026, 0, 1 + 7 * week)).toISOString().slice(0, 10),
    hours: from + 56 * week,
  }));

const planned = {
  readings: [{ at: '2026-03-01', hours: 1_000 }],
  interval: 500,
  lastDoneAt: 800,
  on: '2026-03-01',
  voyagePlan: [{ from: '2026-03-01', to: '2026-12-31', hoursPerDay: 10 }],
};

describe('the worked cases of its document', () => {
  test('by plan: 300 h at 10 h a day are 30 days', async () => {
    const found = await asked(planned);
    const day = '2026-03-31T00:00:00Z';
    expect(found.dueOn).toEqual({ p10: day, p50: day, p90: day });
    expect(found.hoursLeft?.value).toBe(300);
    expect(found.ratePerDay).toBeNull();
    expect(found.notWorkedOut.map(({ output }) => output)).toEqual(['ratePerDay']);
  });

  test('a reading with two digits changed about, and a fortnight alongside', async () => {
    const example = findCalculation('due')?.example ?? {};
    const found = await asked(example);
    expect(found.faults.map(({ kind, reading }) => [kind, reading])).toEqual([['transposed', 6]]);
    expect(found.ratePerDay?.value).toBeCloseTo(799 / 98, 5);
    const left = found.hoursLeft?.value ?? 0;
    expect(left).toBeGreaterThan(690);
    expect(left).toBeLessThanOrEqual(739);
    // 739 h at 8.15 h a day from the last reading, and fourteen days still, is 27 July.
    const middle = Date.parse(found.dueOn?.p50 ?? '');
    expect(Math.abs(middle - Date.UTC(2026, 6, 27)) / 86_400_000).toBeLessThan(8);
    expect(recheckWorking(found.working as Working)).toEqual([]);
    expect(await asked(example)).toEqual(found);
  });
});

test('even use is forecast evenly, and the spread holds the day by hand', async () => {
  const base = { readings: even(30), interval: 1_000, lastDoneAt: 2_200, on: '2026-07-23' };
  const { dueOn, hoursLeft, ratePerDay } = await asked(base);
  expect(hoursLeft?.value).toBeCloseTo(576, 6);
  expect(ratePerDay?.value).toBeCloseTo(8, 9);
  const days = (at: string | null | undefined) =>
    (Date.parse(at ?? '') - Date.UTC(2026, 6, 23)) / 86_400_000;
  expect(days(dueOn?.p10)).toBeLessThan(72);
  expect(days(dueOn?.p90)).toBeGreaterThan(72);
  expect(Math.abs(days(dueOn?.p50) - 72)).toBeLessThan(6);
});

test('done on a day between two readings, after the last one, and before the first', async () => {
  const base = { readings: even(30), interval: 1_000, on: '2026-07-23' };
  const between = await asked({ ...base, lastDoneOn: '2026-06-14T12:00:00Z' });
  // 38.5 days of 8 h before the last reading.
  expect(between.hoursLeft?.value).toBeCloseTo(1_000 - 38.5 * 8, 6);
  const after = await asked({ ...base, on: '2026-07-30', lastDoneOn: '2026-07-30' });
  expect(after.hoursLeft?.value).toBe(1_000);
  const old = await asked({ ...base, lastDoneOn: '2025-12-01' });
  expect([old.dueOn, old.hoursLeft]).toEqual([null, null]);
  expect(old.notWorkedOut[0]?.needs.join()).toMatch(/lastDoneAt/);
});

test('overdue: due when the history passed it, said as a decision', async () => {
  const base = { readings: even(30), lastDoneAt: 1_000, interval: 56 * 10 + 28, on: '2026-07-25' };
  const { dueOn, hoursLeft, cautions } = await asked(base);
  const day = '2026-03-15T12:00:00Z';
  expect(dueOn).toEqual({ p10: day, p50: day, p90: day });
  expect(hoursLeft?.value).toBeLessThan(-1_000);
  expect(cautions.join()).toMatch(/Overdue/);
});

test('beyond the horizon is null, and the horizon is kept', async () => {
  const base = { readings: even(20), lastDoneAt: 2_000, interval: 5_000, on: '2026-05-14' };
  expect((await asked({ ...base, horizon: 90 })).dueOn).toEqual({
    p10: null,
    p50: null,
    p90: null,
  });
  expect((await asked({ ...base, horizon: '4 a' }).catch(() => null)) ?? 'refused').toBe('refused');
});

describe('a meter that restarted, in the labelled stream', () => {
  const readings = stream.samples.map(([at, seconds]) => ({
    at: String(at),
    hours: { value: Number(seconds), unit: 's' },
  }));
  const base = { readings, interval: 500, lastDoneAt: 4_400, on: '2026-01-30T23:00:00Z' };

  test('without an exchange the hours across it are asked for, not guessed', async () => {
    const found = await asked(base);
    expect(found.faults.map(({ kind, reading }) => [reading, kind])).toEqual(stream.faults);
    expect([found.dueOn, found.hoursLeft]).toEqual([null, null]);
    expect(found.notWorkedOut[0]?.needs.join()).toMatch(/exchanges/);
    expect(found.ratePerDay?.value).toBeGreaterThan(10);
  });

  test('with the exchange of a named person they count: 4,724.9 h run in truth', async () => {
    const exchanges = [{ at: '2026-01-17T15:30:00Z', oldLast: 4_524.9, newFirst: 0 }];
    const found = await asked({ ...base, exchanges });
    expect(found.faults.some(({ kind }) => kind === 'restart')).toBe(false);
    expect(found.hoursLeft?.value).toBeCloseTo(500 - (4_724.9 - 4_400), 1);
  });
});

test('what the input does not settle is named, and the rest is worked out', async () => {
  const found = await asked({ readings: even(10) });
  expect(found.ratePerDay?.value).toBeCloseTo(8, 9);
  const needs = found.notWorkedOut.find(({ output }) => output === 'dueOn')?.needs;
  expect(needs).toEqual(['interval', 'on', 'lastDoneAt or lastDoneOn']);
  const one = await asked({ readings: even(1), interval: 100, lastDoneAt: 990, on: '2026-01-02' });
  expect(one.notWorkedOut[0]?.needs.join()).toMatch(/two in a row/);
});

test('bad input is listed, all of it', async () => {
  const bad = {
    readings: [{ at: '2026-02-30', hours: 1 }],
    interval: 0,
    horizon: -3,
    colour: 'red',
  };
  expect(await refused(bad)).toEqual(['colour', 'horizon', 'interval', 'readings/0/at']);
  const plan = [
    { from: '2026-03-09', to: '2026-03-01', hoursPerDay: 5 },
    { from: '2026-04-01', to: '2026-04-30', hoursPerDay: 5 },
    { from: '2026-04-30', to: '2026-05-30', hoursPerDay: 5 },
  ];
  const twice = { ...planned, voyagePlan: plan, lastDoneOn: '2026-06-01', on: '2026-02-01' };
  expect(await refused(twice)).toEqual([
    'lastDoneOn',
    'lastDoneOn',
    'on',
    'voyagePlan/0/to',
    'voyagePlan/2',
  ]);
  expect(await refused({ ...planned, lastDoneAt: 9_000 })).toEqual(['lastDoneAt']);
  expect(await refused({ ...planned, voyagePlan: [{ ...plan[1], hoursPerDay: 25 }] })).toEqual([
    'voyagePlan/0/hoursPerDay',
  ]);
});
