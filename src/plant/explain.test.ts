// What came from where, and how two sides differ.

import { expect, test } from 'vitest';
import { differencesBetween, explain } from './explain.ts';
import { fixture } from './fixture.ts';
import { readPlant } from './read.ts';

const { plant } = readPlant(fixture());
if (plant === null) throw new Error('the fixture is right');
const { 'north-set': north, 'south-set': south } = plant.machines;
if (north === undefined || south === undefined) throw new Error('the fixture has two sets');

test('each field is traced to its type, its difference, the plant or a sheet', () => {
  const rows = new Map(explain(plant, 'south-set').map((row) => [row.path, row]));
  expect(rows.get('parts/pump/mass')).toEqual({
    path: 'parts/pump/mass',
    value: '41 kg',
    from: 'type',
    id: 'pump-set',
  });
  expect(rows.get('parts/rail/mass')).toEqual({
    path: 'parts/rail/mass',
    value: '6 kg',
    from: 'difference',
    id: 'second-stay',
    why: 'the wall is nearer here',
    origin: { from: 'seen once', by: 'Ada Quill' },
  });
  expect(rows.get('closures/pond-valve/normal')).toMatchObject({ from: 'plant', id: 'mill-pond' });
  expect(rows.get('closures/set-drain/normal')).toMatchObject({ from: 'type' });
  expect(rows.get('plate')).toMatchObject({ from: 'position', value: 'MP 2' });
  expect(rows.get('values/pump-foot')).toMatchObject({ from: 'sheet', id: 'pump-set-values' });
  expect(rows.get('joints/guard-feet/accesses/above/place')).toMatchObject({
    from: 'difference',
    state: 'removed',
  });
});

test('every field of a machine has a row', () => {
  const paths = explain(plant, 'north-set').map(({ path }) => path);
  expect(new Set(paths).size).toBe(paths.length);
  const count = (value: unknown): number =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.values(value).reduce((sum: number, inner) => sum + count(inner), 0)
      : 1;
  const { parts, joints, lines, closures, sensors, isolations, targets } = north;
  const own = 5 + Object.keys(north.values).length;
  const rest = count({ parts, joints, lines, closures, sensors, isolations, targets });
  expect(paths).toHaveLength(rest + own);
});

test('the two sides differ in what a hand-written list says, each with its why', () => {
  expect(differencesBetween(north, south).map(({ at, why }) => [at, why])).toEqual([
    ['parts/rail', 'the wall is nearer here'],
    ['joints/guard-feet/accesses/above/place', 'the floor is open here'],
    ['joints/pump-feet/accesses/from-front/clear', 'the hand rail stands before the feet'],
  ]);
  expect(differencesBetween(north, north)).toEqual([]);
});

test('an unknown machine has no rows', () => {
  expect(explain(plant, 'nowhere')).toEqual([]);
});
