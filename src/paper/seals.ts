// The seals on the printed pack: the list to draw and count by, and the map by joint.

import { sealMaps } from '../drawing/seal-map.ts';
import {
  consumableWords,
  doubtLines,
  nearWords,
  needLines,
  needWords,
  restsOn,
  shortLines,
  spareLines,
} from '../pack/seal-words.ts';
import type { Pack } from '../pack/types.ts';
import { now, say } from '../words/heard.ts';
import { type Language, wordsOf } from '../words/words.ts';
import { picture } from './block.ts';
import type { ListView } from './lists.ts';

const one = (title: string, rows: readonly string[]): ListView => ({
  title,
  head: [say('pWhat'), say('askSeen')],
  widths: [5, 0.7],
  rows: [...new Set(rows)].map((row) => [row, '']),
});

/** Packs of earlier days have none. */
export function sealLists({ seals }: Pack, language: Language): readonly ListView[] {
  if (seals === undefined) return [];
  const w = wordsOf(language).seals;
  return [
    one(w.short, shortLines(seals, w, now)),
    {
      title: `${w.title}: ${restsOn(seals, w)}`,
      head: [w.lSeal, w.lDraw, w.lNear, w.lCounted, say('lOldOut'), say('lNewIn')],
      widths: [2, 2, 2.2, 0.6, 0.6, 0.6],
      rows: seals.needs.map((need) => [
        needWords(need, w, now),
        needLines(need, w, now).join('; '),
        doubtLines(need, now).join('; '),
        ...['', '', ''],
      ]),
    },
    one(
      w.spares,
      seals.spares.flatMap((each) => spareLines(each, w, now)),
    ),
    one(
      w.consumables,
      seals.consumables.map((each) => consumableWords(each, w, now)),
    ),
    one(
      w.near,
      seals.near.map((each) => nearWords(each, w, now)),
    ),
  ];
}

/** One joint a picture, so that the sheet may turn between any two. */
export function sealPictures({ seals }: Pack, language: Language, width: number) {
  if (seals === undefined || seals.needs.length === 0) return null;
  const w = wordsOf(language).seals;
  const total = seals.needs.reduce((sum, { count }) => sum + count, 0);
  const words = { ...w, alt: w.mapAlt(total), noSize: w.size };
  const bands = sealMaps(seals.needs, words, { surface: 'paper', width }, 1);
  return { title: w.map, words: w.counted, bands: bands.map(picture) };
}
