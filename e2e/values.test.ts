// A value superseded while a job is open: the log tells it, the joint asks for a look by name, and
// issued figures stand letter for letter on the Work screen.

import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openSqlite } from '../src/archive/sqlite.ts';
import { readFolder } from '../src/cli/read-folder.ts';
import { makePack } from '../src/pack/pack.ts';
import { readPlant } from '../src/plant/read.ts';
import { jobDraft, saying } from '../src/record/fixture.ts';
import { solveWithHighs } from '../src/server/solver-inline.ts';
import { now } from './hand.ts';
import { examine, type Phone, takePhone } from './phone.ts';
import { boxup, demo, type Served, serveDemo } from './served.ts';

const MAKER = 'Sunniva Brekk';
const OLD = '35.40 lbf.ft';
const NEW = '28.30 lbf.ft';
const FIRST = 'made joint/suction-flange 30 %';
const folder = mkdtempSync(join(tmpdir(), 'boxup-values-e2e-'));
const plant = join(folder, 'plant');
const archive = join(folder, 'archive.sqlite');
let served: Served;
let phone: Phone;

/** A job up to its first round by a value, then an issue of the sheet that replaces the value. */
beforeAll(async () => {
  cpSync(demo, plant, { recursive: true });
  const file = join(plant, 'values', 'main-engine.yaml');
  const sheet = readFileSync(file, 'utf8').replace('value: 42 N.m', `value: ${OLD}`);
  writeFileSync(file, sheet);
  const read = readPlant(readFolder(plant)).plant;
  if (read === null) throw new Error('the demo cannot be read');
  const request = {
    machine: 'main-engine-port',
    target: 'sea-water-pump',
    does: 'exchange',
  } as const;
  const made = await makePack(read, request, solveWithHighs);
  if (made.kind !== 'pack') throw new Error('no pack');
  const { pack } = made;
  const kept = openSqlite({ file: archive, vessel: read.id });
  await kept.addPack(pack);
  const { machine, target, does } = request;
  const start = { pack: pack.id, title: pack.title, machine, target, does, why: 'interval' };
  const at = pack.steps.findIndex(({ id }) => id === FIRST);
  const drafts = [
    jobDraft('job-started', { ...start, hands: [MAKER] }, MAKER, 'flange'),
    ...pack.steps.slice(0, at).map((step) => saying(pack, step, 'flange')),
  ];
  const utc = new Date().toISOString();
  await kept.append({ drafts, at: { utc, offsetMinutes: 0 }, heads: [] });
  await kept.close();
  const next = sheet
    .replace('issue: "7"', 'issue: "8"')
    .replace('date: 2026-09-14', 'date: 2026-11-20')
    .replace(`value: ${OLD}`, `value: ${NEW}`);
  writeFileSync(join(folder, 'next.yaml'), next);
  boxup(['values', 'import', join(folder, 'next.yaml'), '--plant', plant, '--write']);
  served = await serveDemo({ plant, archive });
  phone = await takePhone();
  await phone.page.goto(`${served.url}/#/begin`);
  await phone.page.getByLabel('Who is holding this phone?').selectOption(MAKER);
});

afterAll(async () => {
  await phone?.close();
  await served?.stop();
  rmSync(folder, { recursive: true, force: true });
});

test('the log tells that an open job holds a superseded value', async () => {
  const { page } = phone;
  await page.goto(`${served.url}/#/`);
  await page.locator('[data-holding="1"]', { hasText: 'holds a superseded value' }).waitFor();
});

test('the joint asks for a look; then its figures are those in force, to the letter', async () => {
  const { page } = phone;
  await page.goto(`${served.url}/#/job/flange/work`);
  const look = page.locator('[data-look="joint/suction-flange"]');
  await look.waitFor();
  await examine(page, 'a superseded value');
  expect(await look.locator('[data-superseded] b').textContent()).toBe(NEW);
  expect(await look.textContent()).toContain(`was ${OLD} in issue 7`);
  await look.getByRole('button', { name: `I have looked: ${NEW}` }).click();
  await page.locator(`[data-step="${FIRST}"]`).waitFor();
  expect(await now(page).locator('.sentence').first().textContent()).toContain(`(30 % of ${NEW})`);
  expect(await now(page).locator('[data-value]').textContent()).toBe(NEW);
  expect(await now(page).locator('.step-value').textContent()).toContain(OLD);
  expect(phone.complaints).toEqual([]);
});
