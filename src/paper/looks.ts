// The blank sheets of the second look: another order than the pack's, and no position on them.

import type { Pack } from '../pack/types.ts';
import { CANNOT_TELL, choicesOf, lookOrder } from '../record/look-order.ts';
import { MOMENTS, type Moment } from '../record/second-look.ts';

export type LookView = {
  readonly title: string;
  readonly words: string;
  readonly rows: readonly {
    readonly name: string;
    readonly place: string;
    readonly choices: readonly string[];
    readonly turns: boolean;
  }[];
};

const TITLES: Readonly<Record<Moment, string>> = {
  isolation: 'Second look: isolation, before anything wet is opened',
  'line-up': 'Second look: line-up, before the first start',
};

const WORDS =
  'Anyone trained, deck included, but not who did it. Take this sheet alone, go to each closure, ' +
  'mark what you see. Nothing here says how it should be. Alone aboard: the same person, at least ' +
  '10 min after the last closure, and it is “checked alone” (common practice, no source). Any ' +
  'difference: put it right, then look again.';

export const looksOf = (pack: Pack): readonly LookView[] =>
  MOMENTS.flatMap((moment) => {
    const things = lookOrder(pack.facts.looks?.[moment] ?? [], pack.id, moment, 'paper');
    if (things.length === 0) return [];
    const rows = things.map((thing) => {
      const closure = pack.facts.closures[thing.slice('closure/'.length)];
      const { choices, turns } = choicesOf(closure, null);
      return {
        name: closure?.name ?? thing,
        place: closure?.stations.join(', ') || (closure?.place ?? ''),
        choices: [...choices, CANNOT_TELL],
        turns,
      };
    });
    return [{ title: TITLES[moment], words: WORDS, rows }];
  });
