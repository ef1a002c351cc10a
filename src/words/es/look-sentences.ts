// Spanish: what a pack says of the second look.

import type { lookSentences as english } from '../en/look-sentences.ts';
import type { Translated } from '../en/sentences.ts';

export const lookSentences: Translated<typeof english> = {
  lookIsolation:
    'Segunda mirada al aislamiento, antes de abrir nada mojado. Alguien que no sea quien lo hizo, ' +
    'cualquiera que esté instruido, va a cada cierre con una lista en blanco y dice cómo está.',
  lookIsolationWhy:
    'quien cerró ve lo que quiso hacer; otro ve lo que hay (práctica común, sin fuente)',
  lookLineUp:
    'Segunda mirada a la puesta en línea, antes del primer arranque. Alguien que no sea quien la ' +
    'hizo, cualquiera que esté instruido, va a cada cierre con una lista en blanco y dice cómo está.',
  lookLineUpWhy:
    'un cierre que quedó cerrado puede arruinar la máquina en el primer minuto (práctica común, sin fuente)',
};
