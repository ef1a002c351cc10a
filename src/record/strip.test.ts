// A machine stripped without a pack: stops, the open list, boxing up in reverse, nothing forgotten.

import { describe, expect, test } from 'vitest';
import { mayRecord } from './closing.ts';
import { chain, jobDraft } from './fixture.ts';
import { fold, stateHash } from './fold.ts';
import { kindOf } from './kinds.ts';
import { inSlots, stripProposal } from './proposal.ts';
import { leaveOut } from './rebuild.ts';
import { newThing } from './strip.ts';
import {
  begun,
  makingGood,
  pumpIsolation,
  pumpStrip,
  pumpTaking,
  randomStrip,
  stripDraft,
  stripId,
} from './strip-fixture.ts';
import type { Act, Draft, JobState, Refusal } from './types.ts';

const LONG = process.env.LONG === '1';

function jobOf(acts: readonly Act[]): JobState {
  const job = fold({ acts, packs: [] }).jobs[stripId];
  if (job === undefined) throw new Error('the job is not there');
  return job;
}

const asked = (acts: readonly Act[], draft: Draft): Refusal | null =>
  mayRecord(fold({ acts, packs: [] }), stripId, draft, []);

const openIn = (acts: readonly Act[]): readonly string[] =>
  jobOf(acts)
    .entries.filter((e) => e.open)
    .map((e) => e.thing);

const then = (base: readonly Act[], ...more: Draft[]) => [...base, ...chain(more, 'phone-a', base)];
const closing = stripDraft('closed', { deviations: [] });

