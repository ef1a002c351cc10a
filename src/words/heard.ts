// What is said while something is worked out, kept beside the result for any other language.

import {
  type ArgsOf,
  english,
  newSpeech,
  type Sentence,
  type SentenceKey,
  saidIn,
  sentence,
  type Tell,
  teller,
} from './say.ts';
import type { Language } from './words.ts';

type Hearing = ReturnType<typeof newSpeech>;

/** Whoever listens now; nobody except while `heard` works something out. */
let hearing: Hearing | null = null;

/** In whose language a sheet or a drawing is being made; English except while `inLanguage` is. */
let telling: Tell | null = null;

/** Says a sentence, in English or as the sheet is told; whoever listens keeps what was said. */
export const say = <K extends SentenceKey>(key: K, ...args: ArgsOf<K>): string => {
  const said = sentence(key, ...args);
  const text = hearing === null ? english(said) : hearing.say(key, ...args);
  return telling === null ? text : telling(text, said);
};

/** What a pack or a record says, in the language in which a sheet or a drawing is being made. */
export const now = (text: string): string => (telling === null ? text : telling(text));

/** Makes a sheet or a drawing in a language, of what a document says. It must not wait. */
export function inLanguage<T>(
  language: Language,
  said: readonly Sentence[] | undefined,
  make: () => T,
): T {
  const outside = telling;
  telling = language === 'en' ? null : teller(language, said);
  try {
    return make();
  } finally {
    telling = outside;
  }
}

/**
 * Works something out and keeps what was said of it: nothing said before or elsewhere has a part
 * in it, so the same input always gives the same sentences. `make` must not wait for anything.
 */
export function heard<T>(make: () => T): { readonly value: T; readonly said: readonly Sentence[] } {
  const outside = hearing;
  const inside = newSpeech();
  hearing = inside;
  try {
    const value = make();
    // What was worked out inside something else is heard there too.
    for (const [text, one] of outside === null ? [] : inside.said) outside?.said.set(text, one);
    return { value, said: saidIn(value, inside.said) };
  } finally {
    hearing = outside;
  }
}
