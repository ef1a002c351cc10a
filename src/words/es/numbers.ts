// Spanish: figures read back in words, days and units.

import type { Words } from '../en/index.ts';

const ONES = [
  ...['cero', 'uno', 'dos', 'tres', 'cuatro', 'cinco', 'seis', 'siete', 'ocho', 'nueve', 'diez'],
  ...['once', 'doce', 'trece', 'catorce', 'quince', 'dieciséis', 'diecisiete', 'dieciocho'],
  ...['diecinueve', 'veinte', 'veintiuno', 'veintidós', 'veintitrés', 'veinticuatro'],
  ...['veinticinco', 'veintiséis', 'veintisiete', 'veintiocho', 'veintinueve'],
];
const TENS = [
  ...['', '', '', 'treinta', 'cuarenta', 'cincuenta', 'sesenta', 'setenta', 'ochenta', 'noventa'],
];
const HUNDREDS = [
  ...['', 'ciento', 'doscientos', 'trescientos', 'cuatrocientos', 'quinientos'],
  ...['seiscientos', 'setecientos', 'ochocientos', 'novecientos'],
];

function wholeWords(n: number): string {
  if (n < 30) return ONES[n] ?? '';
  if (n < 100) {
    const rest = n % 10;
    return `${TENS[Math.floor(n / 10)] ?? ''}${rest === 0 ? '' : ` y ${ONES[rest] ?? ''}`}`;
  }
  if (n === 100) return 'cien';
  if (n < 1000) {
    const hundreds = HUNDREDS[Math.floor(n / 100)] ?? '';
    return n % 100 === 0 ? hundreds : `${hundreds} ${wholeWords(n % 100)}`;
  }
  const many = Math.floor(n / 1000);
  const thousands = many === 1 ? 'mil' : `${shortened(wholeWords(many))} mil`;
  return n % 1000 === 0 ? thousands : `${thousands} ${wholeWords(n % 1000)}`;
}

/** Before a noun the one loses its last letter: veintiún mil, treinta y un mil. */
const shortened = (words: string): string =>
  words.replace(/veintiuno$/, 'veintiún').replace(/uno$/, 'un');

const MONTHS = [
  ...['enero', 'febrero', 'marzo', 'abril', 'mayo', 'junio', 'julio'],
  ...['agosto', 'septiembre', 'octubre', 'noviembre', 'diciembre'],
];

export const numbers: Words['numbers'] = {
  whole: (n) => wholeWords(n),
  digit: (n) => ONES[n] ?? '',
  minus: (words) => `menos ${words}`,
  point: (whole, part) => `${whole} coma ${part}`,
  day: (day, month, year) => `${day} de ${MONTHS[month - 1] ?? ''} de ${year}`,
  units: {
    mm: 'milímetros',
    '[in_i]': 'pulgadas',
    bar: 'bar',
    kPa: 'kilopascales',
    '[psi]': 'libras por pulgada cuadrada',
    Cel: 'grados Celsius',
    '[degF]': 'grados Fahrenheit',
    '1/min': 'vueltas por minuto',
    h: 'horas',
    min: 'minutos',
    'N.m': 'newton metro',
    '[lbf_av].[ft_i]': 'libras-fuerza pie',
    'L/min': 'litros por minuto',
    'm3/h': 'metros cúbicos por hora',
    '[gal_us]/min': 'galones (EE. UU.) por minuto',
    kg: 'kilogramos',
  },
  minusKey: 'menos',
  pointKey: 'coma',
  nothingKeyed: 'nada tecleado',
  rubOut: 'Borrar la última',
};