describe('the pump job without a pack', () => {
  const stripped = chain(pumpStrip);
  const drafts = makingGood(stripped);
  const whole = [...stripped, ...chain(drafts, 'phone-a', stripped)];

  test('begins with vessel, machine, side and component alone', () => {
    const job = jobOf(chain([begun()]));
    expect(job).toMatchObject({
      title: 'Sea-water pump, Main engine, port',
      machine: 'main-engine-port',
      target: 'sea-water-pump',
      packs: [],
      packInForce: null,
      openCount: 0,
      stage: 'Pack',
      strip: { vessel: 'Grey Heron', component: 'Sea-water pump' },
    });
  });

  test('each of the three buttons opens its entry, in words', () => {
    const said = new Map(jobOf(stripped).entries.map((e) => [e.thing, e.what]));
    expect(said.get('part/belt-guard')).toBe('Belt guard off');
    expect(said.get('joint/belt-guard')).toBe('Belt guard: 4 bolts off');
    expect(said.get('closure/sea-inlet')).toBe('Sea inlet valve: shut, normally open');
    expect(said.get('temp/inlet-blank')).toMatch(/^Wooden plug/);
    expect(said.get('new-seal/outlet-pipe:seal')).toBe('Outlet pipe: new 1 × seal owed');
    expect(said.get('old-seal/sea-water-pump:seal')).toMatch(/not accounted for/);
    expect(said.get('proof/static-look')).toBe('Proof owed: Fill and look');
    expect([...said.keys()].filter((t) => t.startsWith('proof/'))).toHaveLength(3);
    expect(jobOf(stripped).photos).toHaveLength(4);
  });

  test('every act may be recorded in its turn, the closing last and not before', () => {
    const all = [...pumpStrip, ...drafts, closing];
    const acts = chain(all);
    for (const [i, draft] of all.entries()) expect(asked(acts.slice(0, i), draft)).toBeNull();
    expect(asked(acts.slice(0, -2), closing)?.stop).toBe('not closed');
    expect(jobOf(acts)).toMatchObject({ stage: 'Record', verdict: 'pass', openCount: 0 });
    expect(jobOf(acts).closed).not.toBeNull();
    expect(jobOf(acts).findings).toEqual([]);
  });

  test('boxed up in reverse: seal, part, bolts; water before power before the run', () => {
    const order = drafts.map((d) => `${d.kind} ${String(d.body.thing)}`);
    expect(order).toEqual([
      'as-found part/sea-water-pump',
      'seal-out seal/sea-water-pump:seal',
      'seal-in seal/sea-water-pump:seal',
      'put-back part/sea-water-pump',
      'put-back joint/sea-water-pump',
      'put-back joint/stay-clamp',
      'seal-in seal/outlet-pipe:seal',
      'put-back part/outlet-pipe',
      'put-back joint/outlet-pipe',
      'taken-away temp/inlet-blank',
      'put-back part/inlet-hose',
      'put-back joint/inlet-hose',
      'put-back part/belt-guard',
      'put-back joint/belt-guard',
      'drain-shut drain/pump-drain',
      'untagged tag/2',
      'restored closure/cooler-valve',
      'untagged tag/1',
      'restored closure/sea-inlet',
      'proof proof/static-look',
      'untagged tag/3',
      'restored closure/start-plug',
      'people-clear check/clear:start',
      'started check/first-start',
      'proof proof/running',
      'proof proof/after-stop',
    ]);
  });

  test('the list carries counts, bags, turns and pictures', () => {
    const rows = stripProposal(fold({ acts: stripped, packs: [] }), stripId);
    const texts = rows.map((r) => r.text);
    expect(texts).toContain('Sea-water pump: 6 studs and nuts (bag 4) in and tightened.');
    expect(texts).toContain('Sea inlet valve: back to open, 6 turns.');
    expect(texts).toContain('Take down: tag 3 on Starter plug.');
    expect(rows.find((r) => r.thing === 'part/inlet-hose')?.photos).toHaveLength(1);
    expect(rows.every((r) => r.openedBy.length === 64)).toBe(true);
    const wet = rows.find((r) => r.thing === 'closure/sea-inlet');
    expect(wet?.cautions.map((c) => c.hazard)).toEqual(['flooding']);
  });

  test('five bolts of six: the joint stays open and a finding wants a decision', () => {
    const at = drafts.findIndex((d) => d.body.thing === 'joint/sea-water-pump');
    const five = stripDraft('put-back', { thing: 'joint/sea-water-pump', count: 5 });
    const acts = then(stripped, ...drafts.slice(0, at), five);
    expect(openIn(acts)).toContain('joint/sea-water-pump');
    expect(jobOf(acts).findings).toMatchObject([{ kind: 'count differs', needsDecision: true }]);
  });

  test('a bolt may be ticked alone', () => {
    const tick = (...holes: string[]) => stripDraft('made', { thing: 'joint/belt-guard', holes });
    const base = chain([begun(), ...pumpTaking.slice(0, 1)]);
    expect(openIn(then(base, tick('1', '2'), tick('3')))).toContain('joint/belt-guard');
    expect(openIn(then(base, tick('1', '2'), tick('3'), tick('4')))).not.toContain(
      'joint/belt-guard',
    );
  });

  test('taken off again after it was made good: open again, with its proofs', () => {
    const again = then(whole, ...pumpTaking.slice(0, 1));
    expect(openIn(again)).toEqual([
      'part/belt-guard',
      'joint/belt-guard',
      'proof/running',
      'proof/after-stop',
    ]);
  });

  test('a thing waits for what came off after it, also past a valve shut in between', () => {
    const [cover, hose] = [pumpTaking[0] ?? begun(), pumpTaking[4] ?? begun()];
    const valve = pumpIsolation[2] ?? begun();
    const rows = stripProposal(
      fold({ acts: chain([begun(), cover, valve, hose]), packs: [] }),
      stripId,
    );
    expect(rows.find((r) => r.thing === 'part/belt-guard')?.waitsFor).toEqual(['joint/stay-clamp']);
  });

  test('an order set by a person holds, and loses nothing', () => {
    const order = ['part/belt-guard', 'part/outlet-pipe'];
    const set = then(stripped, stripDraft('order-set', { order }));
    const rows = (acts: readonly Act[]) =>
      stripProposal(fold({ acts, packs: [] }), stripId).map((r) => r.thing);
    expect([...rows(set)].sort()).toEqual([...rows(stripped)].sort());
    expect(rows(set).indexOf('part/belt-guard')).toBeLessThan(
      rows(set).indexOf('part/outlet-pipe'),
    );
    expect(rows(set).slice(-3)).toEqual(rows(stripped).slice(-3));
    const first = stripProposal(fold({ acts: set, packs: [] }), stripId);
    expect(first.find((r) => r.thing === 'part/belt-guard')?.waitsFor).not.toContain(
      'part/outlet-pipe',
    );
    expect(inSlots(['a', 'b', 'c', 'd'], ['d', 'x', 'a'])).toEqual(['d', 'b', 'c', 'a']);
  });
});

