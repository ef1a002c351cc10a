// A phone set up by its person: Spanish, own units, controls measured with a card. Then the first
// steps of two jobs in Spanish on the narrowest phone, and every control reached by keyboard.

import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Locator } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import type { Pack } from '../src/pack/types.ts';
import { wordsOf } from '../src/words/words.ts';
import { now } from './hand.ts';
import { expectNothingSerious, expectSizes, type Phone, takePhone } from './phone.ts';
import { type Served, serveDemo } from './served.ts';

let served: Served;
let phone: Phone;

const es = wordsOf('es');
const MAKER = 'Sunniva Brekk';
const SECOND = 'Piotr Aldwell';
/** px to the millimetre of the screen that the card is laid on: 7 × 85.60 = 599. */
const CARD_PX = 599;
const SCALE = CARD_PX / 85.6;

beforeAll(async () => {
  served = await serveDemo();
  phone = await takePhone();
  await phone.page.goto(`${served.url}/#/setup`);
  await phone.page.getByLabel('Who is holding this phone?').selectOption(MAKER);
});

afterAll(async () => {
  await phone?.close();
  await served?.stop();
});

afterEach(async ({ task }) => {
  if (task.result?.state !== 'fail' || process.env.E2E_SEEN === undefined) return;
  await phone.page.screenshot({ path: process.env.E2E_SEEN, fullPage: true });
});

const button = (name: string | RegExp) => phone.page.getByRole('button', { name, exact: true });
const group = (name: string) => phone.page.getByRole('main').getByRole('radiogroup', { name });

const choose = (label: string, words: string) =>
  group(label).locator('.choice-one').getByText(words, { exact: true }).click();

const SIZES = [
  { width: 320, height: 640 },
  { width: 390, height: 844 },
];

/** On both phones: no sideways scroll, nothing beyond the edge, sizes, and the language told. */
async function lookOver(screen: string): Promise<void> {
  const { page } = phone;
  expect(await page.locator('html').getAttribute('lang')).toBe('es');
  for (const size of SIZES) {
    await page.setViewportSize(size);
    const at = `${screen} at ${size.width}`;
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide, `${at}: width`).toBeLessThanOrEqual(size.width);
    expect(await beyond(size.width), `${at}: beyond the edge`).toEqual([]);
    await expectSizes(page, at);
    const folder = process.env.E2E_SHOTS;
    if (folder === undefined) continue;
    await page.screenshot({ path: join(folder, `${screen}-${size.width}.png`), fullPage: true });
  }
}

const beyond = (width: number): Promise<string[]> =>
  phone.page.evaluate((most) => {
    const all = document.querySelectorAll<HTMLElement>(
      'button, a, select, input, label, h1, h2, p',
    );
    return [...all].flatMap((one) => {
      const box = one.getBoundingClientRect();
      const out = box.width > 0 && (box.left < -0.5 || box.right > most + 0.5);
      const seen = one.checkVisibility({ visibilityProperty: true }) && !one.closest('.heard');
      return out && seen ? [`${one.tagName} ${(one.textContent ?? '').slice(0, 40)}`] : [];
    });
  }, width);

/** Every control that can be used is met by the tab key; a ring of answers counts as one. */
async function reachAll(screen: string): Promise<number> {
  const { page } = phone;
  const wanted = await page.evaluate(() => {
    const all = document.querySelectorAll<HTMLElement>(
      'button, a[href], select, textarea, input, summary',
    );
    let n = 0;
    for (const one of all) {
      const shown = one.checkVisibility({ visibilityProperty: true, contentVisibilityAuto: true });
      if (!shown || one.matches(':disabled') || one.closest('details:not([open]) > :not(summary)'))
        continue;
      const ring = one.closest('[role=radiogroup]');
      (ring ?? one).setAttribute('data-wanted', String(n));
      n += 1;
    }
    (document.activeElement as HTMLElement | null)?.blur();
    return document.querySelectorAll('[data-wanted]').length;
  });
  const met = new Set<string>();
  for (let i = 0; i < 3 * wanted + 20 && met.size < wanted; i += 1) {
    await page.keyboard.press('Tab');
    const at = await page.evaluate(
      () => document.activeElement?.closest('[data-wanted]')?.getAttribute('data-wanted') ?? null,
    );
    if (at !== null) met.add(at);
  }
  const missed = await page.evaluate(
    (seen) =>
      [...document.querySelectorAll('[data-wanted]')]
        .filter((one) => !seen.includes(one.getAttribute('data-wanted') ?? ''))
        .map((one) => (one.textContent ?? '').slice(0, 60)),
    [...met],
  );
  expect(missed, `${screen}: not reached by the tab key`).toEqual([]);
  await page.evaluate(() => {
    for (const one of document.querySelectorAll('[data-wanted]'))
      one.removeAttribute('data-wanted');
  });
  return wanted;
}

