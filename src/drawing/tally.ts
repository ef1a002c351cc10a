// The open list as tally marks: five-bar gates, struck through as things are made good.

import { say } from '../words/heard.ts';
import {
  type Child,
  type Drawing,
  type DrawingOptions,
  drawing,
  el,
  g,
  PHONE_WIDTH,
  path,
  text,
  widthOf,
} from './svg.ts';

export type TallyEntry = { readonly open: boolean };

const GATE = 46;
const HEIGHT = 30;
const ROW = 40;

export const openWords = (entries: readonly TallyEntry[]): string => {
  const open = entries.filter((entry) => entry.open).length;
  return open === 0 ? say('nothingOpen') : say('openCount', open);
};

/** One mark an entry in the order they were opened; a struck, thin mark is made good. */
export const tallyDrawing = (
  entries: readonly TallyEntry[],
  options: DrawingOptions = {},
): Drawing => {
  const surface = options.surface ?? 'screen';
  const width = options.width ?? PHONE_WIDTH;
  const words = openWords(entries);
  // Bold words are wider than the guess for plain ones.
  const wordWidth = Math.max(118, 1.4 * widthOf(words, 20));
  const perRow = Math.max(1, Math.floor((width - wordWidth - 8) / GATE));
  const gates = Math.ceil(entries.length / 5);
  const rows = Math.max(1, Math.ceil(gates / perRow));
  const good = entries.filter((entry) => !entry.open).length;
  const box = { x: 0, y: 0, width, height: rows * ROW + 4 };
  const alt = say('tallyDrawn', words, good);
  return drawing(box, alt, surface, [
    text(4, 30, words, { size: 20, bold: true }),
    ...entries.map((entry, i) => {
      const gate = Math.floor(i / 5);
      const x = wordWidth + (gate % perRow) * GATE;
      return mark(x, 6 + Math.floor(gate / perRow) * ROW, i % 5, entry.open);
    }),
  ]);
};

/** Four bars and the fifth across them; a made-good bar is a hairline with a short strike. */
const mark = (x: number, y: number, bar: number, open: boolean): Child => {
  const weight = open ? 3 : 1;
  const at = x + 3 + bar * 8;
  const stroke =
    bar === 4
      ? path('M', x - 3, y + HEIGHT - 4, 'L', x + 33, y + 4)
      : path('M', at, y, 'L', at, y + HEIGHT);
  const strike =
    bar === 4
      ? path('M', x + 25, y + 1, 'L', x + 35, y + 14)
      : path('M', at - 3.5, y + HEIGHT / 2 - 4, 'L', at + 3.5, y + HEIGHT / 2 + 4);
  return g(
    { 'data-mark': open ? 'open' : 'made good' },
    el('path', { d: stroke, 'stroke-width': weight }),
    open ? null : el('path', { d: strike, 'stroke-width': 1.5 }),
  );
};
