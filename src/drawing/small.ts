// The smaller things of a job: seals in section, counted things, a measured gap, a temporary thing.

import { limits } from '../limits.ts';
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

type Frame = { readonly surface: 'screen' | 'paper'; readonly width: number; readonly x: number };

const frame = (options: DrawingOptions): Frame => {
  const width = options.width ?? PHONE_WIDTH;
  return { surface: options.surface ?? 'screen', width, x: width / 2 };
};

const title = (
  name: string,
  at: Frame,
): { readonly lines: readonly Child[]; readonly end: number } => {
  const lines = wrap(name, at.width - 20, 16);
  return {
    lines: paragraph(at.x, 22, lines, { size: 16, anchor: 'middle' }),
    end: 22 + lines.length * 20,
  };
};

/** Two hatched faces with the seal between them, cut through; the count in large figures. */
export const sealDrawing = (
  name: string,
  count: number,
  goesIn: boolean,
  options: DrawingOptions = {},
): Drawing => {
  const at = frame(options);
  const head = title(name, at);
  const top = head.end + 8;
  const left = at.x - 90;
  const face = (y: number): readonly Child[] => [
    el('rect', { x: left, y, width: 180, height: 34, 'stroke-width': 1.75 }),
    ...Array.from({ length: 9 }, (_, i) =>
      el('path', { d: path('M', left + 4 + i * 19, y + 30, 'l 24 -26'), 'stroke-width': 0.6 }),
    ),
  ];
  const words = say('sealDrawn', count, goesIn);
  const inkOf = goesIn ? 'currentColor' : 'none';
  return drawing(
    { x: 0, y: 0, width: at.width, height: top + 160 },
    say('listedThing', name, words),
    at.surface,
    [
      ...head.lines,
      ...face(top),
      ...face(top + 62),
      ...[at.x - 55, at.x + 55].map((x) =>
        el('circle', { cx: x, cy: top + 48, r: 11, fill: inkOf, 'stroke-width': 1.75 }),
      ),
      el('path', {
        d: path('M', at.x, top - 2, 'L', at.x, top + 100),
        'stroke-dasharray': '10 4 2 4',
        'stroke-width': 0.6,
      }),
      text(at.x, top + 136, words, { size: 26, anchor: 'middle', bold: true }),
    ],
  );
};

/** One circle each, as they lie on the bench to be counted. */
export const countedThings = (
  name: string,
  count: number,
  /** The count in words: `2 dowels`. */
  words: string,
  options: DrawingOptions = {},
): Drawing => {
  const at = frame(options);
  const head = title(name, at);
  const shown = Math.min(count, limits.drawing.countedThings);
  const perRow = Math.min(shown, Math.max(1, Math.floor((at.width - 20) / 46)));
  const rows = Math.max(1, Math.ceil(shown / Math.max(1, perRow)));
  const left = at.x - (perRow * 46) / 2 + 23;
  const lines = wrap(words, at.width - 20, 24);
  const end = head.end + 12 + rows * 46;
  const height = end + 24 + lines.length * 30;
  return drawing(
    { x: 0, y: 0, width: at.width, height },
    say('listedThing', name, words),
    at.surface,
    [
      ...head.lines,
      ...Array.from({ length: shown }, (_, i) =>
        el('circle', {
          cx: left + (i % perRow) * 46,
          cy: head.end + 34 + Math.floor(i / perRow) * 46,
          r: 16,
          'stroke-width': 1.75,
        }),
      ),
      ...paragraph(at.x, end + 36, lines, { size: 24, anchor: 'middle', bold: true }),
    ],
  );
};

/** A setting as a dimension between two faces, with room for what was read. */
export const gapDrawing = (name: string, when: string, options: DrawingOptions = {}): Drawing => {
  const at = frame(options);
  const head = title(name, at);
  const y = head.end + 60;
  return drawing(
    { x: 0, y: 0, width: at.width, height: y + 92 },
    say('measuredDrawn', name, when),
    at.surface,
    [
      ...head.lines,
      ...[at.x - 40, at.x + 40].map((x) =>
        el('path', { d: path('M', x, y - 46, 'L', x, y + 40), 'stroke-width': 2 }),
      ),
      el('path', {
        d: path('M', at.x - 100, y, 'L', at.x - 40, y, 'M', at.x + 40, y, 'L', at.x + 100, y),
      }),
      arrowHead(at.x - 40, y, 0, 12),
      arrowHead(at.x + 40, y, Math.PI, 12),
      text(at.x, y + 74, when, { size: 22, anchor: 'middle', bold: true }),
    ],
  );
};

/** A blank, plug, rope or lock: the open end with the thing before it, and which way it goes. */
export const temporaryDrawing = (
  name: string,
  goesIn: boolean,
  options: DrawingOptions = {},
): Drawing => {
  const at = frame(options);
  const head = title(name, at);
  const y = head.end + 64;
  const gap = at.x + 12;
  const words = goesIn ? 'put in' : 'taken away';
  return drawing(
    { x: 0, y: 0, width: at.width, height: y + 96 },
    say('listedThing', name, words),
    at.surface,
    [
      ...head.lines,
      el('path', {
        d: path(
          'M',
          at.x - 130,
          y - 26,
          'L',
          gap,
          y - 26,
          'M',
          at.x - 130,
          y + 26,
          'L',
          gap,
          y + 26,
        ),
        'stroke-width': 1.75,
      }),
      el('rect', { x: gap, y: y - 46, width: 12, height: 92, 'stroke-width': 1.75 }),
      el('rect', { x: gap + 30, y: y - 46, width: 12, height: 92, fill: 'currentColor' }),
      el('path', { d: path('M', gap + 54, y, 'L', gap + 112, y), 'stroke-width': 2 }),
      goesIn ? arrowHead(gap + 54, y, Math.PI, 14) : arrowHead(gap + 112, y, 0, 14),
      text(at.x, y + 80, words, { size: 22, anchor: 'middle', bold: true }),
    ],
  );
};

/** Where a picture would say nothing: the name and its words, large, in a ruled frame. */
export const wordsDrawing = (
  name: string,
  words: readonly string[],
  options: DrawingOptions = {},
): Drawing => {
  const at = frame(options);
  const lines = wrap(name, at.width - 40, 22);
  const rest = words.filter((word) => word !== '').flatMap((word) => wrap(word, at.width - 40, 16));
  const end = 20 + lines.length * 27.5;
  const height = end + rest.length * 20 + 26;
  const alt = say('together', [name, ...words.filter((word) => word !== '')]);
  return drawing({ x: 0, y: 0, width: at.width, height }, alt, at.surface, [
    el('path', {
      d: path('M 8 6 L', at.width - 8, 6, 'M 8', height - 6, 'L', at.width - 8, height - 6),
    }),
    ...paragraph(at.x, 36, lines, { size: 22, anchor: 'middle', bold: true }),
    ...paragraph(at.x, end + 26, rest, { size: 16, anchor: 'middle' }),
  ]);
};
