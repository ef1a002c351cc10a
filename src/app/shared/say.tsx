// In whose language this phone speaks: chosen by each person, kept on the device.

import { createContext, type ReactNode, useCallback, useContext, useMemo } from 'react';
import { inLanguage } from '../../words/heard.ts';
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

const NOTHING: readonly Sentence[] = [];

/** What stands beside the sentences of the pack and the job on this screen, to tell them again. */
const Saying = createContext(NOTHING);

type SpeakingProps = {
  readonly said: readonly Sentence[] | undefined;
  readonly children: ReactNode;
};

/** Around what shows a document: its sentences are told as well as those around it. */
export function Speaking({ said, children }: SpeakingProps) {
  return <Saying value={useSaid(said)}>{children}</Saying>;
}

function useSaid(said: readonly Sentence[] = NOTHING): readonly Sentence[] {
  const around = useContext(Saying);
  return useMemo(() => (said.length === 0 ? around : [...around, ...said]), [around, said]);
}

export type Tell = (text: string) => string;

/**
 * What the core, a pack or an act says, in the language of who holds this phone. Names, and what a
 * person wrote, stay as they are.
 */
export function useTold(also?: readonly Sentence[]): Tell {
  const [language] = useLanguage();
  const said = useSaid(also);
  return useMemo(() => {
    if (language === 'en') return (text) => text;
    const { answers } = wordsOf(language);
    const tell = teller(language, said);
    return (text) => {
      const told = tell(text);
      const answer = Object.entries(answers).find(([kept]) => kept === text);
      return told === text && answer !== undefined ? answer[1] : told;
    };
  }, [language, said]);
}

/** The words of who holds the phone, and what the core says in the same language. */
export type Speaks = { readonly words: Words; readonly told: Tell };

export function useSpeaks(): Speaks {
  const words = useWords();
  const told = useTold();
  return useMemo(() => ({ words, told }), [words, told]);
}

export type Make = <T>(make: () => T) => T;

/** Makes a drawing, whose words the core sets, in the language of who holds this phone. */
export function useMaking(): Make {
  const [language] = useLanguage();
  const said = useSaid();
  return useCallback((make) => inLanguage(language, said, make), [language, said]);
}
