// What is done at one place in one go may be reported with one tap, each still as an act of its
// own: the tags of one closure, a closure with its tags, looks at one part.

import type { Pack, Step } from '../../pack/types.ts';

export type Along = {
  readonly steps: readonly Step[];
  /** With whatever answer is given to the first; else only with the expected one, for another
   * answer is of that one alone and the others are looked at by themselves. */
  readonly always: boolean;
};

export const ALONE: Along = { steps: [], always: false };

/** The other steps that one tap may report with this one. */
export function togetherWith(step: Step, ready: readonly Step[], pack: Pack): Along {
  if (step.verb === 'shut' || step.verb === 'untagged') return withClosure(step, ready, pack);
  if (DRAINS.includes(step.verb)) {
    const drains = ready.filter((each) => each !== step && each.verb === step.verb);
    return { steps: drains.filter((each) => needed(each) === 0), always: true };
  }
  const round = roundOf(step, pack);
  if (round === null) return ALONE;
  return {
    steps: ready.filter((each) => each !== step && roundOf(each, pack) === round),
    always: false,
  };
}

/** Drains and vents are opened one after another before anything is proved, and shut so again. */
const DRAINS: readonly Step['verb'][] = ['drain-opened', 'drain-shut'];

/** Who shuts a closure hangs its tags; who takes the tags down gives the closure back. */
function withClosure(step: Step, ready: readonly Step[], pack: Pack): Along {
  const closure =
    step.verb === 'shut' ? step.thing.replace(/^closure\//, '') : closureOf(step, pack);
  if (closure === null || needed(step) > 1) return ALONE;
  const first = step.verb === 'shut' ? [] : ready.filter((each) => sameTags(each, step, pack));
  const done = [step, ...first].map((each) => each.id);
  const waits = (each: Step) => each.needs.every((id) => done.includes(id) || isDone(id, step));
  const next = pack.steps.filter(
    (each) =>
      needed(each) === 0 &&
      (step.verb === 'shut'
        ? each.verb === 'tagged' && each.fixed.closure === closure
        : each.verb === 'restored' && each.thing === `closure/${closure}`),
  );
  return { steps: [...first, ...next.filter(waits)], always: true };
}

/** What may be left out, such as turns and a photo, is said by whoever wants to say it. */
const needed = (step: Step): number => step.asks.filter((ask) => ask.optional !== true).length;

const sameTags = (each: Step, step: Step, pack: Pack): boolean =>
  each !== step &&
  each.verb === 'untagged' &&
  needed(each) === 0 &&
  closureOf(each, pack) === closureOf(step, pack);

/** What this step itself waited for is done, since it is ready. */
const isDone = (id: string, step: Step): boolean => step.needs.includes(id);

/** What wants a name is reported by itself, and so does what is answered in other words. */
function roundOf(step: Step, pack: Pack): string | null {
  if (step.cautions.length > 0) return null;
  if (step.verb === 'tagged') {
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
