// Cycles of a torque wrench from the record: bolt by bolt, from its count on, corrected acts not.

import { expect, test } from 'vitest';
import type { WrenchLine } from '../pack/fastening-types.ts';
import type { Tool } from '../tools/tool.ts';
import { chain, fixturePack, jobDraft, wholeJob } from './fixture.ts';
import type { Act, Draft } from './types.ts';
import { heldCounted, wrenchUses } from './wrench-uses.ts';

const line: WrenchLine = {
  fastener: 'bolts',
  what: '4 bolts',
  wrenchId: 'tw-1',
  wrench: 'Middle torque wrench',
  shown: '48 N·m',
  rounds: [],
  gripPointMm: null,
  angleDeg: null,
  offsetMm: null,
};
const pack = fixturePack((p) => ({
  ...p,
  steps: p.steps.map((s) =>
    s.verb === 'made' && s.round !== undefined && s.round.endsWith('%')
      ? { ...s, sets: [line] }
      : s,
  ),
}));
const packs = [pack];
const drafts = wholeJob(pack);
const times = (acts: readonly Act[], tool = 'tw-1') =>
  wrenchUses(acts, packs)
    .filter((u) => u.tool === tool)
    .reduce((sum, u) => sum + u.times, 0);

test('a whole job: each bolt of each torque round is one cycle, by hand none', () => {
  // Three joints of 4, 4 and 6 bolts have rounds of 50 and 100 %; the others are made by feel.
  expect(times(chain(drafts))).toBe(2 * (4 + 4 + 6));
});

test('a bolt ticked alone is one; a wrench named counts itself; what is void, nothing', () => {
  const at = drafts.findIndex((d) => d.kind === 'made' && d.body.round === '50 %');
  const before = drafts.slice(0, at);
  const said = (body: Draft['body']): Draft =>
    jobDraft('made', { thing: 'joint/suction-flange', round: '50 %', ...body });
  expect(times(chain([...before, said({ holes: ['3'] })]))).toBe(1);
  const other = chain([...before, said({ holes: ['3', '4'], tool: 'tw-9' })]);
  expect([times(other), times(other, 'tw-9')]).toEqual([0, 2]);
  const acts = chain([...before, said({})]);
  const void_ = jobDraft('corrected', { of: acts.at(-1)?.hash ?? '', why: 'slip' });
  expect(times([...acts, ...chain([void_], 'phone-a', acts)])).toBe(0);
});

test('a check counts its nuts, a re-tightening every one', () => {
  const made = chain(drafts.slice(0, -1));
  const more = (kind: string, holes: string[]) =>
    times([
      ...made,
      ...chain(
        [
          jobDraft(kind, {
            thing: 'joint/mounting',
            holes,
            cold: 'yes',
            noPressure: 'yes',
            startIsolated: 'yes',
          }),
        ],
        'phone-a',
        made,
      ),
    ]);
  expect(more('checked-tight', ['1', '2']) - times(made)).toBe(2);
  expect(more('re-tightened', ['1', '2', '3', '4', '5', '6']) - times(made)).toBe(6);
});

test('the list counts up from its own day on, and never down', () => {
  const wrench = {
    kind: 'wrench',
    id: 'tw-1',
    name: 'Middle',
    calibratedOn: '2026-01-01',
    cyclesSince: 100,
    countedOn: '2026-03-14',
  } as unknown as Tool;
  const held = { tools: [wrench], on: '2026-03-20' };
  const cycles = (countedOn: string) => {
    const own = { ...held, tools: [{ ...wrench, countedOn } as Tool] };
    const [tool] = heldCounted(own, chain(drafts), packs, '2026-03-20T10:00:00Z').tools;
    return tool?.kind === 'wrench' ? [tool.cyclesSince, tool.countedOn] : [];
  };
  expect(cycles('2026-03-14')).toEqual([128, '2026-03-20']);
  expect(cycles('2026-03-15')).toEqual([100, '2026-03-20']);
});
