// A pump job on a machine nobody has written down, on a phone: the first three things with their
// pictures, the stop that holds, boxing up to the closed record, and the draft that comes of it.

import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Locator } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { examine, type Phone, takePhone } from './phone.ts';
import { boxup, type Served, serveDemo, textOf } from './served.ts';

let served: Served;
let phone: Phone;
let taps = 0;

beforeAll(async () => {
  served = await serveDemo();
  phone = await takePhone();
  await phone.page.goto(served.url);
  await phone.page.getByRole('heading', { name: 'Log of Tern Rock' }).waitFor();
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

const MAKER = 'Sunniva Brekk';
const PIXEL =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk' +
  '+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

async function tap(control: Locator): Promise<void> {
  taps += 1;
  await control.click();
}

const button = (name: string | RegExp) => phone.page.getByRole('button', { name, exact: true });

async function choose(label: string, words: string): Promise<void> {
  const group = phone.page.getByRole('radiogroup', { name: label, exact: true });
  await tap(group.locator('.choice-one').getByText(words, { exact: true }));
}

async function type(label: string, words: string): Promise<void> {
  taps += 1;
  await phone.page.getByLabel(label, { exact: true }).fill(words);
}

async function photo(): Promise<void> {
  taps += 1;
  const file = { name: 'a.png', mimeType: 'image/png', buffer: Buffer.from(PIXEL, 'base64') };
  await phone.page.getByLabel('Photo').setInputFiles(file);
  await button('Take another photo').waitFor();
}

const threeButtons = () => phone.page.locator('.strip-acts .main-control');

async function keep(): Promise<void> {
  await tap(button('Keep it'));
  await threeButtons().first().waitFor();
}

const open = async (): Promise<number> =>
  Number(await phone.page.locator('.job-head [data-open]').getAttribute('data-open'));

test('from an empty archive to three things with pictures on the open list, in 3 minutes', async ({
  task,
}) => {
  const { page } = phone;
  const began = performance.now();
  taps += 1;
  await page.getByLabel('Who is holding this phone?').selectOption(MAKER);
  await tap(page.getByRole('link', { name: 'Begin a job' }));
  await tap(page.getByRole('link', { name: 'No plant file for this machine: strip as you go' }));
  await examine(page, 'strip: begin');
  await type('Machine', 'Harbour pump engine');
  await choose('Side', 'port');
  await type('Component', 'Cooling pump');
  await choose('It will be', 'exchanged');
  await tap(button('Begin stripping'));
  await threeButtons().first().waitFor();
  await examine(page, 'strip: nothing open yet');
  await readBefore();
  await tap(button('Took off'));
  await type('What', 'belt guard');
  await photo();
  await choose('Does it hold liquid?', 'no');
  await choose('What held it', 'bolt');
  await choose('How many', '4');
  await choose('Bag number', '1');
  await examine(page, 'strip: took off');
  await keep();
  await tap(button('Shut or unplugged'));
  await type('What', 'sea suction valve');
  await choose('Kind', 'sea valve');
  await choose('Position found', 'open');
  await choose('Turns', '8');
  await photo();
  await examine(page, 'strip: shut');
  await keep();
  await tap(button('Put in'));
  await choose('What', 'rag');
  await type('Where', 'suction of the pump');
  await photo();
  await examine(page, 'strip: put in');
  await keep();
  const seconds = (performance.now() - began) / 1000;
  const things = ['part/belt-guard', 'closure/sea-suction-valve', 'temp/rag'];
  for (const thing of things) {
    const line = page.locator(`[data-entry^="${thing}"]`);
    expect(await line.locator('img').count(), thing).toBe(1);
    await expect
      .poll(() => line.locator('img').evaluate((i) => (i as HTMLImageElement).naturalWidth))
      .toBe(1);
  }
  expect(await open()).toBeGreaterThanOrEqual(things.length);
  await examine(page, 'strip: three things open');
  expect(seconds).toBeLessThan(180);
  const measured = `${taps} taps, ${seconds.toFixed(1)} s with the looking over of six screens`;
  Object.assign(task.meta, { measured });
  process.stdout.write(`first three things on the open list: ${measured}\n`);
});

/** Read while it still runs, a row a speed; no tap of the first three things. */
async function readBefore(): Promise<void> {
  const { page } = phone;
  await button('Before you stop it').click();
  const form = page.locator('section[aria-label="Before you stop it"]');
  for (const [label, figure] of [
    ['Speed', '1200'],
    ['Pump pressure', '2'],
  ] as const) {
    await form.locator('.reading button', { hasText: label }).click();
    for (const digit of figure)
      await form.getByRole('button', { name: digit, exact: true }).click();
  }
  await form.getByLabel('Verified by (competent person)').selectOption('Piotr Aldwell');
  await form.locator('.choice-one', { hasText: 'weeps' }).click();
  await examine(page, 'strip: before you stop it');
  await inEachPalette('before');
  await button('Keep it').click();
  await page.locator('[data-baseline="3"]').waitFor();
  await button('Leave it').click();
  await threeButtons().first().waitFor();
}

test('what may hold liquid is stopped, in words, until the flow was seen to die away', async () => {
  const { page } = phone;
  await tap(button('Took off'));
  await type('What', 'suction pipe');
  await choose('Does it hold liquid?', 'do not know');
  expect(await page.locator('[data-stop=isolation]').textContent()).toContain(
    'There is no way past this stop',
  );
  await choose('What held it', 'stud and nut');
  await choose('How many', '6');
  await choose('Bag number', '2');
  await choose('Old seals out', '1');
  const before = await open();
  await tap(button('Keep it'));
  await page.locator('.refused').waitFor();
  expect(await page.locator('.refused').textContent()).toContain('isolation not proved');
  expect(await open()).toBe(before);
  await tap(button('I have read it'));
  await tap(button('Leave it'));
  await tap(button('Look at a drain'));
  await type('Which drain', 'strainer drain cock');
  await choose('Seen to run', 'yes');
  await choose('Died away and stayed dead', 'yes');
  await examine(page, 'strip: drain');
  await keep();
  await expect.poll(() => page.locator('[data-stop=isolation]').allTextContents()).toEqual([]);
  await tap(button('Took off'));
  await type('What', 'suction pipe');
  await choose('Does it hold liquid?', 'yes');
  await choose('What held it', 'stud and nut');
  await choose('How many', '6');
  await choose('Bag number', '2');
  await choose('Old seals out', '1');
  await keep();
  await tap(button('Took off'));
  await type('What', 'cooling pump');
  await choose('Does it hold liquid?', 'yes');
  await choose('What held it', 'bolt');
  await choose('How many', '4');
  await choose('Bag number', '3');
  await choose('Old seals out', '1');
  await keep();
});

const PALETTES = ['sun', 'shade', 'lamp', 'red lamp'];

/** Each palette is looked over, and pictured where somebody wants to see it. */
async function inEachPalette(screen: string): Promise<void> {
  const { page } = phone;
  const folder = process.env.E2E_SHOTS;
  for (const palette of PALETTES) {
    await page.locator('footer .choice-one').getByText(palette, { exact: true }).click();
    await expect
      .poll(() => page.locator('html').getAttribute('data-palette'))
      .toBe(palette.replace(' ', '-'));
    await examine(page, `${screen} in ${palette}`);
    if (folder === undefined) continue;
    await page.evaluate(() => window.scrollTo(0, 0));
    await page.screenshot({ path: join(folder, `${screen}-${palette.replace(' ', '-')}.png`) });
  }
  await page.locator('footer .choice-one').getByText('as the device', { exact: true }).click();
}

test('the watch is handed over: what the relief has not tapped stays "not seen"', {
  timeout: 200_000,
}, async () => {
  const { page } = phone;
  await inEachPalette('strip');
  await page.getByRole('link', { name: 'Hand over', exact: true }).click();
  await page.getByLabel('Who takes the watch').selectOption('Dag Ormhaug');
  await button(`${MAKER} hands it over`).click();
  await page.locator('[data-handed-over]').waitFor();
  const things = await open();
  const notSeen = page.locator('[data-entry]', { hasText: 'not seen' });
  expect(await notSeen.count()).toBe(things);
  await button('Change').click();
  await page.getByLabel('Who is holding this phone?').selectOption('Dag Ormhaug');
  for (let left = things; left > things - 2; left -= 1) {
    await button('Seen').first().click();
    await expect.poll(() => notSeen.count()).toBe(left - 1);
  }
  expect(await page.locator('[data-seen="Dag Ormhaug"]').count()).toBe(2);
  expect(await page.locator('[data-handed-over]').textContent()).toContain(
    `${things - 2} of ${things} not seen`,
  );
  await inEachPalette('hand-over');
  await page.reload();
  await page.locator('[data-handed-over]').waitFor();
  expect(await notSeen.count()).toBe(things - 2);
  await page.getByRole('link', { name: 'Strip', exact: true }).click();
  await threeButtons().first().waitFor();
});

test('boxing up is proposed in reverse, reordered by buttons, and ends with nothing open', {
  timeout: 200_000,
}, async () => {
  const { page } = phone;
  await tap(page.getByRole('link', { name: /^Box up: / }));
  const now = page.locator('[data-make-good]');
  await now.waitFor();
  await inEachPalette('box-up');
  const rows = page.locator('[data-row]');
  const first = await rows.nth(0).getAttribute('data-row');
  expect(first).toContain('cooling-pump');
  await reorder();
  for (let left = await open(); left > 0; left = await open()) {
    const by = now.getByLabel('Verified by (competent person)');
    if ((await by.count()) > 0 && (await by.inputValue()) === '') {
      taps += 1;
      await by.selectOption('Piotr Aldwell');
    }
    const thing = (await now.getAttribute('data-make-good')) ?? '';
    if (thing.startsWith('as-found/')) {
      await fiveTaps();
      await expect.poll(open, { timeout: 10_000 }).toBeLessThan(left);
      continue;
    }
    if (thing === 'proof/running') {
      expect(await now.textContent()).toContain('2 bar Pump pressure, at 1200 1/min');
      await turn();
    }
    if (thing.startsWith('closure/')) await seenAsFound(thing);
    if (thing.startsWith('proof/')) await choose('Result', 'pass');
    await tap(now.locator('.main-acts .main-control').first());
    await expect.poll(open, { timeout: 10_000 }).toBeLessThan(left);
  }
  await tap(page.getByRole('link', { name: 'Nothing is open. Go to the record' }));
});

/** Its state, what failed, no photo, hours that cannot be read, nothing missing. */
async function fiveTaps(): Promise<void> {
  await choose('Its state', 'worn, would have gone on');
  await choose('What failed', 'other');
  await tap(button('no photo'));
  await choose('Running hours', 'can’t be read');
  await choose('Pieces missing', 'none');
}

/** Giving back shows the position it was found in, its turns and its picture. */
async function seenAsFound(thing: string): Promise<void> {
  const found = phone.page.locator(`[data-found="${thing}"]`);
  expect(await found.textContent()).toMatch(/^Found: (open, 8 turns|.*) \(Sunniva Brekk\)\.$/);
}

async function reorder(): Promise<void> {
  const { page } = phone;
  const at = page.locator('[data-row^="temp/rag"]');
  const placeOf = async () =>
    (
      await page
        .locator('[data-row]')
        .evaluateAll((all) => all.map((each) => each.getAttribute('data-row') ?? ''))
    ).findIndex((thing) => thing.startsWith('temp/rag'));
  const before = await placeOf();
  await tap(at.getByRole('button', { name: 'Earlier' }));
  await expect.poll(placeOf).toBeLessThan(before);
}

async function turn(): Promise<void> {
  const { page } = phone;
  expect(await page.locator('[data-stop=clear]').count()).toBe(1);
  await tap(button('Started'));
  await page.locator('.refused').waitFor();
  expect(await page.locator('.refused').textContent()).toContain('someone not clear');
  await tap(button('I have read it'));
  await tap(button('Everyone called clear, and answered'));
  await page.locator('[data-stop=clear]').waitFor({ state: 'detached' });
  await tap(button('Started'));
  await button(/^Take back: the machine started/).waitFor();
}

test('the job closes, and its draft passes "boxup check" and makes a pack', async ({ task }) => {
  const { page } = phone;
  await page.getByRole('heading', { name: 'Close the job' }).waitFor();
  await tap(button('Close the job'));
  await page.locator('[data-closed]').waitFor();
  expect(await page.locator('[data-stage]').textContent()).toBe('closed');
  await examine(page, 'strip: record');
  const folder = join(served.folder, 'draft');
  const names = await page.locator('[data-drafts] summary').allTextContents();
  expect(names.length).toBe(3);
  for (const name of names) {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      tap(button(`Save ${name}`)),
    ]);
    const file = join(folder, name);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, textOf(await download.path()));
  }
  boxup(['check', folder]);
  const args = ['--machine', 'harbour-pump-engine-port', '--target', 'cooling-pump'];
  const pack = JSON.parse(boxup(['pack', '--plant', folder, ...args, '--json']));
  expect(pack.steps.length).toBeGreaterThan(10);
  boxup(['record', 'verify', '--archive', served.archive]);
  Object.assign(task.meta, { measured: `${taps} taps for the whole job` });
  process.stdout.write(`a pump job with no plant file: ${taps} taps, begin to closed and saved\n`);
});

test('the page’s policy stopped nothing and no script failed', () => {
  expect(phone.complaints).toEqual([]);
});
