// Checks the choice of tools against trying every set of them, and what it must never choose.

import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { below, randomFrom } from '../removal/seeded.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import { readTools } from '../tools/read.ts';
import { type Tool, toolSchema } from '../tools/tool.ts';
import { type ChosenTools, chooseTools, type Fastening, type ToolChoice } from './choose-tools.ts';
import { fewestByTrying, type PlainFastening } from './try-every-set.ts';

const on = '2026-11-25';
const cases = process.env.LONG === '1' ? 1_500 : 100;

const nm = (value: number) => ({ value, unit: 'N.m' });
const fastening = (id: string, more: Partial<Fastening>): Fastening => ({
  id,
  name: id,
  head: 'hexagon',
  access: 'straight',
  torque: nm(40),
  ...more,
});
const tool = (raw: object): Tool => toolSchema.parse({ name: 'x', ...raw });
const wrench = (id: string, more: object = {}) =>
  tool({
    ...{ kind: 'wrench', id, drive: '1/2', min: 20, max: 100, lengthToGrip: 400 },
    ...{ calibratedOn: '2026-03-02', cyclesSince: 10, countedOn: '2026-10-01', ...more },
  });
const socket = (id: string, acrossFlats: number, more: object = {}) =>
  tool({ kind: 'socket', id, acrossFlats, drive: '1/2', ...more });

const choose = (fastenings: readonly Fastening[], tools: readonly Tool[]): Promise<ToolChoice> =>
  chooseTools(fastenings, tools, on, solveWithHighs);

const only = (choice: ToolChoice): ChosenTools => {
  const [first] = choice.chosen;
  if (first === undefined) throw new Error(JSON.stringify(choice.missing));
  return first;
};

