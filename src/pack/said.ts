// Sentences that other rooms make of the machine, said once more here so that a pack carries them.

import type { Machine } from '../plant/types.ts';
import { withUnit } from '../values/issue.ts';
import type { Speech } from '../words/say.ts';
import { isThreaded } from './joint-shape.ts';

/** Only those that stand in the pack are kept with it; names and figures are the plant's own. */
export const sayBeforehand = (machine: Machine, say: Speech['say']): void => {
  for (const joint of Object.values(machine.joints)) {
    for (const [id, f] of Object.entries(joint.fasteners ?? {}))
      if (isThreaded(f)) say('fastenersOf', joint.name, f.count, f.thread ?? id);
  }
  for (const { min, max, unit } of Object.values(machine.values)) {
    const [from, to] = [min, max].map((text) => text && withUnit(text, unit));
    if (from && to) say('rangeOf', from, to);
    else if (from) say('atLeast', from);
    else if (to) say('atMost', to);
  }
};
