// Tags of one closure hang at its several stations, and looks at one part are taken in one go: they
// may be reported with one tap, each still as an act of its own.

import type { Pack, Step } from '../../pack/types.ts';

/** The other tags of the same closure, or looks at the same part, that are ready too. */
export function togetherWith(step: Step, ready: readonly Step[], pack: Pack): readonly Step[] {
  const round = roundOf(step, pack);
  if (round === null) return [];
  return ready.filter((each) => each !== step && roundOf(each, pack) === round);
}

/** What wants a name is reported by itself, and so does what is answered in other words. */
function roundOf(step: Step, pack: Pack): string | null {
  if (step.cautions.length > 0) return null;
  if (step.verb === 'tagged' || step.verb === 'untagged') {
    const closure = step.asks.length === 0 ? closureOf(step, pack) : null;
    return closure === null ? null : `${step.verb} ${closure}`;
  }
  const [, part] = /^check\/look:(.*)-\d+$/.exec(step.thing) ?? [];
  const [ask, another] = step.asks;
  if (part === undefined || ask?.choices === undefined || another !== undefined) return null;
  return `look ${part} ${ask.choices.join()}`;
}

function closureOf(step: Step, pack: Pack): string | null {
  const tag = Number(step.thing.split('/')[1]);
  return pack.lists.closures.find((each) => each.tags.includes(tag))?.closure ?? null;
}
