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

test('cooler, worked case 1: area of a counterflow exchanger', async () => {
  const found = await done('cooler', {
    arrangement: 'counterflow',
    hot: { fluid: { heatCapacity: 4_310 }, flow: 2, in: 160 },
    cold: { fluid: { heatCapacity: 4_180 }, flow: 1.2, in: 20, out: 80 },
    U: 640,
  });
  expect(found).toMatchObject({
    duty: near(300.96, 2),
    hot: { out: near(125.09, 2) },
    lmtd: near(91.97, 2),
    area: near(5.113, 3),
  });
});

test('cooler, worked case 2: sea-water flow without a flow meter', async () => {
  const warm = (value: number) => ({ value, unit: 'Cel', u: 0.25 });
  const flow = { value: 3.4, unit: 'kg/s', u: 0.08 };
  const found = await done('cooler', {
    hot: { fluid: { name: 'fresh water' }, flow, in: warm(78), out: warm(66.5) },
    cold: { fluid: { name: 'sea water', salinity: 35 }, in: warm(28.6), out: warm(41.2) },
  });
  expect(found).toMatchObject({
    duty: near(163.9, 1),
    cold: { flow: { ...near(3.25, 2), u: expect.closeTo(0.155, 3) } },
  });
});

test('pump-test, worked case 1: head of a raw-water pump', async () => {
  const known = (value: number, unit: string, u: number) => ({ value, unit, u });
  const found = await done('pump-test', {
    readings: [
      {
        suction: known(-15, 'kPa', 0.8),
        discharge: known(180, 'kPa', 1.5),
        flow: known(12, 'm3/h', 0.25),
      },
    ],
    suctionBore: known(50, 'mm', 0.2),
    dischargeBore: known(40, 'mm', 0.2),
    gaugeHeights: { suction: 0, discharge: known(0.35, 'm', 0.01) },
    fluid: { density: 1_025 },
  });
  const draws = { 'p2.5': expect.closeTo(19.63, 2), 'p97.5': expect.closeTo(20.29, 2) };
  const head = { ...near(19.96, 2), u: expect.closeTo(0.17, 3), monteCarlo: draws };
  expect(found).toMatchObject({ readings: [{ head, npshAvailable: null }], verdict: null });
});

test('pump-test, worked case 2: a displacement pump that can not be told', async () => {
  const spread = { speed: { standard: 5 }, suction: { standard: 2 }, discharge: { standard: 2 } };
  const found = await done('pump-test', {
    curve: {
      ...{ kind: 'positive-displacement', displacement: 0.1 },
      points: [
        { speed: 1_500, pressure: 100, flow: 8.5 },
        { speed: 1_500, pressure: 200, flow: 8 },
        { speed: 2_000, pressure: 200, flow: 10.9 },
      ],
    },
    readings: [{ speed: 1_500, suction: -20, discharge: 180, flow: 7.5 }],
    flowTolerance: 0.05,
    instruments: { ...spread, flow: { expanded: '2 %', k: 2 } },
  });
  expect(found).toMatchObject({
    readings: [{ slip: near(0.167, 3), deviation: { ...near(-0.0625, 4) } }],
    verdict: 'cannot tell',
    settledBy: { reading: 0, measure: 'flow' },
  });
});
