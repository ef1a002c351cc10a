// The program as a person meets it: its help, its suggestion for a slip, its exit codes.

import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { AUTHORITY_LINE } from '../quantity/authority.ts';

const main = fileURLToPath(new URL('./main.ts', import.meta.url));
const boxup = (...args: string[]) =>
  spawnSync(process.execPath, ['--disable-warning=ExperimentalWarning', main, ...args], {
    encoding: 'utf8',
  });

const commands = ['serve', 'check', 'pack', 'calc', 'job', 'record'];

test('--help lists every command and ends with the authority line', () => {
  const { stdout, status } = boxup('--help');
  for (const name of commands) expect(stdout).toMatch(new RegExp(`^  ${name}\\b.* \\w+`, 'm'));
  expect(stdout.trimEnd().endsWith(AUTHORITY_LINE)).toBe(true);
  expect(status).toBe(0);
});

test.each(commands)('%s --help is not empty and ends with the authority line', (name) => {
  const { stdout, status } = boxup(name, '--help');
  expect(stdout).toMatch(new RegExp(`Usage: boxup ${name}`));
  expect(stdout.trimEnd().endsWith(AUTHORITY_LINE)).toBe(true);
  expect(status).toBe(0);
});

test('a misspelt command is answered with a suggestion and exit code 2', () => {
  const { stderr, stdout, status } = boxup('pakc');
  expect(stderr).toMatch(/pakc/);
  expect(stderr).toMatch(/pack/);
  expect(stdout).toBe('');
  expect(status).toBe(2);
});

test('an unknown option ends with 2, no command at all shows the help and ends with 2', () => {
  expect(boxup('--nonsense').status).toBe(2);
  const { stderr, status } = boxup();
  expect(stderr).toMatch(/Usage: boxup/);
  expect(status).toBe(2);
});
