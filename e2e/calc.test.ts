// Calculations on the phone: each gives what the command line gives, without a server too.

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { listCalculations, runCalc } from '../src/calc/register.ts';
import { solveWithHighs } from '../src/server/solver-inline.ts';
import { examine, type Phone, takePhone } from './phone.ts';
import { boxup, keep, type Served, serveDemo } from './served.ts';

let served: Served;
let phone: Phone;

beforeAll(async () => {
  served = await serveDemo();
  phone = await takePhone();
  await phone.page.goto(`${served.url}/#/calculations`);
  await phone.page.locator('.ruled-list a').first().waitFor();
});

afterAll(async () => {
  await phone?.close();
  await served?.stop();
});

const onPhone = listCalculations().filter((one) => !one.needsSolver);

async function shown(): Promise<unknown> {
  return JSON.parse((await phone.page.locator('[data-result]').textContent()) ?? 'null');
}

/** The last places of a power or a logarithm differ between two builds of one engine. */
const digits = (each: number): number => (Math.abs(each) < 1e-12 ? 0 : Number(each.toPrecision(9)));

const nineDigits = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (_, each: unknown) => {
      if (typeof each === 'number') return digits(each);
      return typeof each === 'string' && /^-?\d+\.\d{9,}$/.test(each) ? digits(Number(each)) : each;
    }),
  );

describe.each(onPhone.map((one) => [one.name, one.example] as const))('%s', (name, example) => {
  test('its example gives the same figures as everywhere', async () => {
    await phone.page.goto(`${served.url}/#/calculations/${name}`);
    await phone.page.locator(`h1:has-text("${name}")`).waitFor();
    await phone.page.locator('[data-result]').waitFor({ state: 'attached' });
    const answer = await runCalc(name, example, { solver: solveWithHighs });
    expect(answer.ok).toBe(true);
    expect(nineDigits(await shown())).toEqual(answer.ok ? nineDigits(answer.result) : null);
    expect(await phone.page.locator('main [data-with-result]').count()).toBe(1);
  });
});

test('and so does the command line', async () => {
  const { page } = phone;
  await page.goto(`${served.url}/#/calculations/wrench-setting`);
  await page.locator('[data-result]').waitFor({ state: 'attached' });
  const input = (await page.locator('[data-case]').textContent()) ?? '';
  const file = keep(served.folder, 'case.json', input);
  expect(await shown()).toEqual(JSON.parse(boxup(['calc', 'wrench-setting', '--in', file])));
});

test('a figure is changed in a unit of one’s own, and the case is kept', async () => {
  const { page } = phone;
  await page.goto(`${served.url}/#/calculations/wrench-setting`);
  const torque = page.locator('[data-field=torque]');
  await torque.getByLabel('Torque', { exact: true }).fill('59');
  await torque.getByLabel('Unit of torque').selectOption({ label: 'lbf·ft' });
  await expect.poll(async () => JSON.stringify(await shown())).toContain('"given":"59 ');
  const before = await shown();
  await page.reload();
  await expect.poll(shown).toEqual(before);
  const out = page.locator('[data-output=setting]');
  const inNm = Number(await out.locator('b').first().textContent());
  await out.locator('select').selectOption({ label: 'lbf·ft' });
  await expect
    .poll(async () => Number(await out.locator('b').first().textContent()) / inNm)
    .toBeCloseTo(1 / 1.3558179483, 2);
  await examine(page, 'a calculation');
});

test('what is wrong is told with its place while typing, and nothing is lost', async () => {
  const { page } = phone;
  const torque = page.locator('[data-field=torque]').getByLabel('Torque', { exact: true });
  await torque.fill('much');
  const refused = page.locator('.refused');
  await refused.waitFor();
  expect(await refused.textContent()).toContain('Torque');
  await torque.fill('60');
  await refused.waitFor({ state: 'detached' });
});

test('it goes on without a server', async () => {
  const { page } = phone;
  await served.stop();
  await page.evaluate(() => {
    window.location.hash = '#/calculations/pattern';
  });
  await page.locator('h1:has-text("pattern")').waitFor();
  await expect.poll(shown).toMatchObject({ rounds: expect.any(Array) });
});
