// A joint that is tight on a phone: two acts on two screens, a bolt that says no, a tool's file.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { readResults, writeResult } from '../src/exchange/tightening-result.ts';
import type { Pack, Step } from '../src/pack/types.ts';
import { bodyOf, lookBody } from '../src/record/fixture.ts';
import { fold } from '../src/record/fold.ts';
import { nextSteps } from '../src/record/next.ts';
import type { Replica } from '../src/record/replica.ts';
import type { Act, JobState } from '../src/record/types.ts';
import { now } from './hand.ts';
import { examine, type Phone, takePhone } from './phone.ts';
import { type Served, serveDemo } from './served.ts';

const DOER = 'Sunniva Brekk';
const OTHER = 'Maren Tollak';
const JOB = 'job-tight';
const FLANGE = 'joint/discharge-flange';
const LAST = `made ${FLANGE} once more in order`;
const folder = mkdtempSync(join(tmpdir(), 'boxup-tight-'));

let served: Served;
let phone: Phone;
let pack: Pack;

beforeAll(async () => {
  served = await serveDemo();
  phone = await takePhone();
}, 60_000);

afterAll(async () => {
  await phone?.close();
  await served?.stop();
  rmSync(folder, { recursive: true, force: true });
});

/** What stood on the screen when a test failed, to be looked at. */
afterEach(async ({ task }) => {
  if (task.result?.state !== 'fail' || process.env.E2E_SEEN === undefined) return;
  await phone.page.screenshot({ path: process.env.E2E_SEEN, fullPage: true });
});

