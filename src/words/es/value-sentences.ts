// Spanish: what a pack says of the sheets its values stand on.

import type { valueSentences as english } from '../en/value-sentences.ts';

const months = (text: string): string =>
  text
    .replace(/months?$/, 'meses')
    .replace(/^1 meses$/, '1 mes')
    .replace(/years?$/, 'años')
    .replace(/^1 años$/, '1 año');

export const valueSentences: { readonly [K in keyof typeof english]: (typeof english)[K] } = {
  sheetStands: (issue, sheet, authority) =>
    `¿Sigue en vigor la edición ${issue} de ${sheet}? Pregunte a ${authority}.`,
  sheetOver: (sheet, last, confirm) =>
    `hoja de valores ${sheet}: última confirmación ${last}, hace más de ${months(confirm)}`,
  sheetUnchecked: (sheet, confirm) =>
    `Hoja de valores ${sheet}: no se puede comprobar si pasa de ${months(confirm)}, ` +
    'porque no se da el día',
};
