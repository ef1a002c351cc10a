// Lines with their parts: order, drains that prove, services lost, volume; a small invented plant.

import { describe, expect, test } from 'vitest';
import { runCalc } from '../calc/register.ts';
import { recheckWorking } from '../quantity/expression.ts';
import type { Working } from '../quantity/types.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import type { LinesOut } from './model.ts';

async function calc(raw: unknown): Promise<LinesOut> {
  const answer = await runCalc('isolate', raw, { solver: solveWithHighs });
  if (!answer.ok) throw new Error(JSON.stringify(answer.error));
  const { id: _, ...result } = answer.result;
  expect(recheckWorking(result.working as Working)).toEqual([]);
  return result as unknown as LinesOut;
}

async function paths(raw: unknown): Promise<string[]> {
  const answer = await runCalc('isolate', raw, { solver: solveWithHighs });
  if (answer.ok) throw new Error('it was taken');
  return answer.error.error.problems.map(({ path }) => path).sort();
}

/** Sea chest, strainer between two valves, pump, check valve, cooler, overboard; a fire pump. */
const plant = {
  parts: {
    sea: { kind: 'source', name: 'sea chest', height: -0.4, depth: 1.6, medium: 'sea water' },
    'sea-valve': { kind: 'valve', name: 'sea valve', normal: 'open', stations: ['at the valve'] },
    main: { kind: 'run', name: 'sea main', bore: 80, length: 2 },
    'fire-valve': { kind: 'valve', normal: 'shut' },
    fire: { kind: 'service', name: 'fire pump', from: ['sea'] },
    'suction-valve': { kind: 'valve', normal: 'throttled', turns: 6 },
    suction: { kind: 'run', bore: '50 mm', length: '1.2 m' },
    pump: { kind: 'machine', name: 'sea-water pump', volume: 3 },
    check: { kind: 'non-return', name: 'check valve' },
    cooler: { kind: 'machine', name: 'cooler', volume: 12 },
    cooling: { kind: 'service', name: 'engine cooling' },
    'overboard-valve': { kind: 'valve' },
    overboard: { kind: 'source', name: 'overboard', height: 0.9, depth: 0 },
    low: { kind: 'drain', name: 'pump drain', height: 0.2 },
    high: { kind: 'drain', name: 'cooler drain', height: 1.4 },
    vent: { kind: 'vent', name: 'cooler vent', height: 1.8 },
    top: { kind: 'vent', name: 'top vent', height: 2.1 },
  },
  joins: [
    ['sea', 'sea-valve'],
    ['sea-valve', 'main'],
    ['main', 'fire-valve'],
    ['fire-valve', 'fire'],
    ['main', 'suction-valve'],
    ['suction-valve', 'suction'],
    ['suction', 'pump'],
    ['pump', 'check'],
    ['check', 'cooler'],
    ['cooler', 'cooling'],
    ['cooler', 'overboard-valve'],
    ['overboard-valve', 'overboard'],
    ['pump', 'low'],
    ['cooler', 'high'],
    ['cooler', 'vent'],
    ['cooler', 'top'],
  ],
  opened: ['pump'],
};

