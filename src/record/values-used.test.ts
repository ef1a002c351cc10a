// Where values are used, and that an issued figure stays letter for letter wherever it is shown.

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { packInWords } from '../cli/pack-words.ts';
import { readFolder } from '../cli/read-folder.ts';
import { makePack } from '../pack/pack.ts';
import type { Pack, PackRequest } from '../pack/types.ts';
import { newsOf } from '../paper/news.ts';
import { packPdf } from '../paper/pack-pdf.ts';
import { letters, pagesOf } from '../paper/pdf-text.ts';
import { readPlant } from '../plant/read.ts';
import type { Plant } from '../plant/types.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import { chain, jobDraft } from './fixture.ts';
import { fold } from './fold.ts';
import { lookBody, replacedIn } from './superseded.ts';
import type { Act, Draft } from './types.ts';
import {
  changedSince,
  holdingSuperseded,
  issuesToTell,
  stepInForce,
  textInForce,
  usedSuperseded,
  whereUsed,
} from './values-used.ts';

const demo = fileURLToPath(new URL('../../demo/tern-rock', import.meta.url));
const files = readFolder(demo);
const FLANGE = 'sea-water-flange-m12';

type Change = (text: string) => string;

/** The demo with another text of the main engines' sheet, as one more issue or in its stead. */
function plantWith(change: Change, beside: boolean, type: Change = (t) => t): Plant {
  const sheet = files.find((f) => f.file === 'values/main-engine.yaml');
  if (sheet === undefined) throw new Error('no sheet');
  const changed = { file: beside ? 'values/next.yaml' : sheet.file, text: change(sheet.text) };
  const others = beside ? files : files.filter((f) => f !== sheet);
  const all = [...others, changed].map((f) =>
    f.file === 'types/main-engine.yaml' ? { ...f, text: type(f.text) } : f,
  );
  const { plant, problems } = readPlant(all);
  if (plant === null) throw new Error(JSON.stringify(problems.filter((p) => p.level === 'must')));
  return plant;
}

const eighth = (sheet: string): string =>
  sheet
    .replace('issue: "7"', 'issue: "8"')
    .replace('date: 2026-09-14', 'date: 2026-11-20')
    .replace(
      'value: 42 N.m\n    scope: this joint\n    threadCondition: anti',
      'value: 38 N.m\n    scope: this joint\n    threadCondition: anti',
    );

const request: PackRequest = {
  machine: 'main-engine-port',
  target: 'sea-water-pump',
  does: 'exchange',
};

const packOf = async (plant: Plant, asked = request): Promise<Pack> => {
  const made = await makePack(plant, asked, solveWithHighs);
  if (made.kind !== 'pack') throw new Error(JSON.stringify(made));
  return made.pack;
};

const start = (pack: Pack, job: string, hands: readonly string[]): Draft =>
  jobDraft(
    'job-started',
    {
      pack: pack.id,
      title: pack.title,
      machine: pack.machine.id,
      target: pack.target.id,
      does: pack.target.does,
      why: 'interval',
      hands,
    },
    'Ada',
    job,
  );

const closed = (job: string): Draft => jobDraft('closed', { deviations: [] }, 'Ada', job);

