// Before the stop, how a valve was found, and as found in five taps, on a phone: read, passed over,
// seen again where it is asked again, and a hunt for missing pieces that ends by name.

import { mkdirSync } from 'node:fs';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import type { Pack } from '../src/pack/types.ts';
import { saying } from '../src/record/fixture.ts';
import { beginExchange } from './begin.ts';
import { now, verify } from './hand.ts';
import { examine, type Phone, takePhone } from './phone.ts';
import { type Served, serveDemo } from './served.ts';

let served: Served;
let phone: Phone;
let pack: Pack;
let jobUrl = '';
let job = '';
let next = 0;

const MAKER = 'Sunniva Brekk';
const SECOND = 'Piotr Aldwell';
const PIXEL =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk' +
  '+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

beforeAll(async () => {
  served = await serveDemo();
  phone = await takePhone();
  await phone.page.goto(`${served.url}/#/begin`);
  await phone.page.getByLabel('Who is holding this phone?').selectOption(MAKER);
});

afterAll(async () => {
  await phone?.close();
  await served?.stop();
});

/** What stood on the screen when a test failed, to be looked at. */
afterEach(async ({ task }) => {
  if (task.result?.state !== 'fail' || process.env.E2E_SEEN === undefined) return;
  await phone.page.screenshot({ path: process.env.E2E_SEEN, fullPage: true });
});

/** Taken only when asked for, to be looked at. */
async function shot(name: string): Promise<void> {
  const folder = process.env.E2E_SHOTS;
  if (folder === undefined) return;
  mkdirSync(folder, { recursive: true });
  await phone.page.screenshot({ path: `${folder}/${name}.png`, fullPage: true });
}

const picture = { name: 'a.png', mimeType: 'image/png', buffer: Buffer.from(PIXEL, 'base64') };
const main = (words: string | RegExp) =>
  now(phone.page).locator('.main-acts .main-control').filter({ hasText: words });
const choice = (label: string, words: string | RegExp) =>
  phone.page
    .getByRole('radiogroup', { name: label, exact: true })
    .locator('.choice-one', { hasText: words });

/** Reports the steps of the pack up to one of them, not that one, past the screen. */
async function upTo(id: string): Promise<void> {
  const at = pack.steps.findIndex((step) => step.id === id);
  expect(at, id).toBeGreaterThan(0);
  for (; next < at; next += 1) {
    const step = pack.steps[next];
    if (step === undefined || step.id.startsWith('measured before')) continue;
    const draft = saying(pack, step, job);
    const said = await phone.page.request.post(`${served.url}/api/acts`, { data: draft });
    expect(said.status(), `${step.id}: ${await said.text()}`).toBeLessThan(300);
  }
}

async function shows(id: string, screen: string): Promise<void> {
  await upTo(id);
  await phone.page.goto('about:blank');
  await phone.page.goto(jobUrl.replace(/work$/, screen));
  await phone.page.locator(`[data-step="${id}"]`).waitFor();
}

const step = (of: string): string => pack.steps.find(({ id }) => id.startsWith(of))?.id ?? of;

test('the pack is made and the job begun: it asks first what is read before the stop', async () => {
  const { page } = phone;
  const begun = await beginExchange(served, page, { maker: MAKER, second: SECOND });
  jobUrl = begun.url;
  job = begun.job;
  pack = begun.pack;
  expect(await now(page).getAttribute('data-step')).toBe(step('measured before/'));
});

test('one speed is read, the other speeds and engine are passed over, a tap each', async () => {
  const { page } = phone;
  await shot('before');
  await examine(page, 'before you stop it');
  const done = main('Done');
  expect(await done.isDisabled()).toBe(true);
  await verify({ page, pack, taps: 0 }, SECOND);
  await page.locator('.reading button', { hasText: 'Sea-water pressure' }).click();
  for (const key of ['1', 'point', '4'])
    await now(page).getByRole('button', { name: key, exact: true }).click();
  await choice('Leaks', 'weeps').click();
  await shot('before-read');
  await done.click();
  await page.locator(`[data-step="measured before/running:1000-rpm"]`).waitFor();
  await main(/^Can’t run$/).click();
  await page.locator(`[data-step^="measured before-other/"]`).waitFor();
  await shot('before-other');
  await main(/^Not running$/).click();
  await page.locator(`main:not(:has([data-step^="measured before"]))`).waitFor();
  expect(await page.locator('.job-head [data-open]').getAttribute('data-open')).toBe('0');
});

