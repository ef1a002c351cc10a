// A joint that is tight: what may be done to it and what that opens; how tight each bolt is.

import { describe, expect, test } from 'vitest';
import type { Pack, RecheckFacts, ShownValue } from '../pack/types.ts';
import { BOLT_FINDINGS, boltFound, jointsTight } from './bolts.ts';
import { mayRecord } from './closing.ts';
import { bodyOf, chain, fixturePack, jobDraft, jobId, startDraft, wholeJob } from './fixture.ts';
import { fold } from './fold.ts';
import { pumpStrip, stripId } from './strip-fixture.ts';
import type { Act, ActBody, Draft } from './types.ts';

const value: ShownValue = {
  id: 'nuts',
  name: 'Nuts',
  shown: '48 N.m',
  origin: 'issued for this joint',
  issue: '1',
  date: '2026-01-01',
  authority: 'Ada',
  threadCondition: 'oiled',
  was: null,
  source: null,
};

const LOCKED = 'it is threadlocked: turned, it is loose; undo it and make it up anew';

/** Bolts 1 to 3 may be checked, the fourth is threadlocked; the gasket may be re-tightened. */
const recheck = (retighten: boolean): RecheckFacts => ({
  check: [
    { fastener: 'bolts', what: 'bolts', holes: ['1', '2', '3'], value, why: [] },
    { fastener: 'locked', what: 'bolts', holes: ['4'], value: null, why: [LOCKED] },
  ],
  retighten: retighten
    ? { value, when: 'cold', why: [] }
    : { value: null, when: null, why: ['no value is issued for re-tightening it'] },
});

const pack: Pack = fixturePack((p) => ({
  ...p,
  steps: p.steps.map((s) =>
    s.verb === 'made' && s.thing === 'joint/suction-flange' && s.round !== 'hand'
      ? { ...s, values: [value] }
      : s,
  ),
  facts: {
    ...p.facts,
    isolation: { ...p.facts.isolation, starts: ['start-switch'] },
    joints: Object.fromEntries(
      Object.entries(p.facts.joints).map(([id, j]) => [
        id,
        { ...j, recheck: recheck(id === 'suction-flange') },
      ]),
    ),
  },
}));
const packs = [pack];
const drafts = wholeJob(pack);

/** The job as far as the act of this step, that one included. */
const upTo = (step: string): readonly Draft[] => {
  const at = pack.steps.findIndex((s) => s.id === step);
  if (at < 0) throw new Error(step);
  return drafts.slice(0, at + 2);
};
const MADE = 'made joint/suction-flange 100 %';
const made = upTo(pack.steps.filter((s) => s.verb === 'made').at(-1)?.id ?? '');
const ran = upTo('proof proof/running');

const asked = (said: readonly Draft[], draft: Draft) =>
  mayRecord(fold({ acts: chain(said), packs }), jobId, draft, packs);
const job = (acts: readonly Act[]) => {
  const found = fold({ acts, packs }).jobs[jobId];
  if (found === undefined) throw new Error('no job');
  return found;
};

const check = (more: ActBody = {}): Draft =>
  jobDraft('checked-tight', {
    thing: 'joint/suction-flange',
    holes: ['2'],
    value: '48 N.m',
    ...more,
  });
const YES = { cold: 'yes', noPressure: 'yes', startIsolated: 'yes' };
const again = (more: ActBody = {}): Draft =>
  jobDraft('re-tightened', { thing: 'joint/suction-flange', value: '48 N.m', ...YES, ...more });

