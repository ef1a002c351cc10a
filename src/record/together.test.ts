// Two people at once, corrections, doing again, counts and amendments: what the fold makes of them.

import { describe, expect, test } from 'vitest';
import { mayRecord } from './closing.ts';
import { chain, fixturePack, jobDraft, jobId, startDraft, wholeJob } from './fixture.ts';
import { fold } from './fold.ts';
import type { Act, ActBody, Draft, JobState } from './types.ts';

const pack = fixturePack();
const packs = [pack];
const drafts = wholeJob(pack);
const whole = chain(drafts.slice(0, -1));

function jobOf(acts: readonly Act[], known = packs): JobState {
  const job = fold({ acts, packs: known }).jobs[jobId];
  if (job === undefined) throw new Error('the job is not there');
  return job;
}

const isOpen = (acts: readonly Act[], thing: string): boolean | undefined =>
  jobOf(acts).entries.find((e) => e.thing === thing)?.open;
const kindsOf = (acts: readonly Act[]) => jobOf(acts).findings.map((f) => `${f.kind} ${f.thing}`);
const then = (base: readonly Act[], ...more: Draft[]) => [...base, ...chain(more, 'phone-a', base)];
const apart = (base: readonly Act[], a: Draft[], b: Draft[]) => [
  ...base,
  ...chain(a, 'phone-a', base),
  ...chain(b, 'phone-b', base),
];
const said = (kind: string, body: ActBody, by = 'Ada') => jobDraft(kind, body, by);
const undone = said('undone', { thing: 'joint/guard' });
const made = said('made', { thing: 'joint/guard', round: 'made' });

describe('at the same time', () => {
  const started = chain([startDraft(pack), undone]);

  test('made good while another undoes it again: it stays open, and a finding says so', () => {
    const both = apart(started, [made], [undone]);
    expect(isOpen(both, 'joint/guard')).toBe(true);
    expect(kindsOf(both)).toEqual(['at the same time joint/guard']);
  });

  test('two items put in one place: it stays open until one is corrected', () => {
    const out = then(started, said('item-out', { thing: 'item/impeller' }));
    const put = said('item-in', { thing: 'item/impeller', serial: 'A1' });
    const both = apart(out, [put], [{ ...put, by: 'Ben' }]);
    expect(isOpen(both, 'item/impeller')).toBe(true);
    expect(kindsOf(both)).toContain('at the same time item/impeller');
    const [last, before] = [both.at(-1), both.at(-2)];
    const correct = said('corrected', { of: last?.hash ?? '', why: 'Ben held the torch' });
    const settled = [...both, ...chain([correct], 'phone-c', both)];
    expect(isOpen(settled, 'item/impeller')).toBe(false);
    expect(before?.device).not.toBe(last?.device);
  });

  test('different holes of one joint are ticked by two people; the same hole is not twice', () => {
    const tick = (...holes: string[]) =>
      said('made', { thing: 'joint/guard', round: 'made', holes });
    const shared = apart(started, [tick('1'), tick('2')], [tick('3')]);
    expect(isOpen(shared, 'joint/guard')).toBe(false);
    expect(kindsOf(shared)).toEqual([]);
    const same = apart(started, [tick('1'), tick('2')], [tick('2'), tick('3')]);
    expect(isOpen(same, 'joint/guard')).toBe(true);
    expect(jobOf(same).entries.find((e) => e.kind === 'joint')?.tally).toEqual({
      made: ['1', '3'],
    });
    expect(kindsOf(same)).toEqual(['at the same time joint/guard']);
  });

  test('an act closes only what its ancestors opened', () => {
    const begun = chain([startDraft(pack)]);
    const both = apart(begun, [undone], [made]);
    expect(isOpen(both, 'joint/guard')).toBe(true);
    expect(kindsOf(both).sort()).toEqual([
      'at the same time joint/guard',
      'made good without being undone joint/guard',
    ]);
  });
});

