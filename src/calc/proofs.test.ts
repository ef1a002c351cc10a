// The worked cases of docs/media.md and docs/proving.md, through the register as a person asks.

import { expect, test } from 'vitest';
import { solveWithHighs } from '../server/solver-inline.ts';
import { runCalc } from './register.ts';

async function done(name: string, raw: unknown): Promise<Readonly<Record<string, unknown>>> {
  const answer = await runCalc(name, raw, { solver: solveWithHighs });
  if (!answer.ok) throw new Error(JSON.stringify(answer.error));
  return answer.result;
}

const near = (value: number, digits: number) => ({ value: expect.closeTo(value, digits) });

test('sea-water, worked case 1: sea water at 28 °C', async () => {
  expect(await done('sea-water', { temperature: '28 °C', salinity: 35.16504 })).toMatchObject({
    density: near(1022.395, 3),
    heatCapacity: near(4000.55, 2),
    viscosity: near(8.982e-4, 7),
    vapourPressure: near(3712.2, 1),
    notWorkedOut: [],
  });
});

test('sea-water, worked case 2: where fresh water boils', async () => {
  const found = await done('sea-water', { salinity: 0, pressure: '0.02 MPa' });
  expect(found).toMatchObject({ density: null, boilsAt: near(60.06, 2) });
  expect(found.notWorkedOut).toHaveLength(5);
});
