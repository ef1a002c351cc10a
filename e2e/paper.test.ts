// A job done on paper: the pack is printed, its sheets are found by the names printed on them, and
// the whole exchange of the pump is entered from them, sheet by sheet, to the closed record.

import type { Locator } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { Pack, Step } from '../src/pack/types.ts';
import { pagesOf } from '../src/paper/pdf-text.ts';
import { beginExchange } from './begin.ts';
import { examine, type Phone, picture, takePhone } from './phone.ts';
import { boxup, type Served, serveDemo } from './served.ts';

let served: Served;
let phone: Phone;
let pack: Pack;
let job = '';
let printed: readonly string[] = [];
let taps = 0;
let began = 0;
let reloads = true;

const HOLDER = 'Sunniva Brekk';
const WORKED = 'Maren Tollak';
const SECOND = 'Piotr Aldwell';
const WRITTEN = '14 March, 03:20';
/** One tap a choice: what a sound job would have on its sheets. */
const SOUND = [
  ...['pass', 'good', 'as new', 'the same', 'square and free', 'all here', 'turns free'],
  ...['runs, nothing odd', 'ran, then died away', 'as usual', 'dry', 'nothing', 'yes', 'none'],
];

beforeAll(async () => {
  served = await serveDemo();
  phone = await takePhone();
  await phone.page.goto(`${served.url}/#/begin`);
  await phone.page.getByLabel('Who is holding this phone?').selectOption(HOLDER);
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

async function tap(control: Locator): Promise<void> {
  taps += 1;
  await control.click();
}

test('the pack is made, its decisions settled, and the job begun', async () => {
  const { page } = phone;
  const begun = await beginExchange(served, page, { maker: HOLDER, second: SECOND });
  job = begun.job;
  pack = begun.pack;
});

test('the printed pack names its sheets; the screen lists the same', async () => {
  const { page } = phone;
  const pdf = await page.request.get(`${served.url}/api/packs/${pack.id}/pdf`);
  const heads = pagesOf(await pdf.body()).flatMap((sheet) => {
    const [name] = /^Sheet [A-Z]+ · .*?(?= Worked by)/.exec(sheet) ?? [];
    return name === undefined ? [] : [name];
  });
  expect(heads.length).toBeGreaterThan(4);
  printed = heads;
  await page.getByRole('link', { name: 'Done on paper? Enter its sheets' }).click();
  const first = page.locator('[data-paper] h2');
  await first.waitFor();
  const others = await page.locator('[data-sheet]').allTextContents();
  const listed = [await first.textContent(), ...others.map((each) => each.replace(/: \d+ .*/, ''))];
  expect(listed).toEqual(heads);
  await page.getByText(`Identification on the sheet: ${pack.id.slice(0, 12)}`).waitFor();
  await examine(page, 'from paper');
  await picture(page, 'paper');
});

test('the whole job is entered by its sheets', { timeout: 300_000 }, async ({ task }) => {
  const { page } = phone;
  began = performance.now();
  const secondsOf: string[] = [];
  for (const name of printed) {
    const from = performance.now();
    const letter = /^Sheet ([A-Z]+)/.exec(name)?.[1] ?? '?';
    const sheet = page.locator(`[data-paper="${letter}"]`);
    await sheet.waitFor();
    expect(await sheet.locator('h2').first().textContent()).toBe(name);
    await enterSheet(sheet);
    await page.locator(`main:not(:has([data-paper="${letter}"]))`).waitFor();
    expect(await page.locator('.refused').allTextContents()).toEqual([]);
    secondsOf.push(`${letter} ${((performance.now() - from) / 1000).toFixed(1)}`);
  }
  await page.getByText('Every step of every sheet is entered.').waitFor();
  const seconds = (performance.now() - began) / 1000;
  const measured =
    `${taps} taps and ${printed.length} sheets for ${pack.steps.length} steps, ` +
    `${seconds.toFixed(0)} s (${secondsOf.join(', ')})`;
  Object.assign(task.meta, { measured });
  process.stdout.write(`pump exchange entered from paper: ${measured}\n`);
  expect(await page.locator('.job-head [data-open]').getAttribute('data-open')).toBe('0');
  // Minutes, as a person taps: 3 s a tap, with the reading of the sheet between.
  expect(taps * 3).toBeLessThan(10 * 60);
});

async function enterSheet(sheet: Locator): Promise<void> {
  const by = sheet.getByLabel('Who worked, as on the sheet');
  if ((await by.inputValue()) !== WORKED) {
    taps += 1;
    await by.selectOption(WORKED);
  }
  taps += 1;
  await sheet.getByLabel('Date and time, as on the sheet').fill(WRITTEN);
  const verified = sheet.getByLabel('Who signed its cautions');
  if ((await verified.count()) > 0 && (await verified.inputValue()) !== SECOND) {
    taps += 1;
    await verified.selectOption(SECOND);
  }
  const ids = await sheet
    .locator('[data-alone=true]')
    .evaluateAll((rows) => rows.map((row) => row.getAttribute('data-row') ?? ''));
  for (const id of ids) await sayRow(sheet.locator(`[data-row="${id}"]`), stepOf(id));
  if (reloads) {
    // A reload in the middle of a sheet costs nothing of what was said.
    reloads = false;
    await sheet.page().reload();
    await sheet.getByRole('button', { name: /^Enter sheet/ }).waitFor();
  }
  await tap(sheet.getByRole('button', { name: /^Enter sheet/ }));
}

const stepOf = (id: string): Step => {
  const step = pack.steps.find((each) => each.id === id);
  if (step === undefined) throw new Error(`the screen shows a row that the pack has not: ${id}`);
  return step;
};

/** Another hand looked, and saw every closure where the pack wants it. */
async function sayLook(row: Locator, step: Step): Promise<void> {
  taps += 1;
  await row.getByLabel('Who looked a second time, as on the sheet').selectOption(SECOND);
  const moment = step.thing === 'look/isolation' ? 'isolation' : 'line-up';
  for (const thing of pack.facts.looks?.[moment] ?? []) {
    const closure = pack.facts.closures[thing.replace('closure/', '')];
    const wanted = (moment === 'isolation' ? closure?.workPosition : closure?.normal) ?? 'shut';
    const one = row.locator(`[data-closure="${thing}"]`);
    const turns = /^open (\d+) turns/.exec(wanted)?.[1];
    if (turns === undefined) await tap(one.locator('.choice-one', { hasText: exactly(wanted) }));
    else {
      await tap(one.getByRole('button', { name: 'Open, so many turns' }));
      await tap(one.getByRole('button', { name: turns, exact: true }));
    }
  }
}

const exactly = (words: string) =>
  new RegExp(`^${words.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`, 'i');

/** One tap a question; figures and words are what is written on the sheet. */
async function sayRow(row: Locator, step: Step): Promise<void> {
  if (step.verb === 'second-look') return await sayLook(row, step);
  const groups = row.getByRole('radiogroup');
  for (let i = 0; i < (await groups.count()); i += 1) {
    const choices = groups.nth(i).locator('.choice-one');
    const words = await choices.allTextContents();
    const at = words.findIndex((each) => SOUND.includes(each));
    await tap(choices.nth(Math.max(0, at)));
  }
  for (const ask of step.asks.filter((each) => each.optional !== true)) {
    if (ask.kind === 'person' || ask.kind === 'text') {
      const field = row.getByLabel(ask.label);
      taps += 1;
      if (ask.kind === 'person') await field.selectOption(SECOND);
      else await field.fill('as the plate says');
    }
    if (ask.kind === 'number') await key(row, ask.label, '0.12');
  }
}

async function key(row: Locator, label: string, figure: string): Promise<void> {
  const fold = row.getByRole('button', { name: /^Key in, if written/ });
  if ((await fold.count()) > 0) await tap(fold);
  const choose = row.locator('.reading button', { hasText: label });
  const pad = row.getByRole('group', { name: label });
  if ((await pad.count()) === 0) await tap(choose.first());
  for (const digit of figure) {
    const name = digit === '.' ? 'point' : digit;
    await tap(pad.getByRole('button', { name, exact: true }));
  }
}

describe('afterwards', () => {
  test('the job is closed; the record says of each act from which sheet, and by whom', async () => {
    const { page } = phone;
    await page.goto(`${served.url}/#/job/${job}/record`);
    await page.getByRole('button', { name: 'Close the job' }).click();
    await page.locator('[data-closed]').waitFor();
    const { replica } = await (await page.request.get(`${served.url}/api/replica?seen=`)).json();
    const acts = (
      replica.acts as { kind: string; by: string; body: Record<string, unknown> }[]
    ).filter(({ body }) => body.paper !== undefined);
    expect(acts.length).toBe(pack.steps.length);
    for (const { kind, by, body } of acts) {
      expect(by).toBe(kind === 'second-look' ? SECOND : WORKED);
      expect(body).toMatchObject({ writtenAt: WRITTEN, enteredBy: HOLDER });
    }
    const never = ['shut', 'tagged', 'untagged', 'restored', 'proved-dead', 'proof', 'seal-in'];
    const together = acts.filter(({ body }) => body.together === true);
    expect(together.length).toBeGreaterThan(30);
    expect(together.filter(({ kind }) => never.includes(kind))).toEqual([]);
    await page.locator('summary', { hasText: 'said, in order' }).click();
    const marked = page.locator('.acts li', { hasText: 'entered from paper, sheet' });
    expect(await marked.count()).toBe(acts.length);
    await examine(page, 'record of a job entered from paper');
  });

  test('the printed record and verify say so too', async () => {
    const pdf = await phone.page.request.get(`${served.url}/api/jobs/${job}/pdf`);
    const words = pagesOf(await pdf.body()).join(' ');
    expect(words).toContain(`entered from paper, sheet A, written ${WRITTEN}`);
    const verified = boxup(['record', 'verify', '--archive', served.archive]);
    expect(verified).toContain('entered from paper, sheet A');
  });

  test('what is to be looked at again stands on the log; one tap says it was done', async () => {
    const { page } = phone;
    await page.goto(`${served.url}/#/`);
    const left = page.locator('[data-follow-up]');
    const { followUps } = pack.lists;
    expect(followUps.length).toBeGreaterThan(1);
    await expect.poll(() => left.count()).toBe(followUps.length);
    expect(await left.first().textContent()).toContain(`owned by ${HOLDER}`);
    await examine(page, 'log with follow-ups');
    await left.first().getByRole('button', { name: 'Done' }).click();
    await expect.poll(() => left.count()).toBe(followUps.length - 1);
    await page.goto(`${served.url}/#/job/${job}/record`);
    await page.getByText(`done by ${HOLDER}`).waitFor();
    const told = boxup(['job', 'follow-up', job, '--archive', served.archive]);
    expect(told).toContain(`(done by ${HOLDER})`);
    expect(told.split('owned by').length - 1).toBe(followUps.length - 1);
  });

  test('the proof sheet prints with what was said, from which sheet', async () => {
    const { page } = phone;
    await page.goto(`${served.url}/#/job/${job}/proof`);
    const link = page.getByRole('link', { name: 'Print the proof sheet as said (PDF)' });
    const address = await link.getAttribute('href');
    const pdf = await page.request.get(`${served.url}${address}`);
    const words = pagesOf(await pdf.body()).join(' ');
    expect(words).toContain('As recorded: pass');
    expect(words).toContain(`pass, by ${WORKED}, entered from paper, sheet`);
  });

  test('no script failed', () => {
    expect(phone.complaints).toEqual([]);
  });
});
