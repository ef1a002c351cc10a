// A phone of 390 × 844 CSS px in Debian's Chromium, and what is measured on every screen.

import { existsSync, mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import { type Browser, chromium, type Page } from 'playwright-core';
import { expect } from 'vitest';
import { AUTHORITY_LINE, NAMES_NOT_PROVED } from '../src/quantity/authority.ts';

/** Debian's Chromium where the search path finds it. */
const CHROMIUM =
  (process.env.PATH ?? '')
    .split(':')
    .map((folder) => `${folder}/chromium`)
    .find((file) => existsSync(file)) ?? 'chromium';
const FLAGS = [
  ...['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run'],
  ...['--disable-background-networking', '--disable-component-update', '--disable-sync'],
];

export type Phone = {
  readonly page: Page;
  /** What the browser complained of: errors of scripts, and anything the page's policy stopped. */
  readonly complaints: string[];
  readonly close: () => Promise<void>;
};

export async function takePhone(more: readonly string[] = []): Promise<Phone> {
  if (!existsSync(CHROMIUM)) {
    throw new Error(`${CHROMIUM} is not here: "npm test" as root installs Debian's chromium.`);
  }
  const browser: Browser = await chromium.launch({
    executablePath: CHROMIUM,
    args: [...FLAGS, ...more],
  });
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    colorScheme: 'light',
    locale: 'en-GB',
    timezoneId: 'UTC',
    acceptDownloads: true,
  });
  const page = await context.newPage();
  page.setDefaultTimeout(10_000);
  const complaints: string[] = [];
  page.on('console', (message) => {
    // A refusal of the core is an answer: the browser only notes its status.
    if (message.type() === 'error' && !/status of 409/.test(message.text())) {
      complaints.push(`${message.text()} ${message.location().url}`.trim());
    }
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  return { page, complaints, close: () => browser.close() };
}

/** What holds on every screen: axe, authority, sizes, and no sideways scroll at 320 px. */
export async function examine(page: Page, screen: string): Promise<void> {
  await expectNothingSerious(page, screen);
  await expectAuthority(page, screen);
  await expectSizes(page, screen);
  await page.setViewportSize({ width: 320, height: 844 });
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(wide, `${screen}: width at 320 px`).toBeLessThanOrEqual(320);
  await page.setViewportSize({ width: 390, height: 844 });
}

export async function expectNothingSerious(page: Page, screen: string): Promise<void> {
  const { violations, passes } = await new AxeBuilder({ page }).analyze();
  const serious = violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${screen}: ${id}: ${nodes.map((node) => node.html).join(' | ')}`);
  expect(serious).toEqual([]);
  expect(passes.length, `${screen}: axe looked at something`).toBeGreaterThan(10);
}

export async function expectAuthority(page: Page, screen: string): Promise<void> {
  const line = page.locator('[data-authority]');
  expect(await line.isVisible(), `${screen}: authority line`).toBe(true);
  expect((await line.textContent())?.trim()).toBe(AUTHORITY_LINE);
  const names = page.getByText(NAMES_NOT_PROVED, { exact: false }).last();
  expect(await names.isVisible(), `${screen}: names not proved`).toBe(true);
}

type Small = { readonly what: string; readonly shorter: number; readonly least: number };

const TOLERANCE = 0.5;

/** Main controls 120 CSS px in the shorter direction, all others 44. */
export async function expectSizes(page: Page, screen: string): Promise<void> {
  const measured = await page.evaluate((): Small[] => {
    const selector = 'button, a, select, textarea, summary, .choice-one, .hand, input';
    const rows: Small[] = [];
    for (const one of document.querySelectorAll<HTMLElement>(selector)) {
      // A ring or a tick is pressed by its whole label, which is measured instead.
      if (one.matches('input[type=checkbox], input[type=radio], input[hidden]')) continue;
      const box = one.getBoundingClientRect();
      if (box.width === 0 || !one.checkVisibility({ visibilityProperty: true })) continue;
      const least = one.classList.contains('main-control') ? 120 : 44;
      const what = `${one.tagName} ${(one.textContent ?? '').slice(0, 40)}`;
      rows.push({ what, shorter: Math.min(box.width, box.height), least });
    }
    return rows;
  });
  expect(measured.length, `${screen}: controls measured`).toBeGreaterThan(3);
  const small = measured.filter(({ shorter, least }) => shorter < least - TOLERANCE);
  expect(small, `${screen}: controls too small`).toEqual([]);
}

const pictures = fileURLToPath(new URL('../docs/pictures', import.meta.url));

/** Pictures for the README are taken only when asked for, so that a test run changes no file. */
export async function picture(page: Page, name: string): Promise<void> {
  if (process.env.PICTURES !== '1') return;
  mkdirSync(pictures, { recursive: true });
  await page.evaluate(() => window.scrollTo(0, 0));
  await page.screenshot({ path: `${pictures}/${name}.png` });
}
