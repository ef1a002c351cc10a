// What is put into an act: figures in the unit asked, and as typed where that was another.

import { expect, test } from 'vitest';
import type { Ask } from '../../pack/types.ts';
import { answersIn } from './draft.ts';

const PRESSURE: Ask = { name: 'pressure', label: 'Pump pressure', kind: 'number', unit: 'bar' };
const COUNT: Ask = { name: 'count', label: 'Came out', kind: 'count', expected: 2 };
const SEEN: Ask = { name: 'text', label: 'Seen', kind: 'text' };

test('a figure keyed in the unit asked is a number and nothing else', () => {
  expect(answersIn([PRESSURE, COUNT], { pressure: '1.6', count: '2' })).toEqual({
    pressure: 1.6,
    count: 2,
  });
});

test('one keyed in another unit is kept in the unit asked, beside what was typed', () => {
  // 23.2 × 0.45359237 × 9.80665 / 0.0254² = 159 958.4 Pa, by hand.
  const body = answersIn([PRESSURE], { pressure: '23.2 [psi]' });
  expect(Number(body.pressure)).toBeCloseTo(1.599584, 6);
  expect(body.typed).toEqual(['Pump pressure: 23.2 psi']);
});

test('words stay as they are, and what was not said is left out', () => {
  expect(answersIn([SEEN, PRESSURE], { text: '23.2 [psi]', pressure: ' ' })).toEqual({
    text: '23.2 [psi]',
  });
});
