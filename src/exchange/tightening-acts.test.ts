// Files of results become acts, all or none; what was made becomes a file that says the same.

import { expect, test } from 'vitest';
import { mayRecord } from '../record/closing.ts';
import { chain, fixturePack, jobDraft, jobId, wholeJob } from '../record/fixture.ts';
import { fold } from '../record/fold.ts';
import type { Act, Draft } from '../record/types.ts';
import { resultsOf, takeResults } from './tightening-acts.ts';
import { readResults, writeResult } from './tightening-result.ts';

const VALUE = {
  id: 'bolts',
  name: 'Bolts',
  shown: '35.4 lbf.ft',
  origin: 'issued for this joint',
  issue: '1',
  date: '2026-01-01',
  authority: 'Ada',
  threadCondition: 'oiled',
  was: null,
  source: null,
} as const;

const pack = fixturePack((p) => ({
  ...p,
  steps: p.steps.map((s) =>
    s.verb === 'made' && s.round !== 'hand' ? { ...s, values: [VALUE] } : s,
  ),
}));
const drafts = wholeJob(pack);
const at = drafts.findIndex((d) => d.kind === 'made' && d.body.round === '100 %');
/** The suction flange has two rounds behind it, and its last before it. */
const before = chain(drafts.slice(0, at));
const HASH = 'a'.repeat(64);

const jobOf = (acts: readonly Act[]) => {
  const job = fold({ acts, packs: [pack] }).jobs[jobId];
  if (job === undefined) throw new Error('no job');
  return job;
};
const bolt = (hole: string, judged: 'tight' | 'not tight' | 'not judged' = 'tight', nm = 48.2) =>
  writeResult({
    id: `r-${hole}`,
    at: '2026-03-14T09:00:00Z',
    name: `bolt ${hole}`,
    joint: 'suction-flange',
    hole,
    tool: 'tw-02',
    judged,
    torque: { value: nm, unit: 'N.m' },
    target: { value: 48, unit: 'N.m' },
  });
const take = (raw: unknown, acts = before) =>
  takeResults(jobOf(acts), pack, { hash: HASH, raw }, 'Ada');
const taken = (raw: unknown, acts = before): readonly Draft[] => {
  const answer = take(raw, acts);
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer.drafts;
};
const refused = (raw: unknown, acts = before) => {
  const answer = take(raw, acts);
  return answer.ok ? [] : answer.problems.map((p) => [p.path, p.why]);
};

test('each bolt is one act at the last round: figure, tool, the hash of the file', () => {
  const said = taken(['1', '2', '3', '4'].map((hole) => bolt(hole)));
  expect(said).toHaveLength(4);
  expect(said[1]?.body).toMatchObject({
    thing: 'joint/suction-flange',
    round: '100 %',
    holes: ['2'],
    value: 48.2,
    unit: 'N.m',
    tool: 'tw-02',
    file: HASH,
  });
  let acts = before;
  for (const draft of said) {
    expect(mayRecord(fold({ acts, packs: [pack] }), jobId, draft, [pack])).toBeNull();
    acts = [...acts, ...chain([draft], 'phone-a', acts)];
  }
  const joint = jobOf(acts).entries.find((e) => e.thing === 'joint/suction-flange');
  expect(joint?.open).toBe(false);
});

test('not tight is a finding at its hole, not judged a note; neither ticks a bolt', () => {
  const said = taken([bolt('1', 'not tight', 31.5), bolt('2', 'not judged')]);
  expect(said.map(({ kind }) => kind)).toEqual(['found', 'note']);
  expect(said[0]?.body).toEqual({
    thing: 'joint/suction-flange',
    what: 'Not tight: hole 1, 31.5 N·m',
    hole: '1',
  });
  const after = jobOf([...before, ...chain(said, 'phone-a', before)]);
  expect(after.findings.at(-1)).toMatchObject({ kind: 'found', needsDecision: true });
  expect(after.bolts[0]).toMatchObject({ hole: '1', stands: true });
});

test('one wrong result and nothing is taken of the file; every wrong one is told', () => {
  const other = (joint: string, hole: string) =>
    JSON.parse(
      JSON.stringify(bolt(hole)).replace('joint/suction-flange', `joint/${joint}`),
    ) as unknown;
  const entities = 'ResultMetaData/AssociatedEntities';
  expect(refused([bolt('1'), other('nowhere', '1'), bolt('9'), other('guard', '1')])).toEqual([
    [`1/${entities}`, 'no joint of this job has that name'],
    [`2/${entities}`, 'suction-flange joint has no such hole'],
  ]);
  expect(refused([bolt('1'), bolt('1')])).toEqual([
    [`1/${entities}`, 'result 0 speaks of the same bolt'],
  ]);
  expect(refused([])).toEqual([['', 'nothing stands in it']]);
  expect(refused({ some: 'thing' })[0]?.[0]).toBe('ResultMetaData');
});

test('a hole already reported and a joint that is made up are told: nothing twice', () => {
  const ticked = { thing: 'joint/suction-flange', round: '100 %', holes: ['2'] };
  const some = [...before, ...chain([jobDraft('made', ticked)], 'phone-a', before)];
  expect(refused(bolt('2'), some)[0]?.[1]).toContain('was reported at "100 %" already');
  expect(refused(bolt('1'), some)).toEqual([]);
  expect(refused(bolt('1'), chain(drafts.slice(0, -1)))[0]?.[1]).toContain('made up already');
  const start = chain(drafts.slice(0, 1));
  expect(refused(bolt('1'), start)[0]?.[1]).toContain('not undone');
});

test('the record written out: what was measured, or what the wrench was set to', () => {
  const said = taken(['1', '2', '3', '4'].map((hole) => bolt(hole)));
  const acts = [...before, ...chain(said, 'phone-a', before)];
  const out = resultsOf(jobOf(acts), pack, acts);
  const read = readResults(JSON.parse(JSON.stringify(out)));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const own = read.results.filter((r) => r.joint === 'suction-flange');
  expect(own.map((r) => [r.hole, r.judged, r.torqueNm, r.tool])).toEqual(
    ['1', '2', '3', '4'].map((hole) => [hole, 'tight', 48.2, 'tw-02']),
  );
  expect(JSON.stringify(out)).not.toContain('not measured');
  const whole = chain(drafts.slice(0, -1));
  const set = resultsOf(jobOf(whole), pack, whole);
  expect(JSON.stringify(set)).toContain('Set torque, not measured');
  const back = readResults(JSON.parse(JSON.stringify(set)));
  const torque = back.ok ? back.results[0]?.torqueNm : 0;
  expect(torque).toBeCloseTo(35.4 * 1.3558179483, 6);
});
