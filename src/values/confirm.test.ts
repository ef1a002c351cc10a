// How long a sheet stands: calendar months, counted against JavaScript's own calendar.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { monthsBetween, monthsLater, standing } from './confirm.ts';

const seed = 20_261_126;

test('a month later is the same day, or the last of a shorter month', () => {
  expect(monthsLater('2026-01-31', 1)).toBe('2026-02-28');
  expect(monthsLater('2024-01-31', 1)).toBe('2024-02-29');
  expect(monthsLater('2023-04-15', 24)).toBe('2025-04-15');
  expect(monthsLater('2025-12-01', 1)).toBe('2026-01-01');
});

test(`months later by the calendar of the language (seed ${seed})`, () => {
  const day = fc.date({
    min: new Date('2000-01-01'),
    max: new Date('2099-12-31'),
    noInvalidDate: true,
  });
  fc.assert(
    fc.property(day, fc.integer({ min: 0, max: 240 }), (date, months) => {
      const from = date.toISOString().slice(0, 10);
      const first = new Date(Date.UTC(date.getUTCFullYear(), date.getUTCMonth() + months, 1));
      const last = new Date(Date.UTC(date.getUTCFullYear(), date.getUTCMonth() + months + 1, 0));
      first.setUTCDate(Math.min(date.getUTCDate(), last.getUTCDate()));
      expect(monthsLater(from, months)).toBe(first.toISOString().slice(0, 10));
      expect(monthsBetween(from, monthsLater(from, months))).toBe(months);
    }),
    { seed, numRuns: 200 },
  );
});

test('a sheet stands to its last day and not after; a confirmation starts it again', () => {
  const sheet = { date: '2023-04-10', confirm: '24 months' };
  expect(standing(sheet, '2025-04-10').over).toBe(false);
  expect(standing(sheet, '2025-04-11')).toEqual({
    last: '2023-04-10',
    by: null,
    until: '2025-04-10',
    over: true,
  });
  const again = { ...sheet, confirmed: { on: '2025-04-02', by: 'Ada' } };
  expect(standing(again, '2025-04-11T08:00:00Z')).toMatchObject({ by: 'Ada', over: false });
  expect(standing({ date: '1990-01-01' }, '2026-01-01')).toMatchObject({
    until: null,
    over: false,
  });
  expect(standing({ date: '2020-01-01', confirm: '2 years' }, '2022-01-02').over).toBe(true);
});
