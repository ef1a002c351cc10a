// `compatible` by the lists that were read, the storage tables and the calendar.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { recheckWorking } from '../quantity/expression.ts';
import type { Working } from '../quantity/types.ts';
import { compatible, ratingOf } from './compatible.ts';
import {
  COMPOUNDS,
  type CompatibleOutput,
  compatibleInput,
  compatibleOutput,
} from './compatible-model.ts';
import { readCured } from './storage.ts';
import { compounds, GREASES, MEDIA, type Medium, RATED } from './tables/compounds.ts';
import { STORAGE_RULES } from './tables/storage.ts';

const SEED = 20261125;
const options = { seed: SEED, numRuns: process.env.LONG ? 5_000 : 500 };

function solved(raw: unknown): CompatibleOutput {
  return compatible(compatibleInput.parse(raw));
}

/** Matrix of elastomers and media, good and bad lists (read in a public repository). */
const read: Readonly<Record<string, { good: string[]; bad: string[]; range: [number, number] }>> = {
  NBR: { good: ['water', 'coolant', 'diesel', 'oil'], bad: [], range: [-30, 100] },
  HNBR: { good: ['water', 'coolant', 'diesel', 'oil'], bad: [], range: [-40, 150] },
  EPDM: { good: ['water', 'coolant'], bad: ['diesel', 'oil'], range: [-50, 150] },
  VMQ: { good: ['water', 'coolant'], bad: ['diesel', 'oil'], range: [-60, 200] },
  FKM: { good: ['diesel', 'oil'], bad: [], range: [-20, 200] },
  CR: { good: ['water', 'coolant', 'oil'], bad: [], range: [-40, 120] },
};
const media: Readonly<Record<string, Medium>> = {
  water: 'sea water',
  coolant: 'ethylene glycol coolant',
  diesel: 'diesel fuel',
  oil: 'mineral lubricating oil',
};

describe('ratings are from memory; the lists that were read do not contradict them', () => {
  test.each(RATED)('%s', (name) => {
    const list = read[name];
    const compound = compounds[name];
    for (const word of list?.good ?? []) {
      expect(ratingOf(compound, media[word] ?? 'sea water')).toBeLessThanOrEqual(2);
    }
    for (const word of list?.bad ?? []) {
      expect(ratingOf(compound, media[word] ?? 'sea water')).toBeGreaterThanOrEqual(3);
    }
    const found = solved({ compound: name, media: [...MEDIA], grease: 'silicone grease' });
    expect(found.temperatureRange?.map(({ value }) => value)).toEqual(list?.range);
    expect(found.ratings?.length).toBe(6);
    expect(found.greaseRating).toBe(found.ratings?.[5]);
    expect(found.restsOn).toMatch(/^from memory/);
    expect(String(found.cautions)).toContain('ratings are from memory');
    const row = found.working.find(({ symbol }) => symbol === 'r_1');
    expect(row?.source.kind).toBe('from memory');
  });

  // Handbook tables, from memory.
  test.each([
    ['NBR', [1, 1, 1, 1, 1, 1]],
    ['HNBR', [1, 1, 1, 1, 1, 1]],
    ['FKM', [1, 1, 1, 1, 1, 1]],
    ['EPDM', [1, 1, 4, 4, 4, 1]],
    ['VMQ', [1, 1, 4, 4, 4, 3]],
    ['CR', [2, 1, 3, 2, 2, 1]],
  ])('%s in the order of the media (from memory)', (compound, ratings) => {
    expect(solved({ compound, media: [...MEDIA] }).ratings).toEqual(ratings);
    const turned = [...MEDIA].reverse();
    expect(solved({ compound, media: turned }).ratings).toEqual([...ratings].reverse());
  });
});

