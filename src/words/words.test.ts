// The words of the screens: all in this room, the same in every language, none left untold.

import { describe, expect, test } from 'vitest';
import { repositoryFiles } from '../testing/sources.ts';
import { isScreen, spokenIn } from '../testing/spoken.ts';
import { englishSentences } from './en/sentences.ts';
import { LANGUAGES, type Language, wordsOf } from './words.ts';

type Leaf = string | ((...given: never[]) => unknown);

/** Every word by its path, texts and functions alike. */
function leaves(words: object, path = ''): ReadonlyMap<string, Leaf> {
  const rows = Object.entries(words).flatMap(([name, value]: [string, unknown]) => {
    const at = path === '' ? name : `${path}/${name}`;
    if (typeof value === 'string' || typeof value === 'function') return [[at, value as Leaf]];
    return [...leaves(value as object, at)];
  });
  return new Map(rows as [string, Leaf][]);
}

const en = leaves(wordsOf('en'));
const others = (Object.keys(LANGUAGES) as Language[]).filter((each) => each !== 'en');

/** Written the same in both languages. */
const SAME = new Set(['no', 'valor', 'ángulo', 'error', 'bar', 'vertical', 'horizontal']);
/** Signs around names and figures: nothing in them to put in another language. */
const ONLY_SIGNS = /^[^\p{L}]*$/u;

/** A name where one is taken; a word that wants a figure is given one. */
function called(word: Leaf | undefined, sample: string | number = 'Ysolde'): string {
  if (typeof word !== 'function') return word ?? '';
  const given = (one: string | number) => Array.from({ length: word.length }, () => one as never);
  try {
    return String(word(...given(sample)));
  } catch {
    return String(word(...given(typeof sample === 'string' ? 3 : 'Ysolde')));
  }
}

const strange = (text: string): boolean => /undefined|NaN|\[object|\$\{/.test(text);

describe.each(others)('the words in "%s"', (language) => {
  const other = leaves(wordsOf(language));

  test('are there for every English one, and no more', () => {
    expect([...other.keys()].sort()).toEqual([...en.keys()].sort());
    expect(other.size).toBeGreaterThan(300);
  });

  test('take the same number of names and figures', () => {
    const given = (word: Leaf | undefined) => (typeof word === 'function' ? word.length : 0);
    const wrong = [...en].filter(([path, word]) => given(word) !== given(other.get(path)));
    expect(wrong.map(([path]) => path)).toEqual([]);
  });

  test('are no longer English', () => {
    const untold = [...en].filter(([path, word]) => {
      const text = called(word);
      const rest = text.replaceAll('Ysolde', '');
      return called(other.get(path)) === text && !ONLY_SIGNS.test(rest);
    });
    const left = untold.filter(([, word]) => !SAME.has(called(word)));
    expect(left.map(([path, word]) => `${path}: ${called(word)}`)).toEqual([]);
  });

  test('keep every name they are given', () => {
    const lost = [...en].filter(([path, word]) => {
      const names = (text: string) => text.includes('Ysolde');
      return names(called(word)) !== names(called(other.get(path)));
    });
    expect(lost.map(([path]) => path)).toEqual([]);
  });
});

test.each(Object.keys(LANGUAGES) as Language[])(
  'in "%s" no word is empty or broken',
  (language) => {
    const bad = [...leaves(wordsOf(language))].flatMap(([path, word]) =>
      [1, 3].flatMap((sample) => {
        const text = called(word, sample);
        return text.trim() === '' || strange(text) ? [`${path}: ${text}`] : [];
      }),
    );
    expect(bad).toEqual([]);
  },
);

/** Keys of these words and fixed words of the core: kept in acts in English, told on the screen. */
const kept = new Set<string>([
  ...[...en].flatMap(([path, word]) => [
    ...path.split('/'),
    ...(path.startsWith('answers') ? [String(word)] : []),
  ]),
  ...Object.values(englishSentences).filter((each) => typeof each === 'string'),
]);

/** No word: keys of the device's own table, and a choice that stands for none of the names. */
const NO_WORD = ['hash, unsent', '(another name)'];

describe('the screens', () => {
  const screens = repositoryFiles().filter(isScreen);

  test('are read', () => expect(screens.length).toBeGreaterThan(50));

  test('hold no text of their own', () => {
    const own = screens.flatMap(spokenIn);
    const left = own.filter(({ text }) => !kept.has(text) && !NO_WORD.includes(text));
    expect(left.map(({ at, text }) => `${at}: ${text}`)).toEqual([]);
  });

  test.each([
    ['a text', '<p>Nothing is open.</p>'],
    ['a text before a figure', '<p>Speeds: {list}</p>'],
    ['a text on its own line', '<p>\n  Ready in the proof: \n{n}</p>'],
    ['a word on its own line', '<Main>\n  Done\n</Main>'],
    ['a label', '<Field label="why" />'],
    ['a spoken label', '<a aria-label="sheets">x</a>'],
    ['an answer of two', "const a = open ? 'still open' : x;"],
    ['a template', 'const a = `closed by $' + '{name}`;'],
    ['a word with a capital', "const a = ready ? 'Done' : x;"],
  ])('%s is found', (_, text) => {
    expect(spokenIn({ path: 'src/app/a.tsx', text })).not.toEqual([]);
  });

  test.each([
    '<p className="step small">{w.open}</p>',
    "import { a } from './Some Place.ts';",
    'const f = (a: number) => a > 1 && b < 2;',
    "const a = { kind: 'job-started', 'two-words': x };",
    '// Nothing is open.',
  ])('%s is no text', (text) => expect(spokenIn({ path: 'src/app/a.tsx', text })).toEqual([]));
});
