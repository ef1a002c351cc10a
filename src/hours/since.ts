// Hours run since something was last done, beside the issued interval: two figures, no forecast.

import type { Source, Working, WorkingRow } from '../quantity/types.ts';

export type HoursReading = { readonly at: string; readonly hours: number };

export type SinceLastDone = {
  /** Hours on the machine at its latest reading; null where none was ever taken. */
  readonly runNow: HoursReading | null;
  readonly lastDone: { readonly at: string; readonly hours: number | null } | null;
  /** Null where it cannot be worked out; `why` then says what is missing. */
  readonly sinceHours: number | null;
  readonly interval: IssuedInterval | null;
  readonly why: string | null;
  readonly working: Working;
};

/** As issued: `shown` is never re-rounded. */
export type IssuedInterval = {
  readonly shown: string;
  readonly issue: string;
  readonly date: string;
  readonly authority: string;
};

export type SinceInput = {
  readonly readings: readonly HoursReading[];
  readonly done: readonly { readonly at: string; readonly hours: number | null }[];
  readonly interval: IssuedInterval | null;
};

export function sinceLastDone({ readings, done, interval }: SinceInput): SinceLastDone {
  const runNow = latest(readings);
  const lastDone = latest(done);
  const why = whatIsMissing(runNow, lastDone);
  const from = lastDone?.hours ?? null;
  if (why !== null || runNow === null || from === null || lastDone === null) {
    return { runNow, lastDone, sinceHours: null, interval, why, working: [] };
  }
  const sinceHours = Number((runNow.hours - from).toPrecision(12));
  const working = [
    row('h1', `reading of ${day(runNow.at)}`, '', runNow.hours, entered(runNow.at)),
    row('h0', `reading when last done, ${day(lastDone.at)}`, '', from, entered(lastDone.at)),
    row('h', 'hours since last done', 'h1 - h0', sinceHours, { kind: 'computed', by: 'hours' }),
  ];
  return { runNow, lastDone, sinceHours, interval, why: null, working };
}

function whatIsMissing(
  runNow: HoursReading | null,
  lastDone: { readonly at: string; readonly hours: number | null } | null,
): string | null {
  if (lastDone === null) return 'no record of it being done';
  if (lastDone.hours === null) return 'hours were not read when it was last done';
  if (runNow === null) return 'no reading of the running hours';
  if (runNow.hours < lastDone.hours) {
    return 'the latest reading is below that of the last time: the meter was changed or misread';
  }
  return null;
}

/** The latest by instant; of two at the same instant the later entry stands. */
function latest<T extends { readonly at: string }>(rows: readonly T[]): T | null {
  let best: T | null = null;
  for (const each of rows) {
    if (best === null || Date.parse(each.at) >= Date.parse(best.at)) best = each;
  }
  return best;
}

const day = (at: string): string => at.slice(0, 10);
const entered = (at: string): Source => ({ kind: 'entered', by: `the log, ${day(at)}` });
const row = (
  symbol: string,
  text: string,
  expression: string,
  value: number,
  source: Source,
): WorkingRow => ({
  symbol,
  text,
  expression: expression === '' ? String(value) : expression,
  value,
  unit: 'h',
  source,
});
