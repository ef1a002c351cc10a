// A person's units: conversions against figures published or exact by definition, and laws.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  amountOf,
  besideIn,
  inAsked,
  keyedIn,
  OWN_UNITS,
  type OwnDimension,
  ownUnit,
  readKeyed,
} from './own-units.ts';
import { convert, knownUnit } from './units.ts';

const IMPERIAL = {
  pressure: '[psi]',
  temperature: '[degF]',
  length: '[in_i]',
  torque: '[lbf_av].[ft_i]',
  'volume flow': '[gal_us]/min',
} as const;

describe('the unit for a figure', () => {
  test('is the person’s where it is of one that can be chosen', () => {
    expect(ownUnit('N·m', IMPERIAL)?.symbol).toBe('lbf·ft');
    expect(ownUnit('bar', IMPERIAL)?.code).toBe('[psi]');
    expect(ownUnit('°C', IMPERIAL)?.code).toBe('[degF]');
  });

  test.each(['K', 'h', '1/min', 'm', 'MPa', 'strokes', ''])('stays as asked for "%s"', (asked) => {
    expect(ownUnit(asked, IMPERIAL)).toBeNull();
  });

  test('stays as asked where it is the same, none is chosen, or the chosen one is unknown', () => {
    expect(ownUnit('psi', IMPERIAL)).toBeNull();
    expect(ownUnit('bar', {})).toBeNull();
    expect(ownUnit('bar', { pressure: 'fathom' })).toBeNull();
  });
});

test('what is keyed in is kept in the unit that was asked', () => {
  expect(inAsked('68', knownUnit('[degF]'), 'Cel')).toBe(20);
  expect(inAsked('1', knownUnit('[in_i]'), 'mm')).toBe(25.4);
  expect(inAsked('23.2', knownUnit('[psi]'), 'bar')).toBeCloseTo(1.5996, 4);
  expect(inAsked('x', knownUnit('[psi]'), 'bar')).toBeNull();
});

test('an answer carries the unit it was keyed in, and the act what was typed', () => {
  const answer = keyedIn('23.2', ownUnit('bar', IMPERIAL));
  expect(answer).toBe('23.2 [psi]');
  expect(amountOf(answer)).toBe('23.2');
  expect(readKeyed(answer, 'bar').value).toBeCloseTo(1.5996, 4);
  expect(readKeyed(answer, 'bar').typed).toBe('23.2 psi');
  expect(readKeyed('23. [psi]', 'bar').value).toBeCloseTo(1.5858, 4);
  expect(readKeyed('1.6', 'bar')).toEqual({ value: 1.6, typed: null });
  expect(keyedIn('1.6', ownUnit('h', IMPERIAL))).toBe('1.6');
  expect(keyedIn('', ownUnit('bar', IMPERIAL))).toBe('');
});

// The factors are exact by definition and compared in units.test.ts with an independent
// implementation of UCUM; here only the rounding and the words are looked at.
test.each([
  ['48 N.m', '≈ 35.4 lbf·ft'],
  ['0.15 mm', '≈ 0.00591 in'],
  ['0.25 to 0.35 mm', '≈ 0.00984 … 0.0138 in'],
  ['96 Cel', '≈ 205 °F'],
  ['1750.5 N.m', '≈ 1291.1 lbf·ft'],
  ['−5 Cel', '≈ 23 °F'],
])('%s is shown with %s beside it', (shown, beside) => {
  expect(besideIn(shown, IMPERIAL)).toBe(beside);
});

test.each(['M10 8.8', '4 bolts', '0.1 mm per 100 mm', 'see the plate', '', '12 h', '35.4 lbf.ft'])(
  'nothing is said beside "%s"',
  (shown) => expect(besideIn(shown, IMPERIAL)).toBeNull(),
);

test('keyed in any unit that can be chosen, a figure comes back from the unit asked', () => {
  const dimensions = Object.keys(OWN_UNITS) as OwnDimension[];
  const pair = fc
    .constantFrom(...dimensions)
    .chain((name) =>
      fc.tuple(fc.constantFrom(...OWN_UNITS[name]), fc.constantFrom(...OWN_UNITS[name])),
    );
  fc.assert(
    fc.property(pair, fc.integer({ min: 1, max: 99_999 }), ([from, asked], tenths) => {
      const typed = String(tenths / 10);
      const kept = inAsked(typed, knownUnit(from), asked) ?? Number.NaN;
      expect(Math.abs(convert(kept, asked, from) - tenths / 10)).toBeLessThan(1e-6);
    }),
    { seed: 20260314, numRuns: 200 },
  );
});
