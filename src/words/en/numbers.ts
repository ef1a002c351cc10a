// English: figures read back in words, days and units.

const ONES = [
  ...['nought', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'],
  ...['eleven', 'twelve', 'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen'],
  'nineteen',
];
const TENS = [
  ...['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'],
];

function wholeWords(n: number): string {
  if (n < 20) return ONES[n] ?? '';
  if (n < 100) {
    const rest = n % 10;
    return `${TENS[Math.floor(n / 10)] ?? ''}${rest === 0 ? '' : `-${ONES[rest] ?? ''}`}`;
  }
  if (n < 1000) {
    const rest = n % 100;
    const hundreds = `${ONES[Math.floor(n / 100)] ?? ''} hundred`;
    return rest === 0 ? hundreds : `${hundreds} and ${wholeWords(rest)}`;
  }
  const rest = n % 1000;
  const thousands = `${wholeWords(Math.floor(n / 1000))} thousand`;
  if (rest === 0) return thousands;
  return rest < 100 ? `${thousands} and ${wholeWords(rest)}` : `${thousands} ${wholeWords(rest)}`;
}

const MONTHS = [
  ...['January', 'February', 'March', 'April', 'May', 'June', 'July'],
  ...['August', 'September', 'October', 'November', 'December'],
];

export const numbers = {
  /** A whole number under a million. */
  whole: (n: number): string => wholeWords(n),
  digit: (n: number): string => ONES[n] ?? '',
  minus: (words: string) => `minus ${words}`,
  point: (whole: string, part: string) => `${whole} point ${part}`,
  /** `month` counts from 1. */
  day: (day: number, month: number, year: string) => `${day} ${MONTHS[month - 1] ?? ''} ${year}`,
  units: {
    mm: 'millimetres',
    '[in_i]': 'inches',
    bar: 'bar',
    kPa: 'kilopascals',
    '[psi]': 'pounds per square inch',
    Cel: 'degrees Celsius',
    '[degF]': 'degrees Fahrenheit',
    '1/min': 'turns a minute',
    h: 'hours',
    min: 'minutes',
    'N.m': 'newton metres',
    '[lbf_av].[ft_i]': 'pound-force feet',
    'L/min': 'litres a minute',
    'm3/h': 'cubic metres an hour',
    '[gal_us]/min': 'US gallons a minute',
    kg: 'kilograms',
  },
  minusKey: 'minus',
  pointKey: 'point',
  nothingKeyed: 'nothing keyed in',
  rubOut: 'Rub out the last',
};
