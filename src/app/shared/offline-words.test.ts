// The words a phone without signal shows, against sentences written by hand.

import { expect, test } from 'vitest';
import { wordsOf } from '../../words/words.ts';
import { notKeptWords, startWords, unsentWords } from './offline-words.ts';

const en = wordsOf('en');

test.each([
  [0, 0, null],
  [1, 0, '1 act on this phone only, not yet sent'],
  [7, 0, '7 acts on this phone only, not yet sent'],
  [0, 1, '1 photo on this phone only, not yet sent'],
  [7, 2, '7 acts and 2 photos on this phone only, not yet sent'],
])('%i acts and %i photos', (acts, photos, words) => {
  expect(unsentWords({ acts, photos }, en)).toBe(words);
});

test('over plain HTTP it says what is missing and what still holds', () => {
  const words = startWords({ secure: false, worker: false }, en);
  expect(words).toContain('No start without signal on this phone: not a secure connection.');
  expect(words).toContain('Keep this page open');
  expect(startWords({ secure: true, worker: false }, en)).toContain('its browser keeps no app');
  expect(startWords({ secure: true, worker: true }, en)).toBeNull();
});

test('a failed write is told by its cause', () => {
  const named = (name: string) => Object.assign(new Error('details'), { name });
  const full = 'this phone is full: free some space, then say it again';
  expect(notKeptWords(named('QuotaExceededError'), en)).toBe(full);
  const aborted = Object.assign(named('AbortError'), { inner: named('QuotaExceededError') });
  expect(notKeptWords(aborted, en)).toBe(full);
  expect(notKeptWords(named('MissingAPIError'), en)).toContain('a private window');
  expect(notKeptWords(named('DataError'), en)).toContain('(details)');
});
