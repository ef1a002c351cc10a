// The rules of removal one by one, on machines written by hand: sparing, unknowns, problems, words.

import { describe, expect, test } from 'vitest';
import { recheckWorking } from '../quantity/expression.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import { type FullInput, fullSchema, type RemovalPlan } from './model.ts';
import { fewestChanges, type Option, type OrderProblem } from './order.ts';
import { inputProblems, removalProblems } from './problems.ts';
import { smallMachine } from './random-machine.ts';
import { removal } from './removal.ts';
import { below, randomFrom } from './seeded.ts';
import { bestByStates, faultsOf } from './try-everything.ts';

async function plan(input: FullInput): Promise<RemovalPlan> {
  const found = await removal(fullSchema.parse(input), solveWithHighs);
  if (!found.feasible) throw new Error(found.why);
  return found;
}

const way = (id: string, joints: string[], minutes: number, clear: string[] = []) => ({
  id,
  gives: 'off' as const,
  joints,
  clear: clear.map((part) => ({ part, as: 'off' as const })),
  minutes,
});

/** The pump comes out upwards past a cheap fuel pipe, or sideways past a dear bracket. */
const pump = (fuel: Partial<FullInput['joints'][string]>): FullInput => ({
  parts: {
    pump: {
      name: 'sea-water pump',
      ways: [way('up', ['mount'], 10, ['pipe']), way('sideways', ['mount'], 10, ['bracket'])],
    },
    pipe: { ways: [way('out', ['union'], 1)] },
    bracket: { ways: [way('out', ['bolts'], 40)] },
  },
  joints: {
    mount: { undoMinutes: 5, makeMinutes: 5, accesses: [{ id: 'front', tool: '17 mm' }] },
    union: { undoMinutes: 1, makeMinutes: 1, accesses: [{ id: 'front' }], ...fuel },
    bolts: { undoMinutes: 30, makeMinutes: 30, accesses: [{ id: 'below' }] },
  },
  targets: [{ part: 'pump', as: 'off' }],
});

describe('a joint that is better left alone', () => {
  test.each([
    ['fuel', { medium: 'fuel' }],
    ['lube oil', { medium: 'lube oil' }],
    ['hot-pressure', { medium: 'hot-pressure' }],
    ['do not disturb', { doNotDisturb: true }],
    ['do not disturb, with why', { doNotDisturb: 'sealed by the maker' }],
  ])('%s: the cheap joint is never chosen over the bracket', async (_, fuel) => {
    const found = await plan(pump(fuel));
    expect(found.off).toEqual(['pump', 'bracket']);
    expect(found.used).toEqual([]);
    expect(found.minutes.value).toBe(120);
    expect(found.avoided).toEqual({ joints: ['union'], minutes: { value: 97, unit: 'min' } });
    expect(found.proven).toBe(true);
  });

  test('sea water is no such medium', async () => {
    const found = await plan(pump({ medium: 'sea water' }));
    expect(found.off).toEqual(['pump', 'pipe']);
    expect(found.minutes.value).toBe(23);
    expect(found.avoided.joints).toEqual([]);
  });

  test('what nothing avoids is used and named', async () => {
    const input = pump({ medium: 'fuel' });
    const found = await plan({
      ...input,
      parts: { ...input.parts, bracket: { ...input.parts.bracket, stays: true } },
    });
    expect(found.used).toEqual(['union']);
    expect(found.off).toEqual(['pump', 'pipe']);
    expect(found.proven).toBe(true);
  });
});

