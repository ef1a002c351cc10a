// The stops: wet joints before the proof, turning while not clear, closing while open.

import { describe, expect, test } from 'vitest';
import { mayRecord } from './closing.ts';
import { bodyOf, chain, fixturePack, jobDraft, jobId, startDraft, wholeJob } from './fixture.ts';
import { fold } from './fold.ts';
import { nextSteps } from './next.ts';
import { leaveOut } from './rebuild.ts';
import type { Act, ActBody, Draft, Refusal } from './types.ts';

const pack = fixturePack();
const packs = [pack];
const drafts = wholeJob(pack);
const indexOf = (step: string): number => pack.steps.findIndex((s) => s.id === step) + 1;
const upTo = (step: string): Act[] => chain(drafts.slice(0, indexOf(step)));

function asked(acts: readonly Act[], draft: Draft, known = packs): Refusal | null {
  return mayRecord(fold({ acts, packs: known }), jobId, draft, known);
}

const undoWet = jobDraft('undone', { thing: 'joint/suction-flange' });

test('every act of a whole job may be recorded in its turn', () => {
  const acts = chain(drafts);
  for (const [i, draft] of drafts.entries()) expect(asked(acts.slice(0, i), draft)).toBeNull();
});

describe('the stop "isolation not proved"', () => {
  const isolating = pack.steps.filter((s) => ['shut', 'tagged', 'proved-dead'].includes(s.verb));

  test.each(isolating.map((s) => s.id))('without %s no wet joint may be undone', (id) => {
    const acts = upTo('undone joint/suction-flange');
    expect(asked(acts, undoWet)).toBeNull();
    const left = acts.find((_, i) => i === indexOf(id));
    const refused = asked(leaveOut(acts, left?.hash ?? ''), undoWet);
    expect(refused?.stop).toBe('isolation not proved');
    expect(refused?.open.length).toBeGreaterThan(0);
  });

  test.each([
    ['nothing came', { sawRun: 'no', diedAway: 'yes' }],
    ['it went on running', { sawRun: 'yes', diedAway: 'no' }],
  ])('%s: that is no proof', (_, said) => {
    const proof = jobDraft('proved-dead', { thing: 'drain/casing-drain', ...said });
    const before = upTo('proved-dead drain/casing-drain');
    const acts = [...before, ...chain([proof], 'phone-a', before)];
    expect(asked(acts, undoWet)?.stop).toBe('isolation not proved');
  });

  test('a closure given back or a tag taken down ends it; shut again wants a new proof', () => {
    const acts = upTo('undone joint/suction-flange');
    const then = (...more: Draft[]) => [...acts, ...chain(more, 'phone-a', acts)];
    const back = jobDraft('restored', { thing: 'closure/sea-suction' });
    const shut = jobDraft('shut', { thing: 'closure/sea-suction' });
    const proof = jobDraft('proved-dead', {
      thing: 'drain/casing-drain',
      sawRun: true,
      diedAway: true,
    });
    expect(asked(then(jobDraft('untagged', { thing: 'tag/1' })), undoWet)).not.toBeNull();
    expect(asked(then(back), undoWet)).not.toBeNull();
    expect(asked(then(back, shut), undoWet)?.open.join()).toMatch(/run and die away/);
    expect(asked(then(back, shut, proof), undoWet)).toBeNull();
  });

  test('given back at the same time on another phone: not proved', () => {
    const acts = upTo('undone joint/suction-flange');
    const base = acts.slice(0, 2);
    const b = chain([jobDraft('restored', { thing: 'closure/sea-suction' })], 'phone-b', base);
    expect(asked([...acts, ...b], undoWet)?.stop).toBe('isolation not proved');
  });

  test('there is no way past: used-anyway is refused, and does not help if it stands', () => {
    const step = 'undone joint/suction-flange';
    const anyway = jobDraft('used-anyway', {
      thing: 'joint/suction-flange',
      step,
      reason: 'r',
      limits: 'l',
    });
    const acts = chain([startDraft(pack)]);
    expect(asked(acts, anyway)?.stop).toBe('isolation not proved');
    const forced = [...acts, ...chain([anyway], 'phone-a', acts)];
    expect(asked(forced, undoWet)?.stop).toBe('isolation not proved');
    const state = fold({ acts: forced, packs });
    expect(nextSteps(state, jobId, pack).map((s) => s.id)).not.toContain(step);
  });

  test('isolation not stated: refused until an amended pack states it', () => {
    const bare = fixturePack((p) => ({
      ...p,
      facts: {
        ...p.facts,
        isolation: { ...p.facts.isolation, stated: false, closures: [], proveAt: [] },
      },
    }));
    const known = [bare, pack];
    const acts = chain([
      startDraft(bare),
      ...drafts.slice(1, indexOf('undone joint/suction-flange')),
    ]);
    expect(asked(acts, undoWet, known)?.open.join()).toMatch(/not stated/);
    const amend = jobDraft('pack-amended', {
      from: bare.id,
      to: pack.id,
      why: 'closures typed by Ada',
    });
    expect(asked(acts, amend, known)).toBeNull();
    expect(asked([...acts, ...chain([amend], 'phone-a', acts)], undoWet, known)).toBeNull();
  });

  test('a joint that no pack knows may be wet; one that an earlier pack called wet is wet', () => {
    const unknown = jobDraft('undone', { thing: 'joint/somewhere' });
    expect(asked(chain([startDraft(pack)]), unknown)?.why).toMatch(/in no pack of this job/);
    expect(asked(upTo('undone joint/suction-flange'), unknown)).toBeNull();
    const { 'suction-flange': _gone, ...joints } = pack.facts.joints;
    const later = fixturePack((p) => ({ ...p, facts: { ...p.facts, joints } }));
    const amend = jobDraft('pack-amended', { from: pack.id, to: later.id, why: 'replanned' });
    const acts = chain([startDraft(pack), amend]);
    expect(asked(acts, undoWet, [pack, later])?.why).toMatch(/is wet/);
  });

  test('a dry joint needs no proof', () => {
    expect(
      asked(chain([startDraft(pack)]), jobDraft('undone', { thing: 'joint/guard' })),
    ).toBeNull();
  });

  test('undone all the same by a device that did not ask: a finding that wants a decision', () => {
    const acts = chain([startDraft(pack), undoWet]);
    const [finding] = fold({ acts, packs }).jobs[jobId]?.findings ?? [];
    expect(finding).toMatchObject({ kind: 'out of order', needsDecision: true });
  });
});

