// `boxup serve` as a person starts it: what it makes, what it says, what it will not serve.

import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { AUTHORITY_LINE, NAMES_NOT_PROVED } from '../quantity/authority.ts';

const main = fileURLToPath(new URL('./main.ts', import.meta.url));
const root = fileURLToPath(new URL('../..', import.meta.url));
const flags = ['--disable-warning=ExperimentalWarning', main, 'serve'];
let folder: string;
let running: ChildProcess[] = [];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'boxup-serve-'));
  cpSync(join(root, 'demo', 'tern-rock'), join(folder, 'plant'), { recursive: true });
  cpSync(join(root, 'demo', 'tern-rock-history.yaml'), join(folder, 'plant-history.yaml'));
});

afterEach(async () => {
  const ends = running.map((one) => new Promise((done) => one.once('exit', done)));
  for (const one of running) one.kill('SIGTERM');
  await Promise.all(ends);
  running = [];
  rmSync(folder, { recursive: true, force: true });
});

const options = (port = '0') => [
  ...['--plant', join(folder, 'plant')],
  ...['--archive', join(folder, 'kept', 'a.sqlite'), '--port', port],
];

function start(): Promise<string> {
  const server = spawn(process.execPath, [...flags, ...options()]);
  running.push(server);
  return new Promise((resolve, reject) => {
    let said = '';
    server.stdout.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      if (said.includes(AUTHORITY_LINE)) resolve(said);
    });
    server.once('exit', (code) => reject(new Error(`it ended with ${code}: ${said}`)));
  });
}

async function stop(): Promise<void> {
  const [server] = running.splice(0);
  const ended = new Promise((done) => server?.once('exit', done));
  server?.kill('SIGTERM');
  await ended;
}

async function actsOf(said: string): Promise<{ by: string; kind: string }[]> {
  const url = /http:\/\/localhost:\d+/.exec(said)?.[0] ?? '';
  const answer = await (await fetch(`${url}/api/replica`)).json();
  return answer.replica.acts;
}

const refused = (port = '0') =>
  spawnSync(process.execPath, [...flags, ...options(port)], { encoding: 'utf8', timeout: 20_000 });

test('makes the archive with the earlier log once, and says where it is', async () => {
  const said = await start();
  expect(said).toMatch(/^Tern Rock: http:\/\/localhost:\d+$/m);
  expect(said).toContain(NAMES_NOT_PROVED);
  expect(said.trimEnd().endsWith(AUTHORITY_LINE)).toBe(true);
  const first = await actsOf(said);
  expect(first.length).toBeGreaterThan(5);
  expect(new Set(first.map(({ by }) => by))).toEqual(new Set(['demo history']));
  expect(new Set(first.map(({ kind }) => kind))).toEqual(
    new Set(['done-before', 'hours-read', 'sailing-set', 'watch-taken']),
  );
  await stop();
  expect(await actsOf(await start())).toEqual(first);
});

test('a plant with something that must be put right is not served: 2, with file and line', () => {
  writeFileSync(
    join(folder, 'plant', 'machines', 'extra.yaml'),
    'machine: extra\nname: X\ntype: no\n',
  );
  const { status, stderr, stdout } = refused();
  expect(status).toBe(2);
  expect(stderr).toMatch(/machines\/extra\.yaml:\d+/);
  expect(stderr.trimEnd().endsWith(AUTHORITY_LINE)).toBe(true);
  expect(stdout).toBe('');
  expect(existsSync(join(folder, 'kept'))).toBe(false);
});

test('an earlier log that cannot be read: 2, and nothing is taken in', async () => {
  writeFileSync(
    join(folder, 'plant-history.yaml'),
    'history: tern-rock\nby: a\nhours: [{ at: 1 }]\n',
  );
  const { status, stderr } = refused();
  expect(status).toBe(2);
  expect(stderr).toContain('hours/0/machine');
  rmSync(join(folder, 'plant-history.yaml'));
  expect(await actsOf(await start())).toEqual([]);
});

test('a port that is taken is told in a sentence: 2', async () => {
  const port = /localhost:(\d+)/.exec(await start())?.[1] ?? '';
  const { status, stderr } = refused(port);
  expect(status).toBe(2);
  expect(stderr).toContain(`port ${port} is taken`);
});

test.each(['70000', '-1', 'x'])('port %s ends with 2', (port) => {
  expect(refused(port).status).toBe(2);
});