/** The one rule that a palette can break; the whole of axe is run on the same screen elsewhere. */
async function expectContrast(screen: string): Promise<void> {
  const axe = new AxeBuilder({ page: phone.page }).withRules(['color-contrast']);
  const { violations, passes } = await axe.analyze();
  expect(
    violations.flatMap(({ nodes }) => nodes.map((node) => node.html)),
    screen,
  ).toEqual([]);
  expect(passes[0]?.nodes.length, `${screen}: looked at texts`).toBeGreaterThan(20);
}

const shorter = async (control: Locator): Promise<number> => {
  const box = await control.boundingBox();
  return Math.min(box?.width ?? 0, box?.height ?? 0);
};

test('language, light, units and size are chosen on one screen, and kept', async () => {
  const { page } = phone;
  await choose('Language', 'Español');
  await page.getByRole('heading', { name: es.sheet.setUp }).waitFor();
  expect(await page.title()).toBe('ajustes · Boxup');
  await choose(es.setup.dimensions.pressure, 'psi');
  await choose(es.setup.dimensions.temperature, '°F');
  await choose(es.setup.dimensions.torque, 'lbf·ft');
  const frame = page.locator('[data-card]');
  for (let px = Number(await frame.getAttribute('data-card')); px !== CARD_PX; ) {
    const by = CARD_PX - px >= 10 ? 10 : 1;
    await button(es.setup.longerBy(by)).click();
    px += by;
    expect((await frame.boundingBox())?.height).toBeCloseTo(px, 0);
  }
  await button(es.setup.fits).click();
  expect(await page.locator('[data-measured]').textContent()).toContain('7.00');
  await lookOver('setup');
  await expectNothingSerious(page, 'setup');
  await reachAll('setup');
  await page.reload();
  await page.getByRole('heading', { name: es.sheet.setUp }).waitFor();
  expect(await page.locator('[data-scale]').getAttribute('data-scale')).not.toBe('');
  await page.getByRole('main').getByRole('link', { name: es.setup.toLog }).click();
  await page.getByRole('heading', { name: es.log.title('Tern Rock') }).waitFor();
  await lookOver('log');
});

test('a job without a file begins in Spanish, its first thing on the open list', async () => {
  const { page } = phone;
  await page.getByRole('link', { name: es.log.begin }).click();
  await lookOver('begin');
  await page.getByRole('link', { name: es.begin.noFile }).click();
  await page.getByLabel(es.stripping.machine, { exact: true }).fill('Motor auxiliar');
  await choose(es.stripping.side, 'babor');
  await page.getByLabel(es.stripping.component, { exact: true }).fill('Bomba de agua de mar');
  await lookOver('begin-strip');
  await button(es.stripping.begin).click();
  await button(es.tookOff.head).click();
  await page.getByLabel(es.tookOff.what, { exact: true }).fill('resguardo de la correa');
  await choose(es.tookOff.wet, 'no');
  await choose(es.tookOff.held, 'perno');
  await choose(es.tookOff.howMany, '4');
  await choose(es.tookOff.bag, '1');
  await lookOver('took-off');
  await reachAll('took-off');
  await button(es.stripping.keepIt).click();
  const kept = page.locator('[data-entry^="part/resguardo-de-la-correa"]');
  await kept.waitFor();
  expect(await page.locator('[data-stage]').textContent()).toMatch(/^Faena · \d+ pendientes?$/);
  expect(await page.locator('.tally').textContent()).toMatch(/^\d+ pendientes?/);
  await lookOver('strip');
  const main = page.locator('.strip-acts .main-control').first();
  expect(await shorter(main)).toBeGreaterThanOrEqual(20 * SCALE);
  const part = async (name: string) => {
    const nav = page.getByRole('navigation', { name: es.jobSheet.sheetsOfJob });
    await nav.getByRole('link', { name, exact: true }).click();
  };
  await part(es.jobSheet.handOver);
  await page.getByRole('heading', { name: es.handOver.open }).waitFor();
  await lookOver('hand-over');
  await reachAll('hand-over');
  await part(es.jobSheet.boxUp);
  await lookOver('box-up');
  await part(es.jobSheet.open);
  await lookOver('open-list');
  await part(es.jobSheet.record);
  await lookOver('record');
});

