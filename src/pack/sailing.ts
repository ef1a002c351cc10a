// The sailing against the job: begun too late, the vessel moves with a weight hanging in it.

import { dayNumber, isDay } from '../quantity/day.ts';
import type { Context } from './context.ts';
import type { LiftView, SailingClash } from './lift-types.ts';

const MINUTES = 24 * 60;

/** `2026-11-25T14:30` as minutes, on the vessel's own clock; null where it is no time of day. */
export const minutesOf = (text: string): number | null => {
  const [, day = '', hour, minute] = /^(\d{4}-\d{2}-\d{2})[T ](\d{2}):(\d{2})/.exec(text) ?? [];
  if (!isDay(day)) return null;
  return dayNumber(day) * MINUTES + Number(hour) * 60 + Number(minute);
};

/** The same minutes as day and time again. */
export const timeOf = (minutes: number, near: string): string => {
  const whole = Math.floor(minutes);
  const day = Math.floor(whole / MINUTES);
  const rest = whole - day * MINUTES;
  const apart = day - dayNumber(near);
  const two = (n: number) => String(n).padStart(2, '0');
  const clock = `${two(Math.floor(rest / 60))}:${two(rest % 60)}`;
  return apart === 0 ? clock : `${apart > 0 ? '+' : '−'}${Math.abs(apart)} d ${clock}`;
};

/** Hands-on minutes alone: isolating, filling and proving come on top, so it is never too early. */
export const sailingClash = (
  c: Pick<Context, 'request' | 'plans'>,
  list: readonly LiftView[],
): SailingClash | null => {
  const { sails, when } = c.request;
  const sailing = sails === undefined ? null : minutesOf(sails);
  if (sails === undefined || sailing === null) return null;
  const job = c.plans.reduce((all, plan) => all + plan.minutes.value, 0);
  const begun = when === undefined ? null : minutesOf(when);
  const hangs = list.flatMap((one) => (one.held.length === 0 ? [] : [one.name]));
  return {
    sails,
    latestStart: timeOf(sailing - job, sails.slice(0, 10)),
    late: begun !== null && begun + job > sailing,
    hangs,
  };
};
