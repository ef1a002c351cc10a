// The cut against published and generated networks, and against every choice tried from a seed.

import { describe, expect, test } from 'vitest';
import { runCalc } from '../calc/register.ts';
import { evaluate } from '../quantity/expression.ts';
import { randomFrom } from '../removal/seeded.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import { isolatePlain } from './isolate.ts';
import { isolateProblems } from './problems.ts';
import { randomNetwork } from './random-network.ts';
import generated from './tables/networks.generated.json' with { type: 'json' };
import published from './tables/segments.published.json' with { type: 'json' };
import { faultsOf, leastByTrying } from './try-every-cut.ts';

const calc = async (raw: unknown) => {
  const answer = await runCalc('isolate', raw, { solver: solveWithHighs });
  if (!answer.ok) throw new Error(JSON.stringify(answer.error));
  return answer.result;
};

const problems = async (raw: unknown) => {
  const answer = await runCalc('isolate', raw, { solver: solveWithHighs });
  if (answer.ok) throw new Error('it was taken');
  return answer.error.error.problems;
};

const sorted = (ids: unknown) => [...(ids as string[])].sort();

describe.each(generated.cases.map((one) => [one.id, one] as const))('%s', (_, one) => {
  test('one barrier: effort and closures nearest the work', async () => {
    const found = await calc({ ...one, barriers: 1 });
    const { isolable, min_total_weight: least, minimum_cut_nearest_work: near } = one.answer;
    expect(found).toMatchObject({ isolable, proven: true });
    expect(found.effort).toBe(least ?? null);
    expect(sorted(found.closures)).toEqual(near ?? []);
    if (!isolable) expectUncut(one, found.uncutPath as string[], 1);
  });

  test('two barriers: effort, or the path with fewer', async () => {
    const found = await calc({ ...one, barriers: 2 });
    const { double_block: two } = one.answer;
    expect(found).toMatchObject({ isolable: two?.feasible ?? false, proven: true });
    expect(found.effort).toBe(two?.min_total_weight ?? null);
    if (!found.isolable) expectUncut(one, found.uncutPath as string[], 2);
  });
});

/** A path of the network from a source to the work, with fewer closures than barriers. */
function expectUncut(
  { nodes, edges }: (typeof generated.cases)[number],
  path: readonly string[],
  barriers: number,
): void {
  const kindOf = (id: string | undefined) => nodes.find((node) => node.id === id)?.kind;
  expect([kindOf(path[0]), kindOf(path.at(-1))]).toEqual(['source', 'work']);
  path.slice(1).forEach((id, at) => {
    const joined = edges.some((pair) => pair.includes(id) && pair.includes(path[at] ?? ''));
    expect(joined).toBe(true);
  });
  expect(path.filter((id) => kindOf(id) === 'valve').length).toBeLessThan(barriers);
}

test('segments follow Walski 1993, published network of WNTR', async () => {
  const { nodes, links, valves } = published;
  const found = await calc({ nodes, links, valves });
  const segments = (found.segments as string[][]).map(sorted);
  expect(segments.length).toBe(published.published.number_of_segments);
  const largest = Math.max(...segments.map(({ length }) => length));
  expect(largest).toBe(published.published.largest_segment_nodes_plus_links);
  const theirs = published.segments.map((ids) => sorted(ids.map((id) => id.slice(1))));
  const order = (a: string[], b: string[]) => (`${a}` < `${b}` ? -1 : 1);
  expect([...segments].sort(order)).toEqual([...theirs].sort(order));
});

const count = process.env.LONG ? 2_000 : 200;
const SEED = 60_000;
test(`${count} random networks, seeds ${SEED} on, against every choice tried`, () => {
  const seen = { isolable: 0, kept: 0, not: 0, dearer: 0 };
  for (let seed = SEED; seen.isolable + seen.not < count; seed += 1) {
    const random = randomFrom(seed);
    const below = (least: number, most: number) =>
      least + Math.floor(random() * (most - least + 1));
    const input = randomNetwork(
      random,
      {
        junctions: below(3, 9),
        valves: below(4, 11),
        sources: below(1, 3),
        works: below(1, 2),
        keep: below(0, 2),
        plainEdges: below(0, 3),
      },
      below(1, 2) === 1 ? 1 : 2,
    );
    const wrong = isolateProblems(input);
    if (wrong.length > 0) {
      expect(
        wrong.every(({ path }) => path.startsWith('keep/')),
        `seed ${seed}`,
      ).toBe(true);
      continue;
    }
    const found = isolatePlain(input);
    const least = leastByTrying(input);
    expect({ seed, effort: found.effort }).toEqual({ seed, effort: least });
    expect({ seed, proven: found.proven }).toEqual({ seed, proven: true });
    if (!found.isolable) {
      seen.not += 1;
      expect(found.uncutPath.length, `seed ${seed}`).toBeGreaterThan(0);
      continue;
    }
    expect({ seed, faults: faultsOf(input, found.closures) }).toEqual({ seed, faults: [] });
    expect(found.bound).toBe(found.effort);
    seen.isolable += 1;
    if (input.keep.length === 0) continue;
    seen.kept += 1;
    if ((isolatePlain({ ...input, keep: [] }).effort ?? 0) < (found.effort ?? 0)) seen.dearer += 1;
  }
  // The generator makes all sorts, or the test would say little.
  expect(seen.isolable).toBeGreaterThan(count / 5);
  expect(seen.not).toBeGreaterThan(count / 10);
  expect(seen.kept).toBeGreaterThan(count / 20);
  expect(seen.dearer).toBeGreaterThan(0);
  process.stdout.write(`isolate, random: ${JSON.stringify(seen)}\n`);
});

