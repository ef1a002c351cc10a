// Closures and drains as symbols of our own drawing, in the manner of ISO 14617.

import { arrowHead, type Child, el, g, path, text } from './svg.ts';
import { ground } from './theme.ts';

type Surface = 'screen' | 'paper';

/** Shut is filled, open is an outline, anything else is half; the word stands beside it. */
export const positionShape = (position: string): 'filled' | 'outline' | 'half' => {
  const word = position.toLowerCase();
  if (/\b(shut|closed|off)\b/.test(word)) return 'filled';
  return /\b(open|on)\b/.test(word) ? 'outline' : 'half';
};

/** The symbol centred on (x, y), `size` from end to end, on a line that runs left to right. */
export const closureSymbol = (
  kind: string,
  position: string,
  x: number,
  y: number,
  size: number,
  surface: Surface,
): Child => {
  const shape = positionShape(position);
  const attrs = { 'data-closure': kind, 'data-position': shape };
  switch (kind) {
    case 'breaker':
    case 'switch':
    case 'turning gear':
      return g(attrs, ...switchMarks(shape, x, y, size, surface));
    case 'drain':
    case 'vent':
      return g(attrs, ...drainMarks(kind, shape, x, y, size, surface));
    case 'non-return valve':
      return g(attrs, ...bowTie(shape, x, y, size, surface), checkMark(x, y, size));
    case 'sea valve':
      return g(attrs, ...bowTie(shape, x, y, size, surface), seaMark(x, y, size));
    default:
      return g(attrs, ...bowTie(shape, x, y, size, surface), stem(x, y, size));
  }
};

const bowTie = (
  shape: 'filled' | 'outline' | 'half',
  x: number,
  y: number,
  size: number,
  surface: Surface,
): readonly Child[] => {
  const half = size / 2;
  const high = size * 0.3;
  const side = (way: number, filled: boolean): Child =>
    el('path', {
      d: path('M', x, y, 'L', x + way * half, y - high, 'L', x + way * half, y + high, 'Z'),
      fill: filled ? 'currentColor' : ground(surface),
      'stroke-width': 1.75,
    });
  return [side(-1, shape !== 'outline'), side(1, shape === 'filled')];
};

const stem = (x: number, y: number, size: number): Child =>
  el('path', {
    d: path(
      'M',
      x,
      y,
      'L',
      x,
      y - size * 0.42,
      'M',
      x - size * 0.18,
      y - size * 0.42,
      'l',
      size * 0.36,
      0,
    ),
    'stroke-width': 1.75,
  });

const checkMark = (x: number, y: number, size: number): Child =>
  g(
    {},
    el('path', {
      d: path('M', x - size * 0.3, y - size * 0.42, 'L', x + size * 0.3, y - size * 0.42),
    }),
    arrowHead(x + size * 0.3, y - size * 0.42, 0, size * 0.14),
  );

/** A sea valve carries three waves over its wheel. */
const seaMark = (x: number, y: number, size: number): Child =>
  g(
    {},
    stem(x, y, size),
    el('path', {
      d: path('M', x - size * 0.3, y - size * 0.54, ...waves(size * 0.15)),
      'stroke-width': 1.25,
    }),
  );

const waves = (w: number): readonly (string | number)[] =>
  Array.from({ length: 4 }).flatMap((_, i) => ['q', w / 2, i % 2 === 0 ? -w / 2 : w / 2, w, 0]);

/** Off stands open, on lies on its contact; any other position is a box, for its words to say. */
const switchMarks = (
  shape: 'filled' | 'outline' | 'half',
  x: number,
  y: number,
  size: number,
  surface: Surface,
): readonly Child[] => {
  const half = size / 2;
  const off = shape === 'filled';
  const clear = el('rect', {
    x: x - half,
    y: y - 8,
    width: size,
    height: 16,
    fill: ground(surface),
    stroke: shape === 'half' ? 'currentColor' : 'none',
    'stroke-width': 1.75,
  });
  if (shape === 'half') return [clear];
  return [
    clear,
    el('circle', { cx: x - half, cy: y, r: 3.5, fill: 'currentColor' }),
    el('circle', { cx: x + half, cy: y, r: 3.5, fill: 'currentColor' }),
    el('path', {
      d: path('M', x - half, y, 'L', x + half * (off ? 0.75 : 1), off ? y - size * 0.4 : y),
      'stroke-width': 2.25,
    }),
  ];
};

/** A small valve on a branch: a drain's leads down to drops, a vent's leads up. */
const drainMarks = (
  kind: 'drain' | 'vent',
  shape: 'filled' | 'outline' | 'half',
  x: number,
  y: number,
  size: number,
  surface: Surface,
): readonly Child[] => {
  const way = kind === 'drain' ? 1 : -1;
  const at = y + way * size * 0.45;
  const half = size * 0.3;
  const wide = size * 0.18;
  const side = (end: number, filled: boolean): Child =>
    el('path', {
      d: path('M', x, at, 'L', x - wide, at + end * half, 'L', x + wide, at + end * half, 'Z'),
      fill: filled ? 'currentColor' : ground(surface),
      'stroke-width': 1.75,
    });
  return [
    el('path', { d: path('M', x, y, 'L', x, y + way * size), 'stroke-width': 1.5 }),
    side(-1, shape !== 'outline'),
    side(1, shape === 'filled'),
    kind === 'drain' && shape !== 'filled' ? drops(x, at + half + size * 0.18, size) : null,
  ];
};

const drops = (x: number, y: number, size: number): Child =>
  g(
    {},
    ...[0, 1, 2].map((i) =>
      el('circle', {
        cx: x,
        cy: y + size * 0.18 * (i + 1),
        r: 2.4 - i * 0.6,
        fill: 'currentColor',
      }),
    ),
  );

/** A tag hung on a closure: its number within the job. */
export const tagAt = (x: number, y: number, label: string, surface: Surface): Child =>
  g(
    { 'data-tag': label },
    el('path', { d: path('M', x, y, 'q 6 6 4 14') }),
    el('rect', {
      x: x - 12,
      y: y + 14,
      width: 32,
      height: 24,
      fill: ground(surface),
      'stroke-width': 1.5,
    }),
    text(x + 4, y + 31, label, { anchor: 'middle', bold: true }),
  );
