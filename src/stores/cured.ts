// The day or quarter that a rubber part was cured in: the date its life in store counts from.

import { isDay } from '../quantity/day.ts';

export type Cured = {
  /** Earliest and last day that it may have been cured on. */
  readonly from: string;
  readonly counted: string;
};

const quarterEnds = ['03-31', '06-30', '09-30', '12-31'] as const;
const quarterStarts = ['01-01', '04-01', '07-01', '10-01'] as const;

/** `3Q2024`, or a day: a quarter counts from its last day. */
export function readCured(text: string): Cured | null {
  const given = text.trim();
  if (isDay(given)) return { from: given, counted: given };
  const match = /^([1-4])Q[ /-]?(\d{4})$/i.exec(given);
  if (match === null) return null;
  const at = Number(match[1]) - 1;
  return { from: `${match[2]}-${quarterStarts[at]}`, counted: `${match[2]}-${quarterEnds[at]}` };
}
