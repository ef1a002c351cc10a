// Reading a plant: differences, origins, unknowns, values in force, and problems told together.

import { expect, test } from 'vitest';
import { FIXTURE_SHEET, FIXTURE_SOUTH, FIXTURE_TYPE, fixture, fixtureWith } from './fixture.ts';
import { readPlant } from './read.ts';
import { nearest } from './suggest.ts';
import type { Machine, Plant, PlantText } from './types.ts';

function right(files: PlantText): Plant {
  const { plant, problems } = readPlant(files);
  if (plant === null) throw new Error(JSON.stringify(problems, null, 2));
  return plant;
}

function machine(files: PlantText, id: string): Machine {
  const found = right(files).machines[id];
  if (found === undefined) throw new Error(`no ${id}`);
  return found;
}

const musts = (files: PlantText) =>
  readPlant(files)
    .problems.filter(({ level }) => level === 'must')
    .map(({ fault, file, line, path }) => `${fault} ${file}:${line} ${path}`);

const lineOf = (text: string, part: string): number =>
  text.slice(0, text.indexOf(part)).split('\n').length;

test('machines of one type share it, and each position has its differences only', () => {
  const { machines } = right(fixture());
  const { 'north-set': north, 'south-set': south } = machines;
  expect(north?.parts.rail).toBeUndefined();
  expect(south?.parts.rail).toEqual({
    name: 'Hand rail',
    mass: '6 kg',
    ways: { lift: { gives: 'off', joints: [], minutes: 2 } },
  });
  expect(south?.joints['pump-feet']?.accesses?.['from-front']?.clear).toEqual([
    { part: 'stay', as: 'off' },
    { part: 'rail', as: 'off' },
  ]);
  expect(south?.joints['guard-feet']?.accesses?.above).toEqual({ tool: 'hex key 6 mm' });
  expect(north?.joints['guard-feet']?.accesses?.above?.place).toBe('pump-floor');
  expect(south?.slug).toBe('south-pump-set');
  expect(Object.keys(north?.closures ?? {})).toContain('pond-valve');
});

test('with its differences taken away, one side is the other but for names', () => {
  const bare = FIXTURE_SOUTH.slice(0, FIXTURE_SOUTH.indexOf('differences:'));
  const { machines } = right(fixtureWith('machines/south-set.yaml', bare));
  const { 'north-set': north, 'south-set': south } = machines;
  const own = { id: '', name: '', slug: '', otherSide: '', plate: '', position: '' };
  expect({ ...south, ...own }).toEqual({ ...north, ...own });
});

test('an origin leaves its value in the field and is kept beside the machine', () => {
  const { parts, origins } = machine(fixture(), 'south-set');
  expect(parts.rail?.mass).toBe('6 kg');
  expect(origins).toEqual([{ path: 'parts/rail/mass', from: 'seen once', by: 'Ada Quill' }]);
});

test('a wrong origin is told at its own line', () => {
  const text = FIXTURE_SOUTH.replace('from: seen once', 'from: hearsay');
  const line = lineOf(text, 'from: hearsay');
  expect(musts(fixtureWith('machines/south-set.yaml', text))).toEqual([
    `F4 machines/south-set.yaml:${line} differences/second-stay/to/mass/from`,
  ]);
});

test('unknown is no problem: the field is absent and its path is kept', () => {
  const text = FIXTURE_TYPE.replace('mass: 3.5 kg', 'mass: unknown').replace(
    'mass: 41 kg',
    'mass: { value: unknown, from: drawing }',
  );
  const { parts, unknown } = machine(fixtureWith('types/pump-set.yaml', text), 'north-set');
  expect(parts.guard).not.toHaveProperty('mass');
  expect(unknown).toEqual(['parts/guard/mass', 'parts/pump/mass']);
});

test('a difference may set a field to unknown', () => {
  const text = FIXTURE_SOUTH.replace(
    'differences:\n',
    'differences:\n  - { id: pump-mass, why: another pump, change: set, at: parts/pump/mass, ' +
      'to: unknown }\n',
  );
  const south = machine(fixtureWith('machines/south-set.yaml', text), 'south-set');
  expect(south.parts.pump).not.toHaveProperty('mass');
  expect(south.unknown).toEqual(['parts/pump/mass']);
});

test('a misfit inside a difference points to the position, not to the type', () => {
  const text = FIXTURE_SOUTH.replace('- part: rail', '- part: rial');
  const line = lineOf(text, 'part: rial');
  const { problems } = readPlant(fixtureWith('machines/south-set.yaml', text));
  expect(
    problems.map(({ fault, file, line, path, remedy }) => [fault, file, line, path, remedy]),
  ).toEqual([
    [
      'F9',
      'machines/south-set.yaml',
      line,
      'differences/rail-in-the-way/to/1/part',
      'did you mean rail?',
    ],
  ]);
});

