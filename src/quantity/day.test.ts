// Checks days of the calendar against the platform's own, day by day.

import { expect, test } from 'vitest';
import { isDay, monthsOn } from './day.ts';

const iso = (day: Date): string => day.toISOString().slice(0, 10);
const pad = (value: number) => String(value).padStart(2, '0');

test('months on: the same day or the last of that month, every day of eight years', () => {
  for (let day = Date.UTC(2019, 11, 31); day < Date.UTC(2028, 0, 1); day += 86_400_000) {
    const from = new Date(day);
    for (const months of [1, 6, 12, 24]) {
      const [year, month] = [from.getUTCFullYear(), from.getUTCMonth() + months];
      const last = new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
      const until = new Date(Date.UTC(year, month, Math.min(from.getUTCDate(), last)));
      expect(monthsOn(iso(from), months)).toBe(iso(until));
    }
  }
});

test('a text is a day only if the calendar has it', () => {
  for (const year of [1900, 2000, 2024, 2026]) {
    for (let month = 0; month <= 13; month += 1) {
      for (let day = 0; day <= 32; day += 1) {
        const text = `${year}-${pad(month)}-${pad(day)}`;
        const made = new Date(Date.UTC(year, month - 1, day));
        expect({ text, is: isDay(text) }).toEqual({ text, is: iso(made) === text });
      }
    }
  }
});

test.each(['2026-1-1', '26-01-01', '2026-01-01T00:00:00Z', ' 2026-01-01', '01.01.2026', ''])(
  '"%s" is none',
  (text) => expect(isDay(text)).toBe(false),
);