describe('the two stops hold without a pack', () => {
  test('a valve and its tag stay while what may hold liquid is off; a plug does not', () => {
    const stripped = chain(pumpStrip);
    const back = (kind: string, thing: string) => asked(stripped, stripDraft(kind, { thing }));
    for (const thing of ['closure/sea-inlet', 'closure/cooler-valve']) {
      const refusal = back('restored', thing);
      expect(refusal?.stop, thing).toBe('isolation not proved');
      expect(refusal?.open.join()).toContain('Sea-water pump');
    }
    expect(back('untagged', 'tag/1')?.stop).toBe('isolation not proved');
    expect(back('restored', 'closure/start-plug')).toBeNull();
    const dry = chain([begun(), ...pumpIsolation, ...pumpTaking.slice(0, 1)]);
    expect(asked(dry, stripDraft('restored', { thing: 'closure/sea-inlet' }))).toBeNull();
    let acts: readonly Act[] = stripped;
    for (const draft of makingGood(stripped)) {
      expect(asked(acts, draft), JSON.stringify(draft)).toBeNull();
      acts = then(acts, draft);
    }
  });

  const hose = pumpTaking[1] ?? begun();
  const guard = pumpTaking[0] ?? begun();
  const unknown = pumpTaking.at(-1) ?? begun();

  test.each(['shut-or-unplugged', 'tagged', 'proved-dead'])(
    'no %s: nothing wet comes off',
    (kind) => {
      const acts = chain([begun(), ...pumpIsolation.filter((d) => d.kind !== kind)]);
      for (const wet of [hose, unknown])
        expect(asked(acts, wet)?.stop).toBe('isolation not proved');
      expect(asked(acts, guard)).toBeNull();
    },
  );

  test('shut, tagged and seen to die away: it may come off', () => {
    const acts = chain([begun(), ...pumpIsolation]);
    expect(asked(acts, hose)).toBeNull();
    expect(jobOf(acts).isolation).toMatchObject({
      shut: ['sea-inlet', 'cooler-valve'],
      provedAt: ['pump-drain'],
    });
  });

  test('a plug pulled keeps no water back', () => {
    const dry = pumpIsolation.filter(
      (d) =>
        !['closure/sea-inlet', 'closure/cooler-valve', 'tag/1', 'tag/2'].includes(
          String(d.body.thing),
        ),
    );
    expect(asked(chain([begun(), ...dry]), hose)?.open.join()).toMatch(/no valve is shut/);
  });

  test('nothing came, or a valve shut since or given back: proved no longer', () => {
    const acts = chain([begun(), ...pumpIsolation]);
    const back = stripDraft('restored', { thing: 'closure/cooler-valve', position: 'open' });
    expect(asked(then(acts, back), hose)?.stop).toBe('isolation not proved');
    const proof = pumpIsolation.at(-2) ?? begun();
    expect(asked(then(acts, back, proof), hose)).toBeNull();
    const another = stripDraft('shut-or-unplugged', {
      thing: 'closure/third',
      what: 'Third valve',
      kind: 'valve',
      found: 'open',
    });
    const tag = stripDraft('tagged', { thing: 'tag/9', closure: 'third' });
    expect(asked(then(acts, another, tag), hose)?.open.join()).toMatch(/run and die away/);
    const nothing = stripDraft('proved-dead', {
      thing: 'drain/pump-drain',
      sawRun: 'no',
      diedAway: 'yes',
    });
    const none = chain([begun(), ...pumpIsolation.slice(0, -2), nothing]);
    expect(asked(none, hose)?.stop).toBe('isolation not proved');
  });

  test('a valve given back on another phone at the same time: not proved, and a finding', () => {
    const base = chain([begun(), ...pumpIsolation]);
    const back = stripDraft('restored', { thing: 'closure/sea-inlet', position: 'open' }, 'Ben');
    const both = [...base, ...chain([back], 'phone-b', base), ...chain([hose], 'phone-a', base)];
    expect(jobOf(both).isolation.proved).toBe(false);
    // What came off before anyone knew of it is wet and stands on the open list.
    expect(openIn(both)).toContain('part/inlet-hose');
    const late = then(chain([begun()]), hose);
    expect(jobOf(late).findings).toMatchObject([{ kind: 'out of order', needsDecision: true }]);
  });

  test('undone again: a joint said to be dry may, a wet one not before the proof', () => {
    const acts = chain([begun(), guard]);
    expect(asked(acts, stripDraft('undone', { thing: 'joint/belt-guard' }))).toBeNull();
    expect(asked(acts, stripDraft('undone', { thing: 'joint/other' }))?.stop).toBe(
      'isolation not proved',
    );
  });

  test('no other word takes it off, and no name goes past the stop', () => {
    const acts = chain([begun(), guard]);
    const moved = (thing: string) => stripDraft('moved-off', { thing });
    expect(asked(acts, moved('part/inlet-hose'))?.stop).toBe('isolation not proved');
    expect(asked(acts, moved('part/belt-guard'))).toBeNull();
    for (const step of ['took-off part/inlet-hose', 'undone joint/inlet-hose']) {
      const body = { thing: 'part/inlet-hose', step, reason: 'hurry', limits: 'bucket' };
      expect(asked(acts, stripDraft('used-anyway', body))?.stop).toBe('isolation not proved');
    }
  });

  test('starting is refused while someone may not be clear', () => {
    const start = stripDraft('started', { thing: 'check/first-start' });
    expect(asked(chain([begun(), guard]), start)?.stop).toBe('someone not clear');
  });
});