describe('the stop "someone not clear"', () => {
  const start = jobDraft('started', { thing: 'check/first-start' });
  const turn = jobDraft('turned', { thing: 'check/hand-turn' });

  test('refused until everyone is called clear, and again after anything is opened', () => {
    const before = upTo('people-clear check/clear:turn');
    expect(asked(before, turn)?.stop).toBe('someone not clear');
    const clear = [
      ...before,
      ...chain([jobDraft('people-clear', { thing: 'check/clear:turn' })], 'phone-a', before),
    ];
    expect(asked(clear, turn)).toBeNull();
    const opened = [
      ...clear,
      ...chain([jobDraft('undone', { thing: 'joint/guard' })], 'phone-a', clear),
    ];
    expect(asked(opened, turn)?.stop).toBe('someone not clear');
    expect(asked(opened, start)?.stop).toBe('someone not clear');
    const apart = [
      ...clear,
      ...chain([jobDraft('undone', { thing: 'joint/guard' })], 'phone-b', before),
    ];
    expect(asked(apart, start)?.stop).toBe('someone not clear');
  });

  test('there is no way past', () => {
    const acts = chain([startDraft(pack)]);
    const body = {
      thing: 'check/first-start',
      step: 'started check/first-start',
      reason: 'r',
      limits: 'l',
    };
    expect(asked(acts, jobDraft('used-anyway', body))?.stop).toBe('someone not clear');
  });
});

