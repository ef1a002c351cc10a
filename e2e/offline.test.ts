// Phones without signal: the server is stopped in the middle of a job, the work goes on, the page
// starts again without it, and two phones that were both alone end with one state.

import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Pack } from '../src/pack/types.ts';
import { fold, stateHash } from '../src/record/fold.ts';
import type { Replica } from '../src/record/replica.ts';
import type { JobState } from '../src/record/types.ts';
import { type Hand, now, report, stepNow } from './hand.ts';
import { knownOf, type OwnRow, ownActs } from './own-acts.ts';
import { examine, type Phone, takePhone } from './phone.ts';
import { type Served, serveDemo } from './served.ts';

const HOLDER = 'Sunniva Brekk';
const OTHER = 'Lewis Carrow';
const SECOND = 'Piotr Aldwell';
const JOB = 'job-0ff11e';
const ACTS = 40;
/** News is fetched every few seconds; a busy computer takes longer. */
const AFTER = { timeout: 20_000 };
const PIXEL =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk' +
  '+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

let served: Served;
let phone: Phone;
let other: Page;
let contextOfOther: BrowserContext;
let pack: Pack;

beforeAll(async () => {
  served = await serveDemo();
  phone = await takePhone();
  pack = await beginJob(phone.page);
});

afterAll(async () => {
  await phone?.close();
  await served?.stop();
});

/** Asked of the server directly: how a job is begun through the screens is shown elsewhere. */
async function beginJob(page: Page): Promise<Pack> {
  const post = async (path: string, data: unknown) => {
    const answer = await page.request.post(`${served.url}/api/${path}`, { data });
    expect(answer.status(), await answer.text()).toBe(201);
    return await answer.json();
  };
  const request = { machine: 'main-engine-port', target: 'sea-water-pump', does: 'exchange' };
  const made: { readonly pack: Pack } = await post('packs', request);
  const anyway = made.pack.decisions
    .filter(({ settled }) => settled === null)
    .map(({ id }) => ({ decision: id, reason: 'the table covers it', limits: 'looked at after' }));
  await post('acts', {
    stream: { kind: 'job', id: JOB },
    kind: 'job-started',
    by: HOLDER,
    body: {
      pack: made.pack.id,
      title: made.pack.title,
      machine: made.pack.machine.id,
      target: made.pack.target.id,
      does: made.pack.target.does,
      why: 'its interval',
      hands: [HOLDER, OTHER],
      competent: SECOND,
      anyway,
    },
  });
  return made.pack;
}

async function takeUp(page: Page, name: string): Promise<void> {
  await page.goto(`${served.url}/#/job/${JOB}/work`);
  await page.getByLabel('Who is holding this phone?').selectOption(name);
  await now(page).waitFor();
}

const unsent = (page: Page) => page.locator('[data-device=unsent]');

async function carryOn(page: Page, enough: number): Promise<void> {
  const hand: Hand = { page, pack, taps: 0 };
  while ((await ownActs(page)).length < enough) {
    const step = await stepNow(hand);
    if (step === null) throw new Error('the job was over before there were enough acts');
    await report(hand, step);
  }
}

async function atServer(): Promise<Replica> {
  const answer = await phone.page.request.get(`${served.url}/api/replica`);
  const { replica }: { readonly replica: Replica } = await answer.json();
  return replica;
}

let before = 0;

test('the app is kept by the browser and both phones take up the job', async () => {
  await takeUp(phone.page, HOLDER);
  await phone.page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  contextOfOther =
    (await phone.page
      .context()
      .browser()
      ?.newContext({
        viewport: { width: 390, height: 844 },
        locale: 'en-GB',
        timezoneId: 'UTC',
      })) ?? phone.page.context();
  other = await contextOfOther.newPage();
  other.setDefaultTimeout(10_000);
  await takeUp(other, OTHER);
  before = (await atServer()).acts.length;
  expect(await unsent(phone.page).count()).toBe(0);
  expect(await phone.page.locator('[data-device=no-start]').count()).toBe(0);
});

test(`without the server ${ACTS} acts and a photo are kept, and it is said loudly`, async () => {
  await served.away();
  const { page } = phone;
  await now(page)
    .getByLabel('Photo')
    .last()
    .setInputFiles({
      name: 'pump.png',
      mimeType: 'image/png',
      buffer: Buffer.from(PIXEL, 'base64'),
    });
  await expect
    .poll(() => unsent(page).textContent(), AFTER)
    .toBe('1 act and 1 photo on this phone only, not yet sent');
  expect(await unsent(page).locator('svg').isVisible()).toBe(true);
  await examine(page, 'cut off');
  await carryOn(page, ACTS);
  const kept = (await ownActs(page)).length;
  await expect.poll(() => unsent(page).textContent(), AFTER).toContain(`${kept} acts and 1 photo`);
});

let kept: readonly OwnRow[] = [];

