// Files of results over HTTP: all of one or nothing; and cycles counted up for the next pack.

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Archive } from '../archive/contract.ts';
import { openSqlite } from '../archive/sqlite.ts';
import { readResults, writeResult } from '../exchange/tightening-result.ts';
import type { Held } from '../pack/fastening-types.ts';
import { fixturePack, jobId, wholeJob } from '../record/fixture.ts';
import { fold } from '../record/fold.ts';
import type { Tool } from '../tools/tool.ts';
import { smallPlant } from './fixture.ts';
import { heldOn } from './held.ts';
import { makeServer } from './server.ts';
import { solveWithHighs } from './solver-inline.ts';

const PORT = 4171;
let folder: string;
let archive: Archive;
let server: ReturnType<typeof makeServer>;
const line = {
  fastener: 'bolts',
  what: '4 bolts',
  wrenchId: 'tw-1',
  wrench: 'Middle',
  shown: '48 N·m',
  rounds: [],
  gripPointMm: null,
  angleDeg: null,
  offsetMm: null,
};
const pack = fixturePack((p) => ({
  ...p,
  steps: p.steps.map((s) =>
    s.verb === 'made' && s.round !== 'hand' && s.round !== 'made' ? { ...s, sets: [line] } : s,
  ),
}));
const empty = async () => new Uint8Array();
const at = { utc: '2026-11-25T08:00:00.000Z', offsetMinutes: 0 };

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'boxup-results-'));
  archive = openSqlite({ file: join(folder, 'a.sqlite'), vessel: 'tern-rock' });
  server = makeServer({
    plant: smallPlant(),
    archive,
    solver: solveWithHighs,
    packPdf: empty,
    proofPdf: empty,
    recordPdf: empty,
    dist: folder,
    now: () => at,
    port: () => PORT,
  });
  await archive.addPack(pack);
  const drafts = wholeJob(pack);
  const last = drafts.findIndex((d) => d.kind === 'made' && d.body.round === '100 %');
  await archive.append({ drafts: drafts.slice(0, last), at, heads: [] });
});

afterAll(async () => {
  await archive.close();
  rmSync(folder, { recursive: true, force: true });
});

const host = `localhost:${PORT}`;
const path = (job: string) => `/api/jobs/${job}/tightening-results`;
const give = (body: string, query = '?by=Ada', type = 'application/json', job = jobId) =>
  server.request(`${path(job)}${query}`, {
    method: 'POST',
    headers: { host, 'content-type': type },
    body,
  });
const bolts = (...holes: readonly string[]) =>
  JSON.stringify(
    holes.map((hole) =>
      writeResult({
        id: `r-${hole}`,
        at: '2026-11-25T07:00:00Z',
        name: hole,
        joint: 'suction-flange',
        hole,
        tool: 'tw-1',
        judged: 'tight',
        torque: { value: 48, unit: 'N.m' },
        target: null,
      }),
    ),
  );
const count = async () => (await archive.acts()).length;

test.each<[string, () => Response | Promise<Response>, number]>([
  ['a form of another site', () => give(bolts('1'), '?by=Ada', 'text/plain'), 415],
  ['no JSON', () => give('{'), 400],
  ['nobody by name', () => give(bolts('1'), ''), 400],
  ['a job that is not here', () => give(bolts('1'), '?by=Ada', 'application/json', 'none'), 404],
  ['one wrong hole of two', () => give(bolts('1', '9')), 422],
])('%s: refused, and nothing is recorded', async (_, ask, status) => {
  const before = await count();
  expect((await ask()).status).toBe(status);
  expect(await count()).toBe(before);
});

test('a sound file is recorded in one write and given out again; twice it is refused', async () => {
  const before = await count();
  expect((await give(bolts('1', '2', '3', '4'))).status).toBe(201);
  expect(await count()).toBe(before + 4);
  expect((await give(bolts('1'))).status).toBe(422);
  const state = fold({ acts: await archive.acts(), packs: await archive.packs() });
  const joint = state.jobs[jobId]?.entries.find((e) => e.thing === 'joint/suction-flange');
  expect(joint?.open).toBe(false);
  const out = await server.request(path(jobId), { headers: { host } });
  const read = readResults(await out.json());
  expect(read.ok && read.results.map((r) => r.torqueNm)).toEqual([48, 48, 48, 48]);
});

test('a pack made now weighs the tools with the cycles of this record', async () => {
  const wrench = { kind: 'wrench', id: 'tw-1', name: 'Middle', calibratedOn: '2026-01-01' };
  const held = (on: string): Held => ({ tools: [wrench as unknown as Tool], on });
  const counted = await heldOn({ held, archive }, at.utc);
  const [tool] = counted?.tools ?? [];
  // The flange's round of 50 % by the pack's wrench, then four from the file by the same.
  expect(tool?.kind === 'wrench' && tool.cyclesSince).toBe(8);
  expect(await heldOn({ archive }, at.utc)).toBeUndefined();
});
