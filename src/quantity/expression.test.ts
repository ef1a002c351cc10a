// The evaluator of workings: arithmetic as on paper; what does not come out is caught.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluate, recheckWorking } from './expression.ts';
import type { WorkingRow } from './types.ts';

const symbols = new Map([
  ['T', 80],
  ['L', 400],
  ['E', 50],
  ['μ_G', 0.12],
  ["d'", 3],
]);

test.each([
  ['1 + 2 * 3', 7],
  ['(1 + 2) * 3', 9],
  ['8 / 4 / 2', 1],
  ['7 - 4 - 2', 1],
  ['-2^2', -4],
  ['(-2)^2', 4],
  ['2^-1', 0.5],
  ['2^3^2', 512],
  ['2 * -3', -6],
  ['--3', 3],
  ['1.5e3 + .5', 1500.5],
  ['T*L/(L+E)', (80 * 400) / 450],
  ['T·L/(L + E·cos(pi/2))', 80],
  ['μ_G × 2 − 0.04', 0.2],
  ["d' + 1", 4],
  ['sqrt(9) + abs(-1) + exp(0) + ln(1)', 5],
  ['min(3, 1, 2) + max(3, 1, 2)', 4],
  ['sin(0) + tan(0)', 0],
])('%s', (expression, expected) => {
  expect(evaluate(expression, symbols)).toBeCloseTo(expected, 12);
});

test.each([
  ['', /end/],
  ['1 +', /end/],
  ['(1', /"\)"/],
  ['1 2', /left over/],
  ['2 $ 3', /can't be read/],
  ['Q + 1', /no value/],
  ['constructor', /no value/],
  ['toString(1)', /not known/],
  ['sqrt(1, 2)', /one figure/],
  [`${'('.repeat(500)}1${')'.repeat(500)}`, /deeply/],
  [`2${'^2'.repeat(500)}`, /deeply/],
  ['1+'.repeat(5000), /too long/],
])('%s is refused', (expression, why) => {
  expect(() => evaluate(expression, symbols)).toThrow(why);
});

type Sum = { readonly text: string; readonly value: number };
const pair = (left: Sum, right: Sum, sign: string): Sum => ({
  text: `(${left.text} ${sign} ${right.text})`,
  value:
    sign === '+'
      ? left.value + right.value
      : sign === '-'
        ? left.value - right.value
        : left.value * right.value,
});

test('agrees with arithmetic done while the text was made (generated, seed 20261125)', () => {
  const leaf = fc.integer({ min: 0, max: 99 }).map((n): Sum => ({ text: `${n}`, value: n }));
  const { sum } = fc.letrec<{ sum: Sum }>((tie) => ({
    sum: fc.oneof(
      { maxDepth: 6, depthSize: 'medium' },
      leaf,
      fc.tuple(tie('sum'), tie('sum'), fc.constantFrom('+', '-', '*')).map((t) => pair(...t)),
    ),
  }));
  const law = fc.property(sum, ({ text, value }) => evaluate(text) === value);
  fc.assert(law, { seed: 20261125, numRuns: process.env.LONG ? 10_000 : 1_000 });
});

const row = (symbol: string, expression: string, value: number): WorkingRow => ({
  symbol,
  text: symbol,
  expression,
  value,
  unit: '1',
  source: { kind: 'computed', by: 'test' },
});

test('a working that comes out has no problem', () => {
  expect(recheckWorking([row('a', '2', 2), row('b', 'a * 3', 6)])).toEqual([]);
});

test('a figure that does not follow from its expression is named', () => {
  const problems = recheckWorking([row('a', '2', 2), row('b', 'a * 3', 6.001)]);
  expect(problems).toHaveLength(1);
  expect(problems[0]).toMatchObject({ path: 'working/1/b', got: 6.001, expected: '6' });
});

test('a symbol used before it has a value is named', () => {
  expect(recheckWorking([row('b', 'a * 3', 6), row('a', '2', 2)])[0]?.why).toMatch(/"a"/);
});
