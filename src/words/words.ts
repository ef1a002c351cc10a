// The languages people can choose, and the words of each. Names of parts stay the vessel's own.

import { en, type Words } from './en/index.ts';
import { es } from './es/index.ts';

export type { Words } from './en/index.ts';
export type Language = keyof typeof LANGUAGES;

/** Each under its own name, as somebody looks for it who reads no other. */
export const LANGUAGES = { en: 'English', es: 'Español' } as const;

const all: Readonly<Record<Language, Words>> = { en, es };

export const isLanguage = (text: string): text is Language => Object.hasOwn(all, text);
export const wordsOf = (language: Language): Words => all[language];
