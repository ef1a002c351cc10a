// All English words of screens and sentences, one file a screen or room; every language has these.

import { setup } from './setup.ts';

export const en = { setup };

export type Words = typeof en;
