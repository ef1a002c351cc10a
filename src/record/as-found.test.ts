// As found: owed once the target is off, said in five answers; missing pieces are hunted by name.

import { describe, expect, test } from 'vitest';
import { asFoundThing, componentIn, failedChoices } from './as-found.ts';
import { mayRecord } from './closing.ts';
import { bodyOf, chain, fixturePack, jobDraft, jobId, startDraft, wholeJob } from './fixture.ts';
import { fold } from './fold.ts';
import { begun, pumpStrip, stripDraft, stripId } from './strip-fixture.ts';
import type { ActBody, Draft, JobState } from './types.ts';

const pack = fixturePack();
const packs = [pack];

const jobOf = (drafts: readonly Draft[], id = jobId): JobState => {
  const job = fold({ acts: chain(drafts), packs }).jobs[id];
  if (job === undefined) throw new Error('the job is not there');
  return job;
};
const asked = (drafts: readonly Draft[], draft: Draft) =>
  mayRecord(fold({ acts: chain(drafts), packs }), jobId, draft, packs);
const openIn = (drafts: readonly Draft[], id = jobId): readonly string[] =>
  jobOf(drafts, id).entries.flatMap((e) => (e.open ? [e.thing] : []));

const off = [startDraft(pack), jobDraft('moved-off', { thing: 'part/pump' })];
const found = (more: ActBody = {}): Draft =>
  jobDraft('as-found', {
    thing: 'item/pump',
    grade: 'near its end',
    failed: 'impeller',
    hours: 21_371.5,
    missing: 0,
    ...more,
  });
const whole = (missing: number): Draft[] =>
  wholeJob(pack).map((d) => (d.kind === 'as-found' ? found({ missing }) : d));
const accounted = (more: ActBody): Draft =>
  jobDraft('accounted', { thing: 'missing/pump', ...more });

describe('with a pack', () => {
  test('taking the target off owes it, and the closing asks for it', () => {
    expect(openIn(off)).toContain('as-found/pump');
    expect(openIn([...off, found()])).not.toContain('as-found/pump');
    const without = wholeJob(pack).filter((d) => d.kind !== 'as-found');
    const closing = without.at(-1) as Draft;
    const refused = asked(without.slice(0, -1), closing);
    expect(refused?.open).toEqual(['as-found/pump: Pump: as found not said']);
    const named = { thing: 'as-found/pump', reason: 'thrown away', limits: 'the last one lasted' };
    const anyway = jobDraft('closed', { deviations: [named] });
    expect(asked(without.slice(0, -1), anyway)).toBeNull();
  });

  test('its five answers are kept, and give the item that came out its hours', () => {
    const photo = 'a'.repeat(64);
    const job = jobOf([...off, jobDraft('item-out', { thing: 'item/pump' }), found({ photo })]);
    expect(job.asFound).toMatchObject([
      { grade: 'near its end', failed: 'impeller', hours: 21_371.5, missing: 0, photo },
    ]);
    expect(job.items).toMatchObject([{ part: 'pump', way: 'out', hours: 21_371.5 }]);
    expect(job.photos).toMatchObject([{ hash: photo }]);
  });

  test.each<[string, ActBody]>([
    ['a grade of another scale', { grade: 'fair' }],
    ['no word of what failed', { failed: '' }],
    ['less than no piece missing', { missing: -1 }],
  ])('refused: %s', (_, more) => {
    expect(asked(off, found(more))?.stop).toBe('bad act');
  });

  test('pieces missing: a finding, and a hunt that holds the closing', () => {
    const drafts = whole(3);
    const job = jobOf(drafts.slice(0, -1));
    expect(job.findings).toMatchObject([
      { kind: 'found', what: 'pieces missing: 3', needsDecision: false },
    ]);
    const refused = asked(drafts.slice(0, -1), drafts.at(-1) as Draft);
    expect(refused?.open).toEqual(['missing/pump: Pump: pieces missing: 3']);
  });

  test('found in part it goes on with what is left; found in full it ends', () => {
    const base = whole(3).slice(0, -1);
    const part = accounted({ where: 'the first bend', left: 1 });
    const words = (drafts: readonly Draft[]) =>
      jobOf(drafts).entries.find((e) => e.thing === 'missing/pump');
    expect(words([...base, part])).toMatchObject({ open: true, what: 'Pump: pieces missing: 1' });
    const rest = accounted({ where: 'the cooler', left: 0 });
    expect(openIn([...base, part, rest])).toEqual([]);
    expect(jobOf([...base, part, rest]).deviations).toEqual([]);
    expect(asked([...base, part, rest], rest)?.why).toMatch(/no pieces are missing there/);
  });

  test('gone on without by name, with a reason and what limits the risk', () => {
    const base = whole(3).slice(0, -1);
    expect(asked(base, accounted({ reason: 'bend and cooler opened' }))?.stop).toBe('bad act');
    expect(asked(base, accounted({ left: 2 }))?.stop).toBe('bad act');
    expect(asked(base, accounted({}))?.stop).toBe('bad act');
    const without = accounted({ reason: 'bend and cooler opened', limits: 'strainer at 1 h' });
    const job = jobOf([...base, without]);
    expect(job.openCount).toBe(0);
    expect(job.deviations).toMatchObject([{ thing: 'missing/pump', by: 'Ada' }]);
  });

  test('two phones that each say it leave it open', () => {
    const acts = chain(off);
    const a = chain([found()], 'phone-b', acts);
    const b = chain([found({ grade: 'failed' })], 'phone-c', acts);
    const job = fold({ acts: [...acts, ...a, ...b], packs }).jobs[jobId];
    expect(job?.entries.find((e) => e.thing === 'as-found/pump')?.open).toBe(true);
    expect(job?.findings.map((f) => f.kind)).toContain('at the same time');
  });

  test('the fixture asks for it where the five answers are asked', () => {
    const step = pack.steps.find((s) => s.verb === 'as-found');
    expect(step && bodyOf(step)).toEqual({
      thing: 'item/pump',
      grade: 'as new',
      failed: 'nothing',
      missing: 0,
    });
  });
});

describe('without a pack', () => {
  test('the part that the component names owes it', () => {
    expect(openIn(pumpStrip, stripId)).toContain('as-found/sea-water-pump');
    const job = jobOf(pumpStrip, stripId);
    expect(asFoundThing(job)).toBe('part/sea-water-pump');
    expect(failedChoices(job)).toEqual(expect.arrayContaining(['nothing', 'Belt guard', 'other']));
    const said = stripDraft('as-found', {
      thing: 'part/sea-water-pump',
      grade: 'failed',
      failed: 'other',
      missing: 1,
    });
    const open = openIn([...pumpStrip, said], stripId);
    expect(open).not.toContain('as-found/sea-water-pump');
    expect(open).toContain('missing/sea-water-pump');
  });

  test.each<[string, readonly string[], string | null]>([
    ['Sea-water pump', ['Belt guard', 'Pump'], 'Pump'],
    ['Sea-water pump', ['Pump', 'Sea-water pump'], 'Sea-water pump'],
    ['Cooler', ['Cooler cover', 'Plate cooler'], 'Plate cooler'],
    ['Starter', ['Belt guard', 'Pipe'], null],
  ])('of %s, %s: %s', (component, names, wanted) => {
    const taken = names.map((what, i) =>
      stripDraft('took-off', { thing: `part/t${i}`, what, wet: 'no' }),
    );
    const { strip } = jobOf([begun({ component }), ...taken], stripId);
    const thing = strip === null ? null : componentIn(strip);
    expect(strip?.seen.find((s) => s.thing === thing)?.what ?? null).toBe(wanted);
  });
});