describe('against every set tried, seeds 41,100 on', () => {
  const pick = <T>(random: () => number, list: readonly T[]): T => {
    const one = list[below(random, list.length)];
    if (one === undefined) throw new Error('nothing to pick from');
    return one;
  };

  const otherKinds = ['socket', 'adapter', 'extension', 'swivel', 'crowfoot'] as const;

  /** Three wrenches, a socket of each width, and what else chance brings. */
  function randomTools(random: () => number): Tool[] {
    const count = 8 + below(random, 4);
    return Array.from({ length: count }, (_, at): Tool => {
      const kind = at < 3 ? 'wrench' : at < 5 ? 'socket' : pick(random, otherKinds);
      return randomTool(random, kind, `t${at}`, at === 3 ? 13 : at === 4 ? 17 : undefined);
    });
  }

  function randomTool(
    random: () => number,
    kind: 'wrench' | (typeof otherKinds)[number],
    id: string,
    given: number | undefined,
  ): Tool {
    const drive = pick(random, ['3/8', '1/2'] as const);
    const width = given ?? pick(random, [13, 17]);
    switch (kind) {
      case 'wrench': {
        const [min, max] = pick(random, [
          [10, 60],
          [20, 100],
          [40, 200],
        ]);
        const good = '2026-03-02';
        const calibratedOn = pick(random, [good, good, good, '2025-11-25', '2025-11-24']);
        const dropped = pick(random, [{}, {}, {}, {}, { droppedOn: '2026-05-01' }]);
        const cyclesSince = pick(random, [10, 10, 4_999, 4_999, 5_000]);
        return wrench(id, { drive, min, max, calibratedOn, cyclesSince, ...dropped });
      }
      case 'socket':
        return socket(id, width, { drive, long: random() < 0.3 });
      case 'adapter':
        return tool({ kind, id, drive, to: drive === '3/8' ? '1/2' : '3/8' });
      case 'extension':
        return tool({ kind, id, drive, length: 100 });
      case 'swivel':
        return tool({ kind, id, drive });
      case 'crowfoot':
        return tool({ kind, id, drive, acrossFlats: width, offset: 40 });
    }
  }

  function randomPlain(random: () => number): PlainFastening {
    return {
      widthMm: pick(random, [13, 17]),
      access: pick(random, ['straight', 'straight', 'long', 'swivel', 'open-end']),
      torqueNm: pick(random, [8, 11, 15, 22, 44, 58, 64, 90, 120]),
      angleDeg: pick(random, [0, 45, 90, 180]),
      anyway: random() < 0.15 ? [pick(random, ['t0', 't1', 't2'])] : [],
    };
  }

  test(`${cases} small jobs: as few tools as any set has, proven; none unusable`, async () => {
    let done = 0;
    let saved = 0;
    for (let seed = 41_100; seed < 41_100 + cases; seed += 1) {
      const random = randomFrom(seed);
      const tools = randomTools(random);
      const plain = Array.from({ length: 2 + below(random, 4) }, () => randomPlain(random));
      const found = await choose(
        plain.map((one, at) =>
          fastening(`f${at}`, {
            acrossFlatsMm: one.widthMm,
            access: one.access,
            torque: nm(one.torqueNm),
            angleDeg: one.angleDeg,
            useAnyway: one.anyway.map((id) => ({ tool: id, by: 'Ada Quill', why: 'test' })),
          }),
        ),
        tools,
      );
      const fewest = fewestByTrying(plain, tools, on);
      const tell = { seed, chosen: found.chosen.length + found.missing.length };
      expect({
        ...tell,
        count: found.tools.length,
        proven: found.proven,
        bound: found.bound,
      }).toEqual({ seed, chosen: plain.length, count: fewest, proven: true, bound: fewest });
      const separate = found.chosen.reduce((sum, one) => sum + one.tools.length, 0);
      done += found.chosen.length;
      saved += separate - found.tools.length;
      for (const one of found.chosen)
        neverWithoutAName(one, tools, plain[Number(one.fastening.slice(1))]);
    }
    // The cases must say something: fastenings that can be done, and tools shared among them.
    expect(done).toBeGreaterThan(cases);
    expect(saved).toBeGreaterThan(cases / 2);
  });

  /** Judged here by plain comparison: range, date to the day, cycles, drop. */
  function neverWithoutAName(one: ChosenTools, tools: readonly Tool[], plain?: PlainFastening) {
    const held = tools.find(({ id }) => id === one.set?.wrench);
    if (held?.kind !== 'wrench' || one.set === null || plain === undefined) {
      throw new Error('no wrench stands behind a value');
    }
    const setting = one.set.setting.value;
    const good =
      setting >= Math.max(held.min.value, held.max.value / 5) - 1e-6 &&
      setting <= held.max.value + 1e-6 &&
      (held.calibratedOn ?? '') >= '2025-11-25' &&
      (held.cyclesSince ?? 0) < 5_000 &&
      held.droppedOn === undefined;
    expect({ good, anyway: one.anyway === null ? null : 'named' }).toEqual({
      good,
      anyway: good ? null : 'named',
    });
    if (!good) expect(plain.anyway).toContain(held.id);
    expect((one.anyway?.against.length ?? 0) > 0).toBe(!good);
  }
});

