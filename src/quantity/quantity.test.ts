// What people type as a figure: read, kept as typed, refused with a reason, printed short.

import { describe, expect, test } from 'vitest';
import { formatNumber, formatQuantity, readQuantity } from './quantity.ts';

function value(input: unknown, unit: string) {
  const read = readQuantity(input, unit, 'x');
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.quantity;
}

function problem(input: unknown, unit: string) {
  const read = readQuantity(input, unit, 'wrench/torque');
  return read.ok ? undefined : read.problems[0];
}

test.each([
  ['48 N.m', 'N.m', 48],
  ['48N·m', 'N.m', 48],
  ['9.5 bar', 'kPa', 950],
  ['41 kg', 'kg', 41],
  ['12 min', 's', 720],
  ['-2.5 °C', 'Cel', -2.5],
  ['−2.5 °C', 'Cel', -2.5],
  ['1.2e3 Pa', 'kPa', 1.2],
  ['1450 rpm', '1/min', 1450],
  ['0.12', '1', 0.12],
  ['12 %', '1', 0.12],
  [48, 'N.m', 48],
])('%s in %s is %d', (input, unit, expected) => {
  expect(value(input, unit)).toMatchObject({ value: expected, unit });
});

test('what was typed is kept: 35.4 lbf·ft stays 35.4 lbf·ft', () => {
  const torque = value('35.4 lbf·ft', 'N.m');
  expect(torque.given).toBe('35.4 lbf·ft');
  expect(torque.value).toBeCloseTo(47.996, 3);
  expect(formatQuantity(torque)).toBe('35.4 lbf·ft (48 N·m)');
  expect(value(48, 'N.m')).not.toHaveProperty('given');
});

test('an uncertainty is carried, in the unit asked for; expanded is divided by k', () => {
  expect(value({ value: 9.5, unit: 'bar', u: 0.1 }, 'kPa')).toMatchObject({ value: 950, u: 10 });
  expect(value({ value: 68, unit: '°F', expanded: 3.6, k: 2 }, 'Cel')).toMatchObject({
    value: 20,
    u: 1,
  });
});

test.each([
  ['48', 'N.m', /unit is missing/],
  ['48 J', 'N.m', /unit of energy/],
  ['48 Nmm', 'N.m', /no unit known/],
  ['9,5 bar', 'bar', /comma/],
  ['1,000 h', 'h', /comma/],
  ['about 48 N.m', 'N.m', /begin with a number/],
  ['', 'N.m', /begin with a number/],
  ['12.5.3 mm', 'mm', /begin with a number/],
  [Number.NaN, 'N.m', /finite/],
  [Number.POSITIVE_INFINITY, 'N.m', /finite/],
  ['1e999 Pa', 'Pa', /finite/],
  [null, 'N.m', /neither/],
  [undefined, 'N.m', /neither/],
  [[48], 'N.m', /neither/],
  [true, 'N.m', /neither/],
  [{ value: 48 }, 'N.m', /both needed/],
  [{ value: 48, unit: 'N.m', expanded: 1 }, 'N.m', /belong together/],
  [{ value: 48, unit: 'N.m', u: 1, expanded: 1, k: 2 }, 'N.m', /twice/],
  [{ value: 48, unit: 'N.m', u: -1 }, 'N.m', /below nought/],
  [{ value: 48, unit: 'N.m', expanded: 1, k: 0 }, 'N.m', /below nought/],
  [{ value: '48', unit: 'N.m' }, 'N.m', /not a number/],
  [{ value: 48, unit: 'N.m', spread: 1 }, 'N.m', /not known/],
  [`48 ${'m'.repeat(1000)}`, 'm', /too long/],
])('%j in %s is refused with a reason', (input, unit, why) => {
  const found = problem(input, unit);
  expect(found?.why).toMatch(why);
  expect(found?.path).toMatch(/^wrench\/torque/);
  expect(found?.expected).not.toBe('');
});

test('the problem names the units that would do', () => {
  expect(problem('48 J', 'N.m')?.expected).toContain('lbf·ft');
});

describe('few digits for the eye', () => {
  test.each([
    [48.0012, 3, '48'],
    [47.996, 4, '48'],
    [1450.4, 3, '1450'],
    [0.0012345, 3, '0.00123'],
    [99.96, 3, '100'],
    [999.96, 3, '1000'],
    [-2.5, 3, '-2.5'],
    [0, 3, '0'],
    [1e-9, 3, '1.00e-9'],
    [123456789, 3, '123456789'],
  ])('%d with %d digits is %s', (number, digits, shown) => {
    expect(formatNumber(number, digits)).toBe(shown);
  });

  test('no NaN or Infinity is ever shown', () => {
    expect(() => formatNumber(Number.NaN)).toThrow(/shown/);
    expect(() => formatNumber(Number.POSITIVE_INFINITY)).toThrow(/shown/);
  });

  test('units are printed with their sign, a ratio without, a spread with its k', () => {
    expect(formatQuantity({ value: 9.5, unit: 'bar' })).toBe('9.5 bar');
    expect(formatQuantity({ value: 48, unit: 'N.m', given: '48 N.m' })).toBe('48 N·m');
    expect(formatQuantity({ value: 0.12, unit: '1' })).toBe('0.12');
    expect(formatQuantity({ value: 90, unit: 'deg' })).toBe('90°');
    expect(formatQuantity({ value: 950, unit: 'kPa', u: 5 })).toBe('950 ± 10 kPa (k = 2)');
  });
});
