// Values issued for a joint by its name: they reach its fasteners, and two never hold at once.

import { expect, test } from 'vitest';
import { FIXTURE_SHEET, FIXTURE_TYPE, fixture } from './fixture.ts';
import { readPlant } from './read.ts';
import type { PlantText } from './types.ts';

const withSheet = (text: string, files: PlantText = fixture()): PlantText =>
  files.map((one) => (one.file === 'values/pump-set.yaml' ? { ...one, text } : one));

const withType = (text: string): PlantText =>
  fixture().map((one) => (one.file === 'types/pump-set.yaml' ? { ...one, text } : one));

const told = (files: PlantText) =>
  readPlant(files).problems.map(({ level, fault, path, remedy }) => [level, fault, path, remedy]);

const named = (joint: string, id = 'pump-foot') =>
  FIXTURE_SHEET.replace(`  ${id}:\n`, `  ${id}:\n    joint: ${joint}\n`);

test('a value that names its joint reaches a fastener for which the plant names none', () => {
  const bare = FIXTURE_TYPE.replace('        tightening: pump-foot\n', '');
  const { plant } = readPlant(withSheet(named('pump-feet'), withType(bare)));
  const fasteners = plant?.machines['north-set']?.joints['pump-feet']?.fasteners ?? {};
  expect(Object.values(fasteners).map((f) => f.tightening)).toEqual(['pump-foot']);
  const without = readPlant(withType(bare)).plant?.machines['north-set']?.joints['pump-feet'];
  expect(Object.values(without?.fasteners ?? {}).map((f) => f.tightening)).toEqual([undefined]);
});

test('an unknown joint is told with the one that was probably meant', () => {
  expect(told(withSheet(named('pump-fete')))).toEqual([
    ['must', 'F9', 'values/pump-foot/joint', expect.stringContaining('pump-feet')],
  ]);
});

test('two torques for one joint in one issue are refused at the second', () => {
  const twice = named('pump-feet').replace(
    '  flange-bolt:\n',
    '  flange-bolt:\n    joint: pump-feet\n',
  );
  expect(told(withSheet(twice))).toContainEqual([
    'must',
    'F20',
    'values/flange-bolt/joint',
    undefined,
  ]);
});

test('a sheet that gives a joint another value than the plant names is refused', () => {
  expect(told(withSheet(named('pump-feet', 'flange-bolt')))).toEqual([
    ['must', 'F20', 'values/flange-bolt/joint', undefined],
  ]);
});

test('what an issue before said is told beside a value, where the sheet itself does not', () => {
  const bare = FIXTURE_SHEET.replace(/ {4}supersedes:\n.*\n.*\n/, '').replace(
    'name: Pump set values\n',
    'name: Pump set values\nwhy: Feet cracked\n',
  );
  const older = bare
    .replace('issue: "2"', 'issue: "1"')
    .replace('2026-04-01', '2024-04-01')
    .replace('70 N.m', '35.40 lbf.ft');
  const files = [...withSheet(bare), { file: 'values/older.yaml', text: older }];
  const { plant } = readPlant(files);
  const values = plant?.machines['north-set']?.values;
  expect(values?.['pump-foot']?.supersedes).toEqual({ issue: '1', value: '35.40 lbf.ft' });
  expect(values?.['pump-foot']?.why).toBe('Feet cracked');
  expect(values?.['flange-bolt']?.supersedes).toBeUndefined();
  expect(plant?.sheets.map(({ issue, file }) => [issue, file])).toEqual([
    ['1', 'values/older.yaml'],
    ['2', 'values/pump-set.yaml'],
  ]);
});

test('tight by hand with no value is for joints marked as not critical', () => {
  const bare = FIXTURE_TYPE.replace('        tightening: pump-foot\n', '');
  const marked = (more: string) =>
    withType(bare.replace('  pump-feet:\n', `  pump-feet:\n    byHand: true\n${more}`));
  expect(told(marked(''))).toEqual([['should', undefined, 'joints/pump-feet/byHand', undefined]]);
  expect(told(marked('    critical: true\n'))).toEqual([
    ['must', 'F20', 'joints/pump-feet/byHand', undefined],
  ]);
  expect(told(marked('    critical: false\n'))).toEqual([]);
  const text = FIXTURE_TYPE.replace('  pump-feet:\n', '  pump-feet:\n    byHand: true\n');
  expect(told(withType(text))).toEqual([]);
});

test('a sheet says how long it stands in months or years, and nothing else', () => {
  const said = (text: string) =>
    withSheet(FIXTURE_SHEET.replace('for: pump-set\n', `for: pump-set\n${text}\n`));
  expect(told(said('confirm: 24 months\nconfirmed: { on: 2026-01-02, by: Ada Quill }'))).toEqual(
    [],
  );
  expect(told(said('confirm: a while'))).toEqual([['must', 'F4', 'confirm', undefined]]);
});

test('a re-tightening names an issued torque, and a joint with a gasket', () => {
  const named = (value: string, joint = 'suction-flange') =>
    withType(
      FIXTURE_TYPE.replace(
        `  ${joint}:\n`,
        `  ${joint}:\n    retighten: { value: ${value}, when: cold }\n`,
      ),
    );
  const at = (joint: string) => `joints/${joint}/retighten`;
  expect(told(named('flange-bolt'))).toEqual([]);
  expect(told(named('flange-blot'))).toEqual([
    ['must', 'F9', `${at('suction-flange')}/value`, expect.stringContaining('flange-bolt')],
  ]);
  const clearance = FIXTURE_SHEET.replace(
    'values:\n',
    'values:\n  gap: { name: Gap, kind: clearance, value: 1 mm }\n',
  );
  expect(told(withSheet(clearance, named('gap')))).toEqual([
    ['must', 'F20', `${at('suction-flange')}/value`, undefined],
  ]);
  expect(told(named('flange-bolt', 'guard-feet'))).toEqual([
    ['should', undefined, at('guard-feet'), undefined],
  ]);
});
