// The form of each calculation is read from its schema, and an example put through it is the same.

import { describe, expect, test } from 'vitest';
import { inputJsonSchema, listCalculations } from '../../calc/register.ts';
import { type Field, fieldOf, joinFigure, splitFigure, wayOf } from './fields.ts';

/** The names a form would ask for under an example, walked with the value. */
function reached(field: Field, value: unknown, path: string): string[] {
  switch (field.kind) {
    case 'group':
      return Object.entries(value as object).flatMap(([name, each]) => {
        const row = field.rows.find((one) => one.name === name);
        return row === undefined ? [`${path}/${name}: not asked`] : reached(row.field, each, name);
      });
    case 'list':
      return (value as unknown[]).flatMap((each) => reached(field.of, each, path));
    case 'either': {
      const way = field.ways[wayOf(field.ways, value)];
      return way === undefined ? [`${path}: no way`] : reached(way.field, value, path);
    }
    default:
      return [];
  }
}

describe.each(
  listCalculations()
    .filter((one) => !one.needsSolver)
    .map((one) => [one.name, one] as const),
)('%s', (_, one) => {
  test('every field of its example has a place in the form', () => {
    const field = fieldOf(inputJsonSchema(one));
    expect(field.kind).not.toBe('free');
    expect(reached(field, one.example, '')).toEqual([]);
  });
});

test.each([
  ['48 N.m', 'N.m', '48', 'N.m'],
  [48, 'N.m', '48', 'N.m'],
  ['35.4 lbf.ft', 'N.m', '35.4', 'lbf.ft'],
  [{ value: 3, unit: 'mm' }, 'mm', '3', 'mm'],
  [undefined, 'mm', '', 'mm'],
  ['much lbf.ft', 'N.m', 'much', 'lbf.ft'],
  ['-2 °C', 'Cel', '-2', '°C'],
])('the figure %j is split for the field and joined again', (value, own, amount, unit) => {
  const split = splitFigure(value, own);
  expect(split).toEqual({ amount, unit });
  const joined = joinFigure(split, own);
  expect(joined).toBe(amount === '' ? undefined : `${amount} ${unit}`);
});

test('a ratio stays a number, and an empty field leaves its figure out', () => {
  expect(joinFigure({ amount: '0.9', unit: '1' }, '1')).toBe(0.9);
  expect(joinFigure({ amount: ' ', unit: 'mm' }, 'mm')).toBeUndefined();
});
