// The whole exchange of the sea-water pump on a phone of 390 × 844, from the log to the closed
// record, through the screens alone, against the real program and a real archive.

import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { Pack, Step } from '../src/pack/types.ts';
import { expectShown, type Hand, now, report, stepNow, tap, verify } from './hand.ts';
import {
  examine,
  expectAuthority,
  expectNothingSerious,
  expectSizes,
  type Phone,
  picture,
  takePhone,
} from './phone.ts';
import { boxup, keep, packByCommand, type Served, serveDemo, textOf } from './served.ts';

let served: Served;
let phone: Phone;
let hand: Hand;
let jobUrl = '';

beforeAll(async () => {
  served = await serveDemo();
  phone = await takePhone();
  await phone.page.goto(served.url);
  await phone.page.getByRole('heading', { name: 'Log of Tern Rock' }).waitFor();
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

const MAKER = 'Sunniva Brekk';
const SECOND = 'Piotr Aldwell';

describe('the log', () => {
  test('shows watch, sailings and hours since last done', async () => {
    const { page } = phone;
    await examine(page, 'log');
    await picture(page, 'due');
    await page.getByLabel('Who is holding this phone?').selectOption(MAKER);
    await page.getByText(`In hand: ${MAKER}`).waitFor();
    const due: {
      due: {
        machine: string;
        target: string;
        does: string;
        since: { sinceHours: number | null };
      }[];
    } = await (await page.request.get(`${served.url}/api/due`)).json();
    const known = due.due.filter(({ since }) => since.sinceHours !== null);
    expect(known.length).toBeGreaterThan(3);
    for (const { machine, target, does, since } of known) {
      const figure = page.locator(`[data-figure="since ${machine} ${target} ${does}"]`);
      expect(await figure.textContent()).toBe(String(since.sinceHours));
    }
  });

  test('the watch is taken by name and a sailing written down', async () => {
    const { page } = phone;
    await page.getByRole('button', { name: 'Hand over the watch' }).click();
    await page.getByLabel('Who takes the watch').selectOption('Maren Tollak');
    await page.getByRole('button', { name: 'Take the watch' }).click();
    await page.getByText(/^Maren Tollak, since /).waitFor();
    await page.getByRole('button', { name: 'Add a sailing' }).click();
    await page.getByLabel('Day and time').fill('2026-11-29T16:20');
    await page.getByLabel('Bound for').fill('Outer mole');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('29 November 2026, 16:20 · Outer mole').waitFor();
  });
});

describe('the pack', () => {
  test('is worked out; its figures are those of boxup pack', async () => {
    const { page } = phone;
    await page.getByRole('link', { name: 'Begin a job' }).click();
    await page.getByLabel('Machine').selectOption('main-engine-port');
    await page.getByLabel('Component').selectOption('sea-water-pump');
    await page.locator('.choice-one', { hasText: 'Exchange the pump' }).click();
    await page.getByLabel('Why').fill('its interval');
    await page.getByRole('checkbox', { name: MAKER }).check();
    await page.getByRole('checkbox', { name: 'Lewis Carrow' }).check();
    await examine(page, 'begin');
    await page.getByRole('button', { name: 'Work out the pack' }).click();
    await page.locator('[data-figure=minutes]').waitFor();
    await examine(page, 'pack');
    await picture(page, 'pack');
    await expectFigures(await exportedPack());
  });

  test('what wants a decision is settled by name, and each settling is a new pack', async () => {
    const { page } = phone;
    const before = await exportedPack();
    const open = before.decisions.filter(({ settled }) => settled === null);
    expect(open.length).toBeGreaterThan(0);
    for (const decision of open) await settle(decision.question);
    const after = await exportedPack();
    expect(after.id).not.toBe(before.id);
    expect(after.decisions.every(({ settled }) => settled?.by === SECOND)).toBe(true);
    await expectFigures(after);
    const pdf = await page.request.get(`${served.url}/api/packs/${after.id}/pdf`);
    expect((await pdf.body()).subarray(0, 5).toString()).toBe('%PDF-');
    hand = { page, pack: after, taps: 0 };
  });

  test('a working opens under its figure', async () => {
    const { page } = phone;
    const figure = page.getByRole('button', { name: /for the whole job/ });
    await figure.click();
    expect(await page.locator('.working').first().isVisible()).toBe(true);
    await figure.click();
  });
});

async function settle(question: string): Promise<void> {
  const { page } = phone;
  const url = page.url();
  await page.getByRole('button', { name: `Settle: ${question}` }).click();
  await page.getByLabel('Settled by').selectOption(SECOND);
  await page.getByLabel('What is decided, and the reason').fill('the table covers this thread');
  await page
    .getByLabel('What limits the risk', { exact: true })
    .fill('looked at after the first run');
  await page.getByRole('button', { name: 'Settle it' }).click();
  await page.waitForURL((next) => next.href !== url);
}

/** The pack that the command line makes of the request which this screen saves. */
async function exportedPack(): Promise<Pack> {
  const { page } = phone;
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the request (JSON)' }).click(),
  ]);
  const file = keep(served.folder, 'request.json', textOf(await download.path()));
  const pack = packByCommand(file) as Pack;
  expect(decodeURIComponent(page.url())).toContain(`#/pack/${pack.id}`);
  return pack;
}

