// Follow-ups: they pass to the machine at closing with an owner, and are said to be done once.

import { expect, test } from 'vitest';
import { mayRecord } from './closing.ts';
import { chain, fixturePack, jobDraft, jobId, wholeJob } from './fixture.ts';
import { fold } from './fold.ts';
import type { Act, Draft } from './types.ts';

const pack = fixturePack();
const packs = [pack];
const whole = chain(wholeJob(pack));
const open = whole.slice(0, -1);
const ID = `${jobId}/look-1-h`;

const onMachine = (followUp: string, by = 'Cleo'): Draft => ({
  stream: { kind: 'machine', id: 'engine' },
  kind: 'follow-up-done',
  by,
  body: { followUp },
});
const inJob = (followUp: string): Draft => jobDraft('follow-up-done', { followUp }, 'Cleo');
const why = (acts: readonly Act[], draft: Draft): string | null =>
  mayRecord(fold({ acts, packs }), draft.stream.id, draft, packs)?.why ?? null;
const then = (acts: readonly Act[], draft: Draft): Act[] => [
  ...acts,
  ...chain([draft], 'phone-a', acts),
];

test('at closing one passes to the machine, owned by whoever closed', () => {
  const { machines } = fold({ acts: whole, packs });
  const [one] = machines.engine?.followUps ?? [];
  expect(one).toMatchObject({ id: ID, owner: 'Ada', doneBy: null });
  expect(why(whole, onMachine(ID))).toBeNull();
});

test('said to be done it is done, by name, and not a second time', () => {
  const done = then(whole, onMachine(ID));
  expect(fold({ acts: done, packs }).machines.engine?.followUps[0]?.doneBy).toBe('Cleo');
  expect(why(done, onMachine(ID, 'Ben'))).toBe('it was done by Cleo');
});

test('done while the job is open it is done on the machine too', () => {
  const early = then(open, inJob('look-1-h'));
  const closing = jobDraft('closed', { deviations: [] });
  const closed = then(early, closing);
  expect(fold({ acts: closed, packs }).machines.engine?.followUps[0]?.doneBy).toBe('Cleo');
});

test.each([
  ['of another job', onMachine('other/look-1-h')],
  ['misspelt', onMachine(`${jobId}/look-2-h`)],
  ['in the job', inJob('look-2-h')],
])('what nobody is to look at again is refused: %s', (_, draft) => {
  expect(why(whole, draft)).toMatch(/there is no follow-up/);
});

test('before the job is closed the machine has none', () => {
  expect(why(open, onMachine(ID))).toMatch(/there is no follow-up/);
});
