// At the head of a printed pack: what was superseded since it was made, and what changed for whom.

import type { Pack } from '../pack/types.ts';
import { replacedIn, supersededWords } from '../record/superseded.ts';
import type { State } from '../record/types.ts';
import { changedSince } from '../record/values-used.ts';

export type News = readonly { readonly title: string; readonly list: readonly string[] }[];

/** `people` are those whose last such job it is compared with: the hands, or who prints it. */
export function newsOf(
  pack: Pack,
  state: State,
  packs: readonly Pack[],
  people: readonly string[],
): News {
  const replaced = replacedIn(pack, state.issued);
  const gone = [...new Set(replaced.map(supersededWords))];
  const title = 'Superseded since this pack was made: make it again';
  return [
    ...(gone.length === 0 ? [] : [{ title, list: gone }]),
    ...[...new Set(people)].flatMap((person) => {
      const since = changedSince(state, packs, pack, person);
      if (since === null) return [];
      const list = since.changes.map((c) => {
        const was = c.was === null ? 'new' : `was ${c.was} in issue ${c.wasIssue ?? '–'}`;
        const why = c.why === null ? '' : `; ${c.why}`;
        return `${c.is ?? 'no longer in the pack'} · ${c.name}: ${was}${why}`;
      });
      const none = ['No value has changed.'];
      return [
        {
          title: `Changed since ${person} last did this (${since.title}, closed ${since.closedOn})`,
          list: list.length === 0 ? none : list,
        },
      ];
    }),
  ];
}
