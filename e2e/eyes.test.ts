// A second pair of eyes: on the same phone and on another, seen otherwise, alone after ten minutes.

import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import type { Pack, Step } from '../src/pack/types.ts';
import { saying } from '../src/record/fixture.ts';
import { fold } from '../src/record/fold.ts';
import { nextSteps } from '../src/record/next.ts';
import type { Replica } from '../src/record/replica.ts';
import { begun, pumpIsolation, stripId } from '../src/record/strip-fixture.ts';
import type { JobState } from '../src/record/types.ts';
import { type Hand, now, report, stepNow, tap } from './hand.ts';
import { examine, type Phone, takePhone } from './phone.ts';
import { type Served, serveDemo } from './served.ts';

const DOER = 'Sunniva Brekk';
const OTHER = 'Maren Tollak';

let served: Served;
let phone: Phone;
let second: Phone;

beforeAll(async () => {
  served = await serveDemo();
  [phone, second] = await Promise.all([takePhone(), takePhone()]);
});

afterAll(async () => {
  await Promise.all([phone?.close(), second?.close()]);
  await served?.stop();
});

/** What stood on the screen when a test failed, to be looked at. */
afterEach(async ({ task }) => {
  if (task.result?.state !== 'fail' || process.env.E2E_SEEN === undefined) return;
  await phone.page.screenshot({ path: process.env.E2E_SEEN, fullPage: true });
});

async function seen(page: Page, name: string): Promise<void> {
  if (process.env.EYES_SHOTS === undefined) return;
  await page.screenshot({ path: `${process.env.EYES_SHOTS}/${name}.png`, fullPage: true });
}

async function post<T>(path: string, data: unknown): Promise<T> {
  const answer = await phone.page.request.post(`${served.url}/api/${path}`, { data });
  expect(answer.status(), await answer.text()).toBe(201);
  return (await answer.json()) as T;
}

async function replica(): Promise<Replica> {
  const answer = await phone.page.request.get(`${served.url}/api/replica`);
  return ((await answer.json()) as { replica: Replica }).replica;
}

async function jobNow(job: string): Promise<JobState> {
  const { acts, packs } = await replica();
  const found = fold({ acts, packs }).jobs[job];
  if (found === undefined) throw new Error(`no job ${job}`);
  return found;
}

/** Asked of the server directly, as far as the look: how steps are said is shown elsewhere. */
async function asFarAs(job: string, look: string, handsAboard: string): Promise<Pack> {
  const request = { machine: 'main-engine-port', target: 'sea-water-pump', does: 'exchange' };
  const { pack } = await post<{ pack: Pack }>('packs', { ...request, handsAboard });
  expect(pack.decisions.map((d) => d.id)).not.toContain('hands aboard not stated');
  const anyway = pack.decisions
    .filter(({ settled }) => settled === null)
    .map(({ id }) => ({ decision: id, reason: 'the table covers it', limits: 'looked at after' }));
  const { id, title, machine, target } = pack;
  const body = { pack: id, title, machine: machine.id, target: target.id, does: target.does };
  const stream = { kind: 'job', id: job };
  const begun = { ...body, why: '', hands: [DOER, OTHER], competent: DOER, anyway };
  await post('acts', { stream, kind: 'job-started', by: DOER, body: begun });
  for (let i = 0; i < pack.steps.length; i++) {
    const { acts, packs } = await replica();
    const step = nextSteps(fold({ acts, packs }), job, pack).find((s) => s.id !== look);
    const isolating = pack.steps.findIndex((s) => s.id === look);
    if (step === undefined || pack.steps.indexOf(step) > isolating) return pack;
    await post('acts', bodyOf(pack, step, job));
  }
  throw new Error('the look did not come');
}

function bodyOf(pack: Pack, step: Step, job: string) {
  const draft = saying(pack, step, job);
  return { ...draft, by: draft.by === 'Ada' ? DOER : OTHER };
}

async function hold(page: Page, job: string, part: string, name: string): Promise<void> {
  await page.goto(`${served.url}/#/job/${job}/${part}`);
  const who = page.getByLabel('Who is holding this phone?');
  await page.locator('header .holder, header .holder-choice').first().waitFor();
  if ((await who.count()) > 0) await who.selectOption(name);
}

/** An act is kept on the phone first, and sent when it can be. */
const POLL = { timeout: 10_000, interval: 200 };

