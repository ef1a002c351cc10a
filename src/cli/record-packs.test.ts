// `record verify` looks at the packs too: a changed or missing pack is found beside the acts.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { afterEach, beforeEach, expect, test } from 'vitest';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'boxup-packs-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const boxup = (...args: string[]) =>
  spawnSync('bin/boxup', args, { encoding: 'utf8', env: { ...process.env, TZ: 'UTC' } });

const begun = (): string => {
  const archive = join(folder, 'a.sqlite');
  const names = ['--plant', 'demo/tern-rock', '--machine', 'main-engine-port'];
  const job = ['--target', 'plate-cooler', '--does', 'exchange', '--by', 'Ada'];
  const anyway = ['--use-anyway', 'a test', '--limits', 'none'];
  const start = boxup('job', 'start', '--archive', archive, ...names, ...job, ...anyway);
  expect(start.status, start.stderr).toBe(0);
  expect(boxup('record', 'verify', '--archive', archive).status).toBe(0);
  return archive;
};

test('a pack whose bytes were changed is found', () => {
  const archive = begun();
  const db = new DatabaseSync(archive);
  db.exec(
    "UPDATE packs SET bytes = CAST(replace(CAST(bytes AS TEXT), 'N.m', 'kNm') AS BLOB) WHERE 1",
  );
  db.close();
  expect(boxup('record', 'verify', '--archive', archive).status).toBe(1);
});

test('a pack that an act names and nobody kept is found', () => {
  const archive = begun();
  const db = new DatabaseSync(archive);
  db.exec('DELETE FROM packs');
  db.close();
  const verified = boxup('record', 'verify', '--archive', archive);
  expect(verified.status).toBe(1);
  expect(verified.stdout + verified.stderr).toMatch(/pack [0-9a-f]{64} that it names is not here/);
});
