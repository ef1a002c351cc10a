// What is said while something is worked out, kept beside the result for any other language.

import {
  type ArgsOf,
  english,
  newSpeech,
  type Sentence,
  type SentenceKey,
  saidIn,
  sentence,
} from './say.ts';

type Hearing = ReturnType<typeof newSpeech>;

/** Whoever listens now; nobody except while `heard` works something out. */
let hearing: Hearing | null = null;

/** Says a sentence in English; whoever listens keeps what was said. */
export const say = <K extends SentenceKey>(key: K, ...args: ArgsOf<K>): string =>
  hearing === null ? english(sentence(key, ...args)) : hearing.say(key, ...args);

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