test('taking away what the type still names is the fault of the difference', () => {
  const text = FIXTURE_SOUTH.replace(
    'differences:\n',
    'differences:\n  - { id: no-stay, why: open here, change: remove, at: parts/stay }\n',
  );
  const { problems } = readPlant(fixtureWith('machines/south-set.yaml', text));
  // The access was set anew by this position: that entry is its own and told at its own line.
  expect(problems.map(({ fault, path }) => [fault, path])).toEqual([
    ['F9', 'differences/no-stay/at'],
    ['F9', 'differences/rail-in-the-way/to/0/part'],
  ]);
  expect(problems[0]?.why).toMatch(/joints\/stay-bolts\/between\/0 \(types\/pump-set.yaml:\d+\)/);
});

test('values: the newest issue of a sheet is in force, and says what it supersedes', () => {
  const older = FIXTURE_SHEET.replace('issue: "2"', 'issue: "1"')
    .replace('2026-04-01', '2024-04-01')
    .replace('value: 70 N.m', 'value: 82 N.m');
  const files = [...fixture(), { file: 'values/older.yaml', text: older }];
  const { values } = machine(files, 'north-set');
  expect(values['pump-foot']).toMatchObject({
    id: 'pump-foot',
    value: '70 N.m',
    issue: '2',
    date: '2026-04-01',
    authority: 'Mill pond office',
    supersedes: { issue: '1', value: '82 N.m' },
  });
});

test('values: a sheet for one machine reaches that machine only, and the clash is told', () => {
  const own = FIXTURE_SHEET.slice(0, FIXTURE_SHEET.indexOf('  flange-bolt:'))
    .replace('sheet: pump-set-values', 'sheet: south-values')
    .replace('for: pump-set', 'for: south-set')
    .replace('2026-04-01', '2026-04-09')
    .replace('70 N.m', '64 N.m');
  const files = [...fixture(), { file: 'values/south.yaml', text: own }];
  expect(machine(files, 'south-set').values['pump-foot']?.value).toBe('64 N.m');
  expect(machine(files, 'north-set').values['pump-foot']?.value).toBe('70 N.m');
  const { problems } = readPlant(files);
  expect(problems.map(({ level, path }) => [level, path])).toEqual([
    ['should', 'values/pump-foot'],
  ]);
});

test('problems of several files are told together, the worst first', () => {
  const files = fixtureWith(
    'types/pump-set.yaml',
    FIXTURE_TYPE.replace('mass: 220 kg', 'masss: 220 kg')
      .replace('count: 6', 'count: 0')
      .replace('joint: suction-flange', 'joint: suction-flnge'),
  ).map((one) =>
    one.file === 'values/pump-set.yaml'
      ? { ...one, text: one.text.replace('value: 110 N.m', 'value: 110 mm') }
      : one,
  );
  expect(musts(files).map((text) => text.split(' ')[0])).toEqual(['F3', 'F7', 'F9', 'F6']);
});

test('on and off without quotes are read as words and remarked on', () => {
  const text = FIXTURE_TYPE.replace('gives: "off"', 'gives: off');
  const { plant, problems } = readPlant(fixtureWith('types/pump-set.yaml', text));
  expect(plant).not.toBeNull();
  expect(problems.map(({ level, remedy }) => [level, remedy])).toEqual([
    ['should', 'write it in quotes: "off"'],
  ]);
});

test('the hash names what the plant says, not its files', () => {
  const { issue } = right(fixture());
  expect(issue.hash).toMatch(/^[0-9a-f]{64}$/);
  expect(right([...fixture()].reverse()).issue.hash).toBe(issue.hash);
  const moved = fixture().map(({ file, text }) => ({ file: `elsewhere/${file}`, text }));
  expect(right(moved).issue.hash).toBe(issue.hash);
  const other = fixtureWith('types/pump-set.yaml', FIXTURE_TYPE.replace('41 kg', '42 kg'));
  expect(right(other).issue.hash).not.toBe(issue.hash);
});

test('nothing, a file of nothing, and a file that unfolds without end are told, not thrown', () => {
  expect(musts([])).toEqual(['F8 plant.yaml:1 plant']);
  expect(musts([...fixture(), { file: 'a.yaml', text: '' }])).toEqual(['F8 a.yaml:1 ']);
  const bomb = ['a: &a [x, x, x, x, x, x, x, x, x]'];
  for (const [n, id] of [...'bcdefgh'].entries()) {
    const before = 'abcdefgh'[n];
    bomb.push(`${id}: &${id} [${Array(9).fill(`*${before}`).join(', ')}]`);
  }
  expect(musts([...fixture(), { file: 'a.yaml', text: bomb.join('\n') }])).toEqual([
    'F4 a.yaml:1 ',
  ]);
  const loop = 'plant: &a\n  b: *a\n';
  expect(musts([...fixture(), { file: 'a.yaml', text: loop }])[0]).toMatch(/^F\d+ a.yaml/);
});

test('names that are near are suggested, others not', () => {
  expect(nearest('suction-flnge', ['suction-flange', 'pump-feet'])).toEqual(['suction-flange']);
  expect(nearest('sution-flange', ['suction-flange'])).toEqual(['suction-flange']);
  expect(nearest('anything', ['suction-flange', 'pump-feet'])).toEqual([]);
});