describe('lines with their parts', () => {
  test('one barrier: what is shut, drained, lost and held', async () => {
    const found = await calc({ ...plant, keep: ['fire'] });
    expect(found).toMatchObject({
      isolable: true,
      proven: true,
      closures: ['suction-valve', 'overboard-valve'],
      lostServices: ['cooling'],
      vents: ['top', 'vent'],
    });
    const litres = (Math.PI / 4) * 0.5 ** 2 * 12 + 3 + 12;
    expect(found.trappedVolume?.value).toBeCloseTo(litres, 9);
    const [first, second] = found.drains;
    expect(first).toMatchObject({ part: 'low', proves: ['sea', 'overboard'], noProof: [] });
    expect(second).toMatchObject({ part: 'high', proves: [], noProof: ['sea', 'overboard'] });
  });

  test('the order: all shut, vented, drained and proved before anything is opened', async () => {
    const { order, closures } = await calc(plant);
    const kinds = order.map((step) => step.do);
    const rank = { shut: 0, vent: 1, drain: 2, prove: 3, open: 4 };
    const ranks = kinds.map((kind) => rank[kind]);
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    const shut = order.filter((step) => step.do === 'shut').map(({ part }) => part);
    expect([...shut].sort()).toEqual([...closures].sort());
    expect(shut[0]).toBe('suction-valve');
    expect(order.at(-1)).toMatchObject({ do: 'open', part: 'pump' });
  });

  test('two barriers: a check valve is none, so the overboard stands alone', async () => {
    const found = await calc({ ...plant, barriers: 2 });
    expect(found).toMatchObject({ isolable: false, proven: true, order: [], trappedVolume: null });
    expect(found.uncutPath).toEqual(['overboard', 'overboard-valve', 'cooler', 'check', 'pump']);
    expect(found.cautions.some((text) => text.startsWith('With one closure'))).toBe(true);
  });

  test('two barriers with a second overboard valve: outer ones first, drains between', async () => {
    const parts = {
      ...plant.parts,
      second: { kind: 'valve' },
      spool: { kind: 'run', volume: 1 },
      bleed: { kind: 'drain', name: 'bleed', height: 0.8 },
    };
    const joins = [
      ...plant.joins.filter(([a]) => a !== 'overboard-valve'),
      ['overboard-valve', 'spool'],
      ['spool', 'bleed'],
      ['spool', 'second'],
      ['second', 'overboard'],
    ];
    const found = await calc({ ...plant, parts, joins, barriers: 2 });
    expect(found.isolable).toBe(true);
    expect([...found.closures].sort()).toEqual([
      'overboard-valve',
      'sea-valve',
      'second',
      'suction-valve',
    ]);
    const shut = found.order.filter((step) => step.do === 'shut').map(({ part }) => part);
    expect(shut.slice(0, 2)).toEqual(['sea-valve', 'second']);
    expect(found.drains.find(({ part }) => part === 'bleed')?.where).toBe('between');
    expect(found.order.filter((step) => step.do === 'prove').map(({ part }) => part)).toEqual([
      'low',
      'high',
    ]);
    expect(found.lostServices).toEqual(['fire', 'cooling']);
  });

  test('an opened valve closes nothing', async () => {
    const found = await calc({ ...plant, opened: ['suction-valve'] });
    expect(found.closures).not.toContain('suction-valve');
    expect(found.closures).toContain('sea-valve');
    expect(found.lostServices).toContain('cooling');
  });

  test('cautions: check valve, turns, proof that is not to be had', async () => {
    const { cautions } = await calc(plant);
    expect(cautions.join(' ')).toMatch(/check valve.*turns/s);
    const { low: _, ...parts } = plant.parts;
    const joins = plant.joins.filter((pair) => !pair.includes('low'));
    const without = await calc({ ...plant, parts, joins });
    expect(without.cautions.join(' ')).toMatch(/no proof|is there a proof against sea chest/);
  });

  test('an unknown volume leaves the sum open and is named', async () => {
    const parts = { ...plant.parts, suction: { kind: 'run', bore: 50 } };
    const found = await calc({ ...plant, parts });
    expect(found.trappedVolume).toBeNull();
    expect(found.notWorkedOut).toMatchObject([{ output: 'trappedVolume' }]);
    expect(found.notWorkedOut[0]?.needs.join()).toMatch('parts/suction');
  });

  test('bad input, all at once', async () => {
    const bad = {
      ...plant,
      joins: [...plant.joins, ['sea', 'nowhere']],
      opened: ['sea', 'gone'],
      keep: ['pump'],
    };
    const expected = [`joins/${plant.joins.length}/1`, 'keep/0', 'opened/0', 'opened/1'];
    expect(await paths(bad)).toEqual(expected.sort());
    expect(await paths({ ...plant, opened: [] })).toEqual(['opened']);
    expect(await paths({ ...plant, parts: { pump: { kind: 'rocket' } } })).toContain(
      'parts/pump/kind',
    );
  });
});
