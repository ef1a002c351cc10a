// The stores with a phone: found by a code, drawn and received with one tap, the list and the
// record agreeing; the pack beside them shows the same figures as the command line.

import { afterAll, beforeAll, expect, test } from 'vitest';
import { examine, type Phone, takePhone } from './phone.ts';
import { boxup, demo, type Served, serveDemo } from './served.ts';

let served: Served;
let phone: Phone;
const HOLDER = 'Sunniva Brekk';

beforeAll(async () => {
  served = await serveDemo();
  phone = await takePhone();
  await phone.page.goto(`${served.url}/#/stores`);
  await phone.page.getByLabel('Who is holding this phone?').selectOption(HOLDER);
});

afterAll(async () => {
  await phone?.close();
  await served?.stop();
});

const seen = async (name: string) => {
  const folder = process.env.E2E_LOOK;
  if (folder !== undefined)
    await phone.page.screenshot({ path: `${folder}/${name}.png`, fullPage: true });
};

test('by place, with what is short; a scanned code finds its bag', async () => {
  const { page } = phone;
  await page.getByRole('heading', { name: 'Seal drawer 1' }).waitFor();
  await seen('stores');
  await examine(page, 'stores');
  const all = await page.locator('main').textContent();
  expect(all).toContain('Cooler kit: 3 × Plate gaskets missing');
  await page.getByLabel('Scanned or typed').fill('(01)09521234543213(10)EP-4410');
  expect(await page.locator('[data-item]').count()).toBe(1);
  await page.getByLabel('Scanned or typed').fill('boxup:tern-rock/spigot-ring');
  expect(await page.locator('[data-item=spigot-ring]').count()).toBe(1);
});

test('one tap draws, one receives, and the record says so', async () => {
  const { page } = phone;
  const held = page.locator('[data-item=spigot-ring] [data-held]');
  expect(await held.textContent()).toBe('3 pieces');
  await page.getByRole('button', { name: /^Draw 1: Spigot O-ring/ }).click();
  await expect.poll(() => held.textContent()).toBe('2 pieces');
  await page.getByRole('button', { name: /^Receive 1: Spigot O-ring/ }).click();
  await expect.poll(() => held.textContent()).toBe('3 pieces');
  await page.getByRole('button', { name: /^Draw 1: Spigot O-ring/ }).click();
  await expect.poll(() => held.textContent()).toBe('2 pieces');
  const { replica } = await (await page.request.get(`${served.url}/api/replica?seen=`)).json();
  const kinds = (replica.acts as { kind: string; by: string }[])
    .filter(({ kind }) => kind === 'drawn' || kind === 'received')
    .map(({ kind, by }) => `${kind} ${by}`);
  expect(kinds).toEqual(['drawn', 'received', 'drawn'].map((kind) => `${kind} ${HOLDER}`));
});

test('the pack draws from them as the command line does, the short told', async () => {
  const { page } = phone;
  const asked = { machine: 'main-engine-port', target: 'plate-cooler', does: 'overhaul' };
  const made = await page.request.post(`${served.url}/api/packs`, { data: asked });
  const { pack } = await made.json();
  await page.goto(`${served.url}/#/pack/${pack.id}`);
  await page.reload();
  await page.locator('[data-need]').first().waitFor();
  await seen('pack-cooler');
  const shown = await page.locator('[data-need="seal/cooler-plate-seals:seals"]').textContent();
  expect(shown).toContain('3 of 41 short');
  const names = ['--machine', asked.machine, '--target', asked.target, '--does', asked.does];
  const told = JSON.parse(boxup(['pack', '--plant', demo, ...names, '--json']));
  expect(pack.seals.needs).toEqual(told.seals.needs);
  expect(await page.locator('[data-need]').count()).toBe(told.seals.needs.length);
  expect(await page.locator('svg [data-seal]').count()).toBe(told.seals.needs.length);
  expect(phone.complaints).toEqual([]);
});
