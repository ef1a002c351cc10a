// Days of the calendar as `2026-11-25`: whether a text is one, and the day some months on.

/** The same day of the month so many months on, or that month's last. */
export function monthsOn(from: string, months: number): string {
  const [year = 0, month = 1, day = 1] = from.split('-').map(Number);
  const count = year * 12 + (month - 1) + months;
  const [toYear, toMonth] = [Math.floor(count / 12), (count % 12) + 1];
  const last = daysIn(toYear, toMonth);
  return `${pad(toYear, 4)}-${pad(toMonth, 2)}-${pad(Math.min(day, last), 2)}`;
}

/** Days since a day long ago, so that two days can be taken from each other. */
export function dayNumber(day: string): number {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  // Years begin in March here: the odd day of a leap year is then the last.
  const [y, m] = month > 2 ? [year, month - 3] : [year - 1, month + 9];
  const leaps = Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
  return 365 * y + leaps + Math.floor((153 * m + 2) / 5) + date;
}

const pad = (value: number, length: number): string => String(value).padStart(length, '0');

function daysIn(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

/** Whether a text is a day of the calendar, `2026-11-25`. */
export function isDay(text: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (match === null) return false;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  return month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month);
}
