// Lists of stores: good ones come back the same, faults are told with row, column and value.

import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findItem, labelText } from './find.ts';
import { CONDITIONS, itemSchema, SEAL_KINDS, shortKits } from './item.ts';
import { type ReadStores, readStores } from './read.ts';
import { COLUMNS } from './tables/columns.ts';
import { writeStores } from './write.ts';

const runs = process.env.LONG === '1' ? 2_000 : 200;

function fromCsv(text: string): ReadStores {
  const [head = [], ...rows] = parse(text, { relax_column_count: true }) as string[][];
  return readStores({ head, rows: rows.map((cells, at) => ({ line: at + 2, cells })) });
}

const demo = readFileSync(new URL('../../demo/tern-rock/stores.csv', import.meta.url), 'utf8');

const SOUND = {
  ...{ kind: 'seal', id: 'a', name: 'A', seal: 'ring', condition: 'ready to fit' },
  ...{ origin: 'chandler', quantity: '2' },
};

function row(change: Readonly<Record<string, string>>): ReadStores {
  const all: Readonly<Record<string, string>> = { ...SOUND, ...change };
  const head = Object.keys(all);
  return readStores({ head, rows: [{ line: 2, cells: Object.values(all) }] });
}

describe('a list of stores', () => {
  test('the demo list is sound, holds every kind, and comes back the same', () => {
    const { items, problems } = fromCsv(demo);
    expect(problems).toEqual([]);
    expect(new Set(items.map(({ kind }) => kind)).size).toBe(3);
    const again = fromCsv(writeStores(items));
    expect(again).toEqual({ items, problems: [] });
    expect(shortKits(items).map(({ kit }) => kit)).toEqual(['Overhaul kit', 'Cooler kit']);
  });

  test('random lists come back the same, seed 51_010', () => {
    const word = fc.stringMatching(/^[a-z][a-z ,";é-]{0,12}[a-z]$/);
    const plain = fc.stringMatching(/^[a-z]{1,8}$/);
    const some = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });
    const made = fc.record({
      kind: fc.constant('seal'),
      name: word,
      seal: fc.constantFrom(...SEAL_KINDS),
      size: some(word),
      compound: some(fc.constantFrom('NBR', 'FKM')),
      thickness: some(fc.constantFrom('0.5 mm', '1/8 in')),
      batch: some(word),
      cured: some(fc.constantFrom('3Q2024', '2024-08-15')),
      condition: fc.constantFrom(...CONDITIONS),
      origin: word.filter((text) => !/^(?:assumed|unknown|none|na)$/.test(text)),
      quantity: fc.nat(99),
      serves: some(fc.array(plain, { minLength: 1, maxLength: 3 })),
      place: some(word),
      hand: some(fc.constantFrom('port', 'starboard', 'either')),
    });
    fc.assert(
      fc.property(fc.array(made, { maxLength: 8 }), (list) => {
        const items = list.flatMap((one, at) => {
          const bare = Object.fromEntries(Object.entries(one).filter(([, v]) => v !== undefined));
          const read = itemSchema.safeParse({ ...bare, id: `s-${at}` });
          return read.success ? [read.data] : [];
        });
        const again = fromCsv(writeStores(items));
        expect(again).toEqual({ items, problems: [] });
      }),
      { numRuns: runs, seed: 51_010 },
    );
  });
});

