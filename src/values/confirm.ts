// How long a value sheet stands before somebody confirms it again, and whether it is over that.

import { limits } from '../limits.ts';
import type { SheetFile } from './schema.ts';

type Confirmable = Pick<SheetFile, 'date' | 'confirm' | 'confirmed'>;

export type Standing = {
  /** The day it was last confirmed; the day of issue where nobody has since. */
  readonly last: string;
  readonly by: string | null;
  /** The last day on which it stands; null where the sheet does not say. */
  readonly until: string | null;
  readonly over: boolean;
};

const monthsOf = (text: string): number => {
  const [, figure = '0', unit = ''] = /^(\d+) (month|year)/.exec(text) ?? [];
  return Number(figure) * (unit === 'year' ? 12 : 1);
};

const daysIn = (year: number, month: number): number =>
  new Date(Date.UTC(year, month, 0)).getUTCDate();

/** The same day so many months later; the 31st of a short month is its last day. */
export function monthsLater(date: string, months: number): string {
  const [year = 0, month = 1, day = 1] = date.split('-').map(Number);
  const whole = year * 12 + (month - 1) + months;
  const [y, m] = [Math.floor(whole / 12), (whole % 12) + 1];
  const pad = (n: number, width = 2): string => String(n).padStart(width, '0');
  return `${pad(y, 4)}-${pad(m)}-${pad(Math.min(day, daysIn(y, m)))}`;
}

/** Whole months from one day to another, for saying how old a confirmation is. */
export function monthsBetween(from: string, to: string): number {
  const [y = 0, m = 1] = from.split('-').map(Number);
  const [y2 = 0, m2 = 1] = to.split('-').map(Number);
  const whole = (y2 - y) * 12 + (m2 - m);
  return Math.max(0, monthsLater(from, whole) > to ? whole - 1 : whole);
}

/** `on` is given by whoever asks: there is no clock here. */
export function standing(sheet: Confirmable, on: string): Standing {
  const { date, confirm, confirmed } = sheet;
  const last = confirmed !== undefined && confirmed.on > date ? confirmed.on : date;
  const by = confirmed !== undefined && confirmed.on > date ? confirmed.by : null;
  const months = confirm === undefined ? null : monthsOf(confirm);
  const until =
    months === null ? null : monthsLater(last, Math.min(months, limits.values.confirmMonths));
  return { last, by, until, over: until !== null && on.slice(0, 10) > until };
}
