// `boxup check` as a person meets it: its text, its JSON, its exit codes, both demo plants.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { FIXTURE_TYPE, fixture } from '../plant/fixture.ts';
import { AUTHORITY_LINE } from '../quantity/authority.ts';

const main = fileURLToPath(new URL('./main.ts', import.meta.url));
const demo = fileURLToPath(new URL('../../demo/', import.meta.url));
const boxup = (...args: string[]) =>
  spawnSync(process.execPath, ['--disable-warning=ExperimentalWarning', main, ...args], {
    encoding: 'utf8',
  });

const made: string[] = [];
afterAll(() => {
  for (const folder of made) rmSync(folder, { recursive: true });
});

function folderWith(type: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'plant-'));
  made.push(folder);
  for (const { file, text } of fixture()) {
    const own = file.startsWith('types/') ? type : text;
    writeFileSync(join(folder, file.replace('/', '-')), own);
  }
  return folder;
}

test.each(['tern-rock', 'water-works'])('the demo plant %s has nothing to put right', (name) => {
  const { stdout, status } = boxup('check', `${demo}${name}`);
  expect(stdout).toMatch(/^0 must/m);
  expect(status).toBe(0);
});

test('a wrong file is told with file, line, path, value, what is allowed and a suggestion', () => {
  const wrong = FIXTURE_TYPE.replace('joint: suction-flange', 'joint: suction-flnge');
  const line = wrong.slice(0, wrong.indexOf('suction-flnge')).split('\n').length;
  const { stdout, status } = boxup('check', folderWith(wrong));
  expect(stdout).toContain(
    `must  types-pump-set.yaml:${line} sensors/suction-pressure/joint – there is no joint ` +
      'suction-flnge on north-set; it says suction-flnge (expected the id of a joint) ' +
      '→ did you mean suction-flange? [F9]',
  );
  expect(status).toBe(1);
});

test('--explain says what came from where, for one machine by its slug', () => {
  const { stdout, status } = boxup(
    ...['check', folderWith(FIXTURE_TYPE), '--explain', '--machine', 'south-pump-set'],
  );
  expect(stdout).toContain(
    '  parts/rail/mass: 6 kg ← difference second-stay (the wall is nearer here); ' +
      'seen once, Ada Quill',
  );
  expect(stdout).toContain('  parts/pump/mass: 41 kg ← type pump-set');
  expect(stdout).not.toContain('North pump set');
  expect(status).toBe(0);
});

test('--json is one object with the problems, the machines and the authority line', () => {
  const { stdout } = boxup('check', folderWith(FIXTURE_TYPE), '--json', '--explain');
  const told = JSON.parse(stdout);
  expect(told.problems).toEqual([]);
  expect(told.machines.map(({ slug }: { slug: string }) => slug)).toEqual([
    'north-pump-set',
    'south-pump-set',
  ]);
  expect(told.explain).toHaveLength(2);
  expect(told.authority).toBe(AUTHORITY_LINE);
});

test('no folder, no such folder, no such machine: exit code 2 and a sentence', () => {
  for (const args of [[], ['nowhere'], [folderWith(FIXTURE_TYPE), '--machine', 'east-set']]) {
    const { stderr, stdout, status } = boxup('check', ...args);
    expect(stderr).toMatch(/which folder|cannot be read|there is no machine east-set/);
    expect(stdout).toBe('');
    expect(status).toBe(2);
  }
});

test('--schema prints the schema of a kind of file', () => {
  const { stdout, status } = boxup('check', '--schema', 'sheet');
  expect(JSON.parse(stdout)).toMatchObject({ $schema: expect.stringContaining('2020-12') });
  expect(status).toBe(0);
});

test('--help ends with the authority line', () => {
  expect(boxup('check', '--help').stdout.trimEnd().endsWith(AUTHORITY_LINE)).toBe(true);
});