describe('faults are told with row, column, value and what may stand', () => {
  test.each([
    ['kind', { kind: 'spare' }, 'spare', 'one of seal, part, consumable'],
    ['id', { id: 'My Ring' }, 'My Ring', ''],
    ['seal', { seal: '' }, null, 'gasket, ring'],
    ['seal', { kind: 'part' }, 'ring', 'an empty cell'],
    ['condition', { condition: 'good' }, 'good', 'ready to fit, needs work, core'],
    ['condition', { condition: '' }, null, 'ready to fit, needs work, core'],
    ['origin', { origin: 'assumed' }, 'assumed', '"assumed" is no answer'],
    ['origin', { origin: 'Unknown' }, 'Unknown', 'no answer'],
    ['origin', { origin: '' }, null, 'no answer'],
    ['quantity', { quantity: 'many' }, 'many', 'a number'],
    ['quantity', { quantity: '-1' }, -1, 'at least 0'],
    ['quantity', { quantity: '1.5' }, 1.5, 'a whole number'],
    ['quantity', { serial: 'S1' }, 2, '0 or 1'],
    ['batch', { serial: 'S1', batch: 'B', quantity: '1' }, 'B', 'a serial or a batch'],
    ['cured', { cured: '5Q2024' }, '5Q2024', 'a quarter as 3Q2024'],
    ['cured', { cured: '2024-02-30' }, '2024-02-30', 'a quarter as 3Q2024'],
    ['expires', { expires: 'soon' }, 'soon', 'a day'],
    ['expires', { cured: '3Q2024', expires: '2024-06-01' }, '2024-06-01', '2024-07-01 or later'],
    ['gtin', { gtin: '09521234543214' }, '09521234543214', 'check digit'],
    ['thickness', { thickness: '2 kg' }, '2 kg', 'a length'],
    ['hand', { hand: 'left' }, 'left', 'one of port, starboard, either'],
    ['serves', { serves: 'pump; Big Pump' }, 'Big Pump', ''],
    ['touches', { touches: 'NBR' }, 'NBR', 'an empty cell'],
    ['full', { full: '3' }, 3, 'an empty cell, or the kit'],
    ['name', { name: '=1+1' }, '=1+1', 'begins with a letter'],
  ])('%s: %j', (column, change, got, expected) => {
    const { items, problems } = row(change);
    expect(items).toEqual([]);
    expect(problems[0]).toMatchObject({ row: 2, column, got });
    expect(problems[0]?.expected).toContain(expected);
  });

  test('every field that may be wrong has a column, and every column a field', () => {
    const fields = Object.keys(itemSchema.shape).sort();
    expect(COLUMNS.map(({ field }) => field).sort()).toEqual(fields);
  });

  test('all at once, sound rows beside them; an id stands once; heads', () => {
    const rows = ['seal,a,A,ring,,x,1', 'seal,b,B,ring,ready to fit,x,1', 'seal,b,C,ring,core,x,1'];
    const answer = fromCsv(['kind,id,name,seal,condition,origin,quantity', ...rows].join('\n'));
    expect(answer.items.map(({ name }) => name)).toEqual(['B']);
    expect(answer.problems.map(({ row: at, column }) => [at, column])).toEqual([
      [2, 'condition'],
      [4, 'id'],
    ]);
    const bad = fromCsv('kind,id,colour,id\n').problems.map(({ column, why }) => [column, why]);
    expect(bad).toContainEqual(['colour', 'there is no such column']);
    expect(bad).toContainEqual(['id', 'the column stands twice']);
    expect(bad).toContainEqual(['origin', 'this column is needed and missing']);
  });

  test('bounds: a list too long, a name too long', () => {
    const cells = Object.values(SOUND);
    const rows = Array.from({ length: 5_001 }, (_, at) => ({ line: at + 2, cells }));
    expect(readStores({ head: Object.keys(SOUND), rows })).toMatchObject({
      items: [],
      problems: [{ got: 5_001, expected: 'at most 5000 rows' }],
    });
    expect(row({ name: 'x'.repeat(201) }).problems).toMatchObject([{ column: 'name' }]);
  });
});

describe('what a scanned text means', () => {
  const { items } = fromCsv(demo);
  const where = { vessel: 'tern-rock', year: 2026 };
  const ids = (text: string) => findItem(text, items, where).items.map(({ id }) => id);

  test('our own label, an id, a bar code with its batch', () => {
    expect(ids(labelText('tern-rock', 'spigot-ring'))).toEqual(['spigot-ring']);
    expect(ids(' spigot-ring ')).toEqual(['spigot-ring']);
    expect(ids('(01)09521234543213(10)EP-4410')).toEqual(['flange-gasket']);
    expect(ids('(01)09521234543213(10)EP-9999')).toEqual([]);
  });

  test("another vessel's label and nonsense are told", () => {
    expect(findItem('boxup:other/spigot-ring', items, where).problems).toMatchObject([
      { why: 'this label is from other' },
    ]);
    expect(findItem('boxup:tern-rock/none', items, where).problems).toHaveLength(1);
    expect(findItem('hello', items, where).problems).toHaveLength(1);
  });
});