describe('with issue 8 of the demo sheet', () => {
  let seventh: Plant;
  let next: Plant;
  let old: Pack;
  let fresh: Pack;
  beforeAll(async () => {
    seventh = plantWith((text) => text, false);
    next = plantWith(eighth, true);
    [old, fresh] = [await packOf(seventh), await packOf(next)];
  });

  const tell = (acts: readonly Act[], packs: readonly Pack[]): Act[] => {
    const drafts = issuesToTell(next, fold({ acts, packs }), packs);
    return [...acts, ...chain(drafts, 'server', acts)];
  };

  test('only what packs hold is told, once, and nothing by the plant that made them', () => {
    const acts = chain([start(old, 'one', ['Ada'])]);
    expect(issuesToTell(seventh, fold({ acts, packs: [old] }), [old])).toEqual([]);
    const told = tell(acts, [old]);
    const said = told.filter((a) => a.kind === 'values-issued');
    expect(said.map((a) => a.body.values)).toEqual([
      [expect.objectContaining({ id: FLANGE, is: '38 N.m' })],
    ]);
    expect(issuesToTell(next, fold({ acts: told, packs: [old] }), [old])).toEqual([]);
    // An older plant served by mistake takes nothing back.
    expect(issuesToTell(seventh, fold({ acts: told, packs: [old] }), [old])).toEqual([]);
  });

  test('open jobs that hold it, closed jobs that used it, packs nobody began', () => {
    const round = (job: string) =>
      jobDraft('made', { thing: 'joint/suction-flange', round: '100 %' }, 'Ada', job);
    const acts = tell(
      chain([start(old, 'one', ['Ada']), start(old, 'two', ['Ben']), round('two'), closed('two')]),
      [old, fresh],
    );
    const state = fold({ acts, packs: [old, fresh] });
    expect(holdingSuperseded(state).map((j) => j.id)).toEqual(['one']);
    expect(usedSuperseded(state).map((j) => j.id)).toEqual(['two']);
    // Closed before the issue came: it is on its record, and nobody is asked any more.
    expect(state.jobs.two?.findings.filter((f) => f.kind === 'value superseded')).toEqual([]);
    const uses = whereUsed(state, [old, fresh], FLANGE);
    expect(new Set(uses.map((u) => `${u.job} ${u.closed} ${u.shown} ${u.now}`))).toEqual(
      new Set(['one false 42 N.m 38 N.m', 'null false 38 N.m null', 'two true 42 N.m 38 N.m']),
    );
    expect(replacedIn(fresh, state.issued)).toEqual([]);
  });

  test('a step shows the value in force, its share of it too, in whatever language', () => {
    const state = fold({ acts: tell(chain([start(old, 'one', ['Ada'])]), [old]), packs: [old] });
    const job = state.jobs.one;
    const step = old.steps.find((s) => s.id === 'made joint/suction-flange 30 %');
    const whole = old.steps.find((s) => s.id === 'made joint/suction-flange 100 %');
    if (job === undefined || step === undefined || whole === undefined) throw new Error('no step');
    expect(step.text).toContain('12.6 N.m (30 % of 42 N.m)');
    const now = stepInForce(step, job);
    expect(now.text).toContain('11.4 N.m (30 % of 38 N.m)');
    expect(now.text).not.toContain('42 N.m');
    expect(now.values[0]).toMatchObject({ shown: '38 N.m', issue: '8', was: { value: '42 N.m' } });
    expect(stepInForce(whole, job).text.startsWith('38 N.m · ')).toBe(true);
    expect(textInForce('12.6 N.m (30 % de 42 N.m), 142 N.m', step, job, '–')).toBe(
      '11.4 N.m (30 % de 38 N.m), 142 N.m',
    );
    const other = old.steps.find((s) => s.thing === 'joint/pump-mounting' && s.values.length > 0);
    expect(other && stepInForce(other, job)).toBe(other);
  });

  test('what changed since a person last did this job, on either side', async () => {
    const star = await packOf(seventh, { ...request, machine: 'main-engine-starboard' });
    const acts = chain([start(star, 'one', ['Ben']), closed('one')]);
    const state = fold({ acts, packs: [star, fresh] });
    expect(changedSince(state, [star, fresh], fresh, 'Dag')).toBeNull();
    const since = changedSince(state, [star, fresh], fresh, 'Ben');
    expect(since).toMatchObject({ job: 'one', closedOn: '2026-03-14' });
    expect(since?.changes.find((c) => c.id === FLANGE)).toMatchObject({
      was: '42 N.m (anti-seize paste on thread and under the nut)',
      wasIssue: '7',
      is: '38 N.m (anti-seize paste on thread and under the nut)',
      issue: '8',
    });
    const printed = letters(
      pagesOf(packPdf(fresh, newsOf(fresh, state, [star, fresh], ['Ben']))).join(''),
    );
    expect(printed).toContain(letters('Changed since Ben last did this'));
    expect(printed).toContain(letters('under the nut) in issue 7'));
    // Another part of the machine, or another thing done, is another job.
    const cooler = await packOf(seventh, { ...request, target: 'plate-cooler' });
    const other = fold({
      acts: chain([start(cooler, 'c', ['Ben']), closed('c')]),
      packs: [cooler],
    });
    expect(changedSince(other, [cooler], fresh, 'Ben')).toBeNull();
  });

  test('a value withdrawn is told as such', async () => {
    const gone = plantWith(
      (t) => eighth(t).replace(/ {2}sea-water-outlet-temperature:\n(?: {4}.*\n)+/, ''),
      true,
      (type) => type.replaceAll('sea-water-outlet-temperature', 'jacket-temperature'),
    );
    const limit = 'sea-water-outlet-temperature';
    const acts = chain([start(old, 'one', ['Ada'])]);
    const drafts = issuesToTell(gone, fold({ acts, packs: [old] }), [old]);
    const values = drafts.flatMap((d) => d.body.values as { id: string; is: unknown }[]);
    expect(values.find((v) => v.id === limit)?.is).toBeNull();
  });
});

test('"35.40 lbf.ft" stands exactly so in pack, words, print and at the step', async () => {
  const exact = '35.40 lbf.ft';
  const plant = plantWith((text) => text.replace('value: 42 N.m', `value: ${exact}`), false);
  const pack = await packOf(plant);
  expect(JSON.stringify(pack)).toContain(`"shown":"${exact}"`);
  expect(packInWords(pack)).toContain(exact);
  expect(letters(pagesOf(packPdf(pack)).join(''))).toContain(letters(exact));
  const step = pack.steps.find((s) => s.id === 'made joint/suction-flange 100 %');
  expect(step?.text.startsWith(`${exact} · `)).toBe(true);
  // A round-off of it would show up as one of these.
  for (const wrong of ['35.4 lbf.ft', '48 N.m', '35 lbf.ft'])
    expect(JSON.stringify(step)).not.toContain(wrong);
  const acts = chain([start(pack, 'one', ['Ada'])]);
  const issued = issuesToTell(
    plantWith((text) => eighth(text.replace('value: 42 N.m', 'value: 28.30 lbf.ft')), true),
    fold({ acts, packs: [pack] }),
    [pack],
  );
  const state = fold({ acts: [...acts, ...chain(issued, 'server', acts)], packs: [pack] });
  const row = state.jobs.one?.superseded.find((r) => r.value === FLANGE);
  expect(row).toMatchObject({ was: exact, is: '28.30 lbf.ft' });
  expect(row && lookBody(row)).toMatchObject({ was: exact, is: '28.30 lbf.ft' });
});

test('the list of issue 8 that stands beside the demo says what this test says', () => {
  const list = readFileSync(`${demo}-main-engine-values-issue-8.csv`, 'utf8');
  expect(list).toMatch(/^sea-water-flange-m12,.*,38 N\.m,/m);
});
