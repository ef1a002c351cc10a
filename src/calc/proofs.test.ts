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

test('decide, worked case 1: a pressure at least', async () => {
  const raw = { measured: '2.31 bar', u: '0.05 bar', lower: '2.2 bar' };
  const found = await done('decide', { ...raw, rule: 'guarded-accept', maxRisk: 0.05 });
  expect(found).toMatchObject({
    verdict: 'pass',
    below: near(0.0139, 4),
    guardBand: { ...near(0.0822, 4), unit: 'bar' },
  });
});

test('decide, worked case 2: a temperature at most, from five readings', async () => {
  const raw = { measured: '82.5 °C', u: 0.8, upper: 84, degreesOfFreedom: 4 };
  const found = await done('decide', { ...raw, rule: 'guarded-accept', maxRisk: 0.05 });
  expect(found).toMatchObject({
    verdict: 'cannot tell',
    guardFactor: near(2.132, 3),
    guardBand: near(1.705, 3),
    probabilityConforming: near(0.933, 3),
  });
});
