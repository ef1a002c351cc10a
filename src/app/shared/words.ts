// How a job and its times are put in words; no figure is worked out here.

import type { DeviceTime, JobState } from '../../record/types.ts';

/** A job has no status word: it shows its stage and its open count. */
export function stageWords(job: JobState): string {
  if (job.closed !== null) {
    const n = job.closed.deviations;
    return n === 0
      ? 'closed'
      : `closed with ${n} deviation${n === 1 ? '' : 's'} (${job.closed.by})`;
  }
  return `${job.stage} · ${job.openCount === 0 ? 'nothing open' : `${job.openCount} open`}`;
}

/** As the device showed it when it was said: the offset in force then is part of the record. */
export function timeWords(at: DeviceTime): string {
  const moved = new Date(Date.parse(at.utc) + at.offsetMinutes * 60_000);
  return moved.toISOString().slice(0, 16).replace('T', ' ');
}

const MONTHS = [
  ...['January', 'February', 'March', 'April', 'May', 'June', 'July'],
  ...['August', 'September', 'October', 'November', 'December'],
];

/** `2026-03-14…` → `14 March 2026`. */
export function dayWords(at: string): string {
  const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)/.exec(at) ?? [];
  const name = MONTHS[Number(month) - 1];
  return name === undefined ? at : `${Number(day)} ${name} ${year}`;
}

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

/** What was keyed in, read back: `12.50` → `twelve point five nought`; null for no number. */
export function numberWords(typed: string): string | null {
  const match = /^(-?)(\d{1,6})(?:\.(\d*))?$/.exec(typed);
  if (match === null) return null;
  const [, sign, whole = '', part] = match;
  const after = [...(part ?? '')].map((digit) => ONES[Number(digit)] ?? '').join(' ');
  const words = wholeWords(Number(whole));
  const signed = sign === '-' ? `minus ${words}` : words;
  return after === '' ? signed : `${signed} point ${after}`;
}

const UNIT_WORDS: Readonly<Record<string, string>> = {
  mm: 'millimetres',
  bar: 'bar',
  kPa: 'kilopascals',
  Cel: 'degrees Celsius',
  rpm: 'turns a minute',
  '1/min': 'turns a minute',
  h: 'hours',
  min: 'minutes',
  'N.m': 'newton metres',
  N·m: 'newton metres',
  kg: 'kilograms',
};

export const unitWords = (unit: string): string => UNIT_WORDS[unit] ?? unit;
