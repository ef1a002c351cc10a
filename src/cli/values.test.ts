// `boxup values` as a person meets it: a new issue taken in, and the jobs it finds. All invented.

import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { readPlant } from '../plant/read.ts';
import { AUTHORITY_LINE } from '../quantity/authority.ts';
import { jobCommand } from './job.ts';
import { readFolder } from './read-folder.ts';
import { takeIn } from './read-sheet.ts';
import { valuesCommand } from './values.ts';

const demo = fileURLToPath(new URL('../../demo/', import.meta.url));
const list = join(demo, 'tern-rock-main-engine-values-issue-8.csv');
const folder = mkdtempSync(join(tmpdir(), 'boxup-values-'));
const plant = join(folder, 'plant');
const archive = join(folder, 'log.db');

beforeAll(() => cpSync(join(demo, 'tern-rock'), plant, { recursive: true }));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** In this process: starting the program anew for each line would take longer than it does. */
async function boxup(name: 'values' | 'job', ...args: readonly string[]) {
  const command = name === 'values' ? valuesCommand() : jobCommand();
  const out: string[] = [];
  const keep = (text: string | Uint8Array): boolean => out.push(String(text)) > 0;
  const spies = [process.stdout, process.stderr].map((to) =>
    vi.spyOn(to, 'write').mockImplementation(keep as typeof to.write),
  );
  try {
    await command.parseAsync([...args], { from: 'user' });
    const status = process.exitCode ?? 0;
    process.exitCode = 0;
    return { stdout: out.join(''), status };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}

const eighth = ['--sheet', 'main-engine-values', '--issue', '8', '--date', '2026-11-20'];

test('values in force: figure as issued, condition, age of the sheet', async () => {
  const { stdout, status } = await boxup(
    'values',
    '--plant',
    plant,
    '--machine',
    'generating-set-1',
  );
  expect(status).toBe(0);
  expect(stdout).toContain('2.5 N.m  set-pump-cover  Pump cover screws M5 · threads clean, dry');
  expect(stdout).toMatch(/issue 4 of 2026-05-20, .*; last confirmed 2026-05-20, \d+ months ago/);
  expect(stdout).toContain(AUTHORITY_LINE);
  const told = (await boxup('values', '--plant', plant, '--on', '2028-06-01')).stdout;
  expect(told).toContain('IT STOOD UNTIL 2028-05-20');
});

test('two issues compared: was, is, why', async () => {
  const sheet = 'generating-set-values';
  const { stdout } = await boxup('values', 'compare', `${sheet}:3`, `${sheet}:4`, '--plant', plant);
  expect(stdout).toContain('was 3 N.m (clean, dry) → is 2.5 N.m (clean, dry); Two cover screws');
  expect(stdout).toContain('was 1000 h → is 800 h; Three of the last five');
});

describe('a new issue refused', () => {
  const csv = readFileSync(list, 'utf8');
  const taken = (text: string, head = {}) => {
    const file = join(folder, 'list.csv');
    writeFileSync(file, text);
    const files = readFolder(plant);
    const read = readPlant(files).plant;
    if (read === null) throw new Error('the demo cannot be read');
    const given = { sheet: 'main-engine-values', issue: '8', date: '2026-11-20', ...head };
    return takeIn(file, given, files, read);
  };
  const lineOf = (id: string) => csv.split('\n').findIndex((row) => row.startsWith(`${id},`)) + 1;

  test('at the row of the list: a unit of another kind, two values for one joint', () => {
    const unit = taken(csv.replace('torque,38 N.m', 'torque,38 mm'));
    expect(unit.problems).toMatchObject([
      { fault: 'F6', file: 'list.csv', line: lineOf('sea-water-flange-m12'), got: '38 mm' },
    ]);
    const withJoint = csv
      .replace(',why\n', ',why,joint\n')
      .replace(/^(pump-mounting-nut|pump-mounting-bolt),.*$/gm, '$&,pump-mounting');
    expect(taken(withJoint).problems).toContainEqual(
      expect.objectContaining({ fault: 'F20', line: lineOf('pump-mounting-bolt') }),
    );
    const unknown = csv
      .replace(',why\n', ',why,joint\n')
      .replace(/^(cam-screw-m8),.*$/gm, '$&,cam-plate-scrw');
    expect(taken(unknown).problems[0]).toMatchObject({
      fault: 'F9',
      line: lineOf('cam-screw-m8'),
      got: 'cam-plate-scrw',
    });
  });

  test('a number that does not follow, a sheet nobody has, a list that is none', () => {
    expect(taken(csv, { issue: '7' }).problems[0]).toMatchObject({ expected: 'an issue after 7' });
    const near = taken(csv, {
      sheet: 'main-engine-value',
      name: 'M',
      for: 'main-engine',
      authority: 'A',
    });
    expect(near.problems[0]?.remedy).toBe('did you mean main-engine-values?');
    expect(taken('id;wert\nx;1', {}).problems[0]?.why).toBe('no such column');
  });

  test('it ends with 1 and writes nothing', async () => {
    const args = ['--sheet', 'main-engine-values', '--issue', '6', '--date', '2026-11-20'];
    const { stdout, status } = await boxup(
      'values',
      'import',
      list,
      '--plant',
      plant,
      ...args,
      '--write',
    );
    expect(status).toBe(1);
    expect(stdout).toContain('Refused: nothing was written.');
    expect(stdout).toContain('an issue after 7');
    expect(existsSync(join(plant, 'values', 'main-engine-issue-6.yaml'))).toBe(false);
  });
});

test('a new issue taken in, and what it means for a job that is open', async () => {
  const start = await boxup(
    'job',
    ...['start', '--archive', archive, '--plant', plant, '--by', 'Ada'],
    ...['--machine', 'main-engine-port', '--target', 'sea-water-pump', '--does', 'exchange'],
    ...['--use-anyway', 'test', '--limits', 'test'],
  );
  expect(start.status).toBe(0);
  const shown = await boxup('values', 'import', list, '--plant', plant, ...eighth);
  expect(shown.stdout).toContain(
    'was 42 N.m (anti-seize paste on thread and under the nut) → is 38 N.m',
  );
  expect(shown.stdout).toContain('Nothing is written yet');
  const written = await boxup(
    'values',
    'import',
    list,
    '--plant',
    plant,
    ...eighth,
    '--write',
    '--json',
  );
  expect(JSON.parse(written.stdout)).toMatchObject({
    written: true,
    file: 'values/main-engine-issue-8.yaml',
    changes: [{ id: 'sea-water-flange-m12' }, { id: 'pump-cover-screw' }],
  });
  const text = readFileSync(join(plant, 'values', 'main-engine-issue-8.yaml'), 'utf8');
  expect(text.startsWith('# Issued values for the main engine type')).toBe(true);
  const told = await boxup('values', 'tell', '--plant', plant, '--archive', archive, '--json');
  expect(JSON.parse(told.stdout).acts).toHaveLength(1);
  expect((await boxup('values', 'tell', '--plant', plant, '--archive', archive)).stdout).toContain(
    'Nothing new',
  );
  const open = await boxup('job', 'open', 'Sea-water', '--archive', archive);
  expect(open.stdout).toContain('is now 38 N.m (anti-seize paste on thread and under the nut)');
  const look = ['value-looked-at', 'Sea-water', 'joint/suction-flange', '--by', 'Ben'];
  expect((await boxup('job', ...look, '--archive', archive)).status).toBe(0);
  expect((await boxup('job', ...look, '--archive', archive)).status).toBe(2);
  const used = await boxup('values', 'where-used', 'sea-water-flange-m12', '--archive', archive);
  expect(used.stdout).toMatch(/open job .*: 42 N\.m, issue 7; SUPERSEDED: 38 N\.m in issue 8/);
});
