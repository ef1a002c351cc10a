// The worked cases of docs/wrench.md, through the register as a person would ask.

import { expect, test } from 'vitest';
import { solveWithHighs } from '../server/solver-inline.ts';
import { runCalc } from './register.ts';

async function done(name: string, raw: unknown): Promise<Readonly<Record<string, unknown>>> {
  const answer = await runCalc(name, raw, { solver: solveWithHighs });
  if (!answer.ok) throw new Error(JSON.stringify(answer.error));
  return answer.result;
}

test('wrench-setting, worked case 1: a crowfoot straight ahead', async () => {
  const found = await done('wrench-setting', {
    torque: '80 N.m',
    ...{ wrenchLength: '400 mm', adapterLength: '50 mm', adapterAngle: 0 },
    wrench: { min: 20, max: 100, calibratedOn: '2026-03-02', cyclesSince: 1_240 },
    on: '2026-11-25',
  });
  expect(found).toMatchObject({
    factor: { value: expect.closeTo(0.8889, 4), unit: '1' },
    setting: { value: expect.closeTo(71.1, 1), unit: 'N.m' },
    gripPoint: { value: 400, unit: 'mm' },
    usable: true,
    reasons: [],
  });
});

test('wrench-setting, worked case 2: a self-locking nut, adapter turned back', async () => {
  const found = await done('wrench-setting', {
    torque: 40,
    runDown: 6,
    ...{ wrenchLength: 400, adapterLength: 100, adapterAngle: 180 },
    wrench: { min: 10, max: 60, calibratedOn: '2026-03-02', cyclesSince: 0 },
    on: '2026-11-25',
  });
  expect(found).toMatchObject({
    torque: { value: 46 },
    factor: { value: expect.closeTo(1.3333, 4) },
    setting: { value: expect.closeTo(61.3, 1) },
    usable: false,
    reasons: [expect.stringContaining('above')],
  });
});

test('pattern, worked cases: 8 bolts in a ring, 2 rows of 3', async () => {
  const ring = await done('pattern', { bolts: 8, layout: 'ring' });
  expect(ring.rounds).toEqual([
    ...[0.3, 0.6, 1].map((fraction) => ({
      fraction,
      order: 'cross',
      sequence: [1, 5, 3, 7, 2, 6, 4, 8],
    })),
    { fraction: 1, order: 'circle', sequence: [1, 2, 3, 4, 5, 6, 7, 8] },
  ]);
  const rows = await done('pattern', { bolts: 6, layout: { kind: 'rows', rows: 2, columns: 3 } });
  expect(rows.rounds).toMatchObject([{ sequence: [2, 5, 1, 6, 3, 4] }, {}, {}, {}]);
});
