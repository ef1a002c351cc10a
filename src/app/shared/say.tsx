// In whose language this phone speaks: chosen by each person, kept on the device.

import { createContext, useContext, useMemo } from 'react';
import { type Sentence, teller } from '../../words/say.ts';
import { type Language, type Words, wordsOf } from '../../words/words.ts';
import { useKept } from './kept.ts';
import { useHolder } from './person.tsx';
import { LANGUAGE, languageFrom } from './words-now.ts';

export function useLanguage(): readonly [Language, (language: string) => void] {
  const { name } = useHolder();
  const [all] = useKept(LANGUAGE, 'en');
  const [own, keep] = useKept(`${LANGUAGE}${name}`, '');
  return [languageFrom(own, all), keep];
}

/** The words of the person who holds this phone. */
export function useWords(): Words {
  const [language] = useLanguage();
  return wordsOf(language);
}

/** What stands beside the sentences of the pack on this screen, so that they can be told again. */
export const Saying = createContext<readonly Sentence[] | undefined>(undefined);

export type Tell = (text: string) => string;

/**
 * What the core, a pack or an act says, in the language of who holds this phone. Names, and what a
 * person wrote, stay as they are.
 */
export function useTold(): Tell {
  const [language] = useLanguage();
  const known = useContext(Saying);
  return useMemo(() => {
    const { answers } = wordsOf(language);
    const tell = teller(language, known);
    return (text) => {
      const said = tell(text);
      const answer = Object.entries(answers).find(([kept]) => kept === text);
      return said === text && answer !== undefined ? answer[1] : said;
    };
  }, [language, known]);
}

/** The words of who holds the phone, and what the core says in the same language. */
export type Speaks = { readonly words: Words; readonly told: Tell };

export function useSpeaks(): Speaks {
  const words = useWords();
  const told = useTold();
  return useMemo(() => ({ words, told }), [words, told]);
}
