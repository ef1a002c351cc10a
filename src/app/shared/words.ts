// How a job and its times are put in words; no figure is worked out here.

import { unitOf } from '../../quantity/units.ts';
import type { DeviceTime, JobState } from '../../record/types.ts';
import type { Words } from '../../words/words.ts';

/** A job has no status word: it shows its stage and its open count. */
export function stageWords(job: JobState, { jobSheet: w }: Words): string {
  if (job.closed !== null) {
    const n = job.closed.deviations;
    return n === 0 ? w.closed : w.closedWith(n, job.closed.by);
  }
  const open = job.openCount === 0 ? w.nothingOpen : w.openCount(job.openCount);
  return `${w.stages[job.stage]} · ${open}`;
}

/** As the device showed it when it was said: the offset in force then is part of the record. */
export function timeWords(at: DeviceTime): string {
  const moved = new Date(Date.parse(at.utc) + at.offsetMinutes * 60_000);
  return moved.toISOString().slice(0, 16).replace('T', ' ');
}

/** `2026-03-14…` → `14 March 2026`. */
export function dayWords(at: string, w: Words): string {
  const [, year = '', month, day] = /^(\d{4})-(\d\d)-(\d\d)/.exec(at) ?? [];
  const known = Number(month) >= 1 && Number(month) <= 12;
  return known ? w.numbers.day(Number(day), Number(month), year) : at;
}

/** What was keyed in, read back: `12.50` → `twelve point five nought`; null for no number. */
export function numberWords(typed: string, { numbers }: Words): string | null {
  const match = /^(-?)(\d{1,6})(?:\.(\d*))?$/.exec(typed);
  if (match === null) return null;
  const [, sign, whole = '', part] = match;
  const after = [...(part ?? '')].map((digit) => numbers.digit(Number(digit))).join(' ');
  const words = numbers.whole(Number(whole));
  const signed = sign === '-' ? numbers.minus(words) : words;
  return after === '' ? signed : numbers.point(signed, after);
}

/** A unit in words, by any of its spellings; one without words as its sign. */
export function unitWords(spelling: string, w: Words): string {
  const unit = unitOf(spelling);
  const named = Object.entries(w.numbers.units).find(([code]) => code === unit?.code);
  return named?.[1] ?? unitSign(spelling);
}

/** As it is printed: `Cel` → `°C`; what is no unit of ours stays as it was written. */
export const unitSign = (spelling: string): string => unitOf(spelling)?.symbol ?? spelling;
