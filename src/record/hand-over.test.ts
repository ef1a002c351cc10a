// Handing over the watch and "done to here": what is told, not seen, and never goes along.

import { describe, expect, test } from 'vitest';
import { mayRecord } from './closing.ts';
import { doneToHere, neverTogether } from './done-to-here.ts';
import { chain, fixturePack, jobDraft, jobId, startDraft, wholeJob } from './fixture.ts';
import { fold } from './fold.ts';
import { handOver } from './hand-over.ts';
import { pumpStrip, stripDraft, stripId } from './strip-fixture.ts';
import type { Act, Draft } from './types.ts';

const pack = fixturePack();
const packs = [pack];
const drafts = wholeJob(pack);
const stateOf = (acts: readonly Act[]) => fold({ acts, packs });
const then = (base: readonly Act[], ...more: Draft[]) => [...base, ...chain(more, 'phone-b', base)];
const upTo = (id: string): Act[] =>
  chain(drafts.slice(0, pack.steps.findIndex((s) => s.id === id) + 1));

describe('handing over the watch', () => {
  const half = upTo('made joint/mounting 100 %');
  const ticks = jobDraft('made', { thing: 'joint/mounting', round: '100 %', holes: ['1', '2'] });
  const given = then(half, ticks, jobDraft('handed-over', { to: 'Ben' }));

  test('tells what is open and where, what is put in, what is not tight, what is next', () => {
    const told = handOver(stateOf(given), jobId, pack);
    expect(told.open.map((o) => o.thing)).toEqual(
      stateOf(given)
        .jobs[jobId]?.entries.filter((e) => e.open)
        .map((e) => e.thing),
    );
    expect(told.notTight).toContainEqual(expect.stringMatching(/mounting.*"100 %", bolts 1 2$/));
    expect(told.notTight).toContainEqual(expect.stringMatching(/drive.*nothing tightened$/));
    expect(told.isolation).toBe('proved');
    expect(told.next.length).toBeGreaterThan(0);
    expect(told.lines.join('\n')).toMatch(/Handed over by Ada to Ben/);
    const early = upTo('moved-off part/pump');
    expect(handOver(stateOf(early), jobId, pack).temporary).toEqual([
      'Blank (number 1) in (suction pipe)',
    ]);
  });

  test('what the relief did not tap stays "not seen"', () => {
    const tap = jobDraft('seen-at-machine', { thing: 'joint/mounting' }, 'Ben');
    const seen = then(given, tap);
    const told = handOver(stateOf(seen), jobId, pack);
    expect(told.notSeen).not.toContain('joint/mounting');
    expect(told.notSeen).toHaveLength(told.open.length - 1);
    expect(told.lines.join('\n')).toMatch(/mounting.*: seen by Ben/);
    expect(told.lines.join('\n')).toMatch(/: not seen/);
    expect(stateOf(seen).jobs[jobId]?.handedOver).toMatchObject({ to: 'Ben', by: 'Ada' });
  });

  test('a look made without knowing of it does not count; handed over again, all anew', () => {
    const tap = jobDraft('seen-at-machine', { thing: 'joint/mounting' }, 'Ben');
    const apart = [...given, ...chain([tap], 'phone-c', half)];
    expect(handOver(stateOf(apart), jobId, pack).notSeen).toContain('joint/mounting');
    const again = then(then(given, tap), jobDraft('handed-over', { to: 'Cleo' }, 'Ben'));
    expect(handOver(stateOf(again), jobId, pack).notSeen).toContain('joint/mounting');
  });

  test('only what was handed over can be tapped', () => {
    const tap = (thing: string) => jobDraft('seen-at-machine', { thing }, 'Ben');
    const asked = (acts: readonly Act[], draft: Draft) =>
      mayRecord(stateOf(acts), jobId, draft, packs);
    expect(asked(half, tap('joint/mounting'))?.why).toMatch(/nothing was handed over/);
    expect(asked(given, tap('joint/nowhere'))?.why).toMatch(/not on the list/);
    expect(asked(given, tap('joint/mounting'))).toBeNull();
  });

  test('without a pack: the list and what is next come from what was seen', () => {
    const acts = chain([...pumpStrip, stripDraft('handed-over', { to: 'Ben' })]);
    const told = handOver(stateOf(acts), stripId, null);
    expect(told.temporary).toEqual(['Wooden plug in (inlet pipe)']);
    expect(told.next.slice(0, 2)).toEqual([
      'Sea-water pump: as found not said.',
      'Sea-water pump: take out 1 old seal.',
    ]);
    expect(told.notSeen).toHaveLength(told.open.length);
  });
});

