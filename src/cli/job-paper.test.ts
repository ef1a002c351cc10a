// The command `job paper`: a whole job entered from its sheets, and what is asked, not guessed.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { sheetsOf } from '../pack/sheets.ts';
import { neverTogether } from '../record/done-to-here.ts';
import { bodyOf, fixturePack } from '../record/fixture.ts';

const main = fileURLToPath(new URL('./main.ts', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'boxup-paper-job-'));
const archive = join(folder, 'log.db');
const packFile = join(folder, 'pack.json');
const pack = fixturePack();
const WRITTEN = '2026-03-14 03:20';

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const boxup = (...args: readonly string[]) =>
  spawnSync(process.execPath, ['--disable-warning=ExperimentalWarning', main, ...args], {
    encoding: 'utf8',
  });
const job = (...args: readonly string[]) => boxup('job', ...args, '--archive', archive);

let id = '';

beforeAll(() => {
  writeFileSync(packFile, JSON.stringify(pack));
  const { stdout } = job('start', '--pack', packFile, '--by', 'Ada');
  id = /^JOB is (\S+)$/m.exec(stdout)?.[1] ?? '';
});

const enter = (letter: string, ...more: readonly string[]) =>
  job('paper', id, letter, '--by', 'Maren', '--written', WRITTEN, '--entered-by', 'Ada', ...more);

/** What a person reads off a sheet on which everything is ticked. */
const rowsOf = (letter: string): readonly string[] =>
  (sheetsOf(pack).find((s) => s.letter === letter)?.steps ?? []).flatMap((step) => {
    const body = { thing: step.thing, ...(step.round === undefined ? {} : { round: step.round }) };
    const asks = step.asks.filter((ask) => ask.optional !== true);
    const said = asks.map((ask) => `${ask.name}:${String(bodyOf(step)[ask.name])}`).join(';');
    if (said !== '') return ['--row', `${step.id}=${said}`];
    return neverTogether(step.verb, body, pack) === null ? [] : ['--row', step.id];
  });

test('the sheets are listed under the names they are printed with, and their pack', () => {
  const { stdout, status } = job('paper', id);
  expect(status).toBe(0);
  expect(stdout).toContain('Sheet A · Before you start, take off (1 of 3), Test engine: 0 of ');
  expect(stdout).toContain(pack.id.slice(0, 12));
});

test('what is said by itself and was not said is asked for, and nothing is entered', () => {
  const { stderr, status } = enter('A');
  expect(status).toBe(2);
  expect(stderr).toContain('--row "shut closure/sea-suction": what isolates is said at its own');
  expect(job('open', id).stdout).toContain('0 open');
  expect(job('paper', id, 'A', '--by', 'Maren').stderr).toContain('--written is missing');
  expect(enter('Q').stderr).toMatch(/no sheet "Q" \(expected A, B/);
  expect(enter('A', '--row', 'shut closure/none').stderr).toContain('no step "shut closure/none"');
});

test('a row left out stays open; entered again, only what lacks is entered', () => {
  const first = enter('A', ...rowsOf('A'), '--except', 'undone joint/guard');
  expect(first.status, first.stderr).toBe(0);
  expect(first.stdout).toContain(`by Maren, entered from paper, sheet A, written ${WRITTEN}`);
  const again = JSON.parse(enter('A', ...rowsOf('A'), '--json').stdout);
  const said = again.acts.map((a: { body: { step: string } }) => a.body.step);
  expect(said).toEqual(['undone joint/guard']);
});

test('sheet by sheet to the closing; verify and the record name the sheets', () => {
  for (const { letter } of sheetsOf(pack).slice(1)) {
    const { status, stderr } = enter(letter, ...rowsOf(letter));
    expect(status, `${letter}: ${stderr}`).toBe(0);
  }
  const closed = job('close', id, '--by', 'Ada');
  expect(closed.status, closed.stderr).toBe(0);
  const verified = boxup('record', 'verify', '--archive', archive).stdout;
  for (const { letter, steps } of sheetsOf(pack))
    expect(verified).toContain(`${id}: entered from paper, sheet ${letter}, ${steps.length}`);
  const proof = join(folder, 'proof.pdf');
  const shown = boxup('record', 'show', id, '--archive', archive, '--proof-pdf', proof).stdout;
  expect(readFileSync(proof).subarray(0, 5).toString()).toBe('%PDF-');
  expect(shown.split('entered from paper, sheet').length - 1).toBe(pack.steps.length);
});

test('what is to be looked at again is listed, done once, and refused a second time', () => {
  const list = () => job('follow-up', id).stdout;
  expect(list()).toContain('look-1-h: after 1 h: Look for leaks (owned by Ada)');
  const done = job('follow-up', id, 'look', '--by', 'Cleo', '--text', 'all dry');
  expect(done.status, done.stderr).toBe(0);
  expect(list()).toContain('(done by Cleo)');
  const again = job('follow-up', id, 'look', '--by', 'Ben');
  expect(again.status).toBe(1);
  expect(again.stderr).toContain('it was done by Cleo');
  expect(job('follow-up', id, 'nothing', '--by', 'Ben').status).toBe(2);
});
