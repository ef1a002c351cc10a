// Nothing acknowledged is lost: killed at random moments, the log cut anywhere, the sync traced.
// The same checks are run with synchronous=OFF and must fail there, or they would prove nothing.

import { spawn, spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readFileSync, rmSync, truncateSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { verify } from '../record/verify.ts';
import { openSqlite } from './sqlite.ts';
import { lastSynced, type Traced, traced } from './trace.ts';

const LONG = process.env.LONG === '1';
const KILLS = LONG ? 200 : 20;
const CUTS = LONG ? 500 : 100;
const SEED = 7321;
const folder = mkdtempSync(join(tmpdir(), 'boxup-durability-'));
const appender = fileURLToPath(new URL('./appender.ts', import.meta.url));
const NODE = ['--disable-warning=ExperimentalWarning', appender];

afterAll(() => rmSync(folder, { recursive: true, force: true }));

function chance(seed: number): () => number {
  let a = seed;
  return () => {
    a = (Math.imul(a, 1_664_525) + 1_013_904_223) >>> 0;
    return a / 4_294_967_296;
  };
}

type Kept = { readonly hash: string; readonly walBytes: number };

/** Whole lines only: a line cut by the kill was not heard by anybody. */
function heard(output: string): readonly Kept[] {
  return output
    .split('\n')
    .slice(0, -1)
    .flatMap((line) => {
      const [word, hash = '', size] = line.split(' ');
      return word === 'kept' ? [{ hash, walBytes: Number(size) }] : [];
    });
}

/** Starts the appender, kills it after so many milliseconds from its first acknowledgement. */
function killedAfter(file: string, ms: number): Promise<readonly Kept[]> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [...NODE, file, 'full', '100000']);
    let output = '';
    let timer: NodeJS.Timeout | undefined;
    child.stdout.on('data', (chunk: Buffer) => {
      output += chunk.toString();
      timer ??= setTimeout(() => child.kill('SIGKILL'), ms);
    });
    child.on('error', reject);
    child.on('close', () => {
      clearTimeout(timer);
      resolve(heard(output));
    });
  });
}

async function kept(file: string): Promise<ReadonlySet<string>> {
  const archive = openSqlite({ file, vessel: 'tern-rock' });
  try {
    expect(verify(await archive.rows(), { vessel: 'tern-rock' })).toEqual([]);
    return new Set((await archive.acts()).map((a) => a.hash));
  } finally {
    await archive.close();
  }
}

const lost = (said: readonly Kept[], there: ReadonlySet<string>): number =>
  said.filter((k) => !there.has(k.hash)).length;

test(`killed at ${KILLS} random moments: no acknowledged act is lost (seed ${SEED})`, async () => {
  const next = chance(SEED);
  let acknowledged = 0;
  for (let i = 0; i < KILLS; i++) {
    const file = join(folder, `kill-${i}.db`);
    const said = await killedAfter(file, next() * 120);
    expect(said.length).toBeGreaterThan(0);
    acknowledged += said.length;
    expect(lost(said, await kept(file)), `kill ${i}`).toBe(0);
  }
  console.log(`seed ${SEED}: ${acknowledged} acknowledged acts, none lost`);
});

/** A live archive that nobody has closed: its log is copied and cut as a crash would leave it. */
async function cutCopies(cuts: number): Promise<void> {
  const source = join(folder, 'cut.db');
  const said = await killedAfter(source, 400);
  const whole = readFileSync(`${source}-wal`).length;
  const next = chance(SEED);
  let found = 0;
  for (let i = 0; i < cuts; i++) {
    const copy = join(folder, 'copy.db');
    for (const end of ['-wal', '-shm']) rmSync(`${copy}${end}`, { force: true });
    copyFileSync(source, copy);
    copyFileSync(`${source}-wal`, `${copy}-wal`);
    const offset = Math.floor(next() * (whole + 1));
    truncateSync(`${copy}-wal`, offset);
    const there = await kept(copy);
    const before = said.filter((k) => k.walBytes <= offset);
    expect(lost(before, there), `cut at ${offset} of ${whole}`).toBe(0);
    found += before.length;
  }
  console.log(
    `seed ${SEED}: ${cuts} cuts of ${whole} bytes, ${found} commits looked for and found`,
  );
}

test(`the log cut at ${CUTS} random offsets: every commit before the cut verifies`, () =>
  cutCopies(CUTS));

const strace = spawnSync('strace', ['-V']).status === 0;
if (!strace)
  console.log('NOT MEASURED: no strace here, so no sync before an acknowledgement is shown');

/** Runs the appender under strace: its writes and syncs of the log, and its acknowledgements. */
function underTrace(mode: 'full' | 'off', count: number): Traced {
  const file = join(folder, `trace-${mode}.db`);
  const log = join(folder, `trace-${mode}.log`);
  const calls = 'trace=openat,close,write,pwrite64,fsync,fdatasync';
  const args = ['-f', '-y', '-s', '200', '-e', calls, '-o', log, process.execPath, ...NODE];
  const ran = spawnSync('strace', [...args, file, mode, String(count)], { encoding: 'utf8' });
  expect(ran.status).toBe(0);
  return traced(readFileSync(log, 'utf8'), `${file}-wal`);
}

/** What a power cut right after an acknowledgement leaves: the log as far as it was synced. */
async function lostToPowerCut(mode: 'full' | 'off'): Promise<number> {
  const source = join(folder, `power-${mode}.db`);
  const copy = join(folder, `power-${mode}-cut.db`);
  const log = join(folder, `power-${mode}.log`);
  const calls = 'trace=write,pwrite64,fsync,fdatasync';
  const args = ['-f', '-y', '-s', '200', '-e', calls, '-o', log, process.execPath, ...NODE];
  const child = spawn('strace', [...args, source, mode, '100000']);
  let output = '';
  await new Promise<void>((resolve) => {
    child.stdout.on('data', (chunk: Buffer) => {
      output += chunk.toString();
      if (heard(output).length >= 20) resolve();
    });
    child.on('close', () => resolve());
  });
  // The traced process is the tracer's child: killing the tracer alone would leave it running.
  const closed = new Promise((resolve) => child.on('close', resolve));
  const [pid] = /^\d+/.exec(readFileSync(log, 'utf8')) ?? [];
  process.kill(Number(pid), 'SIGKILL');
  await closed;
  const said = heard(output);
  expect(said.length).toBeGreaterThanOrEqual(20);
  copyFileSync(source, copy);
  copyFileSync(`${source}-wal`, `${copy}-wal`);
  const synced = lastSynced(traced(readFileSync(log, 'utf8'), `${source}-wal`), said.length);
  truncateSync(`${copy}-wal`, Math.min(synced, readFileSync(`${copy}-wal`).length));
  const first = openSqlite({ file: copy, vessel: 'tern-rock' });
  const there = new Set((await first.acts()).map((a) => a.hash));
  await first.close();
  return lost(said, there);
}

describe.runIf(strace)('traced', () => {
  test('a data sync of the log stands before each acknowledgement', () => {
    const { acknowledged, synced } = underTrace('full', 50);
    expect(acknowledged).toBe(50);
    expect(synced).toBe(50);
  });

  test('a power cut after an acknowledgement loses nothing that was acknowledged', async () => {
    expect(await lostToPowerCut('full')).toBe(0);
  });

  test('with synchronous=OFF the same two checks fail, so they can fail', async () => {
    const { acknowledged, synced } = underTrace('off', 50);
    expect(acknowledged).toBe(50);
    expect(synced).toBeLessThan(50);
    expect(await lostToPowerCut('off')).toBeGreaterThan(0);
  });
});
