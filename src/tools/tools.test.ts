// Reads lists of tools: good ones come back the same, faults are told with row, column and value.

import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cyclesSince, withCycles } from './cycles.ts';
import { type ReadTools, readTools } from './read.ts';
import { COLUMNS } from './tables/columns.ts';
import { DRIVES, gaugeSpread, type HeldWrench, TOOL_KINDS, toolSchema } from './tool.ts';
import { writeTools } from './write.ts';

const runs = process.env.LONG === '1' ? 2_000 : 200;

function fromCsv(text: string): ReadTools {
  const [head = [], ...rows] = parse(text, { relax_column_count: true }) as string[][];
  return readTools({ head, rows: rows.map((cells, at) => ({ line: at + 2, cells })) });
}

const demo = readFileSync(new URL('../../demo/tern-rock/tools.csv', import.meta.url), 'utf8');

const HEAD =
  'kind,id,name,drive,to,across flats,length,offset,min,max,unit,tolerance,' +
  'calibrated,since,counted,k';
const row = (cells: string) => fromCsv(`${HEAD}\n${cells}\n`);

describe('a list of tools', () => {
  test('the demo list is sound, holds every kind, and comes back the same', () => {
    const { tools, problems } = fromCsv(demo);
    expect(problems).toEqual([]);
    expect(new Set(tools.map(({ kind }) => kind))).toEqual(new Set(TOOL_KINDS));
    const again = fromCsv(writeTools(tools));
    expect(again.problems).toEqual([]);
    expect(again.tools).toEqual(tools);
    expect(writeTools(again.tools)).toBe(writeTools(tools));
  });

  test('a wrench in pound-feet keeps its scale', () => {
    const { tools } = row('wrench,w,W,1/2,,,,,20,150,lbf.ft,4 %,2026-01-02,,,');
    expect(tools).toMatchObject([
      { drive: 12.5, scaleUnit: '[lbf_av].[ft_i]', tolerance: 0.04, min: { given: '20 lbf·ft' } },
    ]);
    expect(tools[0]?.kind === 'wrench' && tools[0].max.value).toBeCloseTo(203.37, 2);
    expect(writeTools(tools).split('\n')[1]).toContain(',20,150,');
  });

  test.each([
    ['12.5', 12.5],
    ['1/2', 12.5],
    ['1/2"', 12.5],
    ['1/2 in', 12.5],
    ['12.5 mm', 12.5],
    ['1', 25],
    ['25 mm', 25],
    ['10', 10],
  ])('the square %s is %d mm', (text, drive) => {
    expect(row(`handle,h,H,${text.replace('"', '')},,,,,,,,,,,,`).tools).toMatchObject([{ drive }]);
  });

  test('random lists come back the same, seed 41_003', () => {
    const word = fc.stringMatching(/^[a-z][a-z ,";é-]{0,12}[a-z]$/);
    const drive = fc.constantFrom(...DRIVES.map(([mm]) => mm));
    const width = fc.integer({ min: 8, max: 360 }).map((tenths) => tenths / 10);
    const day = fc.constantFrom('2025-02-28', '2026-06-30', '2024-02-29');
    const made = fc.oneof(
      fc.record({
        kind: fc.constant('wrench'),
        name: word,
        drive,
        min: fc.integer({ min: 1, max: 9 }).map((n) => `${n} lbf.ft`),
        max: fc.integer({ min: 10, max: 99 }).map((n) => `${n}.5 lbf.ft`),
        scaleUnit: fc.constant('lbf.ft'),
        calibratedOn: day,
        intervalCycles: fc.integer({ min: 1, max: 9_999 }),
      }),
      fc.record({
        kind: fc.constantFrom('socket', 'key'),
        name: word,
        drive,
        acrossFlats: width,
        long: fc.boolean(),
      }),
      fc.record({
        kind: fc.constant('crowfoot'),
        name: word,
        drive,
        acrossFlats: width,
        offset: width,
      }),
      fc.record({
        kind: fc.constant('gauge'),
        name: word,
        measures: word,
        min: fc.integer({ min: -9, max: 0 }),
        max: fc.integer({ min: 1, max: 9 }),
        unit: fc.constantFrom('mm', 'bar'),
        expanded: fc.constant(0.02),
        k: fc.constant(2),
        note: word,
      }),
    );
    fc.assert(
      fc.property(fc.array(made, { maxLength: 8 }), (list) => {
        const tools = list.map((one, at) => toolSchema.parse({ ...one, id: `t-${at}` }));
        const again = fromCsv(writeTools(tools));
        expect(again.problems).toEqual([]);
        expect(writeTools(again.tools)).toBe(writeTools(tools));
        expect(again.tools.map(({ name, kind }) => [name, kind])).toEqual(
          tools.map(({ name, kind }) => [name, kind]),
        );
      }),
      { numRuns: runs, seed: 41_003 },
    );
  });
});

describe('faults are told with row, column, value and what may stand', () => {
  test.each([
    ['kind', 'hammer,h,H,,,,,,,,,,,,,', { row: 2, column: 'kind', got: 'hammer' }],
    ['drive', 'handle,h,H,5/8,,,,,,,,,,,,', { column: 'drive', got: '5/8' }],
    ['least above greatest', 'wrench,w,W,1/2,,,,,90,20,N.m,,,,,', { column: 'min', got: '90 N·m' }],
    ['greatest missing', 'wrench,w,W,1/2,,,,,90,,N.m,,,,,', { column: 'max', got: null }],
    ['scale', 'wrench,w,W,1/2,,,,,9,20,J,,,,,', { column: 'unit', got: 'J' }],
    ['day', 'wrench,w,W,1/2,,,,,9,20,N.m,,2026-02-30,,,', { column: 'calibrated' }],
    ['tolerance', 'wrench,w,W,1/2,,,,,9,20,N.m,4,,,,', { column: 'tolerance', got: 4 }],
    ['cycles', 'wrench,w,W,1/2,,,,,9,20,N.m,,,many,,', { column: 'since', got: 'many' }],
    ['day of the count', 'wrench,w,W,1/2,,,,,9,20,N.m,,2026-01-01,30,,', { column: 'counted' }],
    [
      'counted early',
      'wrench,w,W,1/2,,,,,9,20,N.m,,2026-01-01,3,2025-12-31,',
      { column: 'counted' },
    ],
    ['width', 'socket,s,S,1/2,,-3,,,,,,,,,,', { column: 'across flats', got: -3 }],
    ['width missing', 'socket,s,S,1/2,,,,,,,,,,,,', { column: 'across flats', got: null }],
    ['not its own', 'socket,s,S,1/2,,13,,,5,,,,,,,', { column: 'min', got: '5' }],
    ['no change', 'adapter,a,A,1/2,1/2,,,,,,,,,,,', { column: 'to' }],
    ['offset', 'crowfoot,c,C,1/2,,19,,,,,,,,,,', { column: 'offset', got: null }],
    ['id', 'handle,My Handle,H,1/2,,,,,,,,,,,,', { column: 'id', got: 'My Handle' }],
    ['formula', 'handle,h,=1+1,1/2,,,,,,,,,,,,', { column: 'name', got: '=1+1' }],
    ['too many cells', 'handle,h,H,1/2,,,,,,,,,,,,,more', { column: '', got: 'more' }],
  ])('%s', (_, cells, place) => {
    const { tools, problems } = row(cells);
    expect(tools).toEqual([]);
    expect(problems).toMatchObject([{ row: 2, ...place }]);
    for (const { why, expected, path } of problems) {
      expect([why.length > 5, expected.length > 1, path.startsWith('row 2')]).toEqual([
        true,
        true,
        true,
      ]);
    }
  });

  test('all at once, sound rows beside them; an id stands once', () => {
    const { tools, problems } = row(
      [
        'handle,h,H,9,,,,,,,,,,,,',
        'handle,i,I,1/2,,,,,,,,,,,,',
        ',,,,,,,,,,,,,,,',
        'handle,i,J,1/2,,,,,,,,,,,,',
        'xx,k,K,,,,,,,,,,,,,',
      ].join('\n'),
    );
    expect(tools.map(({ id }) => id)).toEqual(['i']);
    expect(problems.map(({ row: at, column }) => [at, column])).toEqual([
      [2, 'drive'],
      [5, 'id'],
      [6, 'kind'],
    ]);
  });

  test('bounds: a list too long, a name too long', () => {
    const cells = ['handle', 'h', 'H'];
    const rows = Array.from({ length: 2_001 }, (_, at) => ({ line: at + 2, cells }));
    expect(readTools({ head: ['kind', 'id', 'name'], rows })).toMatchObject({
      tools: [],
      problems: [{ got: 2_001, expected: 'at most 2000 rows' }],
    });
    expect(row(`handle,h,${'x'.repeat(201)},1/2,,,,,,,,,,,,`).problems).toMatchObject([
      { column: 'name', expected: 'at most 200' },
    ]);
  });

  test('heads: one unknown, one twice, one missing', () => {
    const { problems } = fromCsv('kind,id,colour,id\n');
    expect(problems.map(({ column, why }) => [column, why])).toEqual([
      ['colour', 'there is no such column'],
      ['id', 'the column stands twice'],
      ['name', 'this column is needed and missing'],
    ]);
    expect(problems[0]?.expected).toContain(COLUMNS[0]?.head ?? 'none');
  });
});

describe('cycles', () => {
  const wrench = toolSchema.parse({
    ...{ kind: 'wrench', id: 'w', name: 'W', drive: '1/2', min: 20, max: 100 },
    ...{ calibratedOn: '2026-03-01', cyclesSince: 200, countedOn: '2026-06-01' },
  }) as HeldWrench;
  const uses = [
    { tool: 'w', at: '2026-02-27T10:00:00Z', times: 1_000 },
    { tool: 'w', at: '2026-05-31T23:59:59Z', times: 100 },
    { tool: 'w', at: '2026-06-01T08:00:00Z', times: 12 },
    { tool: 'v', at: '2026-07-01T08:00:00Z', times: 7 },
    { tool: 'w', at: '2026-09-01T08:00:00Z', times: 30 },
  ];

  test('count up from the last count, a use on that day too', () => {
    expect(cyclesSince(wrench, uses)).toBe(242);
    expect(withCycles([wrench], uses, '2026-09-02')).toMatchObject([
      { cyclesSince: 242, countedOn: '2026-09-02' },
    ]);
  });

  test('without a count from the calibration, without either not at all', () => {
    const { countedOn: _, cyclesSince: __, ...fresh } = wrench;
    expect(cyclesSince(fresh, uses)).toBe(142);
    const { calibratedOn: ___, ...unknown } = fresh;
    expect(cyclesSince(unknown, uses)).toBeNull();
    expect(withCycles([unknown], uses, '2026-09-02')).toEqual([unknown]);
  });
});

test("a gauge's spread is its expanded uncertainty over k", () => {
  const gauge = { kind: 'gauge', id: 'g', name: 'G', measures: 'gap', min: 0, max: 1, unit: 'mm' };
  const parsed = toolSchema.parse({ ...gauge, expanded: 0.04, k: 2 });
  expect(parsed.kind === 'gauge' && gaugeSpread(parsed)).toBe(0.02);
  const bare = toolSchema.parse(gauge);
  expect(bare.kind === 'gauge' && gaugeSpread(bare)).toBeNull();
});
