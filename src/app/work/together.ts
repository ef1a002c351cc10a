// Tags of one closure hang at its several stations and are walked to in one round: they may be
// reported with one tap, each still as an act of its own.

import type { Pack, Step } from '../../pack/types.ts';

/** The other tags of the same closure that are ready too. */
export function togetherWith(step: Step, ready: readonly Step[], pack: Pack): readonly Step[] {
  const closure = closureOf(step, pack);
  if (closure === null || !isPlain(step)) return [];
  return ready.filter(
    (each) =>
      each !== step &&
      each.verb === step.verb &&
      isPlain(each) &&
      closureOf(each, pack) === closure,
  );
}

/** What wants a name or an answer is reported by itself. */
const isPlain = (step: Step): boolean => step.asks.length === 0 && step.cautions.length === 0;

function closureOf(step: Step, pack: Pack): string | null {
  if (step.verb !== 'tagged' && step.verb !== 'untagged') return null;
  const tag = Number(step.thing.split('/')[1]);
  return pack.lists.closures.find((each) => each.tags.includes(tag))?.closure ?? null;
}
