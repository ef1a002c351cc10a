// A part or item on its way: a plain box, an arrow for the movement, and the mass in figures.

import { say } from '../words/heard.ts';
import {
  arrowHead,
  type Child,
  type Drawing,
  type DrawingOptions,
  drawing,
  el,
  PHONE_WIDTH,
  paragraph,
  path,
  text,
  wrap,
} from './svg.ts';

type Move = 'moved-off' | 'moved-aside' | 'refitted' | 'item-out' | 'as-found' | 'item-in';

const WORDS: Readonly<Record<Move, string>> = {
  'moved-off': 'comes off',
  'moved-aside': 'moved aside, supported',
  refitted: 'goes back',
  'item-out': 'comes out',
  'as-found': 'looked at as found',
  'item-in': 'goes in',
};

export const partDrawing = (
  name: string,
  move: Move,
  massKg: number | null,
  options: DrawingOptions = {},
): Drawing => {
  const surface = options.surface ?? 'screen';
  const width = options.width ?? PHONE_WIDTH;
  const boxWidth = Math.min(210, width - 150);
  const lines = wrap(name, boxWidth - 20, 16);
  const boxHeight = Math.max(110, lines.length * 20 + 40);
  const y = 24;
  const middle = y + boxHeight / 2;
  const item = move === 'item-out' || move === 'as-found' || move === 'item-in';
  const weight = item ? null : massKg === null ? 'mass not stated' : `${massKg} kg`;
  const below = y + boxHeight + 36;
  return drawing(
    { x: 0, y: 0, width, height: below + (weight === null ? 12 : 40) },
    say('partMoves', name, WORDS[move], weight),
    surface,
    [
      el('path', { d: path('M 20', 8, 'L 20', below - 18), 'stroke-width': 2 }),
      ...Array.from({ length: Math.floor((below - 30) / 14) }, (_, i) =>
        el('path', { d: path('M 20', 14 + i * 14, 'l -10 10'), 'stroke-width': 0.75 }),
      ),
      el('rect', {
        x: 34,
        y,
        width: boxWidth,
        height: boxHeight,
        'stroke-width': 2,
        'stroke-dasharray': item ? '8 5' : null,
      }),
      ...paragraph(34 + boxWidth / 2, middle - (lines.length - 1) * 10 + 5, lines, {
        size: 16,
        anchor: 'middle',
        bold: true,
      }),
      ...(move === 'as-found' ? [] : arrow(move, 34 + boxWidth + 12, width - 14, middle)),
      text(34, below, WORDS[move], { size: 16 }),
      weight === null ? null : text(34, below + 28, weight, { size: 22, bold: true }),
    ],
  );
};

const arrow = (move: Move, from: number, to: number, y: number): readonly Child[] => {
  const back = move === 'refitted' || move === 'item-in';
  const aside = move === 'moved-aside';
  const d = aside
    ? path('M', from, y, 'Q', to - 8, y, to - 8, y + 60)
    : path('M', from, y, 'L', to, y);
  const head = aside
    ? arrowHead(to - 8, y + 60, Math.PI / 2, 16)
    : back
      ? arrowHead(from, y, Math.PI, 16)
      : arrowHead(to, y, 0, 16);
  return [el('path', { d, 'stroke-width': 2.5 }), head];
};
