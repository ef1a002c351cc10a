// A phone on the network, over plain HTTP: the browser offers less, the page says so, and what is
// recorded while the server is away is still kept and sent.

import { mkdtempSync, rmSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serve } from '@hono/node-server';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Archive } from '../src/archive/contract.ts';
import { openSqlite } from '../src/archive/sqlite.ts';
import { smallPlant } from '../src/server/fixture.ts';
import { makeServer } from '../src/server/server.ts';
import { solveWithHighs } from '../src/server/solver-inline.ts';
import { ownActs } from './own-acts.ts';
import { examine, type Phone, takePhone } from './phone.ts';

/** Of nobody: the browser is told that it is this computer, so no network is needed. */
const ADDRESS = '10.55.0.7';
const dist = fileURLToPath(new URL('../dist', import.meta.url));

const AFTER = { timeout: 20_000 };

let folder: string;
let archive: Archive;
let phone: Phone;
let port = 0;
let away: () => Promise<void>;

async function listenAgain(): Promise<void> {
  const server = makeServer({
    plant: smallPlant(),
    archive,
    solver: solveWithHighs,
    packPdf: async () => new Uint8Array(),
    proofPdf: async () => new Uint8Array(),
    recordPdf: async () => new Uint8Array(),
    dist,
    now: () => ({ utc: '2026-11-25T08:00:00.000Z', offsetMinutes: 0 }),
    port: () => port,
    addresses: [ADDRESS],
  });
  await new Promise<void>((resolve) => {
    const listening = serve({ fetch: server.fetch, hostname: '127.0.0.1', port }, (info) => {
      port = (info as AddressInfo).port;
      resolve();
    });
    away = () =>
      new Promise((done) => {
        listening.close(() => done());
        if ('closeAllConnections' in listening) listening.closeAllConnections();
      });
  });
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'boxup-plain-'));
  archive = openSqlite({ file: join(folder, 'a.sqlite'), vessel: 'small' });
  await listenAgain();
  phone = await takePhone([`--host-resolver-rules=MAP ${ADDRESS} 127.0.0.1`]);
  await phone.page.goto(`http://${ADDRESS}:${port}/`);
  await phone.page.getByRole('heading', { name: 'Log of Small works' }).waitFor();
});

afterAll(async () => {
  await phone?.close();
  await away?.();
  await archive?.close();
  rmSync(folder, { recursive: true, force: true });
});

test('what is missing is said in words', async () => {
  const { page } = phone;
  const means = await page.evaluate(() => ({
    secure: window.isSecureContext,
    subtle: typeof crypto.subtle,
    uuid: typeof crypto.randomUUID,
  }));
  expect(means).toEqual({ secure: false, subtle: 'undefined', uuid: 'undefined' });
  const strip = page.locator('[data-device=no-start]');
  expect(await strip.textContent()).toContain(
    'No start without signal on this phone: not a secure connection.',
  );
  await examine(page, 'plain HTTP');
});

async function takeWatch(name: string): Promise<void> {
  const { page } = phone;
  await page.getByRole('button', { name: /the watch$/ }).click();
  await page.getByLabel('Who takes the watch').selectOption('(another name)');
  await page.getByLabel('Who takes the watch: name').fill(name);
  await page.getByRole('button', { name: 'Take the watch' }).click();
  await page.getByText(new RegExp(`^${name}, since `)).waitFor();
}

test('an act is made, kept and sent without what the browser does not offer', async () => {
  await phone.page.getByLabel('Who is holding this phone?').selectOption('Una');
  await takeWatch('Berit');
  await expect.poll(async () => (await archive.acts()).length, AFTER).toBe(1);
  const [act] = await archive.acts();
  expect(act?.device).toMatch(/^device-[0-9a-f]{16}$/);
  expect(act?.device).not.toBe(archive.device);
});

test('with the page open and the server gone the record goes on, and is sent later', async () => {
  const { page } = phone;
  await expect.poll(async () => (await ownActs(page)).length, AFTER).toBe(0);
  await away();
  await takeWatch('Cato');
  const loud = page.locator('[data-device=unsent]');
  await loud.waitFor();
  expect(await loud.textContent()).toBe('1 act on this phone only, not yet sent');
  expect(await archive.acts()).toHaveLength(1);
  await listenAgain();
  await expect.poll(async () => (await archive.acts()).length, AFTER).toBe(2);
  await expect.poll(() => loud.count(), AFTER).toBe(0);
  const [first, second] = await archive.acts();
  expect(second?.parents).toEqual([first?.hash]);
  expect(second?.deviceSeq).toBe(2);
  // Over plain HTTP the browser notes that one header of the server means nothing to it.
  const expected = /ERR_CONNECTION_REFUSED|Cross-Origin-Opener-Policy header has been ignored/;
  const others = phone.complaints.filter((words) => !expected.test(words));
  expect(others).toEqual([]);
});
