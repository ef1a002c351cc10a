// The words chosen by now, for what is said outside of any screen, such as of a failed sending.

import { isLanguage, type Language, type Words, wordsOf } from '../../words/words.ts';
import { keptNow } from './kept.ts';

/** Before anybody is named, and for who has not chosen, the phone speaks as it was set last. */
export const LANGUAGE = 'language.';

export const languageFrom = (own: string, all: string): Language =>
  isLanguage(own) ? own : isLanguage(all) ? all : 'en';

export function wordsNow(): Words {
  const own = keptNow(`${LANGUAGE}${keptNow('holder', '')}`, '');
  return wordsOf(languageFrom(own, keptNow(LANGUAGE, 'en')));
}
