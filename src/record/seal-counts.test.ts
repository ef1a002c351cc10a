// Old out against new in: closing is impossible with any count unequal, except by a name.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mayRecord } from './closing.ts';
import { chain, fixturePack, jobDraft, jobId, startDraft, wholeJob } from './fixture.ts';
import { fold } from './fold.ts';
import type { Act, ActBody, Draft } from './types.ts';

const runs = process.env.LONG === '1' ? 1_000 : 100;
const OLD = 2;

/** The fixture with two rings in one groove of the mounting. */
const pack = fixturePack((p) => ({
  ...p,
  facts: {
    ...p.facts,
    joints: Object.fromEntries(
      Object.entries(p.facts.joints).map(([id, joint]) => [
        id,
        { ...joint, seals: joint.seals.map((s) => (id === 'mounting' ? { ...s, count: OLD } : s)) },
      ]),
    ),
  },
}));
const packs = [pack];
const GASKET = 'seal/mounting:gasket';

const begun = chain([startDraft(pack), jobDraft('undone', { thing: 'joint/mounting' })]);
const then = (acts: readonly Act[], ...drafts: Draft[]): readonly Act[] => [
  ...acts,
  ...chain(drafts, 'phone-a', acts),
];
const said = (kind: string, count: number, more: ActBody = {}): Draft =>
  jobDraft(kind, { thing: GASKET, count, ...more });
const asked = (acts: readonly Act[], draft: Draft) =>
  mayRecord(fold({ acts, packs }), jobId, draft, packs);
const open = (acts: readonly Act[], thing: string): boolean =>
  fold({ acts, packs }).jobs[jobId]?.entries.some((e) => e.thing === thing && e.open) === true;

const tighten = jobDraft('made', { thing: 'joint/mounting', round: 'hand' });

describe('a new seal waits for the old ones of its groove', () => {
  test('none said, one of two said, both said', () => {
    expect(asked(begun, said('seal-in', 2))?.stop).toBe('seals not counted');
    const one = then(begun, said('seal-out', 1));
    const refusal = asked(one, said('seal-in', 2));
    expect(refusal?.stop).toBe('seals not counted');
    expect(refusal?.why).toContain('how many old ones came out?');
    expect(open(one, 'old-seal/mounting:gasket')).toBe(true);
    const both = then(one, said('seal-out', 1));
    expect(open(both, 'old-seal/mounting:gasket')).toBe(false);
    expect(asked(both, said('seal-in', 2))).toBeNull();
  });

  test('a name lets it go on, and the old one stays open to the end', () => {
    const anyway = jobDraft('used-anyway', {
      thing: GASKET,
      step: `seal-out ${GASKET}`,
      reason: 'only one was ever fitted: groove seen empty with a lamp',
      limits: 'first run watched',
    });
    const one = then(begun, said('seal-out', 1), anyway);
    expect(asked(one, said('seal-in', 2))).toBeNull();
    expect(open(one, 'old-seal/mounting:gasket')).toBe(true);
  });

  test('what happened on paper is taken in, and is a finding', () => {
    const paper = { paper: 'A', writtenAt: '10:20', enteredBy: 'Ada' };
    const forced = then(begun, said('seal-in', 2, paper));
    expect(fold({ acts: forced, packs }).jobs[jobId]?.findings[0]?.kind).toBe('out of order');
  });
});

describe('a joint is not closed over a double ring or an empty groove', () => {
  const out = then(begun, said('seal-out', OLD));
  test.each([
    ['no new one', []],
    ['one of two', [1]],
    ['three for two', [3]],
    ['twice two', [2, 2]],
  ])('%s', (_, counts) => {
    const acts = then(out, ...counts.map((n) => said('seal-in', n)));
    expect(asked(acts, tighten)?.stop).toBe('seals not counted');
    expect(open(acts, 'new-seal/mounting:gasket')).toBe(true);
  });

  test('two in, or one and one: it closes; a mis-tap taken back counts nothing', () => {
    expect(asked(then(out, said('seal-in', 2)), tighten)).toBeNull();
    expect(asked(then(out, said('seal-in', 1), said('seal-in', 1)), tighten)).toBeNull();
    const thrice = then(out, said('seal-in', 2), said('seal-in', 1));
    const wrong = thrice.at(-1)?.hash ?? '';
    const back = then(thrice, jobDraft('corrected', { of: wrong, why: 'tapped twice' }));
    expect(asked(back, tighten)).toBeNull();
  });

  test('undone again, everything is counted again', () => {
    const first = then(out, said('seal-in', 2));
    const again = then(first, jobDraft('undone', { thing: 'joint/mounting' }));
    expect(asked(again, tighten)?.stop).toBe('seals not counted');
    expect(asked(again, said('seal-in', 2))?.stop).toBe('seals not counted');
    const counted = then(again, said('seal-out', 2), said('seal-in', 2));
    expect(asked(counted, tighten)).toBeNull();
  });

  test('law: it closes just when the old are all out and the new are as many, seed 53_001', () => {
    const counts = fc.array(fc.integer({ min: 0, max: 3 }), { maxLength: 3 });
    fc.assert(
      fc.property(counts, counts, (outs, ins) => {
        const acts = then(
          begun,
          ...outs.map((n) => said('seal-out', n)),
          ...ins.map((n) => said('seal-in', n)),
        );
        const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
        const met = sum(outs) >= OLD && sum(ins) === OLD;
        expect(asked(acts, tighten) === null).toBe(met);
        const owed = ['old-seal', 'new-seal'].some((kind) => open(acts, `${kind}/mounting:gasket`));
        expect(owed).toBe(!met);
        const closing = jobDraft('closed', { deviations: [] });
        if (!met) expect(asked(acts, closing)?.open.join()).toMatch(/seal/);
      }),
      { numRuns: runs, seed: 53_001 },
    );
  });
});

describe('over a whole job', () => {
  const drafts = wholeJob(pack).map((d) =>
    d.body.thing === GASKET ? { ...d, body: { ...d.body, count: OLD } } : d,
  );

  test('it closes with every count right, and with none changed by any number', () => {
    const whole = chain(drafts);
    expect(whole.at(-1)?.kind).toBe('closed');
    const places = drafts.flatMap((d, i) => (/^seal-(?:in|out)$/.test(d.kind) ? [i] : []));
    expect(places.length).toBeGreaterThan(3);
    for (const at of places)
      for (const by of [-1, 1]) {
        const draft = drafts[at];
        if (draft === undefined) continue;
        const { kind, body } = draft;
        // More old ones than stated came out: they are out; the finding wants a decision.
        const count = Number(body.count ?? 1) + by;
        if (count < 0) continue;
        const changed = drafts.with(at, jobDraft(kind, { ...body, count }));
        const acts = chain(changed.slice(0, -1));
        const closing = changed.at(-1);
        if (closing === undefined) throw new Error('the job has no closing');
        expect(asked(acts, closing)?.stop, `${kind} ${String(body.thing)} ${count}`).toBe(
          'not closed',
        );
      }
  });
});
