// Acts made on the phone: the core's own refusals hold there, and heads seen become parents.

import { expect, test } from 'vitest';
import { limits } from '../../limits.ts';
import { bytesOf, readAct } from '../../record/act.ts';
import { fixturePack, jobDraft, startDraft } from '../../record/fixture.ts';
import type { Replica } from '../../record/replica.ts';
import type { Act } from '../../record/types.ts';
import type { OwnAct } from './offline-db.ts';
import { makeActs, notShownOf, withOwn } from './offline-say.ts';
import { inLots } from './offline-send.ts';

const pack = fixturePack();
const replica = (acts: readonly Act[]): Replica => ({
  vessel: { id: 'test-vessel', name: 'Test vessel', kind: 'vessel' },
  invented: true,
  plantIssue: { number: 1, date: '2026-01-02', hash: '0'.repeat(64) },
  people: [],
  machines: [],
  packs: [pack],
  acts,
  heads: [],
  due: [],
});
const device = (id: string, lastSeq = 0) => ({ key: 'device' as const, id, lastSeq });
const rows = (acts: readonly Act[]): readonly OwnAct[] =>
  acts.map((act) => ({ deviceSeq: act.deviceSeq, act, taken: false, refused: null }));

test('acts are numbered on, each knows the one before, and each is what its hash claims', () => {
  const note = jobDraft('note', { text: 'a' });
  const { acts, refusal } = makeActs(replica([]), device('a', 4), [startDraft(pack), note]);
  expect(refusal).toBeNull();
  expect(acts.map(({ deviceSeq }) => deviceSeq)).toEqual([5, 6]);
  expect(acts[1]?.parents).toEqual([acts[0]?.hash]);
  for (const act of acts) expect(readAct(bytesOf(act), act.hash).ok).toBe(true);
});

test('both stops and closing are refused on the phone, and what was said before stays', () => {
  const begun = replica(makeActs(replica([]), device('a'), [startDraft(pack)]).acts);
  const note = jobDraft('note', { text: 'a' });
  const wet = makeActs(begun, device('a', 1), [
    note,
    jobDraft('undone', { thing: 'joint/suction-flange' }),
    note,
  ]);
  expect(wet.refusal?.stop).toBe('isolation not proved');
  expect(wet.acts.map(({ kind }) => kind)).toEqual(['note']);
  const tags = makeActs(begun, device('a', 1), [jobDraft('undone', { thing: 'joint/guard' })]);
  expect(tags.refusal).toBeNull();
  const open = replica([...begun.acts, ...tags.acts]);
  const start = makeActs(open, device('a', 2), [jobDraft('turned', { result: 'turns free' })]);
  expect(start.refusal).not.toBeNull();
  expect(start.acts).toEqual([]);
  const close = makeActs(open, device('a', 2), [jobDraft('closed', { deviations: [] })]);
  expect(close.refusal).not.toBeNull();
  expect(close.acts).toEqual([]);
});

test('all heads this device has seen are the parents of the next act', () => {
  const begun = makeActs(replica([]), device('a'), [startDraft(pack)]).acts;
  const note = (text: string) => [jobDraft('note', { text })];
  const one = makeActs(replica(begun), device('a', 1), note('one')).acts;
  const two = makeActs(replica(begun), device('b'), note('two')).acts;
  const seen = withOwn(replica([...begun, ...one]), rows(two));
  expect(seen.heads).toEqual([...one, ...two].map(({ hash }) => hash).sort());
  const three = makeActs(seen, device('b', 1), note('three')).acts;
  expect(three[0]?.parents).toEqual(seen.heads);
});

test('an act is folded from here until the server shows it, and only at its own vessel', () => {
  const { acts } = makeActs(replica([]), device('a'), [startDraft(pack)]);
  expect(notShownOf(replica([]), rows(acts))).toHaveLength(1);
  expect(notShownOf(replica(acts), rows(acts))).toHaveLength(0);
  expect(withOwn(replica(acts), rows(acts)).acts).toHaveLength(1);
  const elsewhere = { ...replica([]), vessel: { ...replica([]).vessel, id: 'another' } };
  expect(notShownOf(elsewhere, rows(acts))).toHaveLength(0);
});

test('more than one message holds goes in several, in order, none twice', () => {
  const drafts = Array.from({ length: 3 }, (_, i) => jobDraft('note', { text: `${i}` }));
  const { acts } = makeActs(replica([]), device('a'), [startDraft(pack), ...drafts]);
  const many = Array.from({ length: limits.server.actsAtOnce }, () => acts).flat();
  const lots = inLots(many);
  expect(lots.flat()).toEqual(many);
  expect(lots.length).toBeGreaterThan(3);
  for (const lot of lots) expect(lot.length).toBeLessThanOrEqual(limits.server.actsAtOnce);
});
