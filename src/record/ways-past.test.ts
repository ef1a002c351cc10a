// Every stop has an honest way past by name, except the two: enumerated over a whole job.

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { mayRecord } from './closing.ts';
import { chain, jobDraft, jobId, saying, wholeJob } from './fixture.ts';
import { fold } from './fold.ts';
import { lookPack, saidNext } from './look-fixture.ts';
import type { Act, Draft, Refusal } from './types.ts';

const pack = lookPack('2');
const drafts = wholeJob(pack);
const packs = [pack];

/** With a way past, and without one; a 'bad act' is no stop: it is not an act, or not now. */
const WAYS: Readonly<Record<Refusal['stop'], 'none' | 'by name' | 'no stop'>> = {
  'isolation not proved': 'none',
  'someone not clear': 'none',
  'not looked at': 'by name',
  'value superseded': 'by name',
  'seals not counted': 'by name',
  'not closed': 'by name',
  'bad act': 'no stop',
};

const asked = (acts: readonly Act[], draft: Draft): Refusal | null =>
  mayRecord(fold({ acts, packs }), jobId, draft, packs);

const past = (step: string, thing: string): Draft =>
  jobDraft('used-anyway', { thing, step, reason: 'sailing at six', limits: 'watched' });

/** The whole job as far as each step, with its looks and without them. */
function situations(): readonly (readonly Act[])[] {
  const all = drafts.map((_, i) => chain(drafts.slice(0, i + 1)));
  const unseen = drafts.filter((d) => d.kind !== 'second-look');
  return [
    ...all.filter((_, i) => i % 12 === 5),
    ...unseen.flatMap((_, i) => (i % 12 === 5 ? [chain(unseen.slice(0, i + 1))] : [])),
  ];
}

describe('every refusal of a step, over a whole job with and without its looks', () => {
  const met = new Map<Refusal['stop'], number>();
  test('the two stops let nobody past; any other does, and then the step may be said', () => {
    for (const acts of situations())
      for (const step of pack.steps) {
        const draft = saying(pack, step);
        const refusal = asked(acts, draft);
        if (refusal === null || WAYS[refusal.stop] === 'no stop') continue;
        met.set(refusal.stop, (met.get(refusal.stop) ?? 0) + 1);
        // A look is gone past at the look itself; any other step at its own.
        const looks = step.verb === 'undone' ? 'isolation' : 'line-up';
        const at = refusal.stop === 'not looked at' ? `look/${looks}` : step.thing;
        const named = refusal.stop === 'not looked at' ? `second-look ${at}` : step.id;
        const way = asked(acts, past(named, at));
        const where = `${step.id} after ${acts.length} acts: ${refusal.stop}`;
        if (WAYS[refusal.stop] === 'none' && !givesBack(draft)) {
          expect(way?.stop, where).toBe(refusal.stop);
          expect(way?.why, where).toContain('no way past');
        } else if (WAYS[refusal.stop] === 'by name') {
          expect(way, where).toBeNull();
          expect(asked(saidNext(acts, [past(named, at)]), draft), where).toBeNull();
        }
      }
    const stops = [
      'isolation not proved',
      'not looked at',
      'seals not counted',
      'someone not clear',
    ];
    expect([...met.keys()].sort()).toEqual(stops);
    process.stdout.write(`refusals met: ${JSON.stringify(Object.fromEntries(met))}\n`);
  });

  test('a step that is not refused may always be left out by name, save what lifts the two', () => {
    const LIFTS = ['proved-dead', 'people-clear'];
    for (const acts of situations())
      for (const step of pack.steps) {
        if (asked(acts, saying(pack, step)) !== null) continue;
        const way = asked(acts, past(step.id, step.thing));
        if (LIFTS.includes(step.verb)) expect(way?.why, step.id).toContain('no way past');
        else expect(way, step.id).toBeNull();
      }
  });
});

/** Not given back is the state that is asked for: leaving it out by name opens nothing. */
const givesBack = (draft: Draft): boolean => ['untagged', 'restored'].includes(draft.kind);

test('no stop is named in the rules that this list does not know', () => {
  const files = [
    'closing.ts',
    'given-back.ts',
    'seal-counts.ts',
    'second-look-refused.ts',
    'superseded.ts',
  ];
  const text = files.map((f) => readFileSync(new URL(f, import.meta.url), 'utf8')).join('\n');
  const said = [...text.matchAll(/(?:refusal\(\s*|stop: )'([^']+)'/g)].map((m) => m[1] ?? '');
  expect([...new Set(said)].sort()).toEqual(Object.keys(WAYS).sort());
});

test('a closing is refused with its list, and closes with each thing of it named', () => {
  const acts = chain(drafts.slice(0, Math.floor(drafts.length / 2)));
  const closing = (deviations: readonly string[]) =>
    jobDraft('closed', {
      deviations: deviations.map((thing) => ({ thing, reason: 'sailing', limits: 'watched' })),
    });
  expect(asked(acts, closing([]))?.stop).toBe('not closed');
  const open = fold({ acts, packs }).jobs[jobId]?.entries.filter((e) => e.open) ?? [];
  expect(open.length).toBeGreaterThan(5);
  expect(asked(acts, closing(open.map((e) => e.thing)))).toBeNull();
});

test('an act whose ancestor never comes is named too: a lost phone keeps no job open', () => {
  const whole = chain(drafts.slice(0, -1));
  const lost = saidNext(whole, [jobDraft('note', { text: 'lost' })], 5, 'phone-c');
  const late = saidNext(lost, [jobDraft('note', { text: 'kept' })], 6, 'phone-c').slice(-1);
  const acts = [...whole, ...late];
  const waits = `act/${late[0]?.hash}`;
  const plain = jobDraft('closed', { deviations: [] });
  expect(asked(acts, plain)?.open.join()).toContain(waits);
  const deviation = { thing: waits, reason: 'phone overboard', limits: 'asked who held it' };
  expect(asked(acts, jobDraft('closed', { deviations: [deviation] }))).toBeNull();
  const strange = { ...deviation, thing: `act/${'0'.repeat(64)}` };
  expect(asked(acts, jobDraft('closed', { deviations: [strange] }))?.stop).toBe('not closed');
});
