// Few taps: the exchange of the sea-water pump, by somebody who has the pack in hand and ticks
// what was carried out as the screens allow, counted from the first step to the closed record.

import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { beginExchange } from './begin.ts';
import { type Hand, now, report, stepNow, tap, verify } from './hand.ts';
import { examine, type Phone, takePhone } from './phone.ts';
import { type Served, serveDemo } from './served.ts';

let served: Served;
let phone: Phone;
let hand: Hand;
let jobUrl = '';

const MOST_TAPS = 120;
const MAKER = 'Sunniva Brekk';
const SECOND = 'Piotr Aldwell';

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

test('the pack is made, what wants a decision is settled, and the job begun', async () => {
  const { page } = phone;
  const begun = await beginExchange(served, page, { maker: MAKER, second: SECOND });
  jobUrl = begun.url;
  hand = { page, pack: begun.pack, taps: 0 };
});

test(`the whole job takes at most ${MOST_TAPS} taps`, { timeout: 400_000 }, async ({ task }) => {
  const { page } = phone;
  const began = performance.now();
  let runs = 0;
  for (;;) {
    const step = await stepNow(hand);
    if (step === null) {
      if ((await page.locator('[data-closed]').count()) > 0) break;
      await tap(hand, page.locator('main a.main-control').first());
      await now(page)
        .or(page.getByRole('heading', { name: 'Close the job' }))
        .first()
        .waitFor();
      if ((await now(page).count()) === 0) break;
      continue;
    }
    if (await together()) runs += 1;
    else if (!(await told(step.id))) await report(hand, step);
  }
  await tap(hand, page.getByRole('button', { name: 'Close the job' }));
  await owners();
  await page.locator('[data-closed]').waitFor();
  const seconds = (performance.now() - began) / 1000;
  const steps = hand.pack.steps.length;
  const measured = `${hand.taps} taps for ${steps} steps, ${runs} runs, ${seconds.toFixed(0)} s`;
  Object.assign(task.meta, { measured });
  process.stdout.write(`exchange of the sea-water pump: ${measured}\n`);
  expect(await page.locator('.job-head [data-open]').getAttribute('data-open')).toBe('0');
  expect(hand.taps).toBeLessThanOrEqual(MOST_TAPS);
});

/** Nothing more is needed than the closing itself; a refusal would be seen here. */
async function owners(): Promise<void> {
  const { page } = phone;
  const refused = page.locator('.refused');
  await page.locator('[data-closed]').or(refused).first().waitFor();
  expect(await refused.allTextContents()).toEqual([]);
}

/** Where only a name is asked, the name reports the step. */
async function told(step: string): Promise<boolean> {
  const names = now(hand.page).locator('[data-told] button');
  if ((await names.count()) === 0) return false;
  await tap(hand, names.first());
  await hand.page.locator(`main:not(:has([data-step="${step}"]))`).waitFor();
  return true;
}

/** The furthest of a run is ticked with one tap, and all before it with it. */
async function together(): Promise<boolean> {
  const { page, pack } = hand;
  const run = page.locator('[data-run]');
  if ((await run.count()) === 0) return false;
  const ids = await run
    .locator('[data-together]')
    .evaluateAll((all) => all.map((each) => each.getAttribute('data-together') ?? ''));
  const last = ids.at(-1) ?? '';
  const steps = ids.map((id) => pack.steps.find((each) => each.id === id));
  if (steps.some((step) => (step?.cautions.length ?? 0) > 0)) await verify(hand, SECOND);
  const row = run.locator('[data-together]').last();
  await tap(hand, row.getByRole('button').first());
  await page
    .locator(`main:not(:has([data-together="${last}"])):not(:has([data-step="${last}"]))`)
    .waitFor();
  return true;
}

test('what was ticked together says so, and none of it is what may not be', async () => {
  const { page } = phone;
  const { replica } = await (await page.request.get(`${served.url}/api/replica?seen=`)).json();
  const acts = replica.acts as { kind: string; body: Record<string, unknown> }[];
  const said = acts.filter((act) => act.body.together === true);
  expect(said.length).toBeGreaterThan(30);
  const never = ['shut', 'tagged', 'untagged', 'restored', 'proved-dead', 'proof', 'seal-in'];
  expect(said.filter((act) => never.includes(act.kind))).toEqual([]);
  const perHole = hand.pack.steps.filter((step) => step.perHole).map((step) => step.id);
  expect(perHole.length).toBeGreaterThan(0);
  expect(said.filter((act) => perHole.includes(String(act.body.step)))).toEqual([]);
  await page.goto(jobUrl.replace(/work$/, 'record'));
  await page.locator('[data-closed]').waitFor();
  await page.locator('summary', { hasText: 'said, in order' }).click();
  const marked = page.locator('.acts li', { hasText: 'entered together, afterwards' });
  expect(await marked.count()).toBe(said.length);
  await examine(page, 'record of a job ticked together');
});
