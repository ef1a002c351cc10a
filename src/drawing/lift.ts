// A weight seen from the side: where the hands are above the floor, or how the sling hangs.

import {
  arrowHead,
  type Child,
  type Drawing,
  type DrawingOptions,
  drawing,
  el,
  g,
  PHONE_WIDTH,
  paragraph,
  path,
  text,
  wrap,
} from './svg.ts';

type Hands = { readonly hCm: number; readonly vCm: number };

export type HandsDrawn = {
  readonly alt: string;
  /** In large figures above it: `12 kg each`. */
  readonly weight: string;
  readonly from: Hands;
  readonly to: Hands | null;
  readonly floor: string;
};

const FLOOR = 250;
/** Two metres of height. */
const SCALE = 0.9;

const line = (x1: number, y1: number, x2: number, y2: number, weight = 1.5): Child =>
  el('path', { d: path('M', x1, y1, 'L', x2, y2), 'stroke-width': weight });

/** Feet, legs, back and head of somebody standing; the arms are not drawn, the hands are. */
const person = (x: number): readonly Child[] => [
  line(x, FLOOR, x + 22, FLOOR, 3),
  line(x + 4, FLOOR, x + 4, FLOOR - 76, 3),
  line(x + 4, FLOOR - 76, x + 8, FLOOR - 132, 3),
  el('circle', { cx: x + 10, cy: FLOOR - 148, r: 13, 'stroke-width': 2.5 }),
];

const load = (x: number, at: Hands, filled: boolean): readonly Child[] => {
  const y = FLOOR - at.vCm * SCALE;
  return [
    el('rect', {
      x: x + at.hCm * SCALE - 14,
      y: y - 14,
      width: 28,
      height: 28,
      'stroke-width': 2,
      ...(filled ? { fill: 'currentColor' } : { 'stroke-dasharray': '4 3' }),
    }),
  ];
};

/** To scale from ankles and floor; the figures stand beside, in centimetres. */
export function handsDrawing(given: HandsDrawn, options: DrawingOptions = {}): Drawing {
  const width = options.width ?? PHONE_WIDTH;
  const x = 70;
  const side = width - 96;
  const figure = (at: Hands, y: number): Child =>
    text(side, y, `${at.hCm} → ${at.vCm} ↑ cm`, { size: 15, anchor: 'middle', bold: true });
  const y = (at: Hands) => FLOOR - at.vCm * SCALE;
  const { from, to } = given;
  const tip = to === null ? 0 : y(to) < y(from) ? 1 : -1;
  return drawing(
    { x: 0, y: 0, width, height: FLOOR + 58 },
    given.alt,
    options.surface ?? 'screen',
    [
      text(width / 2, 30, given.weight, { size: 24, bold: true, anchor: 'middle' }),
      line(16, FLOOR, width - 16, FLOOR, 2),
      ...paragraph(width / 2, FLOOR + 26, wrap(given.floor, width - 20, 14), {
        size: 14,
        anchor: 'middle',
      }),
      g({ 'data-person': 'standing' }, ...person(x)),
      ...(to === null ? [] : load(x, to, false)),
      ...load(x, from, true),
      ...(to === null || Math.abs(y(to) - y(from)) < 40
        ? []
        : [
            line(x + from.hCm * SCALE + 24, y(from), x + from.hCm * SCALE + 24, y(to), 1.5),
            arrowHead(x + from.hCm * SCALE + 24, y(to), tip > 0 ? -Math.PI / 2 : Math.PI / 2, 12),
          ]),
      figure(from, Math.min(FLOOR - 12, y(from) + 5)),
      ...(to === null || Math.abs(y(to) - y(from)) < 20
        ? []
        : [figure(to, Math.min(FLOOR - 12, y(to) + 5))]),
    ],
  );
}

export type SlingDrawn = {
  readonly alt: string;
  readonly weight: string;
  /** Of each leg from straight down; one for all alike. */
  readonly anglesDeg: readonly number[];
  readonly legs: number;
  /** What each leg pulls, written along it. */
  readonly legSays: string;
};

const HOOK = 66;
const DROP = 120;

/** Hook, legs at their angles to scale, and the load under them; four legs are seen as two. */
export function slingDrawing(given: SlingDrawn, options: DrawingOptions = {}): Drawing {
  const width = options.width ?? PHONE_WIDTH;
  const x = width / 2;
  const [first = 0, second = first] = given.anglesDeg;
  const most = width / 2 - 30;
  const out = (deg: number) => Math.min(most, DROP * Math.tan((deg * Math.PI) / 180));
  const left = given.legs === 1 ? 0 : out(first);
  const right = given.legs === 1 ? 0 : out(second);
  const end = HOOK + DROP;
  const wide = Math.max(left, right, 36);
  return drawing({ x: 0, y: 0, width, height: end + 92 }, given.alt, options.surface ?? 'screen', [
    text(x, 30, given.weight, { size: 24, bold: true, anchor: 'middle' }),
    el('circle', { cx: x, cy: HOOK - 12, r: 10, 'stroke-width': 3 }),
    ...(given.legs === 1
      ? [line(x, HOOK, x, end, 4)]
      : [line(x, HOOK, x - left, end, 4), line(x, HOOK, x + right, end, 4)]),
    ...(given.legs === 3 ? [line(x, HOOK, x, end, 2)] : []),
    given.legs === 1
      ? null
      : el('path', {
          d: path('M', x, HOOK, 'L', x, end),
          'stroke-width': 1,
          'stroke-dasharray': '5 4',
        }),
    el('rect', { x: x - wide, y: end, width: 2 * wide, height: 40, 'stroke-width': 2.5 }),
    ...(given.legs === 1
      ? []
      : [
          text(x + (right < 60 ? right + 12 : 8), end - 14, `${second}°`, { size: 15, bold: true }),
        ]),
    text(x, end + 70, given.legSays, { size: 16, anchor: 'middle', bold: true }),
  ]);
}
