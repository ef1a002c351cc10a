// What may not be given back: a closure, or its tag, while what it holds back would run out.

import type { Pack } from '../pack/types.ts';
import { say } from '../words/heard.ts';
import { isWet } from './isolation.ts';
import { FLOW } from './strip.ts';
import { after } from './things.ts';
import type { Draft, Entry, JobState, Refusal, StripState } from './types.ts';

/** Giving back a listed closure opens the boundary again while a wet joint stands open. */
export function givingBackRefused(job: JobState, pack: Pack | null, draft: Draft): Refusal | null {
  if (job.strip !== null) return givenBackSeen(job, job.strip, draft);
  const facts = pack?.facts ?? null;
  if (facts === null || pack === null) return null;
  const id = after(String(draft.body.thing));
  const closure =
    draft.kind === 'restored'
      ? id
      : pack.lists.closures.find((c) => c.tags.includes(Number(id)))?.closure;
  if (closure === undefined || !facts.isolation.closures.includes(closure)) return null;
  const open = job.entries.filter(
    (e) => e.open && e.kind === 'joint' && isWet(facts, after(e.thing)),
  );
  if (open.length === 0) return null;
  const name = facts.closures[closure]?.name ?? closure;
  return notGivenBack(name, open);
}

/** Without a pack: what holds back a flow stays shut while anything not said to be dry is open. */
function givenBackSeen(job: JobState, strip: StripState, draft: Draft): Refusal | null {
  const one = strip.seen.find((s) => s.thing === draft.body.thing);
  const closure = one?.did === 'tagged' ? strip.seen.find((s) => s.thing === one.of) : one;
  if (closure?.did !== 'shut' || !FLOW.includes(closure.kind ?? '')) return null;
  const wet = strip.seen.filter((s) => s.did === 'took off' && s.wet !== 'no');
  const open = job.entries.filter(
    (e) =>
      e.open &&
      ['part', 'joint'].includes(e.kind) &&
      wet.some((s) => after(s.thing) === after(e.thing)),
  );
  if (open.length === 0) return null;
  return notGivenBack(closure.what, open);
}

const notGivenBack = (closure: string, open: readonly Entry[]): Refusal => ({
  stop: 'isolation not proved',
  why: say('notGivenBack', closure),
  open: open.map((e) => say('listedThing', e.thing, e.what)),
});
