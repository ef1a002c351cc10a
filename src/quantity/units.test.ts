// Every unit against an independent implementation of UCUM, and the spellings of people.

import { UcumLhcUtils } from '@lhncbc/ucum-lhc';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { convert, convertSpan, plainSpelling, unitOf, units, unitsLike } from './units.ts';

const oracle = UcumLhcUtils.getInstance();

function byOracle(value: number, from: string, to: string): number {
  const { status, toVal } = oracle.convertUnitTo(from, value, to);
  if (status !== 'succeeded' || toVal === null) throw new Error(`${from} to ${to}: ${status}`);
  return toVal;
}

const pairs = units.flatMap((from) => unitsLike(from).map((to) => [from.code, to.code] as const));

describe('every conversion agrees with @lhncbc/ucum-lhc 7.1.10 (UCUM)', () => {
  test.each(pairs)('%s to %s', (from, to) => {
    for (const value of [0, 1, 7.5, 1234.5]) {
      const expected = byOracle(value, from, to);
      expect(Math.abs(convert(value, from, to) - expected)).toBeLessThanOrEqual(
        1e-10 * Math.max(1, Math.abs(expected)),
      );
    }
  });
});

test('the library accepts every code of the table as UCUM', () => {
  for (const { code } of units) expect(oracle.validateUnitString(code).status, code).toBe('valid');
});

test('figures of the units note: 50 lbf·ft, 30 psi, 68 °F', () => {
  expect(convert(50, 'lbf·ft', 'N.m')).toBeCloseTo(67.790897, 6);
  expect(convert(30, 'psi', 'bar')).toBeCloseTo(2.068427, 6);
  expect(convert(68, '°F', 'Cel')).toBe(20);
});

test.each([
  ['N·m', 'N.m'],
  ['N m', 'N.m'],
  ['Nm', 'N.m'],
  ['lbf·ft', '[lbf_av].[ft_i]'],
  ['ft·lbf', '[lbf_av].[ft_i]'],
  ['lbf·in', '[lbf_av].[in_i]'],
  ['kgf·m', 'kgf.m'],
  ['in', '[in_i]'],
  ['°C', 'Cel'],
  ['℃', 'Cel'],
  ['l/min', 'L/min'],
  ['l / min', 'L/min'],
  ['rpm', '1/min'],
  ['psi', '[psi]'],
  ['lb', '[lb_av]'],
  ['ft', '[ft_i]'],
  ['°F', '[degF]'],
  ['K', 'K'],
  ['gal/min', '[gal_us]/min'],
  ['m³/h', 'm3/h'],
  ['N/mm²', 'N/mm2'],
  ['µm', 'um'],
])('the spelling "%s" means %s', (spelling, code) => {
  expect(unitOf(spelling)?.code).toBe(code);
});

test('capital letters matter, and a pound of torque without "f" is not guessed', () => {
  expect(unitOf('MPa')?.code).toBe('MPa');
  expect(unitOf('mpa')).toBeUndefined();
  expect(unitOf('lb·ft')).toBeUndefined();
  expect(unitOf('furlong')).toBeUndefined();
});

test('a torque does not turn into an energy, nor a spread take an offset', () => {
  expect(() => convert(1, 'N.m', 'J')).toThrow(/torque/);
  expect(() => convertSpan(1, 'N.m', 'J')).toThrow();
  expect(convertSpan(1.8, '°F', 'Cel')).toBe(1);
});

test('there and back is the same number (generated, seed 20261125)', () => {
  const anyPair = fc.constantFrom(...pairs);
  const anyValue = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  const law = fc.property(anyPair, anyValue, ([from, to], value) => {
    const back = convert(convert(value, from, to), to, from);
    return Math.abs(back - value) <= 1e-9 * Math.max(1, Math.abs(value));
  });
  fc.assert(law, { seed: 20261125, numRuns: process.env.LONG ? 20_000 : 2_000 });
});

test('plain spelling is settled: spelling it again changes nothing', () => {
  for (const { code, symbol, spellings } of units) {
    for (const name of [code, symbol, ...spellings]) {
      expect(plainSpelling(plainSpelling(name))).toBe(plainSpelling(name));
    }
  }
});
