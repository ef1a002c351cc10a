// Instants and days at the border, in UTC: `2026-03-14`, `2026-03-14T06:00:00Z`, or an offset.

import { z } from 'zod';
import { isDay } from '../quantity/day.ts';

export const DAY_MS = 86_400_000;

export type Moment = {
  readonly given: string;
  /** The instant, or the start of the day in UTC. */
  readonly ms: number;
  /** The same instant, or the last millisecond of the day. */
  readonly endMs: number;
  readonly wholeDay: boolean;
};

const INSTANT =
  /^(\d{4}-\d{2}-\d{2})[T ](\d{2}):(\d{2})(?::(\d{2})(\.\d{1,9})?)?(?:Z|([+-])(\d{2}):?(\d{2}))?$/i;

/** Null where the text is neither a day nor an instant; without a zone it is UTC. */
export function readMoment(given: string): Moment | null {
  if (isDay(given)) {
    const ms = Date.parse(`${given}T00:00:00Z`);
    return { given, ms, endMs: ms + DAY_MS - 1, wholeDay: true };
  }
  const match = INSTANT.exec(given);
  if (match === null) return null;
  const [, day = '', hour, minute, second = '0', part = '0', sign = '+', zoneH, zoneM] = match;
  const [h, m, s] = [Number(hour), Number(minute), Number(second)];
  const [zh, zm] = [Number(zoneH ?? 0), Number(zoneM ?? 0)];
  if (!isDay(day) || h > 23 || m > 59 || s > 60 || zh > 14 || zm > 59) return null;
  const zone = (sign === '-' ? -1 : 1) * (zh * 60 + zm) * 60_000;
  const clock = ((h * 60 + m) * 60 + s) * 1_000 + Math.round(Number(part) * 1_000);
  const ms = Date.parse(`${day}T00:00:00Z`) + clock - zone;
  return { given, ms, endMs: ms, wholeDay: false };
}

/** A day or an instant as a field of an input. */
export const moment = () =>
  z
    .string()
    .max(40)
    .transform((given, context): Moment => {
      const read = readMoment(given);
      if (read !== null) return read;
      const expected = 'a day, 2026-03-14, or an instant, 2026-03-14T06:00:00Z';
      context.addIssue({
        code: 'custom',
        message: 'it is no day and no instant',
        input: given,
        params: { expected },
      });
      return z.NEVER;
    })
    .describe('a day or an instant, UTC');
