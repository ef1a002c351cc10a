// Spanish: the screen on which a person sets this phone up for themselves.

import type { Words } from '../en/index.ts';

export const setup: Words['setup'] = {
  language: 'Idioma',
  units: 'Unidades',
};