describe('closing', () => {
  const close = (deviations: ActBody[] = []) => jobDraft('closed', { deviations });
  const acts = chain(drafts.slice(0, -1));
  const then = (...more: Draft[]) => [...acts, ...chain(more, 'phone-a', acts)];

  test('refused with the list while anything is open; closed with a deviation by name', () => {
    const open = then(jobDraft('undone', { thing: 'joint/guard' }));
    const refused = asked(open, close());
    expect(refused?.stop).toBe('not closed');
    expect(refused?.open.join('\n')).toMatch(/joint\/guard: guard joint: 3 bolts off/);
    expect(refused?.open).toHaveLength(2);
    const stated = ['joint/guard', 'proof/running'].map((thing) => ({
      thing,
      reason: 'r',
      limits: 'l',
    }));
    expect(asked(open, close(stated.slice(0, 1)))?.open).toHaveLength(1);
    expect(asked(open, close(stated))).toBeNull();
    const closed = [...open, ...chain([close(stated)], 'phone-a', open)];
    const job = fold({ acts: closed, packs }).jobs[jobId];
    expect(job?.closed).toMatchObject({ by: 'Ada', deviations: 2 });
    expect(job?.deviations.map((d) => d.thing)).toEqual(['joint/guard', 'proof/running']);
    expect(job?.openCount).toBe(2);
    expect(asked(acts, close(stated))?.open.join()).toMatch(/not open/);
  });

  test('refused while a finding that a person raised stands undecided', () => {
    const found = then(jobDraft('found', { thing: 'part/pump', what: 'crack in the foot' }));
    const finding = fold({ acts: found, packs }).jobs[jobId]?.findings[0];
    expect(asked(found, close())?.open.join()).toMatch(/crack in the foot \(not decided\)/);
    const decided = jobDraft('decided', {
      finding: finding?.id ?? '',
      owner: 'Ben',
      what: 'renew at dock',
    });
    expect(asked(found, decided)).toBeNull();
    expect(asked([...found, ...chain([decided], 'phone-a', found)], close())).toBeNull();
  });

  test('refused while an act waits, or two records stand side by side', () => {
    const [late, later] = chain(
      [jobDraft('note', { text: 'a' }), jobDraft('note', { text: 'b' })],
      'phone-b',
      acts,
    );
    if (late === undefined || later === undefined) throw new Error();
    expect(asked([...acts, later], close())?.open.join()).toMatch(/waits/);
    const mine = then(jobDraft('note', { text: 'mine' }));
    expect(asked([...mine, late], close())?.open.join()).toMatch(/side by side/);
  });

  test('a closed job takes no more work, and the closing can be corrected', () => {
    const closed = chain(drafts);
    expect(asked(closed, jobDraft('undone', { thing: 'joint/guard' }))?.why).toMatch(
      /was closed by Ada/,
    );
    expect(asked(closed, close())?.why).toMatch(/was closed by Ada/);
    const correct = jobDraft('corrected', { of: closed.at(-1)?.hash ?? '', why: 'too early' });
    expect(asked(closed, correct)).toBeNull();
    const again = [...closed, ...chain([correct], 'phone-a', closed)];
    expect(fold({ acts: again, packs }).jobs[jobId]?.closed).toBeNull();
  });

  test('undone elsewhere at the time of closing: the job is not closed, and says why', () => {
    const closed = chain(drafts);
    const b = chain([jobDraft('undone', { thing: 'joint/guard' })], 'phone-b', closed.slice(0, -1));
    const job = fold({ acts: [...closed, ...b], packs }).jobs[jobId];
    expect(job?.closed).toBeNull();
    expect(job?.findings.map((f) => f.kind)).toContain('after closing');
  });

  test('follow-ups and "passed up to" pass to the machine with an owner', () => {
    const result = { thing: 'proof/running', result: 'passed up to', upTo: '900 rpm' };
    const some = [
      ...drafts.slice(0, -2),
      jobDraft('proof', result),
      jobDraft('closed', { deviations: [] }),
    ];
    const state = fold({ acts: chain(some), packs });
    expect(state.jobs[jobId]?.verdict).toBe('passed up to 900 rpm');
    expect(state.machines.engine?.openLimits).toMatchObject([
      { what: 'Running look: passed up to 900 rpm, not proved above', owner: 'Ada' },
    ]);
    expect(state.machines.engine?.followUps).toMatchObject([
      { id: `${jobId}/look-1-h`, what: '1 h: Look for leaks', owner: 'Ada', doneBy: null },
    ]);
    expect(state.machines.engine?.done).toMatchObject([
      { target: 'pump', does: 'exchange', job: jobId },
    ]);
  });
});