describe('verdicts', () => {
  const nitrile = { compound: 'NBR', media: ['sea water'] };
  const aged = { ...nitrile, cured: '3Q2018', storageRule: 'ISO 2230' };
  test.each([
    ['suitable', nitrile, /cannot be checked without temperature/],
    [
      'unsuitable',
      { compound: 'EPDM', media: ['sea water'], grease: 'mineral-oil grease' },
      /EPDM in mineral-oil grease: 4/,
    ],
    ['unsuitable', { compound: 'EPDM', media: ['diesel fuel'] }, /diesel fuel: 4/],
    ['unsuitable', { compound: 'VMQ', media: ['sea water'], grease: 'silicone grease' }, /swells/],
    ['unsuitable', { ...nitrile, temperature: 120 }, /outside -30 to 100/],
    ['unsuitable', { ...nitrile, temperature: '-40 °F' }, /outside/],
    ['doubtful', { compound: 'CR', media: ['diesel fuel'] }, /3, doubtful/],
    [
      'doubtful',
      { compound: 'FKM', media: ['ethylene glycol coolant'], temperature: 110 },
      /special grades/,
    ],
    ['unsuitable', { compound: 'VMQ', media: ['silicone grease'] }, /swells/],
    ['suitable', { compound: 'FKM', media: ['diesel fuel'], temperature: 110 }, /nothing/],
    ['suitable', { compound: 'CR', media: ['sea water'] }, /2, fair/],
    ['suitable', { ...aged, on: '2025-09-30' }, /nothing that was given/],
    ['inspect before use', { ...aged, on: '2025-10-01' }, /extended to 2028-09-30/],
    ['inspect before use', { ...aged, on: '2028-09-30' }, /extended to 2028-09-30/],
    ['expired', { ...aged, on: '2028-10-01' }, /extension and all/],
    ['expired', { ...aged, on: '2025-10-01', storageRule: 'RMA' }, /under RMA/],
    ['suitable', { ...aged, on: '2030-01-01', storageRule: 'SAE ARP5316' }, /nothing/],
    [
      'expired',
      { compound: 'NBR', cured: '1Q2000', on: '2026-01-01', storageRule: 'ISO 2230' },
      /ended/,
    ],
    [null, { compound: 'NBR' }, /without media/],
    [null, { compound: 'FFKM', media: ['sea water'] }, /without ratings of FFKM/],
    [null, { ...nitrile, cured: '3Q2024', on: '2026-11-25' }, /without storageRule/],
    [null, { ...nitrile, cured: '3Q2024', storageRule: 'ISO 2230' }, /without on/],
    [
      null,
      {
        compound: 'HNBR',
        media: ['sea water'],
        cured: '3Q2024',
        on: '2026-11-25',
        storageRule: 'RMA',
      },
      /a rule for HNBR/,
    ],
  ])('%s', (verdict, raw, reason) => {
    const found = solved(raw);
    expect(found.verdict).toBe(verdict);
    expect(found.reasons.join('\n')).toMatch(reason);
    const lacks = found.notWorkedOut.find(({ output }) => output === 'verdict');
    expect(lacks === undefined).toBe(verdict !== null);
    if (verdict !== null) expect(String(found.cautions)).toContain(`"${verdict}" rests on`);
  });
});

