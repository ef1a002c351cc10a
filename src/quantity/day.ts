// Days of the calendar as `2026-11-25`: whether a text is one, and the day some months on.

/** The same day of the month so many months on, or that month's last. */
export function monthsOn(from: string, months: number): string {
  const [year = 0, month = 1, day = 1] = from.split('-').map(Number);
  const count = year * 12 + (month - 1) + months;
  const [toYear, toMonth] = [Math.floor(count / 12), (count % 12) + 1];
  const last = daysIn(toYear, toMonth);
  return `${pad(toYear, 4)}-${pad(toMonth, 2)}-${pad(Math.min(day, last), 2)}`;
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