async function seen(name: string): Promise<void> {
  if (process.env.TIGHT_SHOTS === undefined) return;
  await phone.page.screenshot({ path: `${process.env.TIGHT_SHOTS}/${name}.png`, fullPage: true });
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

async function jobNow(): Promise<JobState> {
  const { acts, packs } = await replica();
  const found = fold({ acts, packs }).jobs[JOB];
  if (found === undefined) throw new Error('no job');
  return found;
}

/** Asked of the server directly: how steps are said is shown elsewhere. */
async function begin(): Promise<void> {
  const request = { machine: 'main-engine-port', target: 'sea-water-pump', does: 'exchange' };
  const made = await post<{ pack: Pack }>('packs', { ...request, handsAboard: '2' });
  pack = made.pack;
  const anyway = pack.decisions
    .filter(({ settled }) => settled === null)
    .map(({ id }) => ({ decision: id, reason: 'the table covers it', limits: 'looked at after' }));
  const { id, title, machine, target } = pack;
  const about = { pack: id, title, machine: machine.id, target: target.id, does: target.does };
  const body = { ...about, why: '', hands: [DOER, OTHER], competent: DOER, anyway };
  await post('acts', { stream: { kind: 'job', id: JOB }, kind: 'job-started', by: DOER, body });
}

/** Every ready step of this part of the job but those left to the phone. */
async function upTo(left: (step: Step) => boolean): Promise<void> {
  let { acts, packs } = await replica();
  for (let i = 0; i < pack.steps.length; i++) {
    const [step] = nextSteps(fold({ acts, packs }), JOB, pack).filter((s) => !left(s));
    if (step === undefined) return;
    const looks = step.verb === 'second-look';
    const body = looks ? lookBody(pack, step.thing) : bodyOf(step);
    const draft = { stream: { kind: 'job', id: JOB }, kind: step.verb, body };
    const { act } = await post<{ act: Act }>('acts', { ...draft, by: looks ? OTHER : DOER });
    acts = [...acts, act];
  }
}

async function open(part: string): Promise<void> {
  await phone.page.goto('about:blank');
  await phone.page.goto(`${served.url}/#/job/${JOB}/${part}`);
  const who = phone.page.getByLabel('Who is holding this phone?');
  await phone.page.locator('header .holder, header .holder-choice').first().waitFor();
  if ((await who.count()) > 0) await who.selectOption(DOER);
}

const POLL = { timeout: 10_000, interval: 200 };
const late = (step: Step): boolean => ['line-up', 'prove'].includes(step.phase);

test('slackening is said and drawn; a bolt that says no is one tap and a finding', async () => {
  await begin();
  await upTo((s) => late(s) || s.thing === FLANGE);
  await open('work');
  const { page } = phone;
  await page.locator(`[data-step="undone ${FLANGE}"]`).waitFor();
  const words = (await now(page).textContent()) ?? '';
  expect(words).toContain('Far side first');
  expect(words).toContain('with all of them still on');
  await examine(page, 'slackening');
  await seen('slacken');
  await page.getByRole('button', { name: 'Stud came out with the nut' }).click();
  await page.getByText('Kept as a finding: Stud came out with the nut').waitFor();
  await expect
    .poll(async () => (await jobNow()).findings.filter((f) => f.kind === 'found').length, POLL)
    .toBe(1);
  expect((await jobNow()).findings.at(-1)).toMatchObject({ thing: FLANGE, needsDecision: true });
}, 120_000);

const bolt = (hole: string) =>
  writeResult({
    id: `r-${hole}`,
    at: '2026-11-25T04:00:00Z',
    name: `bolt ${hole}`,
    joint: 'discharge-flange',
    hole,
    tool: 'middle-torque-wrench',
    judged: 'tight',
    torque: { value: 47.5, unit: 'N.m' },
    target: null,
  });

test('a tool’s file is taken in at the step of its joint: whole, or nothing of it', async () => {
  await upTo((s) => late(s) || s.id === LAST);
  await open('work');
  const { page } = phone;
  await page.locator(`[data-step="${LAST}"]`).waitFor();
  await seen('made');
  const give = async (holes: readonly string[]) => {
    const file = join(folder, 'results.json');
    writeFileSync(file, JSON.stringify(holes.map(bolt)));
    await page.locator('[data-results-in] input').setInputFiles(file);
  };
  await give(['1', '9']);
  await page.getByText('Nothing was recorded. The file says:').waitFor();
  expect((await jobNow()).done[LAST]).toBeUndefined();
  await give(['1', '2', '3', '4']);
  await expect.poll(async () => (await jobNow()).done[LAST], POLL).toBeDefined();
}, 120_000);

test('a check and a re-tightening stand on two screens; what is not offered says why', async () => {
  await open('tight');
  const { page } = phone;
  await examine(page, 'tight joints');
  await seen('joints');
  await page.getByRole('button', { name: 'Pump mounting' }).click();
  await page.locator('[data-not-offered]').waitFor();
  expect(await page.getByRole('button', { name: 'Re-tighten a relaxed gasket' }).count()).toBe(0);
  await seen('not-offered');
  await page.getByRole('button', { name: 'Another joint' }).click();
  await page.getByRole('button', { name: 'Discharge flange' }).click();
  await page.getByRole('button', { name: 'Check of a nut that is tight' }).click();
  await seen('check');
  await examine(page, 'check of a tight nut');
  expect(await page.getByText('Cold?').count()).toBe(0);
  expect(await page.locator('[data-caution]').count()).toBeGreaterThan(0);
  const hole = page.getByRole('button', { name: 'Hole 3' });
  expect(await hole.isDisabled()).toBe(true);
  await page.getByLabel('Verified by (competent person)').selectOption(DOER);
  await hole.click();
  await page.getByText('Re-tightened: 1').waitFor();
  await page.getByRole('button', { name: 'Back', exact: true }).click();
  await page.getByRole('button', { name: 'Re-tighten a relaxed gasket' }).click();
  const done = page.getByRole('button', { name: 'Once round, re-tightened' });
  for (const group of ['Cold?', 'No pressure in it?', 'Start isolated?']) {
    expect(await done.isDisabled(), group).toBe(true);
    await page.getByRole('radiogroup', { name: group }).getByText('yes', { exact: true }).click();
  }
  await seen('retighten');
  await examine(page, 're-tightening');
  await done.click();
  await expect
    .poll(async () => (await replica()).acts.map((a) => a.kind).slice(-2), POLL)
    .toEqual(['checked-tight', 're-tightened']);
}, 60_000);

test('the record says how tight, and gives the results as a file', async () => {
  await open('record');
  const { page } = phone;
  const line = page.locator('[data-how-tight] li', { hasText: 'Discharge flange' });
  expect(await line.textContent()).toContain('tight');
  const belt = page.locator('[data-how-tight] li', { hasText: 'Gauge pipe union' });
  expect(await belt.textContent()).toContain('not judged');
  await seen('record');
  const got = await page.request.get(`${served.url}/api/jobs/${JOB}/tightening-results`);
  const read = readResults(await got.json());
  const own = read.ok ? read.results.filter((r) => r.joint === 'discharge-flange') : [];
  expect(own.map((r) => [r.hole, r.judged])).toEqual(['1', '2', '3', '4'].map((h) => [h, 'tight']));
});