test('a job begins once and is never corrected away', () => {
  const acts = chain([begun()]);
  expect(asked(acts, begun())?.why).toMatch(/already begun/);
  const away = stripDraft('corrected', { of: acts[0]?.hash ?? '', why: 'mis-tap' });
  expect(asked(acts, away)?.stop).toBe('bad act');
  expect(jobOf(then(acts, away)).title).toBe('Sea-water pump, Main engine, port');
});

test('a thing found besides a pack opens its entry too', () => {
  const draft = jobDraft('took-off', { thing: 'part/lamp', what: 'Hand lamp', wet: 'no' });
  expect(
    kindOf('took-off')
      ?.opens(draft.body, null)
      .map((o) => o.thing),
  ).toEqual(['part/lamp', 'proof/running', 'proof/after-stop']);
});

test('new things get names of their own, on each phone', () => {
  const job = jobOf(chain(pumpStrip));
  expect(newThing(job, 'part', 'Belt guard')).toBe('part/belt-guard-2');
  expect(newThing(job, 'joint', 'Belt guard')).toBe('joint/belt-guard-2');
  expect(newThing(job, 'part', 'Belt guard', 'b7')).toBe('part/belt-guard-b7');
  expect(newThing(job, 'temp', '***')).toBe('temp/thing');
});

describe('strips by chance, seeds from 1', () => {
  const seeds = Array.from({ length: LONG ? 300 : 30 }, (_, i) => i + 1);

  test(`${seeds.length} close; leaving out any making good leaves exactly its entry open`, () => {
    let leftOut = 0;
    for (const seed of seeds) {
      const stripped = chain(randomStrip(seed));
      for (const [i, draft] of randomStrip(seed).entries())
        expect(asked(stripped.slice(0, i), draft), `seed ${seed}`).toBeNull();
      const rows = stripProposal(fold({ acts: stripped, packs: [] }), stripId);
      expect(rows.map((r) => r.thing).sort(), `seed ${seed}`).toEqual([...openIn(stripped)].sort());
      const drafts = makingGood(stripped, (ready) => ready[seed % Math.max(1, ready.length)]);
      const whole = then(stripped, ...drafts);
      expect(openIn(whole), `seed ${seed}`).toEqual([]);
      expect(asked(whole, closing), `seed ${seed}`).toBeNull();
      for (const act of whole.slice(stripped.length)) {
        const closes = kindOf(act.kind)?.closes(act.body, null) ?? [];
        if (closes.length === 0) continue;
        const without = leaveOut(whole, act.hash);
        expect(openIn(without), `seed ${seed} without ${act.kind}`).toEqual(closes);
        expect(asked(without, closing)?.open.length, `seed ${seed}`).toBeGreaterThan(0);
        leftOut += 1;
      }
    }
    console.log(`seeds 1 to ${seeds.length}: ${leftOut} makings good left out`);
    expect(leftOut).toBeGreaterThan(seeds.length * 5);
  }, 120_000);

  test('the same state from the acts in any order', () => {
    const acts = chain(randomStrip(1));
    const hash = stateHash(fold({ acts, packs: [] }));
    expect(stateHash(fold({ acts: acts.toReversed(), packs: [] }))).toBe(hash);
  });
});

describe('a second look without a pack', () => {
  const seen = (acts: readonly Act[]) =>
    jobOf(acts).findings.filter((f) => f.id.startsWith('second look'));

  test('nothing waits for it; the first wet thing off without it is one finding, undecided', () => {
    const unseen = pumpStrip.filter((d) => d.kind !== 'second-look');
    const [finding, ...more] = seen(chain(unseen));
    expect(finding).toMatchObject({ kind: 'out of order', needsDecision: false });
    expect(finding?.what).toContain('isolation not looked at by a second pair of eyes');
    expect(more).toEqual([]);
    expect(seen(chain(pumpStrip))).toEqual([]);
  });

  test('a valve shut since makes it void; alone only where one hand is aboard', () => {
    const acts = chain([begun(), ...pumpIsolation]);
    const how = (all: readonly Act[]) => jobOf(all).looks[0]?.how;
    expect(how(acts)).toBe('second pair of eyes');
    const third = stripDraft('shut-or-unplugged', {
      thing: 'closure/third',
      what: 'Third valve',
      kind: 'valve',
      found: 'open',
    });
    expect(how(then(acts, third))).toBeNull();
    const own = pumpIsolation.map((d) => (d.kind === 'second-look' ? { ...d, by: 'Ada' } : d));
    expect(how(chain([begun(), ...own]))).toBeNull();
    expect(seen(chain([begun(), ...own]))).toMatchObject([{ needsDecision: true }]);
  });
});
