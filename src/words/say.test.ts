// Sentences as data: told word for word, never another than the English text that stands there.

import { describe, expect, test } from 'vitest';
import { CAUTIONS } from '../quantity/authority.ts';
import { englishSentences } from './en/sentences.ts';
import { spanishSentences } from './es/sentences.ts';
import { heard, inLanguage, now, say } from './heard.ts';
import { english, knownIn, newSpeech, type Sentence, saidIn, sentence, tell } from './say.ts';

const tables = [englishSentences, spanishSentences] as const;

describe('the tables', () => {
  test('a sentence takes as much in Spanish as in English, and neither is empty', () => {
    for (const [key, one] of Object.entries(englishSentences)) {
      const other = (spanishSentences as Record<string, unknown>)[key];
      expect(typeof other, key).toBe(typeof one);
      if (typeof one === 'string') expect(one === '' || other === '', key).toBe(false);
    }
  });

  test('of one English text only one Spanish one is told, where the text is looked up', () => {
    const first = new Map<string, string>();
    const differ: string[] = [];
    for (const [key, one] of Object.entries(tables[0])) {
      if (typeof one !== 'string') continue;
      const other = String((spanishSentences as Record<string, unknown>)[key]);
      const before = first.get(one);
      if (before === undefined) first.set(one, other);
      else if (before !== other) differ.push(`${one}: ${before} / ${other}`);
    }
    // Said by their keys only, as a heading or between two lines to write on.
    expect(differ.sort()).toEqual(SAID_BY_KEY);
  });

  test('every caution and what must be verified stands in both', () => {
    for (const { text, verify } of Object.values(CAUTIONS))
      for (const line of [text, verify]) expect(tell(line, 'es')).not.toBe(line);
  });
});

const SAID_BY_KEY: readonly string[] = ['on: conectado / el'];

describe('a sentence in a document', () => {
  const undo = sentence('undo', 'Pump mounting', '6 nuts', false, null, null);
  const text = english(undo);

  test('is told from what came with it, names as they are', () => {
    expect(text).toBe('Pump mounting: undo 6 nuts.');
    expect(tell(text, 'en', knownIn([undo]))).toBe(text);
    expect(tell(text, 'es', knownIn([undo]))).toBe('Pump mounting: soltar 6 nuts.');
  });

  test('what it speaks of is told too, where that was said', () => {
    const speech = newSpeech();
    const nuts = speech.say('ofThread', 'nuts', 'M10');
    const line = speech.say('undo', 'Pump', speech.say('counted', 6, nuts), false, null, null);
    const said = saidIn({ line }, speech.said);
    expect(tell(line, 'es', knownIn(said))).toBe('Pump: soltar 6 tuercas M10.');
  });

  test('another English than what stands there is never told', () => {
    expect(tell('Pump mounting: undo 4 nuts.', 'es', knownIn([undo]))).toBe(
      'Pump mounting: undo 4 nuts.',
    );
    expect(tell('something else', 'es', undefined, undo)).toBe('something else');
  });

  test('without what was said, or of an unknown sentence, the English stands', () => {
    expect(tell(text, 'es')).toBe(text);
    const unknown = { key: 'from-a-later-version', args: ['x'] };
    expect(tell('from-a-later-version', 'es', knownIn([unknown]))).toBe('from-a-later-version');
  });

  test('what can’t be made into a sentence does no harm', () => {
    const odd: Sentence[] = [
      { key: 'howLong', args: [5] },
      { key: 'undo', args: [] },
      { key: 'constructor', args: [] },
      { key: 'toString', args: ['x'] },
    ];
    for (const one of odd) expect(() => tell(english(one), 'es', knownIn([one]))).not.toThrow();
    let deep: Sentence = { key: 'and', args: [['a', 'b']] };
    for (let i = 0; i < 100; i++) deep = { key: 'and', args: [[deep, 'b']] };
    expect(() => tell(english(deep), 'es', knownIn([deep]))).not.toThrow();
  });

  test('a list of one says no more than that one', () => {
    const speech = newSpeech();
    expect(speech.say('listed', ['48 N.m'])).toBe('48 N.m');
    expect(speech.said.size).toBe(0);
  });
});

describe('hearing what is said', () => {
  const work = () => ({ what: say('jointUndone', 'Cover'), name: 'Cover' });

  test('keeps what stands in the result, and nothing of before or elsewhere', () => {
    say('jointUndone', 'Flange');
    const first = heard(work);
    expect(first.said).toEqual([{ key: 'jointUndone', args: ['Cover'] }]);
    expect(heard(work)).toEqual(first);
    expect(heard(() => ({})).said).toEqual([]);
  });

  test('one within another is heard in both', () => {
    const outer = heard(() => ({ inner: heard(work).value }));
    expect(outer.said).toEqual([{ key: 'jointUndone', args: ['Cover'] }]);
  });

  test('after a failure nobody listens on', () => {
    expect(() =>
      heard(() => {
        throw new Error('no');
      }),
    ).toThrow('no');
    expect(heard(work).said).toHaveLength(1);
  });

  test('a sheet is made in a language, and English comes back after it', () => {
    const { said } = heard(work);
    expect(inLanguage('es', said, () => now('Cover: undone'))).toBe('Cover: suelta');
    expect(inLanguage('es', said, () => say('openCount', 3))).toBe('3 pendientes');
    expect(now('Cover: undone')).toBe('Cover: undone');
  });
});
