// All Spanish words; the type holds them complete.

import type { Words } from '../en/index.ts';
import { setup } from './setup.ts';

export const es: Words = { setup };
