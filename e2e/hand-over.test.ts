// The watch handed over in the middle of a job, on two phones at once, in all four palettes.

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openSqlite } from '../src/archive/sqlite.ts';
import type { Pack } from '../src/pack/types.ts';
import { saying, startDraft } from '../src/record/fixture.ts';
import { now } from './hand.ts';
import { examine, type Phone, takePhone } from './phone.ts';
import { boxup, demo, type Served, serveDemo } from './served.ts';

const JOB = 'pump-in-the-night';
const OFF_GOING = 'Sunniva Brekk';
const RELIEF = 'Dag Ormhaug';
const PALETTES = ['sun', 'shade', 'lamp', 'red lamp'];

let served: Served;
let first: Phone;
let second: Phone;

/** Up to the pump being off: by then everything that can stand open does. */
async function untilOff(): Promise<void> {
  const asked = ['--machine', 'main-engine-port', '--target', 'sea-water-pump'];
  const pack = JSON.parse(boxup(['pack', '--plant', demo, ...asked, '--json'])) as Pack;
  const archive = openSqlite({ file: served.archive, vessel: pack.vessel.id });
  const at = { utc: '2026-11-25T01:00:00Z', offsetMinutes: 60 };
  await archive.addPack(pack);
  const off = pack.steps.findIndex((step) => step.id === 'moved-off part/sea-water-pump');
  const steps = pack.steps.slice(0, off + 1).map((step) => saying(pack, step, JOB));
  const drafts = [startDraft(pack, { hands: [OFF_GOING, RELIEF] }, JOB), ...steps];
  await archive.append({ drafts, at, heads: await archive.heads() });
  await archive.close();
}

const onJob = (part: string): string => `${served.url}/#/job/${JOB}/${part}`;

beforeAll(async () => {
  served = await serveDemo();
  await untilOff();
  [first, second] = [await takePhone(), await takePhone()];
  for (const [phone, name] of [
    [first, OFF_GOING],
    [second, RELIEF],
  ] as const) {
    await phone.page.goto(onJob('work'));
    await phone.page.getByLabel('Who is holding this phone?').selectOption(name);
    await now(phone.page).waitFor();
  }
}, 60_000);

afterAll(async () => {
  await first?.close();
  await second?.close();
  await served?.stop();
});

/** Each palette is looked over by rule, and pictured where somebody wants to see it. */
async function inEachPalette({ page }: Phone, screen: string): Promise<void> {
  const folder = process.env.E2E_SHOTS;
  for (const palette of PALETTES) {
    await page.locator('footer .choice-one').getByText(palette, { exact: true }).click();
    await expect
      .poll(() => page.locator('html').getAttribute('data-palette'))
      .toBe(palette.replace(' ', '-'));
    await examine(page, `${screen} in ${palette}`);
    if (folder === undefined) continue;
    mkdirSync(folder, { recursive: true });
    await page.evaluate(() => window.scrollTo(0, 0));
    const name = `${screen}-${palette.replace(' ', '-')}.png`;
    await page.screenshot({ path: join(folder, name.replaceAll(' ', '-')) });
  }
}

test('it is given on one phone and seen on the other at once', async () => {
  await first.page.goto(onJob('hand-over'));
  await first.page.getByLabel('Who takes the watch').selectOption(RELIEF);
  await first.page.getByRole('button', { name: `${OFF_GOING} hands it over` }).click();
  await second.page.goto(onJob('hand-over'));
  for (const { page } of [first, second]) {
    const given = page.locator('[data-handed-over]');
    await given.waitFor();
    expect(await given.textContent()).toContain(`${OFF_GOING} to ${RELIEF}`);
  }
  const rows = (phone: Phone) =>
    phone.page
      .locator('[data-entry]')
      .evaluateAll((all) => all.map((each) => each.getAttribute('data-entry')));
  const told = await rows(second);
  expect(told.length).toBeGreaterThan(15);
  expect(await rows(first)).toEqual(told);
  expect(told).toContain('part/sea-water-pump');
  expect(told.some((each) => each?.startsWith('tag/'))).toBe(true);
  expect(await second.page.locator('[data-entry][data-seen=""]').count()).toBe(told.length);
});

test('what the relief taps at the machine is seen on both; the rest stays "not seen"', async () => {
  const { page } = second;
  const names = ['part/sea-water-pump', 'joint/pump-mounting'];
  for (const thing of names) {
    const row = page.locator(`[data-entry="${thing}"]`);
    await row.getByRole('button', { name: 'Seen' }).click();
    await page.locator(`[data-entry="${thing}"][data-seen="${RELIEF}"]`).waitFor();
  }
  for (const thing of names) {
    await first.page.locator(`[data-entry="${thing}"][data-seen="${RELIEF}"]`).waitFor();
  }
  const all = await page.locator('[data-entry]').count();
  expect(await first.page.locator('[data-entry][data-seen=""]').count()).toBe(all - names.length);
  const given = await first.page.locator('[data-handed-over]').textContent();
  expect(given).toContain(`${all - names.length} of ${all} not seen`);
});

test('both phones are legible in sun, shade, lamp and red lamp', { timeout: 200_000 }, async () => {
  await inEachPalette(first, 'given');
  await inEachPalette(second, 'taken');
  await second.page.goto(onJob('work'));
  await now(second.page).waitFor();
  await inEachPalette(second, 'work');
});

test('the relief goes on where the other stopped', async () => {
  const { page } = second;
  await page.getByRole('link', { name: 'Open list' }).click();
  expect(await page.locator('.job-head [data-open]').getAttribute('data-open')).not.toBe('0');
  for (const phone of [first, second]) expect(phone.complaints).toEqual([]);
});