const ISOLATION = 'second-look look/isolation';

/** Nothing on the screen may tell how a closure should stand, nor how it was said to stand. */
async function expectBlank(page: Page, pack: Pack): Promise<void> {
  const words = (await page.locator('main').textContent()) ?? '';
  for (const { name, position } of pack.lists.closures)
    expect(words, `${name} ${position}`).not.toContain(`${name}: ${position}`);
  expect(words).not.toContain('bring to');
  expect(await page.locator('[data-step] [aria-pressed="true"]').count()).toBe(0);
}

test('the looker finds a blank list, otherwise ordered; one seen open is a finding', async () => {
  const pack = await asFarAs('job-eyes-two', ISOLATION, '2');
  const { page } = phone;
  await hold(page, 'job-eyes-two', 'work', DOER);
  await now(page).waitFor();
  const hand: Hand = { page, pack, taps: 0 };
  expect((await stepNow(hand))?.id).toBe(ISOLATION);
  expect(await page.locator('[data-who] button').first().textContent()).not.toContain(DOER);
  await seen(page, 'who');
  await examine(page, 'who looks');
  // Who shut it is told that another has to.
  await page
    .locator('[data-who]')
    .getByRole('button', { name: `${DOER} (did it)` })
    .click();
  expect(await now(page).textContent()).toContain('no second pair of eyes');
  expect(await now(page).locator('[data-closure]').count()).toBe(0);
  await page.getByRole('button', { name: 'Somebody else looks' }).click();
  await page.locator('[data-who]').getByRole('button', { name: OTHER }).click();
  await expectBlank(page, pack);
  await seen(page, 'closure');
  await examine(page, 'one closure');
  // One valve is seen open that was said shut.
  for (let left = pack.lists.closures.length; left > 0; left -= 1) {
    const row = now(page).locator('[data-closure]');
    const thing = await row.getAttribute('data-closure');
    const closure = pack.lists.closures.find((c) => `closure/${c.closure}` === thing);
    const valve = closure?.position === 'shut';
    const words = thing === 'closure/overboard-valve' ? 'Open' : valve ? 'Shut' : closure?.position;
    await row.getByRole('button', { name: words ?? '', exact: true }).click();
    if (left > 1) await page.locator(`[data-closure]:not([data-closure="${thing}"])`).waitFor();
  }
  await page.getByText('saw it otherwise at: Overboard valve').waitFor();
  await seen(page, 'otherwise');
  // The next list is as blank as the first: nothing of what was seen stands there.
  expect(await page.getByText('Seen so far').count()).toBe(0);
  await expectBlank(page, pack);
  await expect
    .poll(async () => (await jobNow('job-eyes-two')).findings, POLL)
    .toMatchObject([{ kind: 'position differs', needsDecision: true }]);
  expect((await jobNow('job-eyes-two')).looks[0]?.how).toBeNull();
});

test('on another phone, by its own address: one tap a closure, and the last says it', async () => {
  const { page } = second;
  await hold(page, 'job-eyes-two', 'eyes', OTHER);
  const pack = (await replica()).packs.find((p) => p.request.handsAboard === '2') as Pack;
  const hand: Hand = { page, pack, taps: 0 };
  const step = pack.steps.find((s) => s.id === ISOLATION) as Step;
  await now(page).locator('[data-closure]').waitFor();
  await expectBlank(page, pack);
  await examine(page, 'second look on its own');
  await seen(page, 'second-phone');
  const looked = page.locator('[data-looked=isolation]');
  await Promise.all([looked.waitFor({ timeout: 60_000 }), lookThrough(hand, step, looked)]);
  await seen(page, 'looked');
  expect(hand.taps).toBe(pack.lists.closures.length);
  await expect
    .poll(async () => (await jobNow('job-eyes-two')).looks[0], POLL)
    .toMatchObject({ how: 'second pair of eyes', by: OTHER });
  // The first phone hears of it and goes on to what waited for it.
  const first = phone.page;
  await first.reload();
  await first.locator(`[data-step]:not([data-step="${ISOLATION}"])`).waitFor();
  await hold(first, 'job-eyes-two', 'record', DOER);
  await first.locator('[data-looks]').getByText(`looked at by ${OTHER}`).waitFor();
  await seen(first, 'record');
  await examine(first, 'record with its looks');
});