describe('what is laid out', () => {
  test('a setting in the units of the scale, as issued where it can be', async () => {
    const pounds = wrench('p', {
      min: '20 lbf.ft',
      max: '150 lbf.ft',
      scaleUnit: 'lbf.ft',
      division: 0.1,
    });
    const issued = { value: 47.995955370931576, unit: 'N.m', given: '35.4 lbf·ft' };
    const found = await choose(
      [fastening('f', { thread: 'M10', standard: 'DIN', torque: issued })],
      [pounds, socket('s', 17)],
    );
    expect(only(found)).toMatchObject({
      tools: ['p', 's'],
      widthMm: 17,
      set: { shown: '35.4 lbf·ft', onScale: 35.4, gripPointMm: 400, angleDeg: null },
    });
  });

  test('a crowfoot: square to the wrench unless an angle is stated, grip told', async () => {
    const tools = [
      wrench('w', { division: 1 }),
      tool({ kind: 'crowfoot', id: 'c', drive: '1/2', acrossFlats: 17, offset: 50 }),
    ];
    const asked = { acrossFlatsMm: 17, access: 'open-end', torque: nm(80) } as const;
    expect(only(await choose([fastening('f', asked)], tools))).toMatchObject({
      set: { shown: '80 N·m', angleDeg: 90, offsetMm: 50, gripPointMm: 400 },
    });
    const ahead = only(await choose([fastening('f', { ...asked, angleDeg: 0 })], tools));
    expect(ahead.set).toMatchObject({ shown: '71 N·m', setting: { value: 71.11111111111111 } });
    expect(ahead.cautions.join(' ')).toContain('400 mm from the drive square');
    const short = wrench('w', { lengthToGrip: undefined });
    const unmarked = [short, ...tools.slice(1)];
    const none = await choose([fastening('f', { ...asked, angleDeg: 0 })], unmarked);
    expect(none.missing).toMatchObject([{ what: 'wrench', nearest: [{ tool: 'w' }] }]);
  });

  test('of two that serve the one whose middle is nearer', async () => {
    const tools = [
      wrench('far', { min: 40, max: 200 }),
      wrench('near', { min: 10, max: 80 }),
      socket('s', 17),
    ];
    expect(
      only(await choose([fastening('f', { acrossFlatsMm: 17, torque: nm(45) })], tools)).tools,
    ).toEqual(['near', 's']);
  });

  test('one wrench for two values, though each has one that lies better', async () => {
    const tools = [
      wrench('low', { min: 5, max: 45 }),
      wrench('both', { min: 20, max: 100 }),
      wrench('high', { min: 60, max: 140 }),
      socket('s', 17),
    ];
    const found = await choose(
      [25, 90].map((torque) => fastening(`f${torque}`, { acrossFlatsMm: 17, torque: nm(torque) })),
      tools,
    );
    expect(found).toMatchObject({ tools: ['both', 's'], bound: 2, proven: true });
  });

  test('without a value no wrench: a spanner, or a handle and a socket', async () => {
    const spanner = tool({ kind: 'spanner', id: 'sp', acrossFlats: 17 });
    const handle = tool({ kind: 'handle', id: 'h', drive: '1/2' });
    const bare = fastening('f', { acrossFlatsMm: 17, torque: null });
    expect(
      only(await choose([bare], [wrench('w'), handle, socket('s', 17), spanner])),
    ).toMatchObject({ tools: ['sp'], set: null });
    expect(only(await choose([bare], [handle, socket('s', 17)])).tools).toEqual(['h', 's']);
  });
});