describe('done to here', () => {
  const last = pack.steps.at(-1)?.id ?? '';
  const never = ['shut', 'tagged', 'drain-opened', 'proved-dead', 'restored', 'untagged', 'proof'];

  test('from the start it covers nothing: the isolation comes first', () => {
    const run = doneToHere(stateOf(chain([startDraft(pack)])), jobId, pack, last);
    expect(run.steps).toEqual([]);
    expect(run.stopsAt).toMatchObject({ step: { verb: 'shut' }, why: /isolates/ });
  });

  test('a run of undoing goes together and may be recorded', () => {
    const acts = upTo('undone joint/suction-flange');
    const run = doneToHere(stateOf(acts), jobId, pack, 'item-out item/impeller');
    expect(run.steps.map((r) => r.step.id)).toEqual([
      ...pack.steps.filter((s) => s.verb === 'undone').map((s) => s.id),
      'moved-aside part/pipe',
      'put-in temp/1',
      'moved-off part/pump',
      'item-out item/impeller',
    ]);
    expect(run.stopsAt).toBeNull();
    let said = acts;
    for (const { step, body } of run.steps) {
      const draft = jobDraft(step.verb, body);
      expect(mayRecord(stateOf(said), jobId, draft, packs)).toBeNull();
      said = [...said, ...chain([draft], 'phone-a', said)];
    }
    expect(said.filter((a) => a.body.together === true)).toHaveLength(run.steps.length);
  });

  test('from everywhere to the end: never an isolation, count, proof, last round', () => {
    const reached = new Set<string>();
    for (const [i] of pack.steps.entries()) {
      const acts = chain(drafts.slice(0, i + 1));
      const run = doneToHere(stateOf(acts), jobId, pack, last);
      for (const { step } of run.steps) {
        expect(never).not.toContain(step.verb);
        expect(step.asks.map((a) => a.kind)).not.toContain('count');
        const joint = pack.facts.joints[step.thing.slice('joint/'.length)];
        const final = step.verb === 'made' && step.round === joint?.rounds.at(-1);
        expect(joint?.critical === true && final, step.id).toBe(false);
        reached.add(step.verb);
      }
    }
    expect(reached).toContain('made');
    expect(reached).toContain('undone');
  });

  test('the core refuses what was said together and may not be', () => {
    const acts = upTo('proved-dead drain/casing-drain');
    const asked = (kind: string, body: Draft['body']) =>
      mayRecord(stateOf(acts), jobId, jobDraft(kind, { ...body, together: true }), packs)?.why;
    expect(
      asked('proved-dead', { thing: 'drain/casing-drain', sawRun: true, diedAway: true }),
    ).toMatch(/cannot be entered together/);
    const proof = { thing: 'proof/running', result: 'pass' };
    expect(asked('proof', proof)).toMatch(/proof/);
    const round = (name: string) => ({ thing: 'joint/suction-flange', round: name });
    expect(asked('made', round('100 %'))).toMatch(/bolt by bolt/);
    expect(asked('made', round('hand'))).toBeUndefined();
  });

  test('a critical joint of one round is ticked by itself, its round named or not', () => {
    const { joints } = pack.facts;
    const flange = joints['suction-flange'];
    if (flange === undefined) throw new Error('no flange');
    const once = { ...flange, critical: true, rounds: ['made'] };
    const facts = { ...pack.facts, joints: { ...joints, 'suction-flange': once } };
    const thing = 'joint/suction-flange';
    for (const body of [{ thing }, { thing, round: 'made' }])
      expect(neverTogether('made', body, { ...pack, facts })).toMatch(/bolt by bolt/);
  });
});
