// Two amendments of one pack, made on two devices that did not know of each other: the decision is
// offered on a phone by who amended and why, and settles which pack is in force.

import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import type { Pack } from '../src/pack/types.ts';
import { makeAct } from '../src/record/act.ts';
import type { Act, Draft } from '../src/record/types.ts';
import { examine, type Phone, takePhone } from './phone.ts';
import { boxup, type Served, serveDemo } from './served.ts';

let served: Served;
let phone: Phone;
let packs: readonly Pack[] = [];

const JOB = 'plate-cooler-two-amendments';
const ASKED = { machine: 'main-engine-port', target: 'plate-cooler', does: 'exchange' };
const REASONS = ['interval', 'a valve more is shut', 'the crane is out of use'];

beforeAll(async () => {
  served = await serveDemo();
  phone = await takePhone();
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

async function post(path: string, data: unknown) {
  const answer = await phone.page.request.post(`${served.url}${path}`, { data });
  expect(answer.ok(), await answer.text()).toBe(true);
  return await answer.json();
}

const said = (kind: string, by: string, body: Draft['body']): Draft => ({
  stream: { kind: 'job', id: JOB },
  kind,
  by,
  body,
});

const inForce = (): { readonly findings: readonly { kind: string; decision: unknown }[] } & {
  readonly packInForce: string | null;
} => JSON.parse(boxup(['record', 'show', JOB, '--archive', served.archive, '--json'])).job;

test('two devices amend the same pack without knowing of each other', async () => {
  for (const why of REASONS) packs = [...packs, (await post('/api/packs', { ...ASKED, why })).pack];
  const [first, ...next] = packs;
  if (first === undefined) throw new Error('no pack was made');
  const unsettled = first.decisions.filter(({ settled }) => settled === null);
  const anyway = unsettled.map(({ id }) => ({ decision: id, reason: 'test', limits: 'test' }));
  const { act } = await post(
    '/api/acts',
    said('job-started', 'Maren Tollak', {
      pack: first.id,
      title: first.title,
      ...ASKED,
      why: 'interval',
      hands: ['Maren Tollak'],
      anyway,
    }),
  );
  const amendments = next.map((pack, i): Act => {
    const by = i === 0 ? 'Piotr Aldwell' : 'Sunniva Brekk';
    const body = { from: first.id, to: pack.id, why: REASONS[i + 1] ?? '' };
    return makeAct(said('pack-amended', by, body), {
      vessel: (act as Act).vessel,
      device: `phone-${i + 1}`,
      deviceSeq: 1,
      parents: [(act as Act).hash],
      at: { utc: '2026-11-25T08:00:00.000Z', offsetMinutes: 0 },
    });
  });
  const { taken, refused } = await post('/api/acts', { acts: amendments });
  expect(refused).toEqual([]);
  expect(taken).toHaveLength(2);
  expect(inForce().packInForce).toBeNull();
});

test('the decision is offered by who amended and why, and not the pack both amend', async () => {
  const { page } = phone;
  await page.goto(`${served.url}/#/job/${JOB}/record`);
  await page.getByLabel('Who is holding this phone?').selectOption('Nadia Ferozan');
  await page.getByRole('button', { name: /^Decide: Two packs amend one/ }).click();
  const offered = page.getByLabel('Pack in force').locator('option');
  expect(await offered.allTextContents()).toEqual([
    'choose a pack',
    ...expectedRivals().map(({ words }) => words),
  ]);
  await examine(page, 'two amendments');
});

/** In the order of the record: by cause, then by hash. */
function expectedRivals(): readonly { readonly words: string; readonly id: string }[] {
  const all = [
    { words: `${REASONS[1]} (Piotr Aldwell)`, id: packs[1]?.id ?? '' },
    { words: `${REASONS[2]} (Sunniva Brekk)`, id: packs[2]?.id ?? '' },
  ];
  const job: { packs: string[] } = JSON.parse(
    boxup(['record', 'show', JOB, '--archive', served.archive, '--json']),
  ).job;
  return all.sort((a, b) => job.packs.indexOf(a.id) - job.packs.indexOf(b.id));
}

test('decided for one, it is in force, on the phone and on the record', async () => {
  const { page } = phone;
  const record = page.getByRole('button', { name: 'Record the decision' });
  expect(await record.isDisabled()).toBe(true);
  await page.getByLabel('What is decided').fill('no crane: by hand');
  await page.getByLabel('Owner').selectOption('Piotr Aldwell');
  await page.getByLabel('Pack in force').selectOption({ label: `${REASONS[2]} (Sunniva Brekk)` });
  await record.click();
  await page.locator('[data-finding]', { hasText: 'no crane: by hand' }).waitFor();
  await expect.poll(() => inForce().packInForce).toBe(packs[2]?.id);
  expect(inForce().findings.filter(({ decision }) => decision === null)).toEqual([]);
  await page.getByRole('link', { name: 'Pack', exact: true }).click();
  await page.waitForURL((url) => decodeURIComponent(url.hash).endsWith(packs[2]?.id ?? '?'));
  expect(phone.complaints).toEqual([]);
});
