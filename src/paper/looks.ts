// The blank sheets of the second look: another order than the pack's, and no position on them.

import type { Pack } from '../pack/types.ts';
import { CANNOT_TELL, choicesOf, lookOrder } from '../record/look-order.ts';
import { MOMENTS, type Moment } from '../record/second-look.ts';
import { now, say } from '../words/heard.ts';

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

const TITLES = {
  isolation: 'lookTitleIsolation',
  'line-up': 'lookTitleLineUp',
} as const satisfies Readonly<Record<Moment, string>>;

export const looksOf = (pack: Pack): readonly LookView[] =>
  MOMENTS.flatMap((moment) => {
    const things = lookOrder(pack.facts.looks?.[moment] ?? [], pack.id, moment, 'paper');
    if (things.length === 0) return [];
    const rows = things.map((thing) => {
      const closure = pack.facts.closures[thing.slice('closure/'.length)];
      const { choices, turns } = choicesOf(closure, null);
      return {
        name: closure?.name ?? thing,
        place: closure?.stations.map(now).join(', ') || (closure?.place ?? ''),
        choices: [...choices, CANNOT_TELL].map(now),
        turns,
      };
    });
    return [{ title: say(TITLES[moment]), words: say('lookSheetWords'), rows }];
  });
