// The laws of entering a job from paper, over whole jobs of the island ferry and the water works.

import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { makePack } from '../pack/pack.ts';
import { sheetName, sheetsOf } from '../pack/sheets.ts';
import type { Pack } from '../pack/types.ts';
import { readPlant } from '../plant/read.ts';
import type { Plant } from '../plant/types.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import { en } from '../words/en/index.ts';
import { mayRecord } from './closing.ts';
import { neverTogether } from './done-to-here.ts';
import { bodyOf, chain, fixturePack, jobDraft, jobId, saying, startDraft } from './fixture.ts';
import { fold } from './fold.ts';
import { fromPaper, paperRows, paperWords, sheetOf, type Written } from './from-paper.ts';
import { kindOf } from './kinds.ts';
import type { Act, ActBody, Draft, JobState, Refusal } from './types.ts';

const demo = fileURLToPath(new URL('../../demo/', import.meta.url));

function plantIn(folder: string): Plant {
  const files = readdirSync(`${demo}${folder}`, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.yaml'))
    .sort()
    .map((file) => ({ file, text: readFileSync(`${demo}${folder}/${file}`, 'utf8') }));
  const { plant, problems } = readPlant(files);
  if (plant === null) throw new Error(JSON.stringify(problems.slice(0, 3)));
  return plant;
}

function jobOf(acts: readonly Act[], pack: Pack): JobState {
  const job = fold({ acts, packs: [pack] }).jobs[jobId];
  if (job === undefined) throw new Error('the job is not there');
  return job;
}

const begun = (pack: Pack): readonly Act[] => {
  const unsettled = pack.decisions.filter((d) => d.settled === null);
  const anyway = unsettled.map((d) => ({ decision: d.id, reason: 'demo', limits: 'demo' }));
  return chain([startDraft(pack, { anyway })]);
};

const WRITTEN: Written = {
  by: 'Maren',
  writtenAt: '2026-03-14 03:20',
  enteredBy: 'Ada',
  verifiedBy: 'Ben',
  rows: {},
  blank: [],
};

/** What a sheet looks like on which everything is ticked and answered as a sound job would be. */
function filled(pack: Pack, letter: string, more: Partial<Written> = {}): Written {
  const job = jobOf(begun(pack), pack);
  const sheet = sheetOf(pack, letter);
  const alone = sheet === null ? [] : paperRows(job, pack, sheet).filter((r) => r.alone !== null);
  const rows = alone.map(({ step }) => {
    const { body, by } = saying(pack, step);
    const { thing: _thing, round: _round, ...answers } = body;
    const signed = step.verb === 'second-look' ? { by } : {};
    return [
      step.id,
      { answers, ...signed, ...(step.perHole ? { holes: step.holes } : {}) },
    ] as const;
  });
  return { ...WRITTEN, rows: Object.fromEntries(rows), ...more };
}

type Entered = {
  readonly acts: readonly Act[];
  readonly refused: readonly (Refusal & { readonly draft: Draft })[];
};

/** Each draft is asked of the record after the one before it, as on every device. */
function enter(acts: readonly Act[], pack: Pack, drafts: readonly Draft[]): Entered {
  let all = acts;
  const refused: Entered['refused'][number][] = [];
  for (const draft of drafts) {
    const no = mayRecord(fold({ acts: all, packs: [pack] }), jobId, draft, [pack]);
    if (no === null) all = [...all, ...chain([draft], 'phone-a', all)];
    else refused.push({ ...no, draft });
  }
  return { acts: all, refused };
}

function enterSheet(
  acts: readonly Act[],
  pack: Pack,
  letter: string,
  more: Partial<Written> = {},
): Entered {
  const state = fold({ acts, packs: [pack] });
  const { drafts, unsaid } = fromPaper(state, jobId, pack, letter, filled(pack, letter, more));
  expect(unsaid.map(({ step }) => step.id)).toEqual([]);
  return enter(acts, pack, drafts);
}

function wholeOf(pack: Pack, blank: readonly string[] = []): Entered {
  return sheetsOf(pack).reduce<Entered>(
    (so, { letter }) => {
      const next = enterSheet(so.acts, pack, letter, { blank });
      return { acts: next.acts, refused: [...so.refused, ...next.refused] };
    },
    { acts: begun(pack), refused: [] },
  );
}

const open = (job: JobState) =>
  job.entries.map(({ thing, what, kind, open: still }) => ({ thing, what, kind, still }));

/** Every n-th only under `npm test`; all of them in the long run. */
const some = <T>(all: readonly T[], every: number): readonly T[] =>
  process.env.LONG === '1' ? all : all.filter((_, i) => i % every === 0);

describe.each(['tern-rock', 'water-works'])('%s', (folder) => {
  const plant = plantIn(folder);
  const asked = Object.values(plant.machines).flatMap((machine) =>
    Object.entries(machine.targets).flatMap(([target, spec]) =>
      Object.keys(spec.does).map((does) => ({ machine: machine.id, target, does })),
    ),
  );
  // The longest packs only in the long run.
  const short = asked.filter(({ does }) => process.env.LONG === '1' || does !== 'overhaul');
  test.each(some(short, 3).map((a) => [`${a.does} ${a.target}, ${a.machine}`, a] as const))(
    '%s: sheet by sheet the open list is that of the job done step by step',
    async (_, request) => {
      const made = await makePack(plant, request as Parameters<typeof makePack>[1], solveWithHighs);
      if (made.kind !== 'pack') throw new Error(JSON.stringify(made));
      const { pack } = made;
      const sheets = sheetsOf(pack);
      expect(sheets.flatMap((s) => s.steps)).toEqual(pack.steps);
      let paper = begun(pack);
      let screen = begun(pack);
      for (const { letter, steps } of sheets) {
        const sheet = enterSheet(paper, pack, letter);
        expect(sheet.refused).toEqual([]);
        paper = sheet.acts;
        // That every step may be said in this order is held by the test of the whole jobs.
        const said = steps.map((s) => saying(pack, s));
        screen = [...screen, ...chain(said, 'phone-a', screen)];
        expect(open(jobOf(paper, pack)), `sheet ${letter}`).toEqual(open(jobOf(screen, pack)));
      }
      const last = jobOf(paper, pack);
      expect(last.findings).toEqual([]);
      expect(Object.keys(last.done).sort()).toEqual(Object.keys(jobOf(screen, pack).done).sort());
      const closing = enter(paper, pack, [jobDraft('closed', { deviations: [] })]);
      expect(closing.refused).toEqual([]);
      expect(paper.slice(1).every((a) => typeof a.body.paper === 'string')).toBe(true);
      const together = paper.filter((a) => a.body.together === true);
      expect(together.length).toBeGreaterThan(8);
      expect(together.filter((a) => neverTogether(a.kind, a.body, pack) !== null)).toEqual([]);
    },
  );

  test.each(some(short, 5).map((a) => [`${a.does} ${a.target}, ${a.machine}`, a] as const))(
    '%s: a step without a tick leaves its own entry open, and what the stops hold back behind it',
    async (_, request) => {
      const made = await makePack(plant, request as Parameters<typeof makePack>[1], solveWithHighs);
      if (made.kind !== 'pack') throw new Error(JSON.stringify(made));
      const { pack } = made;
      const closesOf = (kind: string, body: ActBody) =>
        kindOf(kind)?.closes(body, pack.facts) ?? [];
      const closers = pack.steps.filter((s) => closesOf(s.verb, bodyOf(s)).length > 0);
      const kept = Math.ceil(closers.length / 2);
      for (const step of some(closers, kept)) {
        const { acts, refused } = wholeOf(pack, [step.id]);
        const held = refused.flatMap(({ draft }) => closesOf(draft.kind, draft.body));
        const expected = new Set([...closesOf(step.verb, bodyOf(step)), ...held]);
        const left = jobOf(acts, pack).entries.filter((e) => e.open);
        expect(new Set(left.map((e) => e.thing)), `${step.id} without a tick`).toEqual(expected);
        // A wet joint not made up: what isolates it is not given back. A closure not given back:
        // there is no line-up to look at, so nothing is started. Nothing else is refused.
        const wet =
          step.verb === 'made' && pack.facts.isolation.wetJoints.includes(step.thing.slice(6));
        const looked = pack.facts.looks?.['line-up'].includes(step.thing) === true;
        expect(refused.length > 0, step.id).toBe(wet || (step.verb === 'restored' && looked));
        const unseen = ['second-look look/line-up', 'started check/first-start'];
        const others = refused.filter(
          ({ draft }) => !unseen.includes(`${draft.kind} ${String(draft.body.thing)}`),
        );
        expect(others.every((r) => r.stop === 'isolation not proved')).toBe(true);
      }
    },
  );
});

test('a tag without its tick on one sheet refuses the wet joints of a later one', async () => {
  const plant = plantIn('water-works');
  const request = { machine: 'standby-pump', target: 'rotating-unit', does: 'exchange' } as const;
  const made = await makePack(plant, request, solveWithHighs);
  if (made.kind !== 'pack') throw new Error(JSON.stringify(made));
  const { pack } = made;
  const tag = pack.steps.find((s) => s.verb === 'tagged');
  const wet = pack.steps.filter((s) => s.verb === 'undone' && s.stop === 'isolation');
  const letterOf = (id: string) =>
    sheetsOf(pack).find((s) => s.steps.some((each) => each.id === id))?.letter ?? '';
  expect(wet.length).toBeGreaterThan(0);
  expect(wet.every(({ id }) => letterOf(id) > letterOf(tag?.id ?? ''))).toBe(true);
  const { acts, refused } = wholeOf(pack, [tag?.id ?? '']);
  const undone = refused.filter(({ draft }) => draft.kind === 'undone');
  expect(undone.map(({ draft }) => draft.body.step)).toEqual(wet.map(({ id }) => id));
  expect(undone.every(({ stop }) => stop === 'isolation not proved')).toBe(true);
  const { entries } = jobOf(acts, pack);
  expect(entries.filter((e) => wet.some(({ thing }) => thing === e.thing))).toEqual([]);
});

const pack = fixturePack();
const start = begun(pack);
const letterWith = (step: string): string =>
  sheetsOf(pack).find((s) => s.steps.some((each) => each.id === step))?.letter ?? '?';

describe('what may be said from paper', () => {
  const strip = letterWith('undone joint/suction-flange');

  test('sheets are named by letter, what is done on them, and the machine', () => {
    const [first] = sheetsOf(pack);
    expect(first?.letter).toBe('A');
    expect(first && sheetName(first, en.paper.phases)).toBe(
      'Before you start, take off (1 of 3), Test engine',
    );
  });

  test('an isolation without a tick still refuses the wet joints, on this sheet and later', () => {
    const { acts, refused } = enterSheet(start, pack, strip, { blank: ['tagged tag/1'] });
    // The pipe that comes aside behind them opens the boundary too, and is refused with them.
    const opening = [...pack.facts.isolation.wetJoints, 'pipe'];
    expect(refused.map((r) => r.stop)).toEqual(opening.map(() => 'isolation not proved'));
    const tag = fromPaper(fold({ acts, packs: [pack] }), jobId, pack, strip, filled(pack, strip));
    // Entered afterwards, the proof of the drain stands: it was seen once all was shut.
    expect(enter(acts, pack, tag.drafts).refused).toEqual([]);
  });

  test('isolation is entered row by row and is not "together"; said together it is refused', () => {
    const state = fold({ acts: start, packs: [pack] });
    const { drafts } = fromPaper(state, jobId, pack, strip, filled(pack, strip));
    const shut = drafts.find((d) => d.kind === 'shut');
    expect(shut?.body).not.toHaveProperty('together');
    expect(shut?.body).toMatchObject({ paper: strip, enteredBy: 'Ada' });
    if (shut === undefined) throw new Error('nothing was shut');
    const covered = { ...shut, body: { ...shut.body, together: true } };
    expect(enter(start, pack, [covered]).refused[0]?.why).toMatch(/own step/);
  });

  test('a row that nobody answered is told, and not made up', () => {
    const state = fold({ acts: start, packs: [pack] });
    const { drafts, unsaid } = fromPaper(state, jobId, pack, strip, WRITTEN);
    expect(unsaid.map(({ step }) => step.id)).toContain('shut closure/sea-suction');
    expect(drafts.map((d) => d.kind)).not.toContain('shut');
    expect(drafts.length).toBeGreaterThan(0);
  });

  test('what another answer of the row calls for is asked too', () => {
    const found = { name: 'found', label: 'Found', kind: 'choice' as const, choices: ['a', 'b'] };
    const turns = { name: 'turns', label: 'Turns', kind: 'number' as const, optional: true };
    const asks = [found, { ...turns, unless: { ask: 'found', is: 'a' } }];
    const throttled = fixturePack((p) => ({
      ...p,
      steps: p.steps.map((s) => (s.id === 'shut closure/sea-suction' ? { ...s, asks } : s)),
    }));
    const acts = begun(throttled);
    const state = fold({ acts, packs: [throttled] });
    const unsaidOf = (answers: Readonly<Record<string, string | number>>) => {
      const rows = { 'shut closure/sea-suction': { answers } };
      const { unsaid } = fromPaper(state, jobId, throttled, strip, { ...WRITTEN, rows });
      const row = unsaid.find(({ step }) => step.id === 'shut closure/sea-suction');
      return row?.lacks.map(({ name }) => name) ?? null;
    };
    expect(unsaidOf({ found: 'a' })).toBeNull();
    expect(unsaidOf({ found: 'b' })).toEqual(['turns']);
    expect(unsaidOf({ found: 'b', turns: 3 })).toBeNull();
    expect(unsaidOf({})).toEqual(['found']);
  });

  test('bolts are kept as they were ticked; one without a tick leaves the joint open', () => {
    const last = 'made joint/guard made';
    const letter = letterWith(last);
    const sheet = filled(pack, letter);
    const row = { answers: {}, holes: ['1', '3'] };
    const first = sheetsOf(pack).filter((s) => s.letter < letter);
    const before = first.reduce((so, s) => enterSheet(so, pack, s.letter).acts, start);
    const rows = { ...sheet.rows, [last]: row };
    const { acts } = enterSheet(before, pack, letter, { rows });
    const guard = jobOf(acts, pack).entries.find((e) => e.thing === 'joint/guard');
    expect(guard).toMatchObject({ open: true, tally: { made: ['1', '3'] } });
  });

  test.each([
    ['no time as written', { writtenAt: undefined }, /when was it done/],
    ['nobody enters it', { enteredBy: undefined }, /who enters it/],
    ['another sheet', { paper: 'B' }, /does not stand on sheet B/],
    ['a sheet the pack has not', { paper: 'ZZ' }, /no sheet ZZ/],
    ['no sheet', { paper: undefined }, /names its sheet/],
  ])('refused: %s', (_, change, why) => {
    const body = { thing: 'joint/guard', paper: 'A', writtenAt: 'night', enteredBy: 'Ada' };
    const given = Object.entries({ ...body, ...change }).filter(([, v]) => v !== undefined);
    const draft = jobDraft('undone', Object.fromEntries(given) as Draft['body']);
    expect(enter(start, pack, [draft]).refused[0]?.why).toMatch(why);
    expect(enter(start, pack, [jobDraft('undone', body)]).refused).toEqual([]);
  });

  test('what was said on a screen is not entered a second time', () => {
    const said = enter(start, pack, [jobDraft('undone', { thing: 'joint/guard' })]).acts;
    const state = fold({ acts: said, packs: [pack] });
    const { drafts } = fromPaper(state, jobId, pack, strip, filled(pack, strip));
    expect(drafts.map((d) => d.body.thing)).not.toContain('joint/guard');
    expect(drafts.map((d) => d.body.thing)).toContain('joint/bracket');
  });

  test('what was found is a finding like any other', () => {
    const found = 'suction face pitted';
    const { acts } = enterSheet(start, pack, strip, { found });
    const [finding] = jobOf(acts, pack).findings.filter((f) => f.kind === 'found');
    expect(finding).toMatchObject({ what: found, needsDecision: true });
  });

  test('both names stand on the act, and the words say the sheet', () => {
    const { acts } = enterSheet(start, pack, strip);
    const act = acts.at(-1);
    expect(act?.by).toBe('Maren');
    const words = `entered from paper, sheet ${strip}, written 2026-03-14 03:20, entered by Ada`;
    expect(paperWords(act?.body ?? {})).toBe(words);
    expect(paperWords({ thing: 'joint/guard' })).toBeNull();
  });
});
