// Old seals out counted against new ones in, seal by seal: no ring goes in over an old one.

import type { Pack, PackFacts, Thing } from '../pack/types.ts';
import { say } from '../words/heard.ts';
import { expectedCount } from './kinds.ts';
import type { Said } from './said.ts';
import { after, before } from './things.ts';
import type { Draft, JobState, Refusal } from './types.ts';

export const isCountedSeal = (thing: Thing): boolean =>
  before(thing) === 'old-seal' || before(thing) === 'new-seal';

/**
 * Whether what was said since it was opened makes the count: of old ones at least as many as the
 * joint has, of new ones exactly as many. An act that gives no number says the number expected.
 */
export function sealCounted(thing: Thing, said: readonly Said[]): boolean {
  const last = said.at(-1);
  if (last === undefined) return false;
  const expected = expectedCount(last.act.kind, last.body, last.facts);
  if (expected === null) return true;
  const sum = said.reduce((n, { body }) => n + Number(body.count ?? expected), 0);
  return before(thing) === 'old-seal' ? sum >= expected : sum === expected;
}

/**
 * A new seal waits for the old ones of its groove, and a joint for all its seals; gone past by
 * name at the step itself or at the counting. What was done on paper has happened and is taken in.
 */
export function sealsRefused(job: JobState, pack: Pack | null, draft: Draft): Refusal | null {
  if (pack === null || draft.body.paper !== undefined) return null;
  const thing = String(draft.body.thing);
  const round = draft.body.round === undefined ? '' : ` ${String(draft.body.round)}`;
  if (job.done[`${draft.kind} ${thing}${round}`] !== undefined) return null;
  const open =
    draft.kind === 'seal-in'
      ? uncounted(job, pack.facts, after(thing), ['old-seal'])
      : (pack.facts.joints[after(thing)]?.seals ?? []).flatMap(({ id }) =>
          uncounted(job, pack.facts, `${after(thing)}:${id}`, ['old-seal', 'new-seal']),
        );
  if (open.length === 0) return null;
  const why = say(draft.kind === 'seal-in' ? 'oldSealsFirst' : 'sealsNotCounted', open.length);
  return { stop: 'seals not counted', why, open };
}

const STEP_OF = { 'old-seal': 'seal-out', 'new-seal': 'seal-in' } as const;

function uncounted(
  job: JobState,
  facts: PackFacts,
  seal: string,
  kinds: readonly (keyof typeof STEP_OF)[],
): readonly string[] {
  return kinds.flatMap((kind) => {
    const entry = job.entries.find((e) => e.open && e.thing === `${kind}/${seal}`);
    const passed = job.done[`${STEP_OF[kind]} seal/${seal}`] !== undefined;
    return entry === undefined || passed || facts.joints[seal.split(':')[0] ?? ''] === undefined
      ? []
      : [entry.what];
  });
}