describe('again', () => {
  test('undoing anything again reopens it, its seals and its proofs, and no other', () => {
    const again = then(whole, said('undone', { thing: 'joint/suction-flange' }));
    const open = jobOf(again)
      .entries.filter((e) => e.open)
      .map((e) => e.thing);
    expect(open).toEqual([
      'joint/suction-flange',
      'old-seal/suction-flange:gasket',
      'new-seal/suction-flange:gasket',
      'proof/static-look',
      'proof/running',
    ]);
    expect(jobOf(again).done).not.toHaveProperty(['made joint/suction-flange hand']);
    expect(jobOf(again).done).not.toHaveProperty(['proof proof/running']);
    expect(jobOf(again).stage).toBe('Work');
  });

  test('a proof that fails is owed again until it passes', () => {
    const proof = (result: string) => said('proof', { thing: 'proof/running', result });
    const failed = then(whole, proof('fail'));
    expect(isOpen(failed, 'proof/running')).toBe(true);
    expect(jobOf(failed).verdict).toBe('fail');
    expect(kindsOf(failed)).toEqual(['proof failed proof/running']);
    expect(jobOf(then(whole, proof('cannot tell'))).verdict).toBe('cannot tell');
    expect(isOpen(then(whole, proof('fail'), proof('pass')), 'proof/running')).toBe(false);
  });

  test('out of order: a finding names what should have come before', () => {
    const early = chain([startDraft(pack), said('moved-off', { thing: 'part/pump' })]);
    const [finding] = jobOf(early).findings;
    expect(finding?.kind).toBe('out of order');
    expect(finding?.what).toMatch(/moved-off part\/pump before undone joint\/mounting/);
  });

  test('a new seal over an old one, and a joint made up without its seal, are findings', () => {
    const begun = chain([startDraft(pack), said('undone', { thing: 'joint/mounting' })]);
    const over = then(begun, said('seal-in', { thing: 'seal/mounting:gasket', count: 1 }));
    expect(jobOf(over).findings[0]?.what).toMatch(/while old-seal\/mounting:gasket is open/);
    const without = then(begun, said('made', { thing: 'joint/mounting', round: 'hand' }));
    expect(jobOf(without).findings[0]?.what).toMatch(
      /while new-seal|new-seal\/mounting:gasket is open/,
    );
  });
});

describe('counts', () => {
  const begun = chain([startDraft(pack), said('undone', { thing: 'joint/mounting' })]);

  test.each<[string, string, ActBody]>([
    ['three old gaskets out of one', 'seal-out', { thing: 'seal/mounting:gasket', count: 3 }],
    ['no gasket put in', 'seal-in', { thing: 'seal/mounting:gasket', count: 0 }],
    ['a key missing', 'loose-out', { thing: 'loose/drive:key', count: 1 }],
    ['a bolt missing', 'made', { thing: 'joint/mounting', round: 'hand', count: 5 }],
    ['a hole that is not there', 'made', { thing: 'joint/mounting', round: 'hand', holes: ['7'] }],
  ])('%s: a finding that wants a decision', (_, kind, body) => {
    const findings = jobOf(then(begun, said(kind, body))).findings;
    const differs = findings.filter((f) => f.kind === 'count differs');
    expect(differs).toHaveLength(1);
    expect(differs[0]?.needsDecision).toBe(true);
  });

  test('five bolts of six do not fill the round', () => {
    const five = then(begun, said('made', { thing: 'joint/mounting', round: 'hand', count: 5 }));
    expect(jobOf(five).done).not.toHaveProperty(['made joint/mounting hand']);
    const six = then(begun, said('made', { thing: 'joint/mounting', round: 'hand', count: 6 }));
    expect(jobOf(six).done).toHaveProperty(['made joint/mounting hand']);
  });

  test('a bad answer of two is a finding', () => {
    const seen = then(begun, said('checked', { thing: 'check/faces', result: 'not good' }));
    expect(jobOf(seen).findings).toMatchObject([{ kind: 'found', needsDecision: true }]);
  });
});

describe('corrected', () => {
  const begun = chain([startDraft(pack), undone]);
  const correct = (of: Act | undefined) =>
    said('corrected', { of: of?.hash ?? '', why: 'mis-tap' });

  test('as if it had not been said; a correction of a correction restores', () => {
    const gone = then(begun, correct(begun.at(-1)));
    expect(jobOf(gone).entries).toEqual([]);
    const restored = then(gone, correct(gone.at(-1)));
    expect(isOpen(restored, 'joint/guard')).toBe(true);
    const goneAgain = then(restored, correct(restored.at(-1)));
    expect(jobOf(goneAgain).entries).toEqual([]);
  });

  test('corrected making good: its entry is open again, with the closing gone', () => {
    const closed = chain(drafts);
    const tag = closed.find((a) => a.kind === 'untagged');
    const open = then(closed, correct(tag));
    expect(isOpen(open, `${tag?.body.thing}`)).toBe(true);
    expect(jobOf(open).closed).toBeNull();
  });
});

