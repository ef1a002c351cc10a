// What of the weights wants a decision by name before anything is shut.

import type { Context } from './context.ts';
import type { Decision } from './types.ts';

export const liftsOpen = (c: Context): Omit<Decision, 'settled'>[] => {
  const { list, sailing } = c.lifts;
  const weights = list.flatMap((one) => {
    // What it weighs is asked once, with the other things not known.
    if (one.weight === null || one.asks.length === 0) return [];
    const id = `how carried part/${one.part} ${one.as}`;
    return [{ id, question: c.say('howLifted', one.name, one.asks), why: c.say('howLiftedWhy') }];
  });
  if (sailing === null || !sailing.late) return weights;
  const question = c.say('sailsFirst', sailing.sails, sailing.latestStart);
  return [
    ...weights,
    { id: 'sails before the end', question, why: c.say('sailsFirstWhy', sailing.hangs) },
  ];
};