test('a search cut short: a valid answer, a bound that holds, and no claim of proof', () => {
  let unproven = 0;
  const size = { junctions: 480, valves: 520, sources: 6, works: 4, keep: 6, plainEdges: 40 };
  for (let seed = SEED; seed < SEED + 24; seed += 1) {
    const given = randomNetwork(randomFrom(seed), size, 2);
    const dry = new Set(isolateProblems(given).map(({ path }) => path.split('/')[1]));
    const input = { ...given, keep: given.keep.filter((_, at) => !dry.has(`${at}`)) };
    const found = isolatePlain(input, { cuts: 1 });
    if (!found.isolable || found.proven) continue;
    unproven += 1;
    const whole = isolatePlain(input);
    expect({ seed, faults: faultsOf(input, found.closures) }).toEqual({ seed, faults: [] });
    expect(found.bound ?? 0).toBeLessThan(found.effort ?? 0);
    expect(found.bound ?? 0).toBeLessThanOrEqual(whole.effort ?? 0);
    expect(found.effort ?? 0).toBeGreaterThanOrEqual(whole.effort ?? 0);
    expect(found.cautions.join()).toContain('Not proven least');
  }
  expect(unproven).toBeGreaterThan(0);
});

const pair = {
  nodes: [
    { id: 's', kind: 'source' },
    { id: 'v', kind: 'valve', weight: 2 },
    { id: 'w', kind: 'work' },
  ],
  edges: [
    ['s', 'v'],
    ['v', 'w'],
  ],
};

describe('the border', () => {
  test('everything wrong at once, each by its path', async () => {
    const bad = {
      nodes: [...pair.nodes, { id: 'v', kind: 'valve' }, { id: 'x', kind: 'junction' }],
      edges: [
        ['s', 'nowhere'],
        ['x', 'x'],
      ],
      keep: ['w', 'lost', { node: 'x', from: ['v'] }],
    };
    const paths = (await problems(bad)).map(({ path }) => path).sort();
    const expected = ['edges/0/1', 'edges/1/1', 'keep/0', 'keep/1', 'keep/2/from/0', 'nodes/3/id'];
    expect(paths).toEqual(expected);
  });

  test.each([
    ['barriers', { ...pair, barriers: 3 }, ['barriers']],
    ['a weight below nought', { ...pair, nodes: [{ id: 'v', kind: 'valve', weight: -1 }] }, null],
    ['no source', { nodes: pair.nodes.slice(1), edges: [['v', 'w']] }, ['nodes']],
    ['no work', { nodes: pair.nodes.slice(0, 2), edges: [['s', 'v']] }, ['nodes']],
    ['an unknown field', { ...pair, colour: 'red' }, ['colour']],
    ['kept but never supplied', { ...dry(), keep: ['x'] }, ['keep/0']],
    [
      'segments: unknown link',
      { nodes: ['a'], links: [], valves: [{ link: 'l', node: 'a' }] },
      null,
    ],
  ])('bad input: %s', async (_, raw, paths) => {
    const found = await problems(raw);
    expect(found.length).toBeGreaterThan(0);
    if (paths !== null) expect(found.map(({ path }) => path)).toEqual(paths);
  });

  test('a work that nothing reaches needs no closure', async () => {
    const { nodes } = pair;
    expect(await calc({ nodes, edges: [['s', 'v']] })).toMatchObject({
      isolable: true,
      effort: 0,
      closures: [],
      proven: true,
    });
  });

  test('decimal weights add up as a person would write, and the working is right', async () => {
    const nodes = [1, 2, 3].flatMap((at) => [{ id: `v${at}`, kind: 'valve', weight: at / 10 }]);
    const edges = nodes.flatMap(({ id }) => [
      ['s', id],
      [id, 'w'],
    ]);
    const found = await calc({
      nodes: [...pair.nodes, ...nodes],
      edges: [...edges, ...pair.edges],
    });
    expect(found).toMatchObject({ effort: 2.6, bound: 2.6, proven: true });
    for (const { expression, value } of found.working as { expression: string; value: number }[]) {
      expect(evaluate(expression)).toBeCloseTo(value, 9);
    }
  });
});

function dry() {
  return { ...pair, nodes: [...pair.nodes, { id: 'x', kind: 'junction' }] };
}
