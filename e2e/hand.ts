// The hand that does a job through the screens: reads what stands there, answers, taps.

import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Pack, Step } from '../src/pack/types.ts';

export type Hand = {
  readonly page: Page;
  readonly pack: Pack;
  /** Every tap and every choice from a list, from the first step to the closing. */
  taps: number;
};

export const now = (page: Page): Locator => page.locator('[data-step]');

export async function stepNow({ page, pack }: Hand): Promise<Step | null> {
  if ((await now(page).count()) === 0) return null;
  const id = await now(page).getAttribute('data-step');
  const step = pack.steps.find((each) => each.id === id);
  expect(step, `the screen shows a step of the pack: ${id}`).toBeDefined();
  return step ?? null;
}

export async function tap(hand: Hand, control: Locator): Promise<void> {
  hand.taps += 1;
  await control.click();
}

/** The step on the screen is the pack's: sentence, figures, cautions, each in sight. */
export async function expectShown({ page, pack }: Hand, step: Step): Promise<void> {
  const sheet = now(page);
  const along = await sheet
    .locator('[data-along]')
    .evaluateAll((all) => all.map((each) => each.getAttribute('data-along')));
  const shownCautions = [step, ...pack.steps.filter((each) => along.includes(each.id))]
    .flatMap((each) => each.cautions)
    .filter((each, i, all) => all.findIndex((one) => one.hazard === each.hazard) === i);
  expect((await sheet.locator('.sentence').first().textContent())?.trim()).toBe(step.text);
  const shown = await sheet.locator('[data-value]').allTextContents();
  expect(shown).toEqual(step.values.map((each) => each.shown ?? 'NO VALUE STATED'));
  const cautions = sheet.locator('[data-caution]');
  expect(await cautions.count(), `${step.id}: cautions`).toBe(shownCautions.length);
  for (const [i, caution] of shownCautions.entries()) {
    const one = cautions.nth(i);
    expect(await one.isVisible()).toBe(true);
    expect(await one.locator(`[data-sign="${caution.sign}"]`).isVisible()).toBe(true);
    const words = (await one.textContent()) ?? '';
    expect(words).toContain(caution.text);
    expect(words).toContain(caution.verify);
  }
}

/** What is answered where the pack asks: what a sound job would find. */
const ANSWERS: Readonly<Record<string, string>> = {
  'sea-water-delivery-pressure': '1.6',
  'sea-water-outlet-temperature': '41',
  'sea-water-seen': '12',
  hours: '21371.5',
};
const PREFERRED = [
  'pass',
  'good',
  'as new',
  'the same',
  'square and free',
  'all here',
  'turns free',
];
const ALSO = ['runs, nothing odd', 'yes', 'on', 'open', 'remote', 'shut'];

const preferred = (choices: readonly string[]): string =>
  [...PREFERRED, ...ALSO].find((word) => choices.includes(word)) ?? choices[0] ?? '';

async function answer(hand: Hand, step: Step): Promise<void> {
  const sheet = now(hand.page);
  for (const ask of step.asks) {
    if (ask.name === 'upTo' || ask.name === 'turns') continue;
    if (ask.kind === 'choice') {
      const group = sheet.getByRole('radiogroup', { name: ask.label });
      if ((await group.count()) === 0) continue;
      const choice = group.locator('.choice-one', {
        hasText: exactly(preferred(ask.choices ?? [])),
      });
      await tap(hand, choice);
    } else if (ask.kind === 'count') {
      const group = sheet.getByRole('radiogroup', { name: ask.label });
      if ((await group.count()) > 0) await tap(hand, group.locator('.choice-one').first());
    } else if (ask.kind === 'person') {
      hand.taps += 1;
      await sheet.getByLabel(ask.label).selectOption('Maren Tollak');
    } else if (ask.kind === 'text') {
      hand.taps += 1;
      await sheet
        .getByLabel(ask.label)
        .fill(ask.optional === true ? 'TR-0441' : 'as the plate says');
    } else if (ask.kind === 'number') await key(hand, ask.label, ANSWERS[ask.name] ?? '0.12');
  }
}

const FLOW = 'ran, then died away';

const exactly = (words: string) =>
  new RegExp(`^${words.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`);

/** Keys a figure in, and reads it back from the screen. */
async function key(hand: Hand, label: string, figure: string): Promise<void> {
  const sheet = now(hand.page);
  const choose = sheet.locator('.reading button', { hasText: label });
  const pad = sheet.getByRole('group', { name: label });
  // What is asked only after another answer does not stand there yet.
  if ((await pad.count()) + (await choose.count()) === 0) return;
  if ((await pad.count()) === 0) await tap(hand, choose.first());
  for (const digit of figure) {
    const name = digit === '.' ? 'point' : digit;
    await tap(hand, pad.getByRole('button', { name, exact: true }));
  }
  expect(await pad.locator('output').textContent()).toBe(figure);
  expect((await pad.locator('.read-back').textContent())?.length).toBeGreaterThan(3);
}

export async function verify(hand: Hand, name: string): Promise<void> {
  const by = now(hand.page).getByLabel('Verified by (competent person)');
  if ((await by.count()) === 0 || (await by.inputValue()) === name) return;
  hand.taps += 1;
  await by.selectOption(name);
}

