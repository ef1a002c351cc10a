// What may not be recorded of a second look, and what waits for one; both have a way past by name.

import { limits } from '../limits.ts';
import { say } from '../words/heard.ts';
import { type LookState, type Moment, minutesBetween, sameName } from './second-look.ts';
import type { ActBody, DeviceTime, Draft, JobState, Refusal } from './types.ts';

const bad = (why: string, open: readonly string[] = []): Refusal => ({
  stop: 'bad act',
  why,
  open,
});

const NOT_LOOKED_AT = {
  isolation: 'notLookedIsolation',
  'line-up': 'notLookedLineUp',
} as const;

/** A wet joint and the first start wait for their look; *use anyway* at it is the way past. */
export function waitsForLook(job: JobState, moment: Moment, what: string): Refusal | null {
  if (job.strip !== null) return null;
  const look = job.looks.find((l) => l.moment === moment);
  if (look === undefined || look.how !== null) return null;
  const why = say('waitsForLook', what, say(NOT_LOOKED_AT[moment]), look.step);
  return { stop: 'not looked at', why, open: [look.why] };
}

/** `at` is the time of the device that says it; where it is not given, only the fold judges it. */
export function lookActRefused(
  job: JobState,
  draft: Draft,
  at: DeviceTime | undefined,
): Refusal | null {
  const look = job.looks.find((l) => l.thing === draft.body.thing);
  if (look === undefined) return bad(say('nothingToLookAt', String(draft.body.thing)));
  if (look.notYet.length > 0) return bad(say('notAllStands'), look.notYet);
  return rowsRefused(look, draft.body) ?? personRefused(job, look, draft, at);
}

function rowsRefused(look: LookState, body: ActBody): Refusal | null {
  const rows = (Array.isArray(body.rows) ? body.rows : []) as { readonly thing: string }[];
  const said = rows.map((r) => r.thing);
  const missing = look.rows.filter((r) => !said.includes(r.thing)).map((r) => r.name);
  if (missing.length > 0) return bad(say('notAllLookedAt'), missing);
  const strange = said.filter((t, i) => !isListed(look, t) || said.indexOf(t) !== i);
  return strange.length === 0 ? null : bad(say('notListedClosure'), strange);
}

const isListed = (look: LookState, thing: string): boolean =>
  look.rows.some((r) => r.thing === thing);

function personRefused(
  job: JobState,
  look: LookState,
  draft: Draft,
  at: DeviceTime | undefined,
): Refusal | null {
  const alone = look.doers.some((d) => sameName(d, draft.by));
  if (alone !== (draft.body.alone === true))
    return bad(say(alone ? 'lookIsAlone' : 'lookIsNotAlone', draft.by));
  if (!alone) return null;
  if (!mayLookAlone(job, look)) return refused(say('anotherMustLook', draft.by, look.step));
  const most = limits.record.aloneMinutes;
  if (at === undefined || look.lastSaid === null) return null;
  const minutes = minutesBetween(look.lastSaid, at);
  if (minutes >= most) return null;
  return refused(say('aloneTooSoon', draft.by, most, minutes));
}

const refused = (why: string): Refusal => ({ stop: 'not looked at', why, open: [] });

/** From when, by the device's clock, one who shut it may look again alone. */
export const aloneFrom = (look: LookState): string | null =>
  look.lastSaid === null
    ? null
    : new Date(Date.parse(look.lastSaid.utc) + limits.record.aloneMinutes * 60_000).toISOString();

/** Where one hand is aboard, or somebody has taken it upon their name that nobody else can look. */
export const mayLookAlone = (job: JobState, look: LookState): boolean =>
  job.handsAboard === '1' || look.anywayBy !== null;
