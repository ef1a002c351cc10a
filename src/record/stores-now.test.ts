// What was drawn and received counts against the list; what a job fitted has its day.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { itemSchema } from '../stores/item.ts';
import { mayRecord } from './closing.ts';
import { chain, fixturePack, jobDraft, jobId, startDraft } from './fixture.ts';
import { fold } from './fold.ts';
import { sealsFitted, storesHeld, storesNow } from './stores-now.ts';
import type { ActBody, Draft } from './types.ts';

const ring = itemSchema.parse({
  ...{ kind: 'seal', id: 'ring', name: 'Ring', seal: 'ring', condition: 'ready to fit' },
  ...{ origin: 'chandler', quantity: 5 },
});
const move = (kind: 'drawn' | 'received', count: number, item = 'ring'): Draft => ({
  stream: { kind: 'vessel', id: 'tern-rock' },
  kind,
  by: 'Ada',
  body: { item, count },
});
const now = (...drafts: Draft[]) => storesNow([ring], chain(drafts))[0]?.quantity;

test('drawn less, received more, another item not, a mis-tap taken back', () => {
  expect(now(move('drawn', 2), move('received', 4), move('drawn', 3, 'other'))).toBe(7);
  expect(now(move('drawn', 9))).toBe(0);
  const acts = chain([move('drawn', 2)]);
  const of = acts[0]?.hash ?? '';
  const back = { ...move('drawn', 1), kind: 'corrected', body: { of, why: 'tapped' } as ActBody };
  expect(storesNow([ring], [...acts, ...chain([back], 'phone-a', acts)])[0]?.quantity).toBe(5);
});

test('before the count nothing counts; on its day only what was drawn', () => {
  const acts = chain([move('drawn', 1), move('received', 3)]);
  const day = acts[0]?.at.utc.slice(0, 10) ?? '';
  const counted = (countedOn: string) => storesNow([{ ...ring, countedOn }], acts)[0]?.quantity;
  expect(counted(day)).toBe(4);
  expect(counted('2099-01-01')).toBe(5);
  expect(counted('2000-01-01')).toBe(7);
});

test('law: whatever the order the acts come in, the stores are the same, seed 54_001', () => {
  const one = fc.record({
    kind: fc.constantFrom('drawn' as const, 'received' as const),
    count: fc.integer({ min: 1, max: 3 }),
  });
  fc.assert(
    fc.property(fc.array(one, { maxLength: 8 }), fc.nat(), (moves, turn) => {
      const acts = chain(moves.map(({ kind, count }) => move(kind, count)));
      const at = acts.length === 0 ? 0 : turn % acts.length;
      const turned = [...acts.slice(at), ...acts.slice(0, at)].toReversed();
      expect(storesNow([ring], turned)).toEqual(storesNow([ring], acts));
      const sum = moves.reduce((n, m) => n + (m.kind === 'drawn' ? -m.count : m.count), 5);
      expect(storesNow([ring], acts)[0]?.quantity).toBe(Math.max(0, sum));
    }),
    { numRuns: 100, seed: 54_001 },
  );
});

test('bodies: nothing drawn is nothing; only on the vessel', () => {
  const state = fold({ acts: [], packs: [] });
  const asked = (draft: Draft) => mayRecord(state, draft.stream.id, draft, []);
  expect(asked(move('drawn', 1))).toBeNull();
  expect(asked(move('drawn', 0))?.stop).toBe('bad act');
  expect(asked({ ...move('drawn', 1), stream: { kind: 'job', id: 'x' } })?.stop).toBe('bad act');
});

test('a seal that a job fitted has its day, by machine and joint', () => {
  const pack = fixturePack();
  const acts = chain([
    startDraft(pack),
    jobDraft('undone', { thing: 'joint/mounting' }),
    jobDraft('seal-in', { thing: 'seal/mounting:gasket', count: 1 }),
  ]);
  const day = acts[2]?.at.utc.slice(0, 10);
  const key = `${pack.machine.id} mounting:gasket`;
  expect(sealsFitted(acts, [pack])).toEqual({ [key]: day });
  expect(storesHeld({ items: [ring] }, acts, [pack])).toMatchObject({ fitted: { [key]: day } });
  expect(jobId).not.toBe('');
});