describe('what is not known', () => {
  test('minutes count 15, named in a caution, proven for the minutes assumed', async () => {
    const input = pump({ medium: 'sea water' });
    const found = await plan({
      ...input,
      joints: { ...input.joints, mount: { accesses: [{ id: 'front' }] } },
    });
    expect(found.minutes.value).toBe(13 + 30);
    expect(found.cautions.join(' ')).toMatch(/proven for the minutes assumed: 15 min .*mount/);
  });

  test('absent accesses are free, cannot be checked; an empty list is no access', async () => {
    const input = pump({ medium: 'sea water' });
    const { accesses: _, ...open } = input.joints.mount ?? {};
    const found = await plan({ ...input, joints: { ...input.joints, mount: open } });
    expect(found.cautions.join(' ')).toMatch(/mount: taken as free, cannot be checked/);
    const shut = { ...input, joints: { ...input.joints, mount: { ...open, accesses: [] } } };
    const none = await removal(shut, solveWithHighs);
    expect(none).toEqual({ feasible: false, why: expect.any(String), proven: true });
    expect(none.feasible ? '' : none.why).toMatch(/joint mount can't be reached/);
  });

  test('a part without ways is no problem, and the plan says so', async () => {
    const input = pump({ medium: 'sea water' });
    const parts = { ...input.parts, bracket: {} };
    expect(removalProblems({ ...input, parts })).toEqual([]);
    const found = await plan({ ...input, parts });
    expect(found.cautions.join(' ')).toMatch(/No way is known for bracket/);
  });
});

describe('order and words', () => {
  test('each step says what it is there for', async () => {
    const found = await plan(pump({ medium: 'fuel' }));
    const said = found.order.map((step) => [
      step.do === 'undo' ? step.joint : step.part,
      step.reason,
    ]);
    expect(Object.fromEntries(said)).toEqual({
      bolts: 'holds bracket until it goes off',
      bracket: 'in the way of sea-water pump on this side',
      mount: 'holds sea-water pump until it goes off',
      pump: 'the target',
    });
    expect(found.order.at(-1)).toMatchObject({ do: 'off', part: 'pump', reason: 'the target' });
  });

  test('a part in the way of an access is named with its joint', async () => {
    const found = await plan({
      parts: { cover: { ways: [way('lift', [], 2)] }, filter: { ways: [way('out', ['bowl'], 3)] } },
      joints: {
        bowl: {
          undoMinutes: 1,
          makeMinutes: 1,
          accesses: [{ id: 'top', clear: [{ part: 'cover', as: 'aside' }] }],
        },
      },
      targets: [{ part: 'filter', as: 'off' }],
    });
    expect(found.order[0]).toMatchObject({
      part: 'cover',
      reason: 'in the way of joint bowl on this side',
    });
  });

  test('what stands already costs nothing and is not among the steps', async () => {
    const found = await plan({
      ...pump({ medium: 'sea water' }),
      already: { off: ['pipe'], joints: ['mount'] },
    });
    expect(found.minutes.value).toBe(10);
    expect(found.order).toHaveLength(1);
  });

  test('a part goes along with what it sits on, but as a target it is wanted in hand', async () => {
    const input = pump({ medium: 'sea water' });
    const parts = {
      ...input.parts,
      impeller: { on: 'pump', ways: [way('draw', [], 6)] },
      guard: { ways: [way('out', [], 1, ['impeller'])] },
    };
    const along = await plan({
      ...input,
      parts,
      targets: [
        { part: 'guard', as: 'off' },
        { part: 'pump', as: 'off' },
      ],
    });
    expect(along.along).toEqual([{ part: 'impeller', on: 'pump' }]);
    const bench = { ...input, parts, already: { off: ['pump'] } };
    const found = await plan({ ...bench, targets: [{ part: 'impeller', as: 'off' }] });
    expect(found.off).toEqual(['impeller']);
  });

  test('working: every expression gives its value, the last is the minutes', async () => {
    for (let seed = 1; seed <= 40; seed += 1) {
      const found = await removal(smallMachine(seed), solveWithHighs);
      if (!found.feasible) continue;
      expect({ seed, wrong: recheckWorking(found.working) }).toEqual({ seed, wrong: [] });
      expect(found.working.at(-1)?.value).toBe(found.minutes.value);
    }
  });
});

describe('problems', () => {
  const input = pump({ medium: 'sea water' });

  test('ids nobody knows, all of them', () => {
    const parts = {
      ...input.parts,
      pump: { on: 'engine', ways: [way('up', ['mout'], 10, ['pip'])] },
    };
    const joints = { ...input.joints, mount: { between: ['pump', 'blok'], accesses: [] } };
    const targets = [{ part: 'pumpe', as: 'off' as const }];
    expect(
      inputProblems({ parts, joints, targets })
        .map(({ path }) => path)
        .sort(),
    ).toEqual([
      'joints/mount/between/1',
      'parts/pump/on',
      'parts/pump/ways/0/clear/0/part',
      'parts/pump/ways/0/joints/0',
      'targets/0/part',
    ]);
  });

  test('a way off that leaves out a joint to what does not go along', () => {
    const parts = {
      ...input.parts,
      block: { stays: true },
      impeller: { on: 'pump' },
    };
    const drain = { between: ['pump', 'block'], accesses: [{ id: 'a' }] };
    const inner = { between: ['pump', 'impeller'], accesses: [{ id: 'a' }] };
    const with2 = { ...input, parts, joints: { ...input.joints, drain, inner } };
    expect(removalProblems(with2).map(({ path, expected }) => [path, expected])).toEqual([
      ['parts/pump/ways/0/joints', 'joint drain among them'],
      ['parts/pump/ways/1/joints', 'joint drain among them'],
    ]);
    const wire = { between: ['impeller', 'block'], accesses: [{ id: 'a' }] };
    const rider = { ...input, parts, joints: { ...input.joints, wire } };
    expect(removalProblems(rider)).toHaveLength(2);
  });

  test('ways given that wait for each other; not ways that rest on an unknown', () => {
    const parts = {
      ...input.parts,
      pipe: { ways: [way('out', ['union'], 1, ['bracket'])] },
      bracket: { ways: [way('out', ['bolts'], 1, ['pipe'])] },
    };
    const found = removalProblems({ ...input, parts });
    expect(found.map(({ path }) => path)).toEqual([
      'parts/pump/ways/0',
      'parts/pump/ways/1',
      'parts/pipe/ways/0',
      'parts/bracket/ways/0',
    ]);
    expect(found[2]?.why).toMatch(/waits for/);
    const unknown = { ...input.parts, pipe: {} };
    expect(removalProblems({ ...input, parts: unknown })).toEqual([]);
  });

  test('a part that sits on itself', () => {
    const parts = { ...input.parts, pipe: { on: 'bracket' }, bracket: { on: 'pipe' } };
    expect(inputProblems({ ...input, parts })).toHaveLength(2);
  });
});

test('fewest changes equals every permutation: 200 sets of 6, seeds 1 to 200', () => {
  for (let seed = 1; seed <= 200; seed += 1) {
    const problem = orderOf(seed);
    const found = fewestChanges(problem);
    const best = bestOrder(problem, new Uint8Array(problem.items), null, null);
    expect({ seed, price: found?.price, bound: found?.bound }).toEqual({
      seed,
      price: best,
      bound: best,
    });
    const short = fewestChanges({ ...problem, maxStates: 0 });
    expect(short?.bound, `seed ${seed}, cut short`).toBeLessThanOrEqual(best);
    expect(short?.price, `seed ${seed}, cut short`).toBeGreaterThanOrEqual(best);
  }
});

function orderOf(seed: number): OrderProblem {
  const random = randomFrom(seed);
  const items = 6;
  const options = Array.from({ length: items }, (_, item) =>
    Array.from({ length: 1 + below(random, 2) }, (_, option) => ({
      item,
      option,
      tool: random() < 0.1 ? null : `t${below(random, 3)}`,
      place: random() < 0.1 ? null : `p${below(random, 3)}`,
      after: item > 0 && random() < 0.5 ? [below(random, item)] : [],
    })),
  );
  return {
    items,
    options,
    toolPrice: 1 + below(random, 3),
    placePrice: 1 + below(random, 3),
    maxStates: 100_000,
    ready: (done) =>
      options.flat().filter(({ item, after }) => !done[item] && after.every((one) => done[one])),
  };
}

function bestOrder(
  problem: OrderProblem,
  done: Uint8Array,
  tool: string | null,
  place: string | null,
): number {
  if (done.every((one) => one === 1)) return 0;
  let best = Number.POSITIVE_INFINITY;
  for (const option of problem.ready(done) as Option[]) {
    const next = Uint8Array.from(done);
    next[option.item] = 1;
    const toolPrice = option.tool && tool && option.tool !== tool ? problem.toolPrice : 0;
    const placePrice = option.place && place && option.place !== place ? problem.placePrice : 0;
    const rest = bestOrder(problem, next, option.tool ?? tool, option.place ?? place);
    best = Math.min(best, toolPrice + placePrice + rest);
  }
  return best;
}

test('seconds over before the start: still a plan that works, with a true bound', async () => {
  for (let seed = 1; seed <= 100; seed += 1) {
    const input = smallMachine(seed);
    const best = bestByStates(input);
    const nothing = async () => ({ status: 'stopped' as const, values: null, bound: null });
    const found = await removal(input, nothing, { nodes: 0 }, () => true);
    expect({ seed, feasible: found.feasible }).toEqual({ seed, feasible: best !== null });
    if (!found.feasible || best === null) continue;
    expect({ seed, faults: faultsOf(input, found) }).toEqual({ seed, faults: [] });
    const spared = found.used.length;
    expect(spared, `seed ${seed}`).toBeGreaterThanOrEqual(best.spared);
    if (spared === best.spared) {
      expect(found.bound.value, `seed ${seed}`).toBeLessThanOrEqual(best.minutes);
      expect(found.minutes.value, `seed ${seed}`).toBeGreaterThanOrEqual(best.minutes);
    }
    if (found.proven) expect(found.minutes.value, `seed ${seed}`).toBe(best.minutes);
  }
});
