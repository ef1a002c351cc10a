// The server at its border: who may speak to it, what it takes, what it refuses and how.

import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Archive } from '../archive/contract.ts';
import { openSqlite } from '../archive/sqlite.ts';
import { limits } from '../limits.ts';
import type { Pack } from '../pack/types.ts';
import { startDraft } from '../record/fixture.ts';
import { smallPlant } from './fixture.ts';
import { BUTTON_STYLE } from './headers.ts';
import { listen, makeServer } from './server.ts';
import { solveWithHighs } from './solver-inline.ts';

const PORT = 4170;
const HOST = `localhost:${PORT}`;
let folder: string;
let archive: Archive;
let server: ReturnType<typeof makeServer>;

const parts = () => ({
  plant: smallPlant(),
  archive,
  solver: solveWithHighs,
  packPdf: async () => new TextEncoder().encode('%PDF-pack'),
  proofPdf: async (_: Pack, said: { job: { id: string } } | null) =>
    new TextEncoder().encode(`%PDF-proof ${said?.job.id ?? 'blank'}`),
  recordPdf: async () => new TextEncoder().encode('%PDF-record'),
  dist: join(folder, 'dist'),
  now: () => ({ utc: '2026-11-25T08:00:00.000Z', offsetMinutes: 60 }),
});

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'boxup-server-'));
  mkdirSync(join(folder, 'dist', 'built'), { recursive: true });
  writeFileSync(join(folder, 'dist', 'index.html'), '<!doctype html><title>log</title>');
  writeFileSync(join(folder, 'dist', '.boxup-stamp'), 'secret');
  writeFileSync(join(folder, 'dist', 'built', 'a.js'), '1');
  writeFileSync(join(folder, 'outside.html'), 'outside');
  archive = openSqlite({ file: join(folder, 'a.sqlite'), vessel: 'small' });
  server = makeServer({ ...parts(), port: () => PORT });
});

afterAll(async () => {
  await archive.close();
  rmSync(folder, { recursive: true, force: true });
});

const ask = (path: string, init: RequestInit = {}) =>
  server.request(path, { ...init, headers: { host: HOST, ...init.headers } });

const post = (path: string, body: unknown, headers: Record<string, string> = {}) =>
  ask(path, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...headers },
    body: JSON.stringify(body),
  });

const watch = {
  stream: { kind: 'vessel', id: 'small' },
  kind: 'watch-taken',
  by: 'Una',
  body: { name: 'Una' },
};

describe('who may speak to it', () => {
  test.each([
    ['evil.example', 421],
    [`evil.example:${PORT}`, 421],
    ['127.0.0.1', 421],
    [`127.0.0.1:${PORT + 1}`, 421],
    [`127.0.0.1:${PORT}`, 200],
    [HOST, 200],
  ])('host %s is answered with %i', async (host, status) => {
    const answer = await server.request('/api/replica', { headers: { host } });
    expect(answer.status).toBe(status);
  });

  test.each([
    ['http://evil.example', 403],
    ['null', 403],
    [`https://${HOST}`, 403],
    [`http://${HOST}`, 201],
  ])('an act from a page of %s is answered with %i', async (origin, status) => {
    expect((await post('/api/acts', watch, { origin })).status).toBe(status);
  });

  test('another site may not even read', async () => {
    const answer = await ask('/api/replica', { headers: { 'sec-fetch-site': 'cross-site' } });
    expect(answer.status).toBe(403);
  });

  test('it listens on 127.0.0.1 and on no other address', async () => {
    const listening = await listen(parts(), 0);
    const reach = (hostname: string) =>
      new Promise((resolve) => {
        const headers = { host: `localhost:${listening.port}` };
        request({ hostname, port: listening.port, path: '/api/replica', headers }, (answer) => {
          answer.resume();
          resolve(answer.statusCode);
        })
          .once('error', (error) => resolve((error as NodeJS.ErrnoException).code))
          .end();
      });
    expect(await reach('127.0.0.1')).toBe(200);
    expect(await reach('127.0.0.2')).toBe('ECONNREFUSED');
    await listening.close();
  });
});

