// GS1 codes as scanned: published examples, both forms, links; each misread is told.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkDigit, dayOf, isKey, readGs1 } from './gs1.ts';
import { ELEMENTS } from './tables/gs1-elements.ts';

const runs = process.env.LONG === '1' ? 5_000 : 500;
const read = (text: string) => readGs1(text, 2026);
const GS = '\u001d';

/**
 * Published: GS1 Hong Kong, check digit calculator page (as read 2026-11-25): 629104150021 gives
 * sum 57 and check digit 3. Wiki of a bar-code generator on Digital Link URIs (as read the same
 * day): the GTIN 09521234543213, the SSCC 106141411234567897 and the links below. Wiki of a parser
 * of GS1 data (as read the same day): the string with a batch, a separator and day 00.
 */
describe('published examples', () => {
  test('the check digit of 629104150021 is 3', () => {
    expect(checkDigit('629104150021')).toBe(3);
  });

  test.each(['6291041500213', '09521234543213', '106141411234567897', '05060917510011'])(
    '%s is sound',
    (key) => expect(isKey(key)).toBe(true),
  );

  test('an element string with a separator; day 00 is the last of its month', () => {
    const answer = read(`010506091751001110628S93R${GS}17241000218898847482518646`);
    expect(answer).toMatchObject({
      ok: true,
      scanned: {
        gtin: '05060917510011',
        batch: '628S93R',
        expiresOn: '2024-10-31',
        serial: '8898847482518646',
      },
    });
  });

  test.each([
    ['https://id.gs1.org/01/09521234543213', { batch: null, serial: null }],
    [
      'https://id.gs1.org/01/09521234543213/10/ABC123/21/12345',
      { batch: 'ABC123', serial: '12345' },
    ],
    [
      'https://id.gs1.org/01/09521234543213/10/ABC123?17=261231',
      { batch: 'ABC123', expiresOn: '2026-12-31' },
    ],
    ['https://example.com/products/01/09521234543213', { gtin: '09521234543213' }],
  ])('%s', (link, scanned) => {
    expect(read(link)).toMatchObject({ ok: true, scanned: { gtin: '09521234543213', ...scanned } });
  });
});

describe('forms', () => {
  test('brackets, a mark of the symbol in front, made on and counts', () => {
    const plain = read(`]d2010952123454321311240815${'30'}12${GS}10B-7${GS}21S1`);
    const bracketed = read('(01)09521234543213(11)240815(30)12(10)B-7(21)S1');
    expect(plain).toEqual(bracketed);
    expect(plain).toMatchObject({
      scanned: { madeOn: '2024-08-15', count: 12, batch: 'B-7', serial: 'S1' },
    });
  });

  test('a shorter GTIN in a link is filled up; percent signs are undone', () => {
    expect(read('https://example.com/01/6291041500213/10/A%2FB')).toMatchObject({
      scanned: { gtin: '06291041500213', batch: 'A/B' },
    });
  });

  test.each([
    ['(01)09521234543214', '(01)', '09521234543213'],
    ['(01)0952123454321', '(01)', '14 figures'],
    ['(17)261331', '(17)', 'year, month and day, as 261231'],
    ['(99)x', '(99)', 'one of 00'],
    ['(10)', '(10)', '1 to 20 letters'],
    ['(10)a b', '(10)', '1 to 20 letters'],
    ['(21)A(21)B', '(21)', 'A'],
    ['9912', '', 'an element that begins with 00'],
    ['', '', 'an element string'],
    ['(1)2', '', 'two to four figures'],
    ['https://example.com/21/5', '', '/01/'],
    ['https://example.com/01/09521234543213/21/A/10/B', '', 'in this order'],
    ['https://example.com/01/09521234543213/10/%', '', 'in this order'],
    [`(10)${'x'.repeat(3_000)}`, '', 'at most 2048 letters'],
  ])('%j is refused', (text, path, expected) => {
    const answer = read(text);
    expect(answer.ok).toBe(false);
    if (answer.ok) return;
    expect(answer.problems[0]?.path).toBe(path);
    expect(answer.problems[0]?.expected).toContain(expected);
  });
});

/** From memory (GS1 General Specifications, 7.12): 49 years back, 50 on. */
test.each([
  ['260101', 2026, '2026-01-01'],
  ['770101', 2026, '1977-01-01'],
  ['760101', 2026, '2076-01-01'],
  ['010101', 2099, '2101-01-01'],
  ['240200', 2026, '2024-02-29'],
  ['250230', 2026, null],
])('%s read in %d', (text, year, day) => expect(dayOf(text, year)).toBe(day));

describe('laws', () => {
  test('one wrong figure in a key is always found', () => {
    const body = fc.stringMatching(/^\d{13}$/);
    fc.assert(
      fc.property(body, fc.nat(13), fc.integer({ min: 1, max: 9 }), (text, at, by) => {
        const key = `${text}${checkDigit(text)}`;
        const wrong = [...key]
          .map((c, i) => (i === at ? String((Number(c) + by) % 10) : c))
          .join('');
        expect(isKey(key)).toBe(true);
        expect(isKey(wrong)).toBe(false);
      }),
      { numRuns: runs, seed: 51_001 },
    );
  });

  test('what is written in either form reads the same, and reading never throws', () => {
    const value = fc.stringMatching(/^[A-Z0-9-]{1,20}$/);
    fc.assert(
      fc.property(value, value, fc.nat(99_999_999), (batch, serial, count) => {
        const brackets = `(01)09521234543213(10)${batch}(21)${serial}(37)${count}`;
        const figures = `0109521234543213${'10'}${batch}${GS}21${serial}${GS}37${count}`;
        expect(read(brackets)).toEqual(read(figures));
        expect(read(brackets)).toMatchObject({ scanned: { batch, serial, count } });
      }),
      { numRuns: runs, seed: 51_002 },
    );
    fc.assert(
      fc.property(fc.string({ maxLength: 60 }), (text) => {
        expect(typeof read(text).ok).toBe('boolean');
      }),
      { numRuns: runs, seed: 51_003 },
    );
  });

  test('no element is the beginning of another, so that figures split in one way', () => {
    for (const one of ELEMENTS) {
      const others = ELEMENTS.filter(({ ai }) => ai !== one.ai && ai.startsWith(one.ai));
      expect(others).toEqual([]);
    }
  });
});