describe('life in store', () => {
  const end = (compound: string, storageRule: string, cured: string) => {
    const { storage } = solved({ compound, storageRule, cured });
    return [storage?.group, storage?.expiresOn, storage?.extendableTo];
  };

  // ISO 2230:2002: 5 + 2, 7 + 3, 10 + 5 years, from memory; the first figures of each cell of a
  // supplier's page that was read ("Storage", on BS ISO 2230:2002) are the same.
  test.each([
    ['NR', 'A', 5, 2],
    ['IR', 'A', 5, 2],
    ['AU', 'A', 5, 2],
    ['NBR', 'B', 7, 3],
    ['HNBR', 'B', 7, 3],
    ['CR', 'B', 7, 3],
    ['EPDM', 'C', 10, 5],
    ['FKM', 'C', 10, 5],
    ['VMQ', 'C', 10, 5],
    ['FVMQ', 'C', 10, 5],
  ])('%s is of group %s: %i and %i years (supplier page, read)', (name, group, years, more) => {
    const to = (count: number) => `${2024 + count}-09-30`;
    expect(end(name, 'ISO 2230', '3Q2024')).toEqual([group, to(years), to(years + more)]);
  });

  test.each(['SBR', 'BR', 'EU'])('%s is of group A (from memory)', (name) => {
    expect(end(name, 'ISO 2230', '2024-01-15')).toEqual(['A', '2029-01-15', '2031-01-15']);
  });

  // A sheet rubber catalogue, appendix 5, p. 172, RMA guidelines (read).
  test.each([
    ['NBR', '3 to 5 years', '2027-12-31'],
    ['CR', '5 to 10 years', '2029-12-31'],
    ['EPDM', '5 to 10 years', '2029-12-31'],
    ['FKM', '5 to 20 years', '2029-12-31'],
    ['VMQ', '20 years', '2044-12-31'],
  ])('RMA: %s %s, the lower end', (name, group, expiresOn) => {
    expect(end(name, 'RMA', '4Q2024')).toEqual([group, expiresOn, null]);
  });

  // SAE ARP5316, from memory.
  test.each(['NBR', 'HNBR', 'CR'])('SAE ARP5316: %s 15 years (from memory)', (name) => {
    expect(end(name, 'SAE ARP5316', '1Q2020')).toEqual(['15 years', '2035-03-31', null]);
  });

  test.each(['EPDM', 'FKM', 'VMQ'])('SAE ARP5316: %s without limit (from memory)', (name) => {
    const found = solved({ compound: name, storageRule: 'SAE ARP5316', cured: '1Q2000' });
    expect(found.storage).toMatchObject({ limited: false, expiresOn: null });
    expect(found.notWorkedOut.map(({ output }) => output)).not.toContain('storage/expiresOn');
  });

  test.each([
    ['1Q2024', '2024-03-31'],
    ['2Q2024', '2024-06-30'],
    ['3q2024', '2024-09-30'],
    ['4Q2024', '2024-12-31'],
    ['2024-08-15', '2024-08-15'],
  ])('%s counts from %s', (cured, counted) => {
    expect(readCured(cured)?.counted).toBe(counted);
  });

  test.each(['5Q2024', '0Q2024', '3Q24', '2024-02-30', 'summer', ''])('%s is refused', (cured) => {
    expect(readCured(cured)).toBeNull();
  });

  test('29 February ends on the 28th where there is none', () => {
    expect(end('NBR', 'ISO 2230', '2024-02-29')).toEqual(['B', '2031-02-28', '2034-02-28']);
  });

  test('a quarter that runs on the day asked for is taken, one to come is not', () => {
    const raw = { compound: 'NBR', cured: '4Q2026', storageRule: 'ISO 2230' };
    expect(compatibleInput.safeParse({ ...raw, on: '2026-11-25' }).success).toBe(true);
    expect(compatibleInput.safeParse({ ...raw, on: '2026-09-30' }).success).toBe(false);
  });
});

const maybe = <T>(one: fc.Arbitrary<T>) => fc.option(one, { nil: undefined });
const quarter = fc
  .tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1990, max: 2026 }))
  .map(([q, year]) => `${q}Q${year}`);
const anything = fc.record({
  compound: fc.constantFrom(...COMPOUNDS),
  media: maybe(fc.subarray([...MEDIA])),
  grease: maybe(fc.constantFrom(...GREASES)),
  temperature: maybe(fc.double({ min: -80, max: 250, noNaN: true })),
  cured: maybe(quarter),
  on: maybe(fc.constantFrom('2026-11-25', '2027-02-28')),
  storageRule: maybe(fc.constantFrom(...STORAGE_RULES)),
});

test(`any input, seed ${SEED}: shapes as published, null is named, a 4 is never good`, () => {
  const law = fc.property(anything, (raw) => {
    const found = solved(raw);
    expect(JSON.stringify(found)).not.toMatch(/NaN|Infinity/);
    expect(recheckWorking(found.working as Working)).toEqual([]);
    expect(compatibleOutput.safeParse(found).error).toBeUndefined();
    const { working, cautions, notWorkedOut, ...outputs } = found;
    for (const [output, value] of Object.entries(outputs)) {
      const lacks = notWorkedOut.find((one) => one.output === output);
      if (value !== null) expect(lacks).toBeUndefined();
      else expect({ output, needs: lacks?.needs.length ?? 0 }).not.toMatchObject({ needs: 0 });
    }
    const all = [...(found.ratings ?? []), found.greaseRating];
    if (all.includes(4)) expect(found.verdict).toBe('unsuitable');
    if (all.includes(3)) expect(found.verdict).not.toBe('suitable');
    const last = found.storage?.extendableTo ?? found.storage?.expiresOn;
    if (last && raw.on && raw.on > last) expect(found.verdict).toMatch(/unsuitable|expired/);
  });
  fc.assert(law, options);
});
