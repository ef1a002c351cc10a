// The worked cases of docs/isolation.md, through the register as a person would ask.

import { expect, test } from 'vitest';
import { solveWithHighs } from '../server/solver-inline.ts';
import { runCalc } from './register.ts';

async function done(name: string, raw: unknown): Promise<Readonly<Record<string, unknown>>> {
  const answer = await runCalc(name, raw, { solver: solveWithHighs });
  if (!answer.ok) throw new Error(JSON.stringify(answer.error));
  return answer.result;
}

const near = (value: number, digits: number, unit: string) => ({
  value: expect.closeTo(value, digits),
  unit,
});

const valve = (id: string, weight: number) => ({ id, kind: 'valve', weight });
const pumpLines = {
  nodes: [
    { id: 'sea', kind: 'source' },
    { id: 'overboard', kind: 'source' },
    { id: 'strainer', kind: 'junction' },
    { id: 'fire pump', kind: 'junction' },
    { id: 'pump', kind: 'work' },
    ...[valve('V1', 2), valve('V2', 1), valve('V3', 1), valve('V4', 1), valve('V5', 1)],
  ],
  edges: [
    ['sea', 'V1'],
    ['V1', 'strainer'],
    ['strainer', 'V2'],
    ['V2', 'fire pump'],
    ['strainer', 'V3'],
    ['V3', 'pump'],
    ['pump', 'V4'],
    ['V4', 'V5'],
    ['V5', 'overboard'],
  ],
};

test('isolate, worked case 1: one barrier, and the fire pump keeps its suction', async () => {
  for (const keep of [[], ['fire pump'], [{ node: 'fire pump', from: ['sea'] }]]) {
    expect(await done('isolate', { ...pumpLines, keep })).toMatchObject({
      isolable: true,
      effort: 2,
      bound: 2,
      proven: true,
      closures: ['V3', 'V4'],
    });
  }
});

test('isolate, worked case 2: two barriers, and not with the fire pump kept', async () => {
  const two = { ...pumpLines, barriers: 2 };
  expect(await done('isolate', two)).toMatchObject({
    effort: 5,
    closures: ['V1', 'V3', 'V4', 'V5'],
    proven: true,
  });
  expect(await done('isolate', { ...two, keep: ['fire pump'] })).toMatchObject({
    isolable: false,
    proven: true,
    uncutPath: ['sea', 'V1', 'strainer', 'V3', 'pump'],
    cautions: [
      'With no service kept it can be cut off: shut V1, V3, V4, V5.',
      'With one closure on each path it can: shut V3, V4.',
    ],
  });
});

test('flooding, worked case 1: floor plates in 48 minutes with the pump on', async () => {
  const space = { spaceArea: 14, permeability: 0.85, toLevel: 0.6, pumps: ['7.2 m3/h'] };
  const found = await done('flooding', { diameter: 50, depth: 0.9, holeHeight: 0.2, ...space });
  expect(found).toMatchObject({
    inflow: near(17.82, 2, 'm3/h'),
    force: near(17.8, 1, 'N'),
    timeToLevel: near(48.1, 1, 'min'),
    levelLimit: near(0.953, 3, 'm'),
    margin: near(-10.62, 2, 'm3/h'),
    notWorkedOut: [],
  });
});

test('flooding, worked case 2: the pumps keep up', async () => {
  const space = { spaceArea: 20, toLevel: 0.4, pumps: [108] };
  const found = await done('flooding', { diameter: 100, depth: 1, holeHeight: 0.3, ...space });
  expect(found).toMatchObject({
    inflow: near(75.13, 2, 'm3/h'),
    timeToLevel: null,
    levelLimit: { value: 0, unit: 'm' },
    margin: near(32.87, 2, 'm3/h'),
    notWorkedOut: [],
  });
});

test('bilge-main, worked cases 1 and 2', async () => {
  expect(await done('bilge-main', { length: 24, breadth: 6.5, depth: 3.2 })).toMatchObject({
    diameter: near(50.63, 2, 'mm'),
    capacity: near(14.5, 2, 'm3/h'),
  });
  expect(await done('bilge-main', { length: 48, breadth: 9.5, depth: 4.4 })).toMatchObject({
    diameter: near(68.39, 2, 'mm'),
    capacity: near(26.45, 2, 'm3/h'),
  });
});

test('cool-down, worked case 1: four readings', async () => {
  const readings = [88, 80, 73, 67].map((temperature, at) => ({ minute: at * 20, temperature }));
  const touched = { material: 'bare metal', contactTime: 10 };
  const found = await done('cool-down', { readings, ambient: 38, openLimit: 60, ...touched });
  expect(found).toMatchObject({
    timeConstant: near(110.7, 1, 'min'),
    openAfter: near(91.1, 1, 'min'),
    touchAfter: near(119.7, 1, 'min'),
    limitsUsed: { touch: { value: 55, unit: 'Cel' }, open: { value: 60, unit: 'Cel' } },
  });
});

test('cool-down, worked case 2: an estimate, and an opening limit that never comes', async () => {
  const touched = { material: 'plastic, wood', contactTime: 2 };
  const estimate = { start: 90, timeConstant: 60 };
  for (const given of [estimate, { readings: estimate }]) {
    const found = await done('cool-down', { ...given, ambient: 30, openLimit: 30, ...touched });
    expect(found).toMatchObject({
      estimate: true,
      touchAfter: near(41.6, 1, 'min'),
      openAfter: null,
      notWorkedOut: [],
    });
  }
});
