// The SQLite archive passes the one acceptance suite, and refuses what is damaged.

import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { expect, test } from 'vitest';
import { bytesOf } from '../record/act.ts';
import { chain, fixturePack, jobDraft, wholeJob } from '../record/fixture.ts';
import { verify } from '../record/verify.ts';
import { acceptance } from './acceptance.ts';
import { type Archive, ArchiveDamaged } from './contract.ts';
import { openSqlite } from './sqlite.ts';

const folder = mkdtempSync(join(tmpdir(), 'boxup-archive-'));
const files = new WeakMap<Archive, string>();
let count = 0;

function open(file: string): Archive {
  const archive = openSqlite({ file, vessel: 'tern-rock' });
  files.set(archive, file);
  return archive;
}

const newFile = (): string => {
  count += 1;
  return join(folder, `${count}.db`);
};

acceptance('SQLite', {
  fresh: async () => open(newFile()),
  again: async (archive) => open(files.get(archive) ?? ''),
});

test('a row altered behind its back is not read as if nothing had happened', async () => {
  const file = newFile();
  const archive = open(file);
  const acts = chain(wholeJob(fixturePack()).slice(0, 3));
  await archive.receive(acts.map((a) => ({ hash: a.hash, bytes: bytesOf(a) })));
  await archive.close();
  const db = new DatabaseSync(file);
  db.exec("UPDATE acts SET bytes = CAST(replace(CAST(bytes AS TEXT), 'Ada', 'Eve') AS BLOB)");
  db.close();
  const again = open(file);
  await expect(again.acts()).rejects.toThrow(/hash to/);
  await again.close();
});

test('an archive says whose it is: another vessel, or none at first, is refused', async () => {
  const file = newFile();
  await open(file).close();
  expect(() => openSqlite({ file, vessel: 'other' })).toThrow(/of tern-rock, not of other/);
  const known = openSqlite({ file });
  expect(known.vessel).toBe('tern-rock');
  await known.close();
  expect(() => openSqlite({ file: newFile() })).toThrow(/whose it is/);
});

test('a file that is no archive, or a folder that is not there, is told in a sentence', () => {
  const file = newFile();
  writeFileSync(file, 'this is a letter, not an archive '.repeat(100));
  expect(() => openSqlite({ file, vessel: 'tern-rock' })).toThrow(ArchiveDamaged);
  const nowhere = join(folder, 'no', 'where.db');
  expect(() => openSqlite({ file: nowhere, vessel: 'tern-rock' })).toThrow(ArchiveDamaged);
});

test('two programs on one file take turns: no number twice, one head after each act', async () => {
  const file = newFile();
  const [a, b] = [open(file), open(file)];
  const at = { utc: '2026-03-14T08:00:00.000Z', offsetMinutes: 0 };
  const drafts = [jobDraft('note', { text: 'x' })];
  for (let i = 0; i < 20; i++) {
    const writer = i % 3 === 0 ? b : a;
    expect((await writer.append({ drafts, at })).ok).toBe(true);
    const heads = await a.heads();
    expect(heads).toHaveLength(1);
    expect(await b.heads()).toEqual(heads);
  }
  expect((await a.acts()).map((act) => act.deviceSeq)).toEqual(
    Array.from({ length: 20 }, (_, i) => i + 1),
  );
  expect(verify(await b.rows())).toEqual([]);
  await Promise.all([a.close(), b.close()]);
});
