// How a sentence of the core travels: in English, and as what was said, for any other language.

import { limits } from '../limits.ts';
import { type EnglishSentences, englishSentences } from './en/sentences.ts';
import { spanishSentences } from './es/sentences.ts';
import type { Language } from './words.ts';

export type SentenceKey = keyof EnglishSentences;

/**
 * What a sentence takes: names as they are, figures, sentences within it, lists of these. A text
 * that is itself a sentence or a fixed word of ours is told in the same language.
 */
export type Told = string | number | boolean | null | Sentence | readonly Told[];

/** One sentence as data: which it is and what it speaks of. It stands beside its English text. */
export type Sentence = { readonly key: string; readonly args: readonly Told[] };

/** Sentences by their English text. */
export type Known = ReadonlyMap<string, Sentence>;

type Given<T> = T extends string
  ? string | Sentence
  : T extends readonly (infer U)[]
    ? readonly Given<U>[]
    : T;
export type ArgsOf<K extends SentenceKey> = EnglishSentences[K] extends (...args: infer A) => string
  ? { readonly [I in keyof A]: Given<A[I]> }
  : readonly [];

type Teller = string | ((...args: never[]) => string);
type Table = Readonly<Record<string, Teller>>;

const tables: Readonly<Record<Language, Table>> = {
  en: englishSentences,
  es: spanishSentences,
};

export const sentence = <K extends SentenceKey>(key: K, ...args: ArgsOf<K>): Sentence => ({
  key,
  args: args as readonly Told[],
});

export const english = (said: Sentence): string => told(said, 'en', nothing) ?? said.key;

const nothing: Known = new Map();

/** Every sentence that was said, so that it can be told again in another language. */
export type Speech = {
  /** Takes over what was said elsewhere. */
  readonly keep: (said: readonly Sentence[]) => void;
  readonly say: <K extends SentenceKey>(key: K, ...args: ArgsOf<K>) => string;
  readonly said: Map<string, Sentence>;
};

export const newSpeech = (): Speech => {
  const said = new Map<string, Sentence>();
  return {
    said,
    keep: (others) => {
      for (const one of others) said.set(english(one), one);
    },
    say: (key, ...args) => {
      const what = sentence(key, ...args);
      const text = english(what);
      // A list of one is that one, and says nothing more.
      const more = what.args.length > 0 && !what.args.flat().includes(text);
      if (more && !said.has(text)) said.set(text, what);
      return text;
    },
  };
};

/** Of all that was said, what stands in a document, with what those sentences speak of. */
export const saidIn = (document: unknown, said: Known): readonly Sentence[] => {
  const found = new Map<string, Sentence>();
  const look = (x: unknown): void => {
    if (typeof x === 'string') {
      const one = said.get(x);
      if (one === undefined || found.has(x)) return;
      found.set(x, one);
      look(one.args);
    } else if (Array.isArray(x)) x.forEach(look);
    else if (x instanceof Map) x.forEach(look);
    else if (x !== null && typeof x === 'object') Object.values(x).forEach(look);
  };
  if (said.size > 0) look(document);
  return [...found.values()];
};

const knownOf = new WeakMap<readonly Sentence[], Known>();

/**
 * What a document carries, by the English text that this program makes of it: a sentence is told
 * in another language only where its English is word for word what stands in the document.
 */
export const knownIn = (said: readonly Sentence[] | undefined): Known => {
  if (said === undefined) return nothing;
  let known = knownOf.get(said);
  if (known === undefined) {
    known = new Map(said.map((one) => [english(one), one]));
    knownOf.set(said, known);
  }
  return known;
};

/**
 * A text in a person's language: by what was said where that came with it, else as a fixed word
 * or sentence of ours. What can't be told, such as a name or an older text, stays as it is.
 */
export function tell(
  text: string,
  language: Language,
  known: Known = nothing,
  own?: Sentence,
): string {
  if (language === 'en') return text;
  const said = own !== undefined && english(own) === text ? own : known.get(text);
  return (said === undefined ? fixed(text, language) : told(said, language, known)) ?? text;
}

export type Tell = (text: string, said?: Sentence) => string;

export const teller =
  (language: Language, said?: readonly Sentence[]): Tell =>
  (text, own) =>
    tell(text, language, knownIn(said), own);

/** Null where this program has no such sentence, or can't make it of what came with it. */
function told(said: Sentence, language: Language, known: Known, deep = 0): string | null {
  const one = Object.hasOwn(tables.en, said.key) ? tables[language][said.key] : undefined;
  if (one === undefined || deep > limits.words.sentenceDepth) return null;
  if (typeof one === 'string') return one;
  try {
    const args = said.args.map((arg) => argument(arg, language, known, deep + 1));
    return one(...(args as never[]));
  } catch {
    // A document from elsewhere may carry anything here; its English text still stands.
    return null;
  }
}

function argument(arg: Told, language: Language, known: Known, deep: number): unknown {
  if (deep > limits.words.sentenceDepth) throw new Error('a sentence too deep in itself');
  if (typeof arg === 'string') {
    if (language === 'en') return arg;
    const said = known.get(arg);
    return (said === undefined ? fixed(arg, language) : told(said, language, known, deep)) ?? arg;
  }
  if (Array.isArray(arg)) return arg.map((one: Told) => argument(one, language, known, deep + 1));
  if (arg !== null && typeof arg === 'object')
    return told(arg as Sentence, language, known, deep) ?? (arg as Sentence).key;
  return arg;
}

/** Words and sentences that speak of nothing outside themselves, by their English text. */
const keyOfFixed: ReadonlyMap<string, string> = new Map(
  // Of two with one English text the first is meant; the last of a map's pairs would stand.
  Object.entries(englishSentences as Table)
    .flatMap(([key, one]) => (typeof one === 'string' ? [[one, key] as const] : []))
    .reverse(),
);

function fixed(text: string, language: Language): string | null {
  const key = keyOfFixed.get(text);
  const one = key === undefined ? undefined : tables[language][key];
  return typeof one === 'string' ? one : null;
}
