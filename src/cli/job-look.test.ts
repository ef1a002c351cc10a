// The command `job second-look`: a blank list in its own order, what was seen, and looking alone.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { lookPack, upToStep } from '../record/look-fixture.ts';

const main = fileURLToPath(new URL('./main.ts', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'boxup-look-'));
const archive = join(folder, 'log.db');
const pack = lookPack('2');

const boxup = (...args: readonly string[]) =>
  spawnSync(process.execPath, ['--disable-warning=ExperimentalWarning', main, ...args], {
    encoding: 'utf8',
  });
const look = (...args: readonly string[]) =>
  boxup('job', 'second-look', id, 'isolation', '--archive', archive, ...args);

let id = '';

afterAll(() => rmSync(folder, { recursive: true, force: true }));
beforeAll(() => {
  const file = join(folder, 'pack.json');
  writeFileSync(file, JSON.stringify(pack));
  const begun = boxup('job', 'start', '--archive', archive, '--pack', file, '--by', 'Ada');
  id = /^JOB is (\S+)$/m.exec(begun.stdout)?.[1] ?? '';
  const drafts = upToStep(pack, 'second-look look/isolation')
    .slice(1)
    .map((d) => JSON.stringify({ ...d, stream: { kind: 'job', id } }));
  const said = join(folder, 'said.jsonl');
  writeFileSync(said, drafts.join('\n'));
  expect(boxup('job', 'play', said, '--archive', archive).status).toBe(0);
});

test('the list is blank: closures and what may be said, in another order than the pack’s', () => {
  const { stdout, status } = look('--by', 'Ben');
  expect(status).toBe(0);
  expect(stdout).toMatch(/start-switch \(.*\): open \| shut \| open N turns \| can’t tell/);
  expect(stdout.indexOf('start-switch')).toBeLessThan(stdout.indexOf('sea-suction'));
  const { rows } = JSON.parse(look('--by', 'Ben', '--json').stdout);
  expect(rows).toHaveLength(2);
  expect(JSON.stringify(rows)).not.toContain('position');
});

test('who shut it is refused; a position too few is no list; seen right, it is kept', () => {
  const saw = ['--saw', 'shut', '--saw', 'shut'];
  const ada = look('--by', 'Ada', ...saw);
  expect(ada.status).toBe(1);
  expect(ada.stderr).toContain('another has to look');
  expect(look('--by', 'Ben', '--saw', 'shut').status).toBe(2);
  const wrong = look('--by', 'Ben', '--saw', 'shut', '--saw', "can't tell");
  expect(wrong.status).toBe(0);
  expect(wrong.stdout).toContain('Finding');
  expect(look('--by', 'Ben', ...saw).status).toBe(0);
  const shown = boxup('record', 'show', id, '--archive', archive);
  expect(shown.stdout).toContain('Isolation: looked at by a second pair of eyes: Ben');
  expect(boxup('record', 'verify', '--archive', archive).stdout).not.toContain('checked alone');
});

test('the pack is made with the hands aboard, and another number is no answer', () => {
  const demo = fileURLToPath(new URL('../../demo/tern-rock', import.meta.url));
  const names = ['--machine', 'main-engine-port', '--target', 'sea-water-pump', '--json'];
  const made = (n: string) => boxup('pack', '--plant', demo, ...names, '--hands-aboard', n);
  const one = JSON.parse(made('1').stdout);
  expect(one.request.handsAboard).toBe('1');
  const decisions = one.decisions.map((d: { id: string }) => d.id);
  expect(decisions).not.toContain('hands aboard not stated');
  expect(made('7').status).toBe(2);
});
