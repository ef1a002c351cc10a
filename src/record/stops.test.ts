// The ways round the two stops and round closing that people would try, each shown to be shut.

import { describe, expect, test } from 'vitest';
import { mayRecord } from './closing.ts';
import { chain, fixturePack, jobDraft, jobId, saying, startDraft, wholeJob } from './fixture.ts';
import { fold } from './fold.ts';
import type { Act, ActBody, Draft, Refusal } from './types.ts';

const pack = fixturePack();
const drafts = wholeJob(pack);
const indexOf = (step: string): number => pack.steps.findIndex((s) => s.id === step) + 1;
const upTo = (step: string): Draft[] => drafts.slice(0, indexOf(step));
const stateOf = (acts: readonly Act[], packs = [pack]) => fold({ acts, packs });

const asked = (said: readonly Draft[], draft: Draft, packs = [pack]): Refusal | null =>
  mayRecord(stateOf(chain(said), packs), jobId, draft, packs);

const undoWet = jobDraft('undone', { thing: 'joint/suction-flange' });

/** The same job with one act's body changed. */
const changed = (said: readonly Draft[], kind: string, thing: string, body: ActBody): Draft[] =>
  said.map((d) =>
    d.kind === kind && d.body.thing === thing ? { ...d, body: { ...d.body, ...body } } : d,
  );

describe('a wet joint', () => {
  test('of the pack can’t be taken off as a thing somebody calls dry', () => {
    for (const thing of ['joint/suction-flange', 'part/pump']) {
      const body = { thing, what: 'flange', wet: 'no' };
      expect(asked([startDraft(pack)], jobDraft('took-off', body))?.why).toMatch(/in the pack/);
    }
  });

  test('stays shut to the spanner while a closure was brought to another position', () => {
    const said = upTo('undone joint/suction-flange');
    expect(asked(said, undoWet)).toBeNull();
    const wrong = changed(said, 'shut', 'closure/sea-suction', { position: 'open' });
    expect(asked(wrong, undoWet)?.stop).toBe('isolation not proved');
    const found = stateOf(chain(wrong)).jobs[jobId]?.findings.filter((f) => f.needsDecision);
    expect(found?.map((f) => f.kind)).toContain('position differs');
  });

  test('wants a tag at every station the pack lists, not at one of them', () => {
    const two = fixturePack((p) => ({
      ...p,
      lists: {
        ...p.lists,
        closures: p.lists.closures.map((c, i) => (i === 0 ? { ...c, tags: [...c.tags, 9] } : c)),
      },
    }));
    const said = wholeJob(two).slice(0, indexOf('undone joint/suction-flange'));
    expect(asked(said, undoWet, [two])?.open.join()).toMatch(/not tagged/);
    const body = { thing: 'tag/9', closure: 'sea-suction', station: 'on deck' };
    const hung = jobDraft('tagged', body);
    const proof = drafts.find((d) => d.kind === 'proved-dead');
    if (proof === undefined) throw new Error('the fixture proves nothing');
    expect(asked([...said, hung, proof], undoWet, [two])).toBeNull();
  });

  test('stands in the way of all that comes out behind it, and of going past it', () => {
    const wet = 'undone joint/suction-flange';
    // As a plant file makes it: the pump hangs in its flange, the gasket lies behind it.
    const behind = ['moved-off part/pump', 'seal-out seal/suction-flange:gasket'];
    const hung = fixturePack((p) => ({
      ...p,
      steps: p.steps.map((s) => (behind.includes(s.id) ? { ...s, needs: [...s.needs, wet] } : s)),
    }));
    const begun = [startDraft(hung)];
    for (const id of [...behind, 'moved-aside part/pipe', 'item-out item/impeller']) {
      const step = hung.steps.find((s) => s.id === id);
      if (step === undefined) throw new Error(`no step ${id}`);
      const out = saying(hung, step);
      expect(asked(begun, out, [hung])?.stop, id).toBe('isolation not proved');
      const body = { thing: step.thing, step: id, reason: 'in a hurry', limits: 'none' };
      const way = asked(begun, jobDraft('used-anyway', body), [hung]);
      expect(way?.stop, id).toBe('isolation not proved');
      const proved = wholeJob(hung).slice(0, hung.steps.findIndex((s) => s.id === wet) + 1);
      expect(asked(proved, out, [hung]), id).toBeNull();
    }
    const dry = jobDraft('loose-out', { thing: 'loose/drive:key', count: 1 });
    expect(asked(begun, dry, [hung])).toBeNull();
  });

  test('stands in the way of giving back any closure of the list, and of its tag', () => {
    const said = drafts.slice(0, indexOf('undone joint/suction-flange') + 1);
    for (const [kind, thing] of [
      ['restored', 'closure/sea-suction'],
      ['restored', 'closure/start-switch'],
      ['untagged', 'tag/1'],
    ] as const)
      expect(asked(said, jobDraft(kind, { thing }))?.stop).toBe('isolation not proved');
  });
});

describe('a call of "clear"', () => {
  const start = jobDraft('started', { thing: 'check/first-start' });

  test('for the hand turn does not serve for the start, nor one before power came back', () => {
    const call = 'people-clear check/clear:start';
    expect(asked(drafts.slice(0, indexOf(call) + 1), start)).toBeNull();
    expect(asked(drafts.slice(0, indexOf(call)), start)?.stop).toBe('someone not clear');
    const turned = drafts.slice(0, indexOf('turned check/hand-turn') + 1);
    expect(asked(turned, start)?.stop).toBe('someone not clear');
  });

  test('can’t be passed over by "use anyway"', () => {
    for (const step of ['people-clear check/clear:start', 'started check/first-start']) {
      const body = { thing: 'job', step, reason: 'in a hurry', limits: 'none' };
      expect(asked([startDraft(pack)], jobDraft('used-anyway', body))?.stop).toBe(
        'someone not clear',
      );
    }
  });
});

describe('a job in which nothing was done', () => {
  const close = (deviations: ActBody[]) => jobDraft('closed', { deviations });

  test('is not closed without a word, and then not counted as done', () => {
    const start = startDraft(pack);
    expect(asked([start], close([]))?.open.join()).toMatch(/has not been done/);
    const deviation = { thing: 'job', reason: 'sailing brought forward', limits: 'due next week' };
    expect(asked([start], close([deviation]))).toBeNull();
    const state = stateOf(chain([start, close([deviation])]));
    expect(state.jobs[jobId]?.closed?.deviations).toBe(1);
    expect(state.machines[pack.machine.id]?.done).toEqual([]);
  });

  test('a whole job counts as done', () => {
    const state = stateOf(chain(drafts));
    expect(state.machines[pack.machine.id]?.done).toHaveLength(1);
    expect(state.jobs[jobId]?.closed?.deviations).toBe(0);
  });
});

test('a closure given back to another than its normal position wants a decision', () => {
  const wrong = changed(drafts, 'restored', 'closure/sea-suction', { position: 'somewhere' });
  const found = stateOf(chain(wrong)).jobs[jobId]?.findings ?? [];
  expect(found.filter((f) => f.kind === 'position differs' && f.needsDecision)).toHaveLength(1);
});
