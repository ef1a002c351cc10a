// Whole acts from another device: taken once, kept when they wait, refused only by their bytes.

import { mkdtempSync, rmSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Archive } from '../archive/contract.ts';
import { openSqlite } from '../archive/sqlite.ts';
import { limits } from '../limits.ts';
import { makeAct } from '../record/act.ts';
import { fold } from '../record/fold.ts';
import type { Act, Draft } from '../record/types.ts';
import { smallPlant } from './fixture.ts';
import { networkAddresses } from './network.ts';
import { listen, makeServer } from './server.ts';
import { solveWithHighs } from './solver-inline.ts';

const PORT = 4170;
let folder: string;
let archive: Archive;
let server: ReturnType<typeof makeServer>;

const parts = () => ({
  plant: smallPlant(),
  archive,
  solver: solveWithHighs,
  packPdf: async () => new Uint8Array(),
  proofPdf: async () => new Uint8Array(),
  recordPdf: async () => new Uint8Array(),
  dist: join(folder, 'dist'),
  now: () => ({ utc: '2026-11-25T08:00:00.000Z', offsetMinutes: 60 }),
});

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'boxup-exchange-'));
  archive = openSqlite({ file: join(folder, 'a.sqlite'), vessel: 'small' });
  server = makeServer({ ...parts(), port: () => PORT, addresses: ['192.168.7.20'] });
});

afterEach(async () => {
  await archive.close();
  rmSync(folder, { recursive: true, force: true });
});

const send = async (acts: readonly unknown[]) => {
  const answer = await server.request('/api/acts', {
    method: 'POST',
    headers: { host: `localhost:${PORT}`, 'content-type': 'application/json' },
    body: JSON.stringify({ acts }),
  });
  return { status: answer.status, body: await answer.json() };
};

const watch: Draft = {
  stream: { kind: 'vessel', id: 'small' },
  kind: 'watch-taken',
  by: 'Una',
  body: { name: 'Una' },
};

function said(draft: Draft, deviceSeq: number, parents: readonly string[], vessel = 'small'): Act {
  const at = { utc: '2026-11-25T09:00:00.000Z', offsetMinutes: 0 };
  return makeAct(draft, { vessel, device: 'device-0a', deviceSeq, parents, at });
}

test('the same acts twice, and twice in one message, are kept once', async () => {
  const first = said(watch, 1, []);
  const second = said(watch, 2, [first.hash]);
  const { status, body } = await send([first, second, first]);
  expect(status).toBe(200);
  expect(body).toEqual({ taken: [first.hash, second.hash], known: [first.hash], refused: [] });
  const again = await send([second, first]);
  expect(again.body).toEqual({ taken: [], known: [second.hash, first.hash], refused: [] });
  expect(await archive.acts()).toHaveLength(2);
});

test('an act whose ancestor is missing is kept, waits, and is folded when it comes', async () => {
  const first = said(watch, 1, []);
  const second = said(watch, 2, [first.hash]);
  await send([second]);
  const waiting = fold({ acts: await archive.acts(), packs: [] });
  expect(waiting.waiting).toEqual([second.hash]);
  await send([first]);
  const whole = fold({ acts: await archive.acts(), packs: [] });
  expect(whole.waiting).toEqual([]);
  expect(whole.heads).toEqual([second.hash]);
});

test('what the server would not let be said is still kept when it was said elsewhere', async () => {
  const stream = { kind: 'job', id: 'job-nobody-began' } as const;
  const draft: Draft = { stream, kind: 'undone', by: 'Una', body: { thing: 'joint/feet' } };
  const odd: Draft = { ...draft, kind: 'of a later program', body: { any: ['shape'] } };
  const shapeless: Draft = { ...draft, body: { nothing: true } };
  const acts = [said(draft, 1, []), said(odd, 2, []), said(shapeless, 3, [])];
  const { body } = await send(acts);
  expect(body.taken).toEqual(acts.map(({ hash }) => hash));
  const replica = await server.request('/api/replica', { headers: { host: `localhost:${PORT}` } });
  expect(replica.status).toBe(200);
});

test('bytes that are not what their hash claims, or of another vessel, are not taken', async () => {
  const sound = said(watch, 1, []);
  const changed = { ...said(watch, 2, []), by: 'Somebody else' };
  const foreign = said(watch, 3, [], 'another');
  const same = said({ ...watch, by: 'Other' }, 1, []);
  const { body } = await send([sound, changed, foreign, same]);
  expect(body.taken).toEqual([sound.hash]);
  const why = Object.fromEntries(
    body.refused.map((each: { hash: string; why: string }) => [each.hash, each.why]),
  );
  expect(why[changed.hash]).toContain('hash');
  expect(why[foreign.hash]).toContain('another');
  expect(why[same.hash]).toContain('taken by');
  expect(await archive.acts()).toHaveLength(1);
});

test('a message that is no list of acts, or too long a list, is refused whole', async () => {
  expect((await send([{ hash: 'no hash' }])).status).toBe(400);
  expect((await send(['text'])).status).toBe(400);
  const many = Array.from({ length: limits.server.actsAtOnce + 1 }, () => said(watch, 1, []));
  expect((await send(many)).status).toBe(400);
  expect(await archive.acts()).toHaveLength(0);
});

test('an address that was let in is answered, another one is not', async () => {
  const status = async (host: string) =>
    (await server.request('/api/replica', { headers: { host } })).status;
  expect(await status(`192.168.7.20:${PORT}`)).toBe(200);
  expect(await status(`localhost:${PORT}`)).toBe(200);
  expect(await status(`192.168.7.21:${PORT}`)).toBe(421);
  expect(await status(`192.168.7.20:${PORT + 1}`)).toBe(421);
  const origin = { host: `192.168.7.20:${PORT}`, origin: 'http://evil.example' };
  expect((await server.request('/api/replica', { headers: origin })).status).toBe(403);
});

test('addresses of the network are those a phone can reach', () => {
  const one = (address: string, family: 'IPv4' | 'IPv6', internal = false) => ({
    ...{ address, internal, netmask: '', mac: '', cidr: null },
    ...(family === 'IPv6' ? { family, scopeid: 0 } : { family }),
  });
  const found = networkAddresses({
    lo: [one('127.0.0.1', 'IPv4', true)],
    eth0: [one('192.168.7.20', 'IPv4'), one('fe80::1', 'IPv6')],
    eth1: [one('169.254.3.4', 'IPv4'), one('192.168.7.20', 'IPv4')],
  });
  expect(found).toEqual(['192.168.7.20']);
});

test('it ends although a browser holds a connection that it never used', async () => {
  const listening = await listen(parts(), 0);
  const socket = connect(listening.port, '127.0.0.1');
  await new Promise((resolve) => socket.once('connect', resolve));
  socket.on('error', () => undefined);
  const start = performance.now();
  await listening.close();
  expect(performance.now() - start).toBeLessThan((limits.server.closeSeconds + 3) * 1000);
  socket.destroy();
});