async function expectFigures(pack: Pack): Promise<void> {
  const { page } = phone;
  const undone = pack.plan.order.filter((each) => each.do === 'undo').length;
  const expected = {
    minutes: pack.minutes.value,
    people: pack.people,
    undone,
    off: pack.plan.order.length - undone,
    steps: pack.steps.length,
    'removal-minutes': pack.plan.minutes.value,
    differences: pack.otherSide?.count,
    unsettled: pack.decisions.filter(({ settled }) => settled === null).length,
  };
  for (const [field, figure] of Object.entries(expected)) {
    const shown = await page.locator(`[data-figure="${field}"]`).textContent();
    expect(shown, field).toBe(String(figure));
  }
  const values = [...pack.lists.values, ...pack.limits];
  const shown = await page.locator('main [data-value]').allTextContents();
  expect(shown).toEqual(values.map((each) => each.shown ?? 'NO VALUE STATED'));
  expect(await page.locator('[data-isolation-note]').textContent()).toContain(pack.isolationNote);
}

describe('the work', () => {
  test('starts with hands and a competent person', async () => {
    const { page } = phone;
    await page.getByLabel('Competent person who verifies').selectOption(SECOND);
    await page.getByRole('button', { name: 'Start the job' }).click();
    await now(page).waitFor();
    jobUrl = page.url();
  });

  test('no wet joint opens before the isolation is proved', async () => {
    const { page } = phone;
    const stop = page.locator('[data-stop=isolation]');
    expect(await stop.textContent()).toContain('isolation not proved');
    const wet = hand.pack.facts.isolation.wetJoints[0] ?? '';
    const sentence = hand.pack.steps.find(({ id }) => id === `undone joint/${wet}`)?.text ?? '?';
    expect(await page.getByText(sentence).count()).toBe(0);
    const job = /job\/([^/]+)/.exec(jobUrl)?.[1] ?? '';
    const draft = {
      stream: { kind: 'job', id: job },
      kind: 'undone',
      by: MAKER,
      body: { thing: `joint/${wet}` },
    };
    const refused = await page.request.post(`${served.url}/api/acts`, { data: draft });
    expect(refused.status()).toBe(409);
    expect((await refused.json()).error.refusal.stop).toBe('isolation not proved');
  });

  test('a step is done by keyboard alone, and a slip is taken back', async () => {
    const { page } = phone;
    const before = await stepNow(hand);
    expect(before?.thing).toMatch(/^before\/running/);
    if (before !== null) await expectShown(hand, before);
    if (before !== null) await report(hand, before);
    const step = await stepNow(hand);
    expect(step?.verb).toBe('told');
    await now(page).getByLabel('Who has been told').selectOption('Maren Tollak');
    await focusByTab('Done');
    const outline = await page.evaluate(
      () => getComputedStyle(document.activeElement ?? document.body).outlineStyle,
    );
    expect(outline).not.toBe('none');
    await page.keyboard.press('Enter');
    await page.locator(`[data-step]:not([data-step="${step?.id}"])`).waitFor();
    await page.getByRole('button', { name: /^Take back: Tell the bridge/ }).click();
    await page.locator(`[data-step="${step?.id}"]`).waitFor();
  });

  test('a find, a "could not" and a photo are each a few taps', async () => {
    const { page } = phone;
    await now(page).getByRole('button', { name: 'Found something' }).click();
    await page.getByRole('button', { name: 'corroded', exact: true }).click();
    await examine(page, 'found something');
    await page.getByRole('button', { name: 'Record it' }).click();
    await now(page).getByRole('button', { name: 'Could not do' }).click();
    await page.getByRole('button', { name: 'called away' }).click();
    await page.getByRole('button', { name: 'Record it' }).click();
    await now(page).getByRole('button', { name: 'Photo' }).waitFor();
    await now(page)
      .getByLabel('Photo')
      .last()
      .setInputFiles({
        name: 'pump.png',
        mimeType: 'image/png',
        buffer: Buffer.from(PIXEL, 'base64'),
      });
    await page.getByRole('button', { name: /^Take back: a picture/ }).waitFor();
  });

  test('every step to boxed up: sentence, figures and cautions are the pack’s', {
    timeout: 400_000,
  }, async () => {
    await carryOn('work');
  });
});

const PIXEL =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk' +
  '+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

async function focusByTab(words: string): Promise<void> {
  const { page } = phone;
  await page.locator('h1').evaluate((h1) => {
    h1.setAttribute('tabindex', '-1');
    h1.focus();
  });
  for (let i = 0; i < 40; i += 1) {
    await page.keyboard.press('Tab');
    const text = await page.evaluate(() => document.activeElement?.textContent ?? '');
    if (text.startsWith(words)) return;
  }
  throw new Error(`"${words}" is not reached by the Tab key`);
}