describe('starting', () => {
  const decision = {
    id: 'no value joint/guard',
    question: 'Which torque?',
    why: 'none',
    settled: null,
  };
  const unsettled = fixturePack((p) => ({ ...p, decisions: [decision] }));

  test('unsettled decisions refuse the start; settled by name, or used anyway, they do not', () => {
    const known = [unsettled];
    expect(asked([], startDraft(unsettled), known)?.open).toEqual([
      'no value joint/guard: Which torque?',
    ]);
    const anyway = [
      { decision: decision.id, reason: 'sailing at noon', limits: 'by hand, looked at hourly' },
    ];
    const start = startDraft(unsettled, { anyway });
    expect(asked([], start, known)).toBeNull();
    const job = fold({ acts: chain([start]), packs: known }).jobs[jobId];
    expect(job?.deviations).toMatchObject([
      { thing: decision.id, by: 'Ada', limits: anyway[0]?.limits },
    ]);
  });

  test('not twice, not with a pack that is not here, not corrected away', () => {
    const acts = chain([startDraft(pack)]);
    expect(asked(acts, startDraft(pack))?.why).toMatch(/already begun/);
    expect(asked([], startDraft(unsettled))?.why).toMatch(/is not here/);
    const away = jobDraft('corrected', { of: acts[0]?.hash ?? '', why: 'mistake' });
    expect(asked(acts, away)?.why).toMatch(/closed, not corrected/);
    expect(
      fold({ acts: [...acts, ...chain([away], 'phone-a', acts)], packs }).jobs[jobId],
    ).toBeDefined();
  });
});

test.each([
  ['no name', { ...undoWet, by: ' ' }, /a name is missing/],
  ['no such kind', jobDraft('sung', {}), /no kind of act/],
  [
    'another stream',
    { ...undoWet, stream: { kind: 'vessel', id: 'x' } } as Draft,
    /belongs to a job/,
  ],
  ['a thing of another sort', jobDraft('undone', { thing: 'part/pump' }), /thing/],
  ['passed up to nothing', jobDraft('proof', { thing: 'proof/x', result: 'passed up to' }), /upTo/],
  ['no job', jobDraft('found', { thing: 'job', what: 'x' }), /there is no job/],
])('bad act: %s', (_, draft, why) => {
  const refused = asked([], draft);
  expect(refused?.stop).toBe('bad act');
  expect(refused?.why).toMatch(why);
});

test('a round must be named where there are several, and be one of them', () => {
  const acts = upTo('made joint/mounting hand');
  const made = (body: ActBody) =>
    asked(acts, jobDraft('made', { thing: 'joint/mounting', ...body }));
  expect(made({})?.why).toMatch(/which round/);
  expect(made({ round: '70 %' })?.why).toMatch(/expected hand, 50 %, 100 %/);
  expect(made({ round: 'hand' })).toBeNull();
});

test('ready steps: what the machine demands comes first, wet joints wait for the proof', () => {
  let acts = chain([startDraft(pack)]);
  const ready = () => nextSteps(fold({ acts, packs }), jobId, pack);
  expect(ready().map((s) => s.id)).not.toContain('tagged tag/1');
  expect(ready().map((s) => s.id)).not.toContain('undone joint/suction-flange');
  const seen: string[] = [];
  for (let step = ready()[0]; step !== undefined; step = ready()[0]) {
    seen.push(step.id);
    expect(asked(acts, jobDraft(step.verb, bodyOf(step)))).toBeNull();
    acts = [...acts, ...chain([jobDraft(step.verb, bodyOf(step))], 'phone-a', acts)];
  }
  expect([...seen].sort()).toEqual(pack.steps.map((s) => s.id).sort());
});
