// Spanish: what the record says: entries of the open list, findings, refusals, handing over.

import type { recordSentences as english } from '../en/record-sentences.ts';
import type { Translated } from '../en/sentences.ts';

export const recordSentences: Translated<typeof english> = {};
