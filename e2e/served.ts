// Starts the real program on a free port with an archive of its own, and asks the command line.

import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const main = fileURLToPath(new URL('../src/cli/main.ts', import.meta.url));
export const demo = fileURLToPath(new URL('../demo/tern-rock', import.meta.url));
const flags = ['--disable-warning=ExperimentalWarning', main];

export function boxup(args: readonly string[], input?: string) {
  const asked = spawnSync(process.execPath, [...flags, ...args], {
    encoding: 'utf8',
    maxBuffer: 64_000_000,
    ...(input === undefined ? {} : { input }),
  });
  if (asked.status !== 0)
    throw new Error(`boxup ${args[0]} ended with ${asked.status}: ${asked.stderr}`);
  return asked.stdout;
}

export type Served = {
  readonly url: string;
  readonly folder: string;
  readonly archive: string;
  /** Gone, as when its computer is switched off; the archive stays. */
  readonly away: () => Promise<void>;
  /** At the same address again, with the same archive. */
  readonly back: () => Promise<void>;
  readonly stop: () => Promise<void>;
};

const SECONDS = 20;

/** The demo with an archive of its own, or a plant and an archive made before. */
export async function serveDemo(made: { plant?: string; archive?: string } = {}): Promise<Served> {
  const folder = mkdtempSync(join(tmpdir(), 'boxup-e2e-'));
  const { plant = demo, archive = join(folder, 'archive.sqlite') } = made;
  const args = [...flags, 'serve', '--plant', plant, '--archive', archive, '--port'];
  const begin = (port: string) =>
    spawn(process.execPath, [...args, port], { stdio: ['ignore', 'pipe', 'pipe'] });
  let server: ChildProcess | null = begin('0');
  const url = await addressOf(server);
  const away = async () => {
    const ending = server;
    server = null;
    if (ending === null) return;
    const ended = new Promise((done) => ending.once('exit', done));
    ending.kill('SIGTERM');
    await ended;
  };
  const back = async () => {
    server = begin(new URL(url).port);
    await addressOf(server);
  };
  const stop = async () => {
    await away();
    rmSync(folder, { recursive: true, force: true });
  };
  return { url, folder, archive, away, back, stop };
}

function addressOf(server: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    const late = setTimeout(
      () => reject(new Error(`no address after ${SECONDS} s: ${said}`)),
      SECONDS * 1000,
    );
    const hear = (chunk: Buffer) => {
      said += chunk.toString('utf8');
      const address = /http:\/\/localhost:\d+/.exec(said)?.[0];
      if (address === undefined) return;
      clearTimeout(late);
      resolve(address);
    };
    server.stdout?.on('data', hear);
    server.stderr?.on('data', hear);
    server.once('exit', (code) => {
      clearTimeout(late);
      reject(new Error(`the server ended with ${code}: ${said}`));
    });
  });
}

/** The pack the command line makes from the request that the app exported. */
export function packByCommand(requestFile: string): unknown {
  return JSON.parse(boxup(['pack', '--plant', demo, '--request', requestFile, '--json']));
}

export function keep(folder: string, name: string, text: string): string {
  const file = join(folder, name);
  writeFileSync(file, text);
  return file;
}

export const textOf = (file: string): string => readFileSync(file, 'utf8');
