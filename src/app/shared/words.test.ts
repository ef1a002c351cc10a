// Numbers read back in words, against words written by hand.

import { expect, test } from 'vitest';
import { dayWords, numberWords } from './words.ts';

test.each([
  ['0', 'nought'],
  ['7', 'seven'],
  ['15', 'fifteen'],
  ['42', 'forty-two'],
  ['100', 'one hundred'],
  ['408', 'four hundred and eight'],
  ['1005', 'one thousand and five'],
  ['1750', 'one thousand seven hundred and fifty'],
  ['21340', 'twenty-one thousand three hundred and forty'],
  ['0.15', 'nought point one five'],
  ['-12.50', 'minus twelve point five nought'],
  ['3.', 'three'],
])('%s is read back as "%s"', (typed, words) => {
  expect(numberWords(typed)).toBe(words);
});

test.each(['', '.', '-', '1.2.3', '1e3', 'ten'])('"%s" is not read back as a number', (typed) => {
  expect(numberWords(typed)).toBeNull();
});

test('a day is written as people say it', () => {
  expect(dayWords('2026-03-14T08:00:00Z')).toBe('14 March 2026');
  expect(dayWords('soon')).toBe('soon');
});