describe('every answer', () => {
  test.each(['/', '/api/replica', '/api/nothing', '/nothing'])(
    '%s has the headers',
    async (path) => {
      const { headers } = await ask(path);
      const policy = headers.get('content-security-policy') ?? '';
      expect(policy).toContain("default-src 'none'");
      expect(policy).not.toContain('unsafe');
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('strict-transport-security')).toBeNull();
    },
  );

  test('the one inline style let through is the one the button library writes', async () => {
    const file = createRequire(import.meta.url).resolve('react-aria-components/Button');
    const library = join(file, '..', '..', '..', '..', 'react-aria', 'dist', 'private');
    const code = readFileSync(join(library, 'interactions', 'usePress.mjs'), 'utf8');
    const attribute = /_ATTRIBUTE = '([^']+)'/.exec(code)?.[1] ?? '';
    const template = /style\.textContent = `([^`]+)`/.exec(code)?.[1] ?? '';
    const written = template.replace(/\$\{[^}]+\}/, attribute).trim();
    expect(written).toBe(BUTTON_STYLE);
    const hash = createHash('sha256').update(written).digest('base64');
    const policy = (await ask('/')).headers.get('content-security-policy');
    expect(policy).toContain(`'sha256-${hash}'`);
  });
});

describe('files', () => {
  test('the app is served, the folder round it is not', async () => {
    expect(await (await ask('/')).text()).toContain('<title>log</title>');
    const script = await ask('/built/a.js');
    expect(script.headers.get('content-type')).toContain('javascript');
    const outside = ['/../outside.html', '/%2e%2e/outside.html', '/..%2foutside.html'];
    for (const path of [...outside, '/.boxup-stamp', '/built', '/a.sqlite']) {
      expect((await ask(path)).status, path).toBe(404);
    }
  });
});

describe('acts', () => {
  test('is written with the device, its number and its parents, and never as proved', async () => {
    const before = await archive.heads();
    const answer = await post('/api/acts', watch);
    expect(answer.status).toBe(201);
    const { act } = await answer.json();
    expect(act.parents).toEqual([...before].sort());
    expect(act.proved).toBe(false);
    expect(await archive.heads()).toEqual([act.hash]);
  });

  test.each([
    ['no JSON', { body: 'x', headers: { 'content-type': 'application/json' } }, 400],
    ['a form', { body: 'a=b', headers: { 'content-type': 'text/plain' } }, 415],
    ['an unknown field', { json: { ...watch, proved: true } }, 400],
    ['a kind that is none', { json: { ...watch, kind: 'blessed' } }, 409],
    ['no name', { json: { ...watch, by: ' ' } }, 409],
    ['an issue of values', { json: { ...watch, kind: 'values-issued' } }, 403],
    ['a body of the wrong shape', { json: { ...watch, body: { nom: 'Una' } } }, 409],
    [
      'a job not begun',
      { json: { ...watch, stream: { kind: 'job', id: 'x' }, kind: 'note', body: { text: 'a' } } },
      409,
    ],
    ['too much', { json: { ...watch, body: { name: 'x'.repeat(limits.record.bodyBytes) } } }, 413],
  ])('%s is refused with its problems, and nothing is written', async (_name, given, status) => {
    const before = await archive.acts();
    const sent = given as { json?: unknown; body?: string; headers?: Record<string, string> };
    const answer =
      sent.json === undefined
        ? await ask('/api/acts', {
            method: 'POST',
            body: sent.body ?? '',
            headers: sent.headers ?? {},
          })
        : await post('/api/acts', sent.json);
    expect(answer.status).toBe(status);
    const { error } = await answer.json();
    expect(error.problems.length).toBeGreaterThan(0);
    for (const problem of error.problems) expect(problem).toHaveProperty('why');
    expect(await archive.acts()).toHaveLength(before.length);
  });

  test('two at once both stand, one after the other', async () => {
    const before = (await archive.acts()).length;
    const answers = await Promise.all(Array.from({ length: 4 }, () => post('/api/acts', watch)));
    expect(answers.map((answer) => answer.status)).toEqual([201, 201, 201, 201]);
    expect(await archive.acts()).toHaveLength(before + 4);
    expect(await archive.heads()).toHaveLength(1);
  });
});

describe('photographs', () => {
  const png = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1, 2, 3]);
  const send = (body: Uint8Array<ArrayBuffer>, type: string) =>
    ask('/api/photos', { method: 'POST', body, headers: { 'content-type': type } });

  test('are kept by the hash of their bytes and given back as what they are', async () => {
    const { hash, type } = await (await send(png, 'text/html')).json();
    expect(hash).toBe(createHash('sha256').update(png).digest('hex'));
    expect(type).toBe('image/png');
    const back = await ask(`/api/photos/${hash}`);
    expect(back.headers.get('content-type')).toBe('image/png');
    expect(new Uint8Array(await back.arrayBuffer())).toEqual(png);
  });

  test('a page that says it is a picture is none, and a size has its limit', async () => {
    const page = new TextEncoder().encode('<script>alert(1)</script>');
    expect((await send(page, 'image/png')).status).toBe(415);
    const large = new Uint8Array(limits.server.attachmentBytes + 1);
    large.set(png);
    expect((await send(large, 'image/png')).status).toBe(415);
    expect((await ask(`/api/photos/${'0'.repeat(64)}`)).status).toBe(404);
    expect((await ask('/api/photos/..%2f..%2fa.sqlite')).status).toBe(404);
  });
});

describe('the replica and packs', () => {
  test('a device that has everything is told so', async () => {
    const first = await (await ask('/api/replica')).json();
    expect(first.unchanged).toBe(false);
    expect(first.replica.acts).toHaveLength((await archive.acts()).length);
    const again = await (await ask(`/api/replica?seen=${first.seen}`)).json();
    expect(again).toEqual({ seen: first.seen, unchanged: true });
    await post('/api/acts', watch);
    expect((await (await ask(`/api/replica?seen=${first.seen}`)).json()).unchanged).toBe(false);
  });

  test('a misspelt machine is answered with what there is; packs and proofs print', async () => {
    const asked = { machine: 'pump-set', target: 'pump', does: 'exchange' };
    const wrong = await post('/api/packs', { ...asked, machine: 'pmup-set' });
    expect(wrong.status).toBe(422);
    const { error } = await wrong.json();
    expect(error.problems[0].path).toBe('machine');
    expect(error.problems[0].expected).toContain('pump-set');
    const made = await post('/api/packs', asked);
    expect(made.status).toBe(201);
    const { pack } = await made.json();
    expect((await archive.packs()).map(({ id }) => id)).toContain(pack.id);
    const sheet = await ask(`/api/packs/${pack.id}/pdf`);
    expect(sheet.headers.get('content-type')).toBe('application/pdf');
    expect((await ask('/api/packs/none/pdf')).status).toBe(404);
    const proof = await ask(`/api/packs/${pack.id}/proof/pdf`);
    expect(await proof.text()).toBe('%PDF-proof blank');
    expect(proof.headers.get('content-type')).toBe('application/pdf');
    expect((await ask('/api/packs/none/proof/pdf')).status).toBe(404);
    expect((await ask('/api/jobs/none/proof/pdf')).status).toBe(404);
    const unsettled = (pack as Pack).decisions.filter(({ settled }) => settled === null);
    const anyway = unsettled.map(({ id }) => ({ decision: id, reason: 'test', limits: 'test' }));
    const begin = startDraft(pack, { anyway }, 'proof-sheet');
    expect((await post('/api/acts', begin)).status).toBe(201);
    const said = await ask('/api/jobs/proof-sheet/proof/pdf');
    expect(await said.text()).toBe('%PDF-proof proof-sheet');
    expect((await ask('/api/jobs/none/pdf')).status).toBe(404);
  });

  test('calculations are listed with an example that can be worked out', async () => {
    const { calculations, authority } = await (await ask('/api/calc')).json();
    expect(authority).toContain('no authority');
    expect(calculations.length).toBeGreaterThan(0);
    for (const { name, example } of calculations) {
      const answer = await post(`/api/calc/${name}`, example);
      expect(answer.status, name).toBe(200);
      expect((await answer.json()).authority).toBe(authority);
    }
    expect((await post('/api/calc/removal', { parts: 3 })).status).toBe(422);
    expect((await post('/api/calc/nothing', {})).status).toBe(404);
  });
});