test('a reload without the server starts from what the browser keeps', async () => {
  const { page } = phone;
  kept = await ownActs(page);
  expect(kept.length).toBeGreaterThanOrEqual(ACTS);
  const tally = await page.locator('.job-head [data-open]').getAttribute('data-open');
  const step = await now(page).getAttribute('data-step');
  await page.reload();
  await now(page).waitFor();
  expect(await page.locator('.job-head [data-open]').getAttribute('data-open')).toBe(tally);
  expect(await now(page).getAttribute('data-step')).toBe(step);
  expect(await ownActs(page)).toEqual(kept);
  await page.getByText(/^Cut off: the server does not answer/).waitFor();
  await page.getByRole('link', { name: 'Open list' }).click();
  await page.locator('[data-entry]').first().waitFor();
  expect(await unsent(page).isVisible()).toBe(true);
  await page.getByRole('link', { name: 'Record', exact: true }).click();
  const photo = page.locator('img[src^="blob:"]');
  await photo.waitFor({ state: 'attached' });
  expect(await photo.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBe(1);
});

test('a stop of the core holds without a server too', async () => {
  const wet = pack.facts.isolation.wetJoints[0] ?? '';
  const sentence = pack.steps.find(({ id }) => id === `undone joint/${wet}`)?.text ?? '?';
  expect(await other.locator('[data-stop=isolation]').textContent()).toContain('not proved');
  expect(await other.getByText(sentence).count()).toBe(0);
});

test('the other phone goes on alone with the same job', async () => {
  await carryOn(other, 5);
  expect(await unsent(other).textContent()).toContain('acts on this phone only');
});

test('with the server back all is sent, once, and the phones are one', async ({ task }) => {
  const alone = await ownActs(other);
  await served.back();
  const pages = [phone.page, other];
  await Promise.all(pages.map((page) => page.reload()));
  for (const page of pages) {
    await expect.poll(() => unsent(page).count(), AFTER).toBe(0);
    await expect.poll(async () => (await ownActs(page)).length, AFTER).toBe(0);
  }
  const replica = await atServer();
  const hashes = replica.acts.map(({ hash }) => hash);
  const said = [...kept, ...alone].map(({ act }) => act.hash);
  expect(new Set(hashes).size).toBe(hashes.length);
  expect(said.filter((hash) => !hashes.includes(hash))).toEqual([]);
  expect(hashes.length).toBe(before + said.length);
  expect(new Set(said).size).toBe(said.length);
  const devices = new Set([...kept, ...alone].map(({ act }) => act.device));
  expect(devices.size).toBe(2);
  // The archive took them in as they came; each phone holds them in an order of its own.
  const expected = stateHash(fold({ acts: replica.acts, packs: replica.packs }));
  for (const page of pages) {
    await expect
      .poll(async () => {
        const known = await knownOf(page);
        return stateHash(fold({ acts: known.acts, packs: known.packs }));
      }, AFTER)
      .toBe(expected);
  }
  expect(replica.heads.length).toBe(2);
  const job: JobState | undefined = fold(replica).jobs[JOB];
  expect(job).toBeDefined();
  const photo = kept.find(({ act }) => act.kind === 'photo')?.act.body.hash;
  await expect
    .poll(async () => {
      const sent = await phone.page.request.get(`${served.url}/api/photos/${String(photo)}`);
      return sent.status();
    }, AFTER)
    .toBe(200);
  const measured = `${kept.length} and ${alone.length} acts of two phones alone, none lost`;
  Object.assign(task.meta, { measured });
});

test('the next act after both have met has both as its parents', async () => {
  const { page } = phone;
  await page.goto(`${served.url}/#/job/${JOB}/work`);
  await now(page).waitFor();
  await now(page).getByRole('button', { name: 'Could not do' }).click();
  await page.getByRole('button', { name: 'called away' }).click();
  await page.getByRole('button', { name: 'Record it' }).click();
  await expect.poll(async () => (await atServer()).heads.length, AFTER).toBe(1);
  const last = (await atServer()).acts.at(-1);
  expect(last?.parents.length).toBe(2);
});

test('a phone that is full says so, and Done does not change', async () => {
  const { page } = phone;
  await page.evaluate(() => {
    IDBObjectStore.prototype.add = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
    IDBObjectStore.prototype.put = IDBObjectStore.prototype.add;
  });
  const acts = (await atServer()).acts.length;
  const step = await now(page).getAttribute('data-step');
  await now(page).getByRole('button', { name: 'Found something' }).click();
  await page.getByRole('button', { name: 'corroded', exact: true }).click();
  await page.getByRole('button', { name: 'Record it' }).click();
  const refused = page.locator('.refused');
  await refused.waitFor();
  expect(await refused.textContent()).toContain('this phone is full');
  expect(await now(page).getAttribute('data-step')).toBe(step);
  expect((await atServer()).acts.length).toBe(acts);
});

test('no script failed; only the missing server was complained of', () => {
  const others = phone.complaints.filter((words) => !/ERR_CONNECTION_REFUSED/.test(words));
  expect(others).toEqual([]);
});