test('a throttled valve that stood otherwise is asked for its turns', async () => {
  const { page } = phone;
  const valve = pack.steps.find(({ asks }) => asks.some((ask) => ask.unless !== undefined));
  expect(valve, 'the pump has a throttled valve').toBeDefined();
  const id = valve?.id ?? '';
  await shows(id, 'work');
  await verify({ page, pack, taps: 0 }, SECOND);
  await page.getByRole('button', { name: 'Found: shut' }).click();
  await page.locator('.lacks', { hasText: 'turns from shut' }).waitFor();
  await shot('turns');
  await choice('Turns from shut', /^2$/).click();
  await now(page).getByLabel('Photo').setInputFiles(picture);
  await main('Done').click();
  await page.locator(`main:not(:has([data-step="${id}"]))`).waitFor();
  next = pack.steps.findIndex((each) => each.id === id) + 1;
});

test('as found in five taps; pieces missing open a hunt', async () => {
  const { page } = phone;
  const id = step('as-found');
  await shows(id, 'work');
  const before = Number(await page.locator('.job-head [data-open]').getAttribute('data-open'));
  await examine(page, 'as found');
  await shot('as-found');
  let taps = 0;
  const answer = async (one: { click: () => Promise<void> }) => {
    taps += 1;
    await one.click();
  };
  await answer(choice('Its state', /^near its end$/));
  await answer(choice('What failed', /^Impeller$/));
  await answer(choice('Running hours', /as last read$/));
  await answer(choice('Pieces missing', /^2$/));
  taps += 1;
  await now(page).getByLabel('Photo').setInputFiles(picture);
  await page.locator(`main:not(:has([data-step="${id}"]))`).waitFor();
  expect(taps).toBe(5);
  next = pack.steps.findIndex((each) => each.id === id) + 1;
  expect(await page.locator('[data-hunt]').textContent()).toContain('pieces missing: 2');
  // What was owed is answered, and the hunt stands open instead.
  expect(Number(await page.locator('.job-head [data-open]').getAttribute('data-open'))).toBe(
    before,
  );
});

test('the hunt ends where they were found, and in what is gone on without by name', async () => {
  const { page } = phone;
  const hunt = page.locator('[data-hunt]');
  await hunt.getByRole('button', { name: 'Found' }).click();
  await hunt.getByRole('button', { name: 'the first bend after it' }).click();
  await choice('Still missing', /^1$/).click();
  await shot('hunt');
  await examine(page, 'pieces missing');
  await hunt.getByRole('button', { name: 'Record it' }).click();
  await page.locator('[data-hunt]', { hasText: 'pieces missing: 1' }).waitFor();
  await hunt.getByRole('button', { name: 'Go on without' }).click();
  await hunt.getByLabel('Reason').fill('bend and cooler opened and looked at');
  await hunt.getByLabel('What limits the risk').fill('strainer opened after the first hour');
  await hunt.getByRole('button', { name: 'Record it' }).click();
  await hunt.waitFor({ state: 'detached' });
});

test('giving the valve back shows how it was found; the proof shows what was read', async () => {
  const { page } = phone;
  const valve = pack.steps.find(({ asks }) => asks.some((ask) => ask.unless !== undefined));
  await shows(`restored ${valve?.thing ?? ''}`, 'proof');
  const found = page.locator(`[data-found="${valve?.thing ?? ''}"]`);
  expect(await found.textContent()).toContain('Found: shut, 2 turns (Sunniva Brekk).');
  expect(await found.locator('img').count()).toBe(1);
  await shot('restored');
  await shows('proof proof/running', 'proof');
  expect(await page.locator('[data-before=sea-water-delivery-pressure]').textContent()).toBe(
    'before the job: 1.4 bar at 600 rpm',
  );
  await shot('proof');
  await examine(page, 'proof beside what was read before');
});

test('the record holds all three, on screen and printed; the job closes', async () => {
  const { page } = phone;
  await upTo(pack.steps.at(-1)?.id ?? '');
  const last = pack.steps.at(-1);
  if (last !== undefined)
    await page.request.post(`${served.url}/api/acts`, { data: saying(pack, last, job) });
  await page.goto('about:blank');
  await page.goto(jobUrl.replace(/work$/, 'record'));
  await page.locator('[data-baseline]').waitFor();
  const text = (await page.locator('main').textContent()) ?? '';
  expect(text).toContain('1.4 bar');
  expect(text).toContain('It could not run before the job (Sunniva Brekk).');
  expect(text).toContain('near its end');
  expect(text).toContain('failed: Impeller');
  await shot('record');
  await examine(page, 'record with what was found');
  await page.getByRole('button', { name: 'Close the job' }).click();
  await page.locator('[data-closed]').waitFor();
  const pdf = await page.request.get(`${served.url}/api/jobs/${encodeURIComponent(job)}/pdf`);
  expect((await pdf.body()).subarray(0, 5).toString()).toBe('%PDF-');
  expect(phone.complaints).toEqual([]);
});
