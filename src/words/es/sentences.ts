// Spanish: every sentence that the core makes; the type holds them complete.

import type { EnglishSentences, Translated } from '../en/sentences.ts';
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

export const spanishSentences: Translated<EnglishSentences> = {
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
};
