// The seals of a job by joint, in the order the joints are undone: size, compound, count, grease.

import { limits } from '../limits.ts';
import type { SealNeed } from '../pack/seal-types.ts';
import { now } from '../words/heard.ts';
import {
  type Child,
  type Drawing,
  type DrawingOptions,
  drawing,
  el,
  g,
  MIN_TEXT,
  PHONE_WIDTH,
  paragraph,
  path,
  wrap,
} from './svg.ts';

export type SealMapWords = {
  readonly alt: string;
  readonly grease: (name: string) => string;
  readonly sealant: (name: string) => string;
  readonly noSize: string;
};

type Row = { readonly need: SealNeed; readonly lines: readonly string[]; readonly height: number };
type Block = { readonly name: readonly string[]; readonly rows: readonly Row[] };

const LINE = MIN_TEXT * 1.25;
const SPINE = 8;
const HEAD_X = 20;
const MARK_X = 24;
const TEXT_X = 74;

export const sealMap = (
  needs: readonly SealNeed[],
  words: SealMapWords,
  options: DrawingOptions = {},
): Drawing => sealMaps(needs, words, options, Number.POSITIVE_INFINITY)[0] ?? empty(words, options);

/** In pieces of whole joints, each no higher than `most` unless one joint alone is. */
export function sealMaps(
  needs: readonly SealNeed[],
  words: SealMapWords,
  options: DrawingOptions,
  most: number,
): readonly Drawing[] {
  const width = options.width ?? PHONE_WIDTH;
  const pieces: Block[][] = [[]];
  let height = 0;
  for (const block of blocksOf(needs, words, width)) {
    const own = heightOf(block);
    if (height > 0 && height + own > most) {
      pieces.push([]);
      height = 0;
    }
    pieces.at(-1)?.push(block);
    height += own;
  }
  return pieces
    .filter((blocks) => blocks.length > 0)
    .map((blocks) => draw(blocks, words, width, options.surface ?? 'screen'));
}

const empty = ({ alt }: SealMapWords, { width, surface }: DrawingOptions): Drawing =>
  drawing({ x: 0, y: 0, width: width ?? PHONE_WIDTH, height: 20 }, alt, surface ?? 'screen', [
    ...paragraph(4, 15, ['–']),
  ]);

const blocksOf = (
  needs: readonly SealNeed[],
  words: SealMapWords,
  width: number,
): readonly Block[] =>
  [...new Set(needs.map(({ joint }) => joint))].map((joint) => {
    const own = needs.filter((need) => need.joint === joint);
    // Bold runs wider.
    const name = wrap(own[0]?.jointName ?? joint, (width - HEAD_X - 8) * 0.86, MIN_TEXT);
    return { name, rows: own.map((need) => rowOf(need, words, width)) };
  });

function rowOf(need: SealNeed, words: SealMapWords, width: number): Row {
  const { count, name, size, thickness, compound, grease, sealant } = need;
  const figures = [size, thickness, compound].filter((each) => each !== null);
  const lines = [
    `${count} × ${now(name)}`,
    figures.length === 0 ? words.noSize : figures.join(' · '),
    ...(grease === null ? [] : [words.grease(now(grease))]),
    ...(sealant === null ? [] : [words.sealant(now(sealant))]),
  ].flatMap((line) => wrap(line, width - TEXT_X - 8, MIN_TEXT));
  return { need, lines, height: Math.max(44, lines.length * LINE + 10) };
}

const heightOf = ({ name, rows }: Block): number =>
  name.length * LINE + 10 + rows.reduce((sum, row) => sum + row.height, 0) + 12;

function draw(
  blocks: readonly Block[],
  words: SealMapWords,
  width: number,
  surface: 'screen' | 'paper',
): Drawing {
  const children: Child[] = [];
  let y = 4;
  for (const block of blocks) {
    const { name, rows } = block;
    children.push(
      el('circle', { cx: SPINE, cy: y + 9, r: 4, fill: 'currentColor' }),
      ...paragraph(HEAD_X, y + MIN_TEXT, name, { bold: true }),
    );
    let at = y + name.length * LINE + 8;
    for (const row of rows) {
      children.push(rowAt(row, at));
      at += row.height;
    }
    y += heightOf(block);
  }
  const spine = el('path', { d: path('M', SPINE, 13, 'L', SPINE, y - 14) });
  return drawing({ x: 0, y: 0, width, height: y }, words.alt, surface, [spine, ...children]);
}

const rowAt = ({ need, lines, height }: Row, y: number): Child =>
  g(
    { 'data-seal': need.thing, 'data-count': need.count },
    mark(need, y + height / 2),
    ...paragraph(TEXT_X, y + height / 2 - (lines.length * LINE) / 2 + 12, lines),
  );

/** In section between its two faces: a ring round, a gasket flat, a lip open to one side. */
function mark({ kind, count }: SealNeed, middle: number): Child {
  const shown = Math.min(count, limits.drawing.sealMarks);
  const step = shown > 1 ? 30 / shown : 0;
  const shapes = Array.from({ length: shown }, (_, i) => {
    const x = MARK_X + 20 + (i - (shown - 1) / 2) * step;
    switch (kind) {
      case 'ring':
        return el('circle', { cx: x, cy: middle, r: 6, 'stroke-width': 2 });
      case 'shaft seal':
        return el('path', {
          d: path(
            ...['M', x - 7, middle - 8, 'L', x - 7, middle + 8],
            ...['L', x + 7, middle + 8, 'L', x, middle],
          ),
          'stroke-width': 2,
        });
      case 'sealing washer':
        return g(
          {},
          el('circle', { cx: x, cy: middle, r: 8, 'stroke-width': 2 }),
          el('circle', { cx: x, cy: middle, r: 3 }),
        );
      default:
        return el('rect', {
          ...{ x: x - 3, y: middle - 9, width: 6, height: 18 },
          fill: 'currentColor',
        });
    }
  });
  const faces = kind === 'sealing washer' ? [] : [face(MARK_X, middle), face(MARK_X + 40, middle)];
  return g({}, ...faces, ...shapes);
}

const face = (x: number, middle: number): Child =>
  el('path', { d: path('M', x, middle - 14, 'L', x, middle + 14) });
