// In whose language this phone speaks: chosen by each person, kept on the device.

import { isLanguage, type Language, type Words, wordsOf } from '../../words/words.ts';
import { useKept } from './kept.ts';
import { useHolder } from './person.tsx';

export function useLanguage(): readonly [Language, (language: string) => void] {
  const { name } = useHolder();
  const [kept, keep] = useKept(`language.${name}`, 'en');
  return [isLanguage(kept) ? kept : 'en', keep];
}

/** The words of the person who holds this phone. */
export function useWords(): Words {
  const [language] = useLanguage();
  return wordsOf(language);
}