async function lookThrough(hand: Hand, step: Step, end: ReturnType<Page['locator']>) {
  const { page } = hand;
  for (let left = hand.pack.lists.closures.length; left > 0; left -= 1) {
    const row = now(page).locator('[data-closure]');
    const thing = await row.getAttribute('data-closure');
    const closure = hand.pack.lists.closures.find((c) => `closure/${c.closure}` === thing);
    const words = closure?.position === 'shut' ? 'Shut' : closure?.position;
    await tap(hand, row.getByRole('button', { name: words ?? '', exact: true }));
    const next = page.locator(`[data-closure]:not([data-closure="${thing}"])`);
    await (left > 1 ? next : end).first().waitFor();
  }
  expect(step.verb).toBe('second-look');
}

test('one hand aboard: not before ten minutes, then alone, and the record says so', async () => {
  const job = 'job-eyes-one';
  const pack = await asFarAs(job, ISOLATION, '1');
  const { page } = phone;
  await hold(page, job, 'work', DOER);
  await page
    .locator('[data-who]')
    .getByRole('button', { name: `${DOER} (did it)` })
    .click();
  await page.locator('[data-wait]').waitFor();
  expect(await now(page).textContent()).toContain('checked alone');
  await seen(page, 'alone-wait');
  await examine(page, 'alone, too early');
  await page.clock.setFixedTime(Date.now() + 11 * 60_000);
  await now(page).locator('[data-closure]').waitFor({ timeout: 15_000 });
  const step = pack.steps.find((s) => s.id === ISOLATION) as Step;
  await report({ page, pack, taps: 0 }, step);
  await hold(page, job, 'record', DOER);
  await page.locator('[data-looks]').getByText(`checked alone by ${DOER}`).waitFor();
  await expect.poll(async () => (await jobNow(job)).looks[0]?.how, POLL).toBe('checked alone');
  await page.goto(`${served.url}/#/job/${job}/hand-over`);
  await page.locator('[data-looks]').getByText('checked alone').waitFor();
  await seen(page, 'hand-over');
});

test('no look is a wall: it is gone past by name, and stands as a deviation', async () => {
  const job = 'job-eyes-past';
  await asFarAs(job, ISOLATION, '3');
  const { page } = second;
  await hold(page, job, 'work', OTHER);
  const look = page.locator(`[data-step="${ISOLATION}"]`);
  await look.waitFor();
  await look.getByRole('button', { name: 'Use anyway, without this' }).click();
  await page.getByLabel('Reason').fill('everyone else is at the lines');
  await page.getByLabel('What limits the risk').fill('looked at twice');
  await page.getByRole('button', { name: 'Record it' }).click();
  await page.locator(`[data-step]:not([data-step="${ISOLATION}"])`).waitFor();
  await expect
    .poll(async () => (await jobNow(job)).deviations.map((d) => d.thing), POLL)
    .toContain('look/isolation');
  expect((await jobNow(job)).looks[0]?.how).toBe('used anyway');
});

test('a strip offers the look at what stands shut, and waits for nothing', async () => {
  const drafts = [begun(), ...pumpIsolation].filter((d) => d.kind !== 'second-look');
  for (const draft of drafts) await post('acts', { ...draft, by: DOER });
  const { page } = second;
  await hold(page, stripId, 'work', OTHER);
  await page.locator('[data-look-offered] a').click();
  await now(page).locator('[data-closure]').waitFor();
  await examine(page, 'second look at a strip');
  for (const left of [2, 1]) {
    const row = now(page).locator('[data-closure]');
    const thing = await row.getAttribute('data-closure');
    await row.getByRole('button', { name: 'Shut', exact: true }).click();
    if (left > 1) await page.locator(`[data-closure]:not([data-closure="${thing}"])`).waitFor();
  }
  await page.locator('[data-looked=isolation]').waitFor();
  await hold(page, stripId, 'work', OTHER);
  await page.getByRole('button', { name: 'Took off' }).waitFor();
  expect(await page.locator('[data-look-offered]').count()).toBe(0);
  await expect
    .poll(async () => (await jobNow(stripId)).looks[0]?.how, POLL)
    .toBe('second pair of eyes');
});

test('nothing went wrong in the browser', () => {
  // Pictures that the acts laid in beforehand speak of were never taken.
  const real = (one: Phone) => one.complaints.filter((each) => !/\/api\/photos\/0{40}/.test(each));
  expect(real(phone)).toEqual([]);
  expect(real(second)).toEqual([]);
});