/** Each kind of step is looked over once; every step is compared and measured. */
async function carryOn(stage: string): Promise<Step[]> {
  const { page } = phone;
  const looked = new Set<string>();
  const done: Step[] = [];
  while (done.length <= hand.pack.steps.length) {
    const step = await stepNow(hand);
    if (step === null) return done;
    if (stage === 'work' && ['line-up', 'prove'].includes(step.phase)) return done;
    await expectShown(hand, step);
    await expectSizes(page, step.id);
    await expectAuthority(page, step.id);
    const kind = `${step.verb} ${step.cautions.length > 0} ${step.perHole}`;
    if (!looked.has(kind)) {
      looked.add(kind);
      await expectNothingSerious(page, step.id);
    }
    if (step.id === 'made joint/pump-mounting 60 %') {
      await verify(hand, SECOND);
      await picture(page, 'work');
    }
    if (step.id === 'proof proof/running') await picture(page, 'proof');
    await report(hand, step);
    done.push(step);
  }
  throw new Error(`${stage} has no end`);
}

describe('the proof', () => {
  test('line up, look, turn, clear, start, run', { timeout: 300_000 }, async () => {
    const { page } = phone;
    await now(page).waitFor();
    await carryOn('proof');
    expect(await page.locator('[data-verdict]').textContent()).toBe('pass');
    await examine(page, 'proof');
    const owners = page.getByLabel(/^Who sees to it after/);
    for (let left = await owners.count(); left > 0; left -= 1) {
      await owners.first().selectOption('Nadia Ferozan');
      await page.getByRole('button', { name: 'Owned by this person' }).first().click();
      await expect.poll(() => owners.count()).toBe(left - 1);
    }
    await page.getByRole('link', { name: 'Go to the record' }).click();
  });
});

describe('the record', () => {
  test('closing is refused with its list while a finding is not decided', async () => {
    const { page } = phone;
    await page.getByRole('heading', { name: 'Close the job' }).waitFor();
    await page.getByRole('button', { name: 'Close the job' }).click();
    const refused = page.locator('.refused');
    await refused.waitFor();
    expect(await refused.textContent()).toContain('corroded');
    await examine(page, 'refused');
    await page.getByRole('button', { name: 'I have read it' }).click();
    const undecided = page.getByRole('button', { name: /^Decide: / });
    for (let left = await undecided.count(); left > 0; left -= 1) {
      await undecided.first().click();
      await page.getByLabel('What is decided').fill('cleaned and painted at the next docking');
      await page.getByLabel('Owner').selectOption('Nadia Ferozan');
      await page.getByRole('button', { name: 'Record the decision' }).click();
      await expect.poll(() => undecided.count()).toBe(left - 1);
    }
  });

  test('is closed, shows its head, prints, and verifies', async ({ task }) => {
    const { page } = phone;
    await tap(hand, page.getByRole('button', { name: 'Close the job' }));
    await page.locator('[data-closed]').waitFor();
    expect(await page.locator('[data-stage]').textContent()).toBe('closed');
    expect(await page.locator('.job-head [data-open]').getAttribute('data-open')).toBe('0');
    await examine(page, 'record');
    await picture(page, 'record');
    const head = (await page.locator('[data-closed] code').textContent()) ?? '';
    expect(head).toMatch(/^[0-9a-f]{64}$/);
    const job = /job\/([^/]+)/.exec(jobUrl)?.[1] ?? '';
    const pdf = await page.request.get(`${served.url}/api/jobs/${job}/pdf`);
    expect((await pdf.body()).subarray(0, 5).toString()).toBe('%PDF-');
    const acts = Number(await page.locator('[data-acts]').getAttribute('data-acts'));
    expect(acts).toBeGreaterThan(hand.pack.steps.length);
    Object.assign(task.meta, {
      measured: `${hand.taps} taps for ${hand.pack.steps.length} steps, ${acts} acts`,
    });
    boxup(['record', 'verify', '--archive', served.archive]);
  });

  test('the open list shows everything made good', async () => {
    const { page } = phone;
    await page.getByRole('link', { name: 'Open list' }).click();
    await page.getByText('Nothing is open.').waitFor();
    expect(await page.locator('[data-entry][data-open=true]').count()).toBe(0);
    expect(await page.locator('[data-entry]').count()).toBeGreaterThan(20);
    await examine(page, 'open list');
  });
});

describe('calculations', () => {
  test('the example of the removal gives what the command line gives', async () => {
    const { page } = phone;
    await page.getByRole('link', { name: 'Calculations' }).click();
    await page.getByRole('link', { name: 'removal', exact: true }).click();
    const input = await page.getByLabel(/^Input/).inputValue();
    await page.getByRole('button', { name: 'Work it out' }).click();
    const result = page.locator('[data-result]');
    await result.waitFor({ state: 'attached' });
    const file = keep(served.folder, 'case.json', input);
    const expected: unknown = JSON.parse(boxup(['calc', 'removal', '--in', file]));
    expect(JSON.parse((await result.textContent()) ?? '')).toEqual(expected);
    await examine(page, 'calculations');
  });
});

test('the page’s policy stopped nothing and no script failed', () => {
  expect(phone.complaints).toEqual([]);
});