describe('what is missing', () => {
  const good = fastening('f', { acrossFlatsMm: 17 });

  test('what fits: the nearest sizes held, and why not', async () => {
    const found = await choose([good], [wrench('w'), socket('a', 18), socket('b', 13)]);
    expect(found.missing).toEqual([
      {
        fastening: 'f',
        what: 'what fits',
        why: 'no socket of 17 mm is held',
        nearest: [
          { tool: 'a', whyNot: ['it is 18 mm, 17 mm is needed'] },
          { tool: 'b', whyNot: ['it is 13 mm, 17 mm is needed'] },
        ],
      },
    ]);
    expect(found).toMatchObject({ chosen: [], tools: [], proven: true });
  });

  test('a wrench: nearest first with what speaks against it; out of date told beside', async () => {
    const tools = [
      wrench('big', { min: 150, max: 700 }),
      wrench('old', { calibratedOn: '2025-01-01' }),
      socket('s', 17),
    ];
    const found = await choose([good], tools);
    expect(found.missing).toMatchObject(
      [
        { what: 'wrench', nearest: [{ tool: 'old', whyNot: [/out of date/] }, { tool: 'big' }] },
      ].map((one) => ({ ...one, nearest: one.nearest.map(({ tool: id }) => ({ tool: id })) })),
    );
    expect(found.laidAside).toMatchObject([{ tool: 'old', wouldServe: ['f'], instead: [] }]);
    const other = await choose([good], [...tools, wrench('new')]);
    expect(other.laidAside).toMatchObject([{ tool: 'old', instead: ['new'] }]);
    expect(other.missing).toEqual([]);
  });

  test('a wrench that fell on the day of its calibration or after is never chosen', async () => {
    for (const [droppedOn, chosen] of [
      ['2026-03-01', 1],
      ['2026-03-02', 0],
      ['2026-03-03', 0],
    ] as const) {
      const found = await choose([good], [wrench('w', { droppedOn }), socket('s', 17)]);
      expect([droppedOn, found.chosen.length]).toEqual([droppedOn, chosen]);
    }
  });

  test('used anyway by name: chosen, with what speaks against it and what is held', async () => {
    const old = wrench('old', { calibratedOn: '2025-01-01' });
    const named = { ...good, useAnyway: [{ tool: 'old', by: 'Ada Quill', why: 'sails at noon' }] };
    const found = only(await choose([named], [old, wrench('new'), socket('s', 17)]));
    expect(found.tools[0]).toBe('old');
    expect(found.anyway).toMatchObject({ by: 'Ada Quill', why: 'sails at noon' });
    expect(found.anyway?.against).toEqual([expect.stringContaining('out of date')]);
    expect(found.cautions[0]).toContain('one that may be used is held: new');
  });

  test('what joins: no adapter, no extension, no swivel', async () => {
    const small = socket('s', 17, { drive: '3/8' });
    for (const access of ['straight', 'long', 'swivel'] as const) {
      const found = await choose([{ ...good, access }], [wrench('w'), small]);
      expect(found.missing).toMatchObject([{ what: 'what joins them' }]);
    }
  });

  test('where what is in date does not join, what would join may be named', async () => {
    const old = wrench('old', { drive: '3/8', calibratedOn: '2025-01-01' });
    const tools = [wrench('w'), old, socket('s', 17, { drive: '3/8' })];
    const { missing } = await choose([good], tools);
    expect(missing).toMatchObject([{ what: 'what joins them', nearest: [{ tool: 'old' }] }]);
    const named = { ...good, useAnyway: [{ tool: 'old', by: 'Ada Quill', why: 'sails at noon' }] };
    expect(only(await choose([named], tools)).tools).toEqual(['old', 's']);
  });

  test('a width that may be two is asked, never guessed', async () => {
    const tools = [wrench('w'), socket('a', 16), socket('b', 17)];
    const found = await choose([fastening('f', { thread: 'M10' })], tools);
    expect(found.asks).toEqual([
      { fastening: 'f', ask: 'M10 is 16 mm by ISO and 17 mm by DIN: measure which' },
    ]);
    expect(found.chosen).toEqual([]);
  });
});

test('the demo list serves a plain job; the old and the fallen wrench are told', async () => {
  const csv = readFileSync(new URL('../../demo/tern-rock/tools.csv', import.meta.url), 'utf8');
  const [head = [], ...rows] = parse(csv) as string[][];
  const { tools } = readTools({ head, rows: rows.map((cells, at) => ({ line: at + 2, cells })) });
  const found = await choose(
    [
      fastening('studs', { acrossFlatsMm: 17, torque: nm(46) }),
      fastening('bolts', { acrossFlatsMm: 17, torque: nm(40) }),
      fastening('flange', { thread: 'M12', standard: 'ISO', torque: nm(42) }),
      fastening('cover', { thread: 'M6', head: 'socket', torque: nm(6.5) }),
      fastening('guard', { thread: 'M8', torque: nm(20), access: 'long' }),
    ],
    tools,
  );
  expect(found).toMatchObject({ missing: [], asks: [], proven: true });
  expect(found.laidAside.map(({ tool: id }) => id)).toEqual(['wrench-old-half', 'wrench-pounds']);
  expect(found.tools.length).toBe(found.bound);
});
