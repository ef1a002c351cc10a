// Caution signs in the manner of ISO 3864 and ISO 7010: our own triangle and simple pictograms.

import type { Caution } from '../quantity/authority.ts';
import { say } from '../words/heard.ts';
import { type Child, type Drawing, type DrawingOptions, drawing, el, path, text } from './svg.ts';
import { cautionGround, cautionInk } from './theme.ts';

/** Pictograms in a box of 100 × 100 whose triangle has its base on y = 92. */
const PICTOGRAMS: Readonly<Record<string, (ink: string) => readonly Child[]>> = {
  W001: (ink) => [
    el('path', { d: 'M 46 36 L 54 36 L 52 66 L 48 66 Z', fill: ink, stroke: ink }),
    el('circle', { cx: 50, cy: 77, r: 4.5, fill: ink, stroke: 'none' }),
  ],
  W012: (ink) => [
    el('path', {
      d: 'M 55 34 L 42 60 L 51 60 L 45 84 L 62 53 L 52 53 Z',
      fill: ink,
      stroke: 'none',
    }),
  ],
  W015: (ink) => [
    el('path', { d: 'M 50 34 L 50 46', stroke: ink, 'stroke-width': 3 }),
    el('path', { d: 'M 50 46 L 36 58 M 50 46 L 64 58', stroke: ink, 'stroke-width': 2.5 }),
    el('rect', { x: 33, y: 58, width: 34, height: 22, fill: ink, stroke: 'none' }),
  ],
  W017: (ink) => [
    el('path', { d: 'M 30 82 L 70 82', stroke: ink, 'stroke-width': 4 }),
    ...[38, 50, 62].map((x) =>
      el('path', {
        d: path('M', x, 74, 'q -6 -6 0 -12 t 0 -12'),
        stroke: ink,
        'stroke-width': 3.5,
      }),
    ),
  ],
  W018: (ink) => [
    el('path', { d: 'M 62 50 A 16 16 0 1 0 66 64', stroke: ink, 'stroke-width': 4.5 }),
    el('path', { d: 'M 56 54 L 68 54 L 65 42 Z', fill: ink, stroke: ink }),
    el('circle', { cx: 50, cy: 62, r: 4.5, fill: ink, stroke: 'none' }),
  ],
  W021: (ink) => [
    el('path', {
      d:
        'M 50 38 Q 66 54 62 66 Q 60 76 50 78 Q 40 76 38 66 ' +
        'Q 38 60 43 54 Q 45 62 49 60 Q 46 50 50 38 Z',
      fill: ink,
      stroke: 'none',
    }),
    el('path', { d: 'M 32 84 L 68 84', stroke: ink, 'stroke-width': 3.5 }),
  ],
  W023: (ink) => [
    el('path', { d: 'M 40 38 L 62 46', stroke: ink, 'stroke-width': 5 }),
    el('path', { d: 'M 60 52 q -4 6 0 7 q 4 -1 0 -7 Z', fill: ink, stroke: ink }),
    el('path', { d: 'M 34 70 L 56 70 L 66 76 L 66 84 L 34 84 Z', fill: ink, stroke: 'none' }),
  ],
  W041: (ink) => [
    el('circle', { cx: 44, cy: 48, r: 6, stroke: ink, 'stroke-width': 3 }),
    el('circle', { cx: 58, cy: 58, r: 7, stroke: ink, 'stroke-width': 3 }),
    el('circle', { cx: 40, cy: 64, r: 4.5, stroke: ink, 'stroke-width': 3 }),
    el('path', { d: 'M 28 84 L 72 84 M 40 78 L 60 78', stroke: ink, 'stroke-width': 4 }),
  ],
};

export const SIGNS: readonly string[] = Object.keys(PICTOGRAMS);

/** The sign alone, scaled to `size` with its top left at (x, y); unknown references get W001. */
export const signAt = (
  sign: string,
  x: number,
  y: number,
  size: number,
  surface: 'screen' | 'paper',
): Child => {
  const ink = cautionInk(surface);
  const picture = PICTOGRAMS[sign] ?? PICTOGRAMS.W001;
  return el(
    'g',
    { transform: path('translate(', x, y, ') scale(', size / 100, ')'), 'data-sign': sign },
    el('path', {
      d: 'M 50 8 L 96 90 L 4 90 Z',
      fill: cautionGround(surface),
      stroke: ink,
      'stroke-width': 6,
    }),
    ...(picture === undefined ? [] : picture(ink)),
  );
};

/** The sign with its word under it: a caution is never the colour alone. */
export const cautionDrawing = (caution: Caution, options: DrawingOptions = {}): Drawing => {
  const surface = options.surface ?? 'screen';
  const width = options.width ?? 120;
  const sign = Math.min(width, 96);
  return drawing(
    { x: 0, y: 0, width, height: sign + 22 },
    say('cautionDrawn', caution.hazard),
    surface,
    [
      signAt(caution.sign, (width - sign) / 2, 0, sign, surface),
      text(width / 2, sign + 14, caution.hazard, { anchor: 'middle', bold: true }),
    ],
  );
};

/** The sign alone, for a place where its word already stands beside it in type. */
export const signDrawing = (caution: Caution, options: DrawingOptions = {}): Drawing => {
  const surface = options.surface ?? 'screen';
  const width = options.width ?? 96;
  return drawing(
    { x: 0, y: 0, width, height: width },
    say('cautionDrawn', caution.hazard),
    surface,
    [signAt(caution.sign, 0, 0, width, surface)],
  );
};
