// Before the stop: read or passed over in one tap, gone once stopped, and found again at the end.

import { describe, expect, test } from 'vitest';
import { baselineAt, foundPositionsIn, positionWords } from './before.ts';
import { mayRecord } from './closing.ts';
import { doneToHere } from './done-to-here.ts';
import { chain, fixturePack, jobDraft, jobId, startDraft, wholeJob } from './fixture.ts';
import { fold } from './fold.ts';
import { nextSteps } from './next.ts';
import { begun, pumpStrip, stripDraft, stripId } from './strip-fixture.ts';
import type { Act, Draft, JobState } from './types.ts';

const pack = fixturePack();
const packs = [pack];
const READ = 'measured before/running:600-rpm';
const OTHER = 'measured before-other/running:600-rpm';

const stateOf = (drafts: readonly Draft[], with_ = packs) =>
  fold({ acts: chain(drafts), packs: with_ });
const jobOf = (drafts: readonly Draft[], id = jobId): JobState => {
  const job = stateOf(drafts).jobs[id];
  if (job === undefined) throw new Error('the job is not there');
  return job;
};
const ready = (drafts: readonly Draft[]): readonly string[] =>
  nextSteps(stateOf(drafts), jobId, pack).map((s) => s.id);

const start = startDraft(pack);
const read = jobDraft('measured', {
  thing: 'before/running:600-rpm',
  at: '600 rpm',
  pressure: 1.4,
  leaks: 'dry',
});
const cannot = (thing: string): Draft => jobDraft('cannot-run', { thing });
const shut = jobDraft('shut', { thing: 'closure/sea-suction', found: 'open', turns: 6 });

describe('with a pack', () => {
  test('what is read stands under the question of the proof, apart from the work', () => {
    const job = jobOf([start, read]);
    expect(baselineAt(job, 'pressure')).toMatchObject([{ value: 1.4, unit: 'bar', at: '600 rpm' }]);
    expect(baselineAt(job, 'leaks')).toMatchObject([{ value: 'dry' }]);
    expect(job.readings).toEqual([]);
    expect(job.done[READ]).toBeDefined();
    expect(job.openCount).toBe(0);
  });

  test('one tap passes over all of one machine, and makes no finding', () => {
    expect(ready([start])).toEqual(expect.arrayContaining([READ, OTHER]));
    expect(ready([start, cannot('before')])).not.toContain(READ);
    expect(ready([start, cannot('before')])).toContain(OTHER);
    const both = jobOf([start, cannot('before'), cannot('before-other')]);
    expect([both.findings, both.deviations]).toEqual([[], []]);
    expect(both.baseline.cannotRun.map((c) => c.of)).toEqual(['before', 'before-other']);
  });

  test('taken back, it is asked again', () => {
    const said = chain([start, cannot('before')]);
    const back = jobDraft('corrected', { of: said.at(-1)?.hash ?? '', why: 'it runs' });
    const acts: Act[] = [...said, ...chain([back], 'phone-a', said)];
    const steps = nextSteps(fold({ acts, packs }), jobId, pack).map((s) => s.id);
    expect(steps).toContain(READ);
  });

  test('once anything is shut there is no more before; nothing waited for it', () => {
    expect(ready([start, shut])).not.toContain(READ);
    const without = wholeJob(pack).filter((d) => !String(d.body.thing).startsWith('before'));
    const job = jobOf(without);
    expect(job.closed).not.toBeNull();
    expect(job.findings).toEqual([]);
  });

  test('a run ticked together passes it by', () => {
    const last = pack.steps.at(-1)?.id ?? '';
    expect(doneToHere(stateOf([start]), jobId, pack, last).stopsAt?.step.verb).toBe('shut');
  });

  test('another machine than the two is refused', () => {
    const odd = jobDraft('cannot-run', { thing: 'joint/guard' });
    expect(mayRecord(stateOf([start]), jobId, odd, packs)?.stop).toBe('bad act');
  });
});

test('a closure is known by how it was found, with its turns, by the last word on it', () => {
  const again = jobDraft('shut', { thing: 'closure/sea-suction', found: 'half open' });
  const [found] = jobOf([start, shut]).foundPositions;
  expect(found && positionWords(found)).toBe('open, 6 turns');
  expect(jobOf([start, shut, again]).foundPositions).toMatchObject([
    { found: 'half open', turns: null },
  ]);
  expect(foundPositionsIn([])).toEqual([]);
});

describe('without a pack', () => {
  test('free rows are read the same, and positions are kept with their turns', () => {
    const row = stripDraft('measured', {
      thing: 'before/running:1',
      speed: 1200,
      pressure: 1.4,
      noise: 'odd',
    });
    const job = jobOf([begun(), row], stripId);
    expect(baselineAt(job, 'pressure')).toMatchObject([{ at: '1200 1/min', value: 1.4 }]);
    expect(job.baseline.readings.map((r) => r.name)).toEqual(['speed', 'pressure', 'noise']);
    const stripped = jobOf(pumpStrip, stripId).foundPositions;
    expect(stripped.map(positionWords)).toEqual(['open, 6 turns', 'open, 4 turns', 'plugged in']);
  });
});