/** Each issued value as it was issued, to the letter; in the person's unit only beside it. */
async function expectAsIssued(): Promise<void> {
  const { page } = phone;
  const { replica } = await (await page.request.get(`${served.url}/api/replica?seen=`)).json();
  const pack = (replica.packs as Pack[]).at(-1);
  const issued = [...(pack?.lists.values ?? []), ...(pack?.limits ?? [])];
  const texts = await page.locator('.value [data-value]').allTextContents();
  expect(texts).toEqual(issued.map((each) => each.shown ?? es.lists.noValue));
  const beside = await page.locator('.value').filter({ hasText: '≈' }).allTextContents();
  expect(beside.join(' ')).toMatch(/\d N\.?·?m ≈ [\d.]+ lbf·ft/);
}

/** What a sound person settles beforehand, all of it in one reason. */
async function startPack(): Promise<void> {
  const { page } = phone;
  await page.goto(`${served.url}/#/begin`);
  await page.getByLabel(es.begin.machine).selectOption('main-engine-port');
  await page.getByLabel(es.begin.component).selectOption('sea-water-pump');
  await group(es.begin.whatIsDone).locator('.choice-one').first().click();
  await page.getByRole('checkbox', { name: MAKER }).check();
  await button(es.begin.workOut).click();
  await page.locator('[data-figure=minutes]').waitFor();
  await lookOver('pack');
  await expectAsIssued();
  await page.getByLabel(es.startJob.competent).selectOption(SECOND);
  const reason = page.getByLabel(es.startJob.reason);
  if ((await reason.count()) > 0) {
    await reason.fill('lo cubre la tabla');
    await page.getByLabel(es.startJob.limits).fill('se mira después');
  }
  await button(es.startJob.head).click();
  await now(page).waitFor();
}

test('a pack is worked out and begun; its first steps stand in Spanish, controls 20 mm', {
  timeout: 60_000,
}, async () => {
  const { page } = phone;
  await startPack();
  await lookOver('work');
  await reachAll('work');
  const mains = page.locator('.main-acts .main-control');
  expect(await mains.count()).toBeGreaterThan(1);
  for (const size of SIZES) {
    await page.setViewportSize(size);
    for (const main of await mains.all()) {
      expect(await shorter(main)).toBeGreaterThanOrEqual(20 * SCALE);
    }
  }
  for (const palette of ['sun', 'shade', 'lamp', 'red lamp'] as const) {
    const light = page.locator('footer .choice-one');
    await light.getByText(es.sheet.palettes[palette], { exact: true }).click();
    await expectContrast(`work in ${palette}`);
  }
});

test('a reading is keyed in the person’s unit, kept as asked, with what was typed', async () => {
  const { page } = phone;
  const ready = page.locator('.others button, .reading button');
  const pad = page.locator('.keypad:has(.keypad-value b:text-is("psi"))');
  for (let i = 0; i < (await ready.count()) && (await pad.count()) === 0; i += 1) {
    if (/psi/.test((await ready.nth(i).textContent()) ?? '')) await ready.nth(i).click();
  }
  await pad.waitFor();
  for (const key of ['2', '3', es.numbers.pointKey, '2']) {
    await pad.getByRole('button', { name: key, exact: true }).click();
  }
  expect(await pad.locator('.read-back').textContent()).toBe(
    'veintitrés coma dos libras por pulgada cuadrada',
  );
  await lookOver('reading');
  const by = page.getByLabel(es.cautionWords.verifiedBy);
  if ((await by.count()) > 0) await by.selectOption(SECOND);
  await button(es.work.done).click();
  const typed = async () => {
    const answer = await (await page.request.get(`${served.url}/api/replica?seen=`)).json();
    const acts = answer.replica.acts as { body: Record<string, unknown> }[];
    return acts.map(({ body }) => body).find((body) => Array.isArray(body.typed));
  };
  await expect.poll(typed).toBeDefined();
  const body = (await typed()) ?? {};
  expect(JSON.stringify(body.typed)).toContain('23.2 psi');
  // 23.2 lbf/in² × 6.894 757 kPa, by hand.
  const figures = Object.values(body).filter((each) => typeof each === 'number');
  expect(figures.some((each) => Math.abs(each - 1.599584) < 1e-5)).toBe(true);
});

test('calculations on the narrow phone', async () => {
  const { page } = phone;
  await page.goto(`${served.url}/#/calculations`);
  await page.getByRole('heading', { name: es.calcSheet.title }).waitFor();
  await lookOver('calculations');
  await page.locator('main .ruled-list a').first().click();
  await lookOver('calculation');
});

test('the page’s policy stopped nothing and no script failed', () => {
  expect(phone.complaints).toEqual([]);
});