describe('a check of a nut that is tight', () => {
  test('is taken while the isolation is proved, and its proofs are owed again', () => {
    expect(asked(made, check())).toBeNull();
    const acts = chain([...made, check()]);
    const owed = job(acts).entries.filter(
      (e) => e.kind === 'proof' && e.openedBy === acts.at(-1)?.hash,
    );
    // They stood open from the undoing on: the same entries, not new ones.
    expect(owed).toEqual([]);
    const proved = [...made, jobDraft('proof', { thing: 'proof/static-look', result: 'pass' })];
    expect(job(chain(proved)).entries.find((e) => e.thing === 'proof/static-look')?.open).toBe(
      false,
    );
    const open = job(chain([...proved, check()])).entries.filter(
      (e) => e.kind === 'proof' && e.open,
    );
    expect(open.map((e) => e.thing).sort()).toEqual(['proof/running', 'proof/static-look']);
  });

  test('on a wet joint is refused once a closure was given back: that stop has no way past', () => {
    const refusal = asked(ran, check());
    expect(refusal?.stop).toBe('isolation not proved');
    expect(refusal?.why).toContain('no way past');
    const past = jobDraft('used-anyway', {
      thing: 'joint/suction-flange',
      step: 'checked-tight joint/suction-flange',
      reason: 'sailing at six',
      limits: 'watched',
    });
    expect(asked(ran, past)?.stop).toBe('isolation not proved');
    // Said all the same by a phone that knew no better, it is a finding that wants a decision.
    const finding = job(chain([...ran, check()])).findings.at(-1);
    expect(finding).toMatchObject({ kind: 'out of order', needsDecision: true });
    const dry = check({ thing: 'joint/mounting' });
    expect(asked(ran, dry)).toBeNull();
  });

  test.each<[string, ActBody, string]>([
    ['of a threadlocked nut', { holes: ['4'] }, 'threadlocked'],
    ['of two, one of them threadlocked', { holes: ['1', '4'] }, 'threadlocked'],
    ['of a hole that is not there', { holes: ['9'] }, '9'],
    ['to another value', { value: '52 N.m' }, 'the value is 48 N.m, not 52 N.m'],
    ['to no value', { value: '' }, 'the value is 48 N.m'],
    ['of a joint nobody knows', { thing: 'joint/nowhere' }, 'knows joint/nowhere'],
  ])('%s is refused', (_, more, why) => {
    const refusal = asked(made, check(more));
    expect(refusal?.stop).toBe('bad act');
    expect(refusal?.why).toContain(why);
  });

  test('of a joint that is open is refused: it is made up, not checked', () => {
    const refusal = asked(upTo('undone joint/suction-flange'), check());
    expect(refusal?.why).toContain('is open');
  });

  test('says which holes, or it is no such act', () => {
    expect(asked(made, check({ holes: [] }))?.stop).toBe('bad act');
  });
});

describe('a value that an issue replaced', () => {
  const issued = (is: string, condition: string): Draft => ({
    stream: { kind: 'vessel', id: pack.vessel.id },
    kind: 'values-issued',
    by: 'Ada',
    body: {
      ...{ sheet: 'nuts', issue: '2', date: '2026-02-01', authority: 'Ada' },
      machines: [pack.machine.id],
      values: [{ id: 'nuts', name: 'Nuts', is, condition, why: 'it crept' }],
    },
  });

  test.each([
    ['another figure', issued('40 N.m', 'oiled')],
    ['the same figure for other threads', issued('48 N.m', 'dry')],
  ])('reaches neither act on a tight joint unnoticed: %s', (_, issue) => {
    for (const draft of [check(), again()]) {
      expect(asked(made, draft)).toBeNull();
      expect(asked([...made, issue], draft)?.stop).toBe('value superseded');
    }
  });

  test('is told at a joint that only its re-tightening names it for', () => {
    const bare: Pack = {
      ...pack,
      steps: pack.steps.map((s) => ({ ...s, values: [] })),
    };
    const state = fold({
      acts: chain([startDraft(bare), issued('40 N.m', 'oiled')]),
      packs: [bare],
    });
    const rows = state.jobs[jobId]?.superseded ?? [];
    expect(rows.map((r) => [r.thing, r.is])).toEqual([['joint/suction-flange', '40 N.m']]);
  });
});

