// Numbers read back in words, against words written by hand.

import { expect, test } from 'vitest';
import { wordsOf } from '../../words/words.ts';
import { dayWords, numberWords, unitWords } from './words.ts';

const [en, es] = [wordsOf('en'), wordsOf('es')];

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
  expect(numberWords(typed, en)).toBe(words);
});

test.each([
  ['0', 'cero'],
  ['16', 'dieciséis'],
  ['21', 'veintiuno'],
  ['31', 'treinta y uno'],
  ['100', 'cien'],
  ['101', 'ciento uno'],
  ['555', 'quinientos cincuenta y cinco'],
  ['1000', 'mil'],
  ['1750', 'mil setecientos cincuenta'],
  ['21371.5', 'veintiún mil trescientos setenta y uno coma cinco'],
  ['31000', 'treinta y un mil'],
  ['101000', 'ciento un mil'],
  ['-0.15', 'menos cero coma uno cinco'],
])('in Spanish %s is read back as "%s"', (typed, words) => {
  expect(numberWords(typed, es)).toBe(words);
});

test('a unit is read back whichever way it was written', () => {
  expect(unitWords('N·m', en)).toBe('newton metres');
  expect(unitWords('rpm', en)).toBe('turns a minute');
  expect(unitWords('Cel', es)).toBe('grados Celsius');
  expect(unitWords('strokes', en)).toBe('strokes');
});

test.each(['', '.', '-', '1.2.3', '1e3', 'ten'])('"%s" is not read back as a number', (typed) => {
  expect(numberWords(typed, en)).toBeNull();
});

test('a day is written as people say it', () => {
  expect(dayWords('2026-03-14T08:00:00Z', en)).toBe('14 March 2026');
  expect(dayWords('2026-03-14T08:00:00Z', es)).toBe('14 de marzo de 2026');
  expect(dayWords('soon', en)).toBe('soon');
  expect(dayWords('2026-13-01', en)).toBe('2026-13-01');
});
