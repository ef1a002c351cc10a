// The proof in drawings: everyone clear, the direction of rotation, and the ladder of speeds.

import { say } from '../words/heard.ts';
import {
  arrowHead,
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

/** Rungs from the slowest speed at the foot to the fastest at the top, each with a box to tick. */
export const speedLadder = (
  name: string,
  speeds: readonly string[],
  options: DrawingOptions = {},
): Drawing => {
  const width = options.width ?? PHONE_WIDTH;
  const lines = wrap(name, width - 20, 16);
  const top = 22 + lines.length * 20;
  const rungs = [...speeds].reverse();
  const left = width / 2 - 90;
  const right = width / 2 + 20;
  const height = top + Math.max(1, rungs.length) * 52 + 20;
  const none = speeds.length === 0;
  const alt = say('speedsDrawn', name, none ? null : speeds.join(', '));
  return drawing({ x: 0, y: 0, width, height }, alt, options.surface ?? 'screen', [
    ...paragraph(width / 2, 22, lines, { size: 16, anchor: 'middle' }),
    none
      ? text(width / 2, top + 30, 'no speeds stated', { size: 18, anchor: 'middle' })
      : el('path', {
          d: path('M', left, top, 'L', left, height - 8, 'M', right, top, 'L', right, height - 8),
          'stroke-width': 2,
        }),
    ...rungs.flatMap((speed, i) => {
      const y = top + 28 + i * 52;
      return [
        el('path', { d: path('M', left, y, 'L', right, y), 'stroke-width': 2 }),
        text(right + 16, y + 7, speed, { size: 20, bold: true, extra: { 'data-speed': speed } }),
      ];
    }),
  ]);
};

export const rotationDrawing = (rotation: string | null, options: DrawingOptions = {}): Drawing => {
  const width = options.width ?? PHONE_WIDTH;
  const x = width / 2;
  const words = rotation ?? 'direction not stated';
  // "Anticlockwise" holds "clockwise", so it is asked for first; no word of either, no arrow head.
  const way = /anti-?clockwise|counter-?clockwise/i.test(words)
    ? 'anticlockwise'
    : /clockwise/i.test(words)
      ? 'clockwise'
      : null;
  const end = way === 'anticlockwise' ? -1 : 1;
  const lines = wrap(words, width - 20, 20);
  return drawing(
    { x: 0, y: 0, width, height: 210 + lines.length * 25 },
    say('turnDrawn', words),
    options.surface ?? 'screen',
    [
      el('circle', { cx: x, cy: 100, r: 8, fill: 'currentColor' }),
      el('circle', { cx: x, cy: 100, r: 40, 'stroke-width': 1.5 }),
      el('path', {
        d: path('M', x - 76, 100, 'A 76 76 0 1 1', x, 176),
        'stroke-width': 2.5,
        transform: end < 0 ? path('matrix( -1 0 0 1', 2 * x, '0 )') : null,
      }),
      way === null ? null : arrowHead(x, 176, end > 0 ? Math.PI : 0, 18),
      ...paragraph(x, 216, lines, { size: 20, anchor: 'middle', bold: true }),
    ],
  );
};

/** The machine in its box, people outside the line, and the call that must be answered. */
export const peopleClear = (options: DrawingOptions = {}): Drawing => {
  const width = options.width ?? PHONE_WIDTH;
  const x = width / 2;
  const person = (at: number): readonly ReturnType<typeof el>[] => [
    el('circle', { cx: at, cy: 70, r: 11, 'stroke-width': 2 }),
    el('path', {
      d: path('M', at, 81, 'L', at, 122, 'l -14 34 M', at, 122, 'l 14 34 M', at - 18, 98, 'l 36 0'),
      'stroke-width': 2,
    }),
  ];
  return drawing(
    { x: 0, y: 0, width, height: 214 },
    say('clearDrawn'),
    options.surface ?? 'screen',
    [
      el('rect', { x: x - 55, y: 56, width: 110, height: 100, 'stroke-width': 2 }),
      el('rect', { x: x - 100, y: 24, width: 200, height: 146, 'stroke-dasharray': '8 6' }),
      text(x, 111, 'machine', { size: 16, anchor: 'middle' }),
      ...person(x - 150),
      ...person(x + 150),
      text(x, 204, 'everyone clear, called and answered', {
        size: 16,
        anchor: 'middle',
        bold: true,
      }),
    ],
  );
};