describe('could not', () => {
  test('wants a decision until the step is done after all', () => {
    const begun = chain([startDraft(pack)]);
    const body = { thing: 'joint/guard', step: 'undone joint/guard', why: 'nut seized' };
    const not = then(begun, said('could-not', body));
    expect(jobOf(not).findings).toMatchObject([{ kind: 'could not', needsDecision: true }]);
    expect(jobOf(then(not, undone)).findings).toMatchObject([{ needsDecision: false }]);
  });

  test('used anyway lets the step count as done, and stands as a deviation', () => {
    const begun = chain([startDraft(pack)]);
    const body = { thing: 'temp/1', step: 'put-in temp/1', reason: 'no blank', limits: 'attended' };
    const job = jobOf(then(begun, said('used-anyway', body)));
    expect(job.done).toHaveProperty(['put-in temp/1']);
    expect(job.deviations).toMatchObject([{ thing: 'temp/1', by: 'Ada', limits: 'attended' }]);
  });
});

describe('amended packs', () => {
  const newer = (why: string) => fixturePack((p) => ({ ...p, boxUpNotes: [why] }));
  const [one, two] = [newer('one'), newer('two')];
  const known = [pack, one, two];
  const amend = (to: string, why: string) => said('pack-amended', { from: pack.id, to, why });
  const begun = chain([startDraft(pack), undone]);

  test('the next pack comes into force', () => {
    const job = jobOf(then(begun, amend(one.id, 'value changed')), known);
    expect(job.packInForce).toBe(one.id);
    expect(job.packs).toEqual([pack.id, one.id]);
  });

  test('two with one parent: none is in force until a person decides for one', () => {
    const both = apart(begun, [amend(one.id, 'one')], [amend(two.id, 'two')]);
    const job = jobOf(both, known);
    expect(job.packInForce).toBeNull();
    const [finding] = job.findings;
    expect(finding).toMatchObject({ kind: 'two amendments', needsDecision: true });
    const decide = (body: ActBody) =>
      said('decided', { finding: finding?.id ?? '', owner: 'Ada', what: 'the second', ...body });
    const may = (draft: Draft) =>
      mayRecord(fold({ acts: both, packs: known }), jobId, draft, known);
    expect(may(decide({}))?.why).toMatch(/which pack/);
    // The pack that both amend is no answer.
    expect(may(decide({ pack: pack.id }))?.open.toSorted()).toEqual([one.id, two.id].sort());
    expect(may(said('closed', { deviations: [] }))?.open.join()).toMatch(/not decided/);
    expect(may(decide({ pack: two.id }))).toBeNull();
    const decided = [...both, ...chain([decide({ pack: two.id })], 'phone-c', both)];
    expect(jobOf(decided, known).packInForce).toBe(two.id);
    expect(jobOf(decided, known).findings[0]?.decision).toMatchObject({ owner: 'Ada' });
  });

  test("a joint made up by the old pack's rounds stays made when the new asks for others", () => {
    const other = fixturePack((p) => {
      const guard = p.facts.joints.guard;
      if (guard === undefined) throw new Error('no guard');
      const joints = { ...p.facts.joints, guard: { ...guard, rounds: ['hand', 'full'] } };
      return { ...p, facts: { ...p.facts, joints } };
    });
    const job = jobOf(then(begun, made, amend(other.id, 'new value')), [pack, other]);
    expect(job.entries.find((e) => e.thing === 'joint/guard')?.open).toBe(false);
  });
});

test('watch, sailings, people, hours and what was done before are read from their streams', () => {
  const vessel = (kind: string, body: ActBody): Draft => ({
    stream: { kind: 'vessel', id: 'tern-rock' },
    kind,
    by: 'Ada',
    body,
  });
  const engine = (kind: string, body: ActBody): Draft => ({
    stream: { kind: 'machine', id: 'engine' },
    kind,
    by: 'Ada',
    body,
  });
  const acts = chain([
    vessel('watch-taken', { name: 'Ben' }),
    vessel('person-added', { name: 'Cleo', role: 'helper' }),
    vessel('sailing-set', { at: '2026-03-14 18:00', where: 'North pier' }),
    vessel('sailing-set', { at: '2026-03-15 07:00', where: 'South pier' }),
    engine('hours-read', { machine: 'engine', hours: 4_012, at: '2026-03-14' }),
    engine('done-before', { target: 'pump', does: 'exchange', at: '2025-01-01', hours: 1_000 }),
  ]);
  const off = { of: acts[2]?.hash ?? '' };
  const state = fold({ acts: then(acts, vessel('sailing-off', off)), packs });
  expect(state.watch?.name).toBe('Ben');
  expect(state.people).toEqual(['Cleo']);
  expect(state.sailings.map((s) => s.where)).toEqual(['South pier']);
  expect(state.machines.engine).toMatchObject({
    hours: [{ at: '2026-03-14', hours: 4_012 }],
    done: [{ target: 'pump', hours: 1_000, job: null }],
  });
});