describe('a re-tightening of a relaxed gasket', () => {
  const cold = [...made];

  test('needs cold, no pressure and start isolated: every other answer is refused', () => {
    for (const a of ['yes', 'no'])
      for (const b of ['yes', 'no'])
        for (const c of ['yes', 'no']) {
          const refusal = asked(cold, again({ cold: a, noPressure: b, startIsolated: c }));
          expect(refusal === null, `${a} ${b} ${c}`).toBe([a, b, c].every((x) => x === 'yes'));
        }
  });

  test('is refused while the record has the start closed up again, whatever a person says', () => {
    const refusal = asked(ran, again());
    expect(refusal?.why).toContain('start-switch');
    const shut = [jobDraft('shut', { thing: 'closure/start-switch', position: 'shut' })];
    expect(asked([...ran, ...shut], again())).toBeNull();
    const amiss = [jobDraft('shut', { thing: 'closure/start-switch', position: 'open' })];
    expect(asked([...ran, ...amiss], again())?.why).toContain('start-switch');
  });

  test('opens the look for leaks again and no other proof; everyone is called clear anew', () => {
    const shut = jobDraft('shut', { thing: 'closure/start-switch', position: 'shut' });
    const after = job(chain([...ran, shut, again()]));
    const open = after.entries.filter((e) => e.kind === 'proof' && e.open).map((e) => e.thing);
    expect(open).toEqual(['proof/static-look']);
    expect(after.clear).toBe(false);
  });

  test.each<[string, ActBody, string]>([
    ['where no value is issued for it', { thing: 'joint/delivery-flange' }, 'no value is issued'],
    ['of some holes only', { holes: ['1', '2'] }, 'once round'],
    ['to another value', { value: '40 N.m' }, 'not 40 N.m'],
  ])('%s is refused', (_, more, why) => {
    expect(asked(cold, again(more))?.why).toContain(why);
  });

  test('neither may be said after the closing, nor of a pack that says nothing of it', () => {
    expect(asked(drafts, again())?.stop).toBe('bad act');
    const old = fixturePack();
    const said = chain([startDraft(old)]);
    const state = fold({ acts: said, packs: [old] });
    for (const draft of [check({ thing: 'joint/mounting' }), again()])
      expect(mayRecord(state, jobId, draft, [old])?.stop).toBe('bad act');
  });
});

describe('how tight', () => {
  test('without a pack each joint has the words a person gave, never its inner name', () => {
    const strip = fold({ acts: chain(pumpStrip), packs: [] }).jobs[stripId];
    const seen = strip?.strip?.seen.map((s) => s.what) ?? [];
    const names = (strip === undefined ? [] : jointsTight(strip, [])).map((j) => j.name);
    expect(names.length).toBeGreaterThan(2);
    for (const name of names) expect(seen).toContain(name);
  });

  const words = (said: readonly Draft[], thing = 'joint/suction-flange') =>
    jointsTight(job(chain(said)), packs).find((j) => j.thing === thing);
  const last = pack.steps.find((s) => s.id === MADE);
  const before = upTo('made joint/suction-flange 50 %');
  const some = jobDraft('made', { ...(last === undefined ? {} : bodyOf(last)), holes: ['1', '3'] });

  test('not tight before the last round, then tight bolt by bolt, where a value is issued', () => {
    expect(words(before)?.word).toBe('not tight');
    expect(words(before)?.round).toBe('50 %');
    const half = words([...before, some]);
    expect(half?.word).toBe('not tight');
    expect(half?.holes.map(({ word }) => word)).toEqual([
      'tight',
      'not tight',
      'tight',
      'not tight',
    ]);
    expect(words(upTo(MADE))?.word).toBe('tight');
  });

  test('not judged where no value is issued, and where the last round is by feel', () => {
    expect(words(made, 'joint/mounting')?.word).toBe('not judged');
    expect(words(made, 'joint/guard')?.word).toBe('not judged');
  });

  test.each(BOLT_FINDINGS)('"%s" is one act and a finding that wants a decision', (what) => {
    const draft = boltFound(jobId, 'Ada', 'joint/suction-flange', what, '2');
    expect(asked(made, draft)).toBeNull();
    const after = job(chain([...made, draft]));
    const [finding] = after.findings.filter((f) => f.what === what);
    expect(finding).toMatchObject({ kind: 'found', needsDecision: true });
    const against = what !== 'Stud came out with the nut';
    expect(words([...made, draft])?.word).toBe(against ? 'not tight' : 'tight');
    expect(words([...made, draft])?.holes[0]?.word).toBe('tight');
  });

  test('a bolt that would not tighten stands until undone again, or checked', () => {
    const no = boltFound(jobId, 'Ada', 'joint/suction-flange', "Won't tighten", '2');
    expect(words([...made, no, check({ holes: ['1'] })])?.word).toBe('not tight');
    expect(words([...made, no, check({ holes: ['2'] })])?.word).toBe('tight');
    const whole = boltFound(jobId, 'Ada', 'joint/suction-flange', "Won't tighten");
    const anew = ['undone', 'hand', '50 %', '100 %'].map((round) =>
      jobDraft(round === 'undone' ? 'undone' : 'made', {
        thing: 'joint/suction-flange',
        ...(round === 'undone' ? {} : { round }),
      }),
    );
    expect(words([...made, whole])?.holes.every(({ word }) => word === 'not tight')).toBe(true);
    expect(words([...made, whole, ...anew])?.word).toBe('tight');
  });
});
