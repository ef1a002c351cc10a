// What was found once the target was off: the entry it owes, and the pieces that were missing.

import { limits } from '../limits.ts';
import { NOTHING_FAILED, OTHER_FAILED } from '../pack/as-found.ts';
import type { PackFacts, Thing } from '../pack/types.ts';
import { say } from '../words/heard.ts';
import type { Opening } from './kinds.ts';
import type { Said } from './said.ts';
import { after } from './things.ts';
import type { ActBody, JobState, StripState } from './types.ts';

/** What the act that takes the target off owes besides: that somebody says how it was found. */
export function asFoundOwed(thing: Thing, facts: PackFacts | null): readonly Opening[] {
  const owed = facts?.asFound;
  if (owed?.owedBy.includes(thing) !== true) return [];
  return [{ thing: `as-found/${owed.target}`, kind: 'as found' }];
}

/** It answers what is owed for the target; said of anything else it answers nothing. */
export const asFoundAnswers = (body: ActBody, facts: PackFacts | null): readonly Thing[] => {
  const id = after(String(body.thing));
  return facts?.asFound?.target === id ? [`as-found/${id}`] : [];
};

/** Pieces missing open a hunt, whatever they are missing from. */
export const missingFrom = (body: ActBody): readonly Opening[] =>
  Number(body.missing ?? 0) > 0
    ? [{ thing: `missing/${after(String(body.thing))}`, kind: 'missing' }]
    : [];

/** A hunt ends when all are found, or when a person decides by name to go on without them. */
export const isAccounted = (body: ActBody): boolean =>
  Number(body.left) === 0 || body.reason !== undefined;

export const missingWords = (n: unknown): string => say('piecesMissingNow', String(n));

export const asFoundIn = (said: readonly Said[]): JobState['asFound'] =>
  said
    .filter((s) => s.act.kind === 'as-found')
    .map(({ act, body }) => ({
      act: act.hash,
      by: act.by,
      thing: String(body.thing),
      grade: String(body.grade),
      failed: String(body.failed),
      text: typeof body.text === 'string' && body.text !== '' ? body.text : null,
      hours: typeof body.hours === 'number' ? body.hours : null,
      missing: Number(body.missing),
      photo: typeof body.photo === 'string' ? body.photo : null,
    }));

/** Serial and hours are told apart; what was found gives an item that came out its hours. */
export const withHours = (
  items: JobState['items'],
  found: JobState['asFound'],
): JobState['items'] =>
  items.map((item) => {
    if (item.way !== 'out' || item.hours !== null) return item;
    const hours = found.findLast((f) => after(f.thing) === item.part)?.hours ?? null;
    return { ...item, hours };
  });

/**
 * In a job without a pack the thing that the component's name fits best: the same words, fewer of
 * them, or more that end alike. Where none fits nothing is owed, and the button is there all the
 * same.
 */
export function componentIn(strip: Pick<StripState, 'component' | 'seen'>): Thing | null {
  const wanted = wordsIn(strip.component);
  const score = (what: string): number => {
    const words = wordsIn(what);
    if (words.length === 0) return 0;
    if (words.join() === wanted.join()) return 3;
    if (words.every((w) => wanted.includes(w)) && words.at(-1) === wanted.at(-1)) return 2;
    return wanted.every((w) => words.includes(w)) && words.at(-1) === wanted.at(-1) ? 1 : 0;
  };
  const parts = strip.seen.filter((s) => s.did === 'took off' && s.thing.startsWith('part/'));
  const best = Math.max(0, ...parts.map((s) => score(s.what)));
  return best === 0 ? null : (parts.find((s) => score(s.what) === best)?.thing ?? null);
}

const wordsIn = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((w) => w !== '');

/** What "as found" is said of: what owes it, else the component, else what came off last. */
export function asFoundThing(job: JobState): Thing | null {
  const owed = job.entries.find((e) => e.kind === 'as found' && e.open);
  const sort = job.strip === null ? 'item' : 'part';
  if (owed !== undefined) return `${sort}/${after(owed.thing)}`;
  if (job.strip === null) return null;
  const off = job.strip.seen.filter((s) => s.did === 'took off' && s.thing.startsWith('part/'));
  return componentIn(job.strip) ?? off.at(-1)?.thing ?? null;
}

/** What may have failed in a thing that nobody has written down: what came off by name. */
export const failedChoices = (job: JobState): readonly string[] => [
  NOTHING_FAILED,
  ...[
    ...new Set((job.strip?.seen ?? []).filter((s) => s.did === 'took off').map((s) => s.what)),
  ].slice(0, limits.pack.namedFailures),
  OTHER_FAILED,
];
