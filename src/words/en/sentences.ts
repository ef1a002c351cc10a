// English: every sentence that the core makes, one key each; every language has these.

import { backSentences } from './back.ts';
import { beforeSentences } from './before-steps.ts';
import { cautions } from './cautions.ts';
import { drawnSentences } from './drawn.ts';
import { fasteningSentences } from './fastenings.ts';
import { liftingSentences } from './lifting.ts';
import { offSentences } from './off.ts';
import { packSentences } from './pack-sheet.ts';
import { printedSentences } from './printed.ts';
import { proofSentences } from './proof-steps.ts';
import { recordSentences } from './record-sentences.ts';
import { refusalSentences } from './refusals.ts';
import { sealSentences } from './seals.ts';
import { tightSentences } from './tight.ts';
import { valueSentences } from './value-sentences.ts';
import { vocabulary } from './vocabulary.ts';

export const englishSentences = {
  ...vocabulary,
  ...cautions,
  ...fasteningSentences,
  ...liftingSentences,
  ...offSentences,
  ...drawnSentences,
  ...beforeSentences,
  ...backSentences,
  ...proofSentences,
  ...printedSentences,
  ...packSentences,
  ...recordSentences,
  ...refusalSentences,
  ...sealSentences,
  ...tightSentences,
  ...valueSentences,
} as const;

export type EnglishSentences = typeof englishSentences;

/** The same keys in another language: a text for a text, a function for a function. */
export type Translated<T> = { readonly [K in keyof T]: T[K] extends string ? string : T[K] };