/** Reports the step and waits until another stands there. */
export async function report(hand: Hand, step: Step): Promise<void> {
  const { page } = hand;
  if (step.verb === 'second-look') return await lookAgain(hand, step);
  if (step.phase === 'before' && step.verb === 'measured') return await cannotRun(hand, step);
  if (step.verb === 'as-found') return await sayAsFound(hand, step);
  await verify(hand, 'Piotr Aldwell');
  await answer(hand, step);
  const main = now(page).locator('.main-acts .main-control');
  if (step.perHole) {
    for (const hole of step.holes) {
      await tap(hand, now(page).locator(`[data-tick="${hole}"]`));
      const ticked = `[data-step="${step.id}"] [data-tick="${hole}"][aria-pressed="true"]`;
      await gone(page, step.id).or(page.locator(ticked)).first().waitFor({ state: 'attached' });
    }
  } else {
    const [only, another, more] = step.asks;
    const counts = another?.kind === 'count' || another?.kind === 'number';
    const few =
      ['proof', 'shut'].includes(step.verb) ||
      (counts && more === undefined && (only?.choices ?? []).length <= 4);
    const one = only?.choices !== undefined && (another === undefined || few);
    const many = (only?.choices ?? []).length > 4;
    const answer = many ? only?.choices?.[0] : preferred(only?.choices ?? []);
    const words = step.verb === 'proved-dead' ? FLOW : one ? answer : 'Done';
    await tap(hand, main.filter({ hasText: words ?? 'Done' }).first());
  }
  await gone(page, step.id).first().waitFor({ state: 'attached' });
}

/** Nothing is read before the stop: one tap for all of it. */
async function cannotRun(hand: Hand, step: Step): Promise<void> {
  const main = now(hand.page).locator('.main-acts .main-control');
  const neither = main.filter({ hasText: 'Neither can run' });
  const one = main.filter({ hasText: /^(Can’t run|Not running)$/ });
  await tap(hand, (await neither.count()) > 0 ? neither : one);
  await gone(hand.page, step.id).first().waitFor({ state: 'attached' });
}

const FIVE: readonly (readonly [string, RegExp])[] = [
  ['Its state', /^worn, would have gone on$/],
  ['What failed', /^nothing$/],
  ['Running hours', /as last read$|^can’t be read$/],
  ['Pieces missing', /^none$/],
];

/** Five taps, in any order; the last of them records it. */
export async function sayAsFound(hand: Hand, step: Step): Promise<void> {
  const sheet = now(hand.page);
  await tap(hand, sheet.getByRole('button', { name: 'no photo' }));
  for (const [label, words] of FIVE) {
    const group = sheet.getByRole('radiogroup', { name: label });
    await tap(hand, group.locator('.choice-one', { hasText: words }).first());
  }
  await gone(hand.page, step.id).first().waitFor({ state: 'attached' });
}

/**
 * Another looks on the same phone: one tap for the name, one for each closure, the last says it. A
 * closure is seen where the pack wants it; so many turns open is one tap too.
 */
async function lookAgain(hand: Hand, step: Step): Promise<void> {
  const { page, pack } = hand;
  const sheet = now(page);
  const lineUp = step.thing === 'look/line-up';
  const who = sheet.locator('[data-who] button');
  if ((await who.count()) > 0) await tap(hand, who.first());
  const order: string[] = [];
  for (let left = await rowsLeft(hand, step); left > 0; left -= 1) {
    const row = sheet.locator('[data-closure]');
    const thing = (await row.getAttribute('data-closure')) ?? '';
    order.push(thing);
    const closure = pack.facts.closures[thing.slice('closure/'.length)];
    await seeClosure(hand, row, (lineUp ? closure?.normal : closure?.workPosition) ?? '');
    await gone(page, step.id)
      .or(page.locator(`[data-closure]:not([data-closure="${thing}"])`))
      .first()
      .waitFor({ state: 'attached' });
  }
  const packs = pack.facts.looks?.[lineUp ? 'line-up' : 'isolation'] ?? [];
  expect([...order].sort()).toEqual([...packs].sort());
  if (packs.length > 1) expect(order).not.toEqual(packs);
  await gone(page, step.id).first().waitFor({ state: 'attached' });
}

async function rowsLeft({ page, pack }: Hand, step: Step): Promise<number> {
  await now(page).locator('[data-closure]').waitFor();
  return pack.facts.looks?.[step.thing === 'look/line-up' ? 'line-up' : 'isolation'].length ?? 0;
}

async function seeClosure(hand: Hand, row: Locator, position: string): Promise<void> {
  // The list is blank: no control is pressed before somebody taps it.
  expect(await row.locator('[aria-pressed="true"], [data-selected]').count()).toBe(0);
  const control = (words: string) => row.getByRole('button', { name: words, exact: true });
  const turns = /(\d+) turns/.exec(position)?.[1];
  if (turns === undefined) {
    const words = { open: 'Open', shut: 'Shut' }[position] ?? position;
    return await tap(hand, control(words));
  }
  await tap(hand, control(turns));
}

/** Something in the sheet that only stands there when this step does not. */
const gone = (page: Page, id: string): Locator =>
  page.locator(`[data-step]:not([data-step="${id}"]), main a.main-control`);
