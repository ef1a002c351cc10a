// The launcher from another folder and through a link, and how it sums the tests.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, realpathSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { sumReport } from '../../bin/launch.mjs';

const boxup = fileURLToPath(new URL('../../bin/boxup', import.meta.url));
const folder = realpathSync(mkdtempSync(join(tmpdir(), 'boxup-launch-')));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (command: string, ...args: string[]) =>
  spawnSync(command, args, { cwd: folder, encoding: 'utf8' });

test('bin/boxup starts from any folder, with nothing but the answer on standard output', () => {
  const { stdout, status } = run(boxup, '--version');
  expect(stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
  expect(status).toBe(0);
});

test('bin/boxup starts through a link, and hands back the exit code', () => {
  const link = join(folder, 'boxup');
  symlinkSync(boxup, link);
  expect(run(link, '--version').status).toBe(0);
  expect(run(link, 'no-such-command').status).toBe(2);
});

test('the launcher says what it takes', () => {
  const launch = fileURLToPath(new URL('../../bin/launch.mjs', import.meta.url));
  const { stderr, status } = run(process.execPath, launch, 'nonsense');
  expect(stderr).toMatch(/start, test, test-long, bench or cli/);
  expect(status).toBe(2);
});

const file = (status: string, count: number) => ({
  status,
  assertionResults: Array.from({ length: count }, () => ({})),
});

test.each([
  ['all passed', { numPassedTests: 5, testResults: [file('passed', 5)] }, 0, 5, 0],
  ['one failed', { numPassedTests: 4, numFailedTests: 1, testResults: [] }, 1, 4, 1],
  ['a file could not run', { numPassedTests: 4, testResults: [file('failed', 0)] }, 1, 4, 1],
  ['an error outside a test', { numPassedTests: 4, testResults: [] }, 1, 4, 1],
  ['no report at all', undefined, 1, 0, 1],
])('sumReport: %s', (_, report, exitCode, passed, failed) => {
  expect(sumReport(report, exitCode)).toMatchObject({ passed, failed });
});

test('sumReport: tests left out are counted, not hidden', () => {
  const report = { numPassedTests: 1, numPendingTests: 2, numTodoTests: 1, testResults: [] };
  expect(sumReport(report, 0)).toEqual({ passed: 1, failed: 0, skipped: 3 });
});
