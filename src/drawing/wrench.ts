// A torque wrench as it is used: its setting, where the hand goes, how the open end sits on it.

import type { WrenchLine } from '../pack/fastening-types.ts';
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
} from './svg.ts';

const LEFT = 70;
const RIGHT = 40;
const HEIGHT = 150;
const BAR = 92;
const HEAD = 18;

/** An arm of the open end is drawn to scale of the lever, but never too short to be seen. */
const LEAST_ARM = 34;

export type WrenchWords = {
  /** Read as a picture: `set to 46 N·m, hand at the grip mark …`. */
  readonly alt: string;
  readonly grip: string;
};

export function wrenchDrawing(
  line: WrenchLine,
  round: string | null,
  words: WrenchWords,
  options: DrawingOptions = {},
): Drawing {
  const width = options.width ?? PHONE_WIDTH;
  const setting = line.rounds.find((each) => each.round === round)?.shown ?? line.shown;
  const offset = line.offsetMm ?? 0;
  const ahead = offset === 0 ? 0 : Math.cos(((line.angleDeg ?? 90) * Math.PI) / 180);
  const lever = width - LEFT - RIGHT - 60;
  const arm = line.gripPointMm === null ? LEAST_ARM : (offset / line.gripPointMm) * lever;
  const drawn = offset === 0 ? 0 : Math.max(LEAST_ARM, Math.min(arm, LEFT - 16));
  const up = offset === 0 ? 0 : Math.sin(((line.angleDeg ?? 90) * Math.PI) / 180);
  const bolt = { x: LEFT - drawn * ahead, y: BAR - drawn * up };
  const grip = LEFT + lever;
  const box = { x: 0, y: 0, width, height: HEIGHT };
  const surface = options.surface ?? 'screen';
  return drawing(box, words.alt, surface, [
    text(width / 2, 30, setting, { size: 28, bold: true, anchor: 'middle' }),
    ...handle(grip, width),
    offset === 0 ? null : bar(LEFT, BAR, bolt.x, bolt.y, 7),
    el('circle', {
      cx: LEFT,
      cy: BAR,
      r: 12,
      'stroke-width': 2,
      fill: surface === 'paper' ? '#fff' : 'var(--ground)',
    }),
    nut(bolt.x, bolt.y),
    ...span(grip, line.gripPointMm, words.grip),
  ]);
}

const bar = (x1: number, y1: number, x2: number, y2: number, weight: number): Child =>
  el('path', { d: path('M', x1, y1, 'L', x2, y2), 'stroke-width': weight });

/** The bar, and the mark that the hand covers. */
const handle = (grip: number, width: number): readonly Child[] => [
  bar(LEFT, BAR, width - RIGHT, BAR, 5),
  g(
    { 'data-grip': 'here' },
    el('rect', { x: grip - 26, y: BAR - 12, width: 52, height: 24, rx: 10, 'stroke-width': 2.5 }),
    bar(grip, BAR - 22, grip, BAR + 30, 1.5),
  ),
];

const nut = (x: number, y: number): Child => {
  const corner = (i: number) => {
    const a = (Math.PI / 3) * i;
    return [x + HEAD * Math.cos(a), y + HEAD * Math.sin(a)] as const;
  };
  const [first, ...rest] = [0, 1, 2, 3, 4, 5].map(corner);
  if (first === undefined) return null;
  return el('path', {
    d: path('M', ...first, ...rest.flatMap((point) => ['L', ...point] as const), 'Z'),
    'stroke-width': 2,
  });
};

/** From the square to the mark, dimensioned under the bar; nothing is drawn that is not known. */
const span = (grip: number, mm: number | null, words: string): readonly Child[] => {
  const y = BAR + 30;
  const line =
    mm === null
      ? []
      : [
          bar(LEFT, BAR + 18, LEFT, y + 6, 1),
          bar(LEFT, y, grip, y, 1),
          el('path', { d: path('M', LEFT + 8, y - 4, 'L', LEFT, y, 'L', LEFT + 8, y + 4) }),
          el('path', { d: path('M', grip - 8, y - 4, 'L', grip, y, 'L', grip - 8, y + 4) }),
        ];
  return [
    ...line,
    text((LEFT + grip) / 2, y + 22, words, { size: 20, bold: true, anchor: 'middle' }),
  ];
};
