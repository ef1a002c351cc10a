// The marks of a drawn joint: holes and their state, the order, the heading, the key to the shapes.

import type { JointFacts } from '../pack/types.ts';
import { now } from '../words/heard.ts';
import type { Point } from './outline.ts';
import {
  type Child,
  el,
  g,
  MIN_TEXT,
  ordinal,
  path,
  type Surface,
  type TextStyle,
  text,
  type ViewBox,
  widthOf,
  wrap,
} from './svg.ts';
import { ground } from './theme.ts';

/** Empty circle, half, struck cross: the shape says it, and the label beside it in words. */
export type HoleState = 'not yet' | 'earlier round' | 'this round';

export type JointInput = {
  readonly joint: Pick<JointFacts, 'name' | 'holes' | 'layout'>;
  /** Hole labels in tightening order; empty where no order is stated. */
  readonly order?: readonly string[];
  readonly states?: Readonly<Record<string, HoleState>>;
  /** What is being done now: `60 %`, `by hand`, `undo`. */
  readonly round?: string | null;
  /** The figure for this round, as issued. */
  readonly value?: string | null;
};

/** Where a hole is to be pressed, in viewBox units; `radius` is never under half of 44. */
export type HoleCentre = {
  readonly label: string;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
};

/** The radius of a drawn hole. */
export const HOLE = 19;

/** A word with the ground behind it, so that no line runs through its letters. */
export const label = (
  x: number,
  y: number,
  word: string,
  style: TextStyle,
  surface: Surface,
): Child => {
  const size = style.size ?? MIN_TEXT;
  const long = word.length * size * 0.58;
  const left = style.anchor === 'end' ? x - long : style.anchor === 'start' ? x : x - long / 2;
  return g(
    {},
    el('rect', {
      x: left,
      y: y - size * 0.8,
      width: long,
      height: size,
      fill: ground(surface),
      stroke: 'none',
    }),
    text(x, y, word, { anchor: 'middle', ...style }),
  );
};

export const holeAt = (hole: HoleCentre, state: HoleState, surface: Surface): Child => {
  const { x, y } = hole;
  const cross = HOLE + 3;
  const inside = widthOf(hole.label, MIN_TEXT) <= 2 * HOLE - 4;
  return g(
    { 'data-hole': hole.label, 'data-state': state },
    el('circle', { cx: x, cy: y, r: HOLE, fill: ground(surface), 'stroke-width': 1.75 }),
    state === 'earlier round'
      ? el('path', {
          d: path('M', x - HOLE, y, 'A', HOLE, HOLE, '0 0 0', x + HOLE, y, 'Z'),
          fill: 'currentColor',
          'fill-opacity': 0.35,
        })
      : null,
    state === 'this round'
      ? el('path', {
          d: path(
            ...['M', x - cross, y - cross, 'L', x + cross, y + cross],
            ...['M', x + cross, y - cross, 'L', x - cross, y + cross],
          ),
          'stroke-width': 2.5,
        })
      : null,
    inside
      ? text(x, y + 5.5, hole.label, { size: 16, anchor: 'middle', bold: true })
      : text(x, y + HOLE + 16, hole.label, { anchor: 'middle', bold: true }),
  );
};

/** The place in the tightening order, as a word outside the hole: `3rd`. */
export const orderAt = (
  hole: HoleCentre,
  index: number,
  middle: Point | null,
  surface: Surface,
): Child => {
  if (index < 0) return null;
  const word = ordinal(index + 1);
  const inside = widthOf(hole.label, MIN_TEXT) <= 2 * HOLE - 4;
  const from = middle;
  if (from === null) return label(hole.x, hole.y + HOLE + (inside ? 17 : 32), word, {}, surface);
  const angle = Math.atan2(hole.y - from.y, hole.x - from.x);
  const x = hole.x - 37 * Math.cos(angle);
  return label(x, hole.y - 34 * Math.sin(angle) + 5, word, {}, surface);
};

const LONG_ROUND = 12;

/** Name, then the round and its figure: in the middle of a ring that has the room, else on top. */
export const heading = (
  input: JointInput,
  place: { readonly box: ViewBox; readonly middle: Point | null },
  middleX: number,
  surface: Surface,
): readonly Child[] => {
  const name = wrap(input.joint.name, place.box.width - 20, 16);
  const top = text(middleX, 22, name.length > 1 ? `${name[0] ?? ''} …` : (name[0] ?? ''), {
    size: 16,
    anchor: 'middle',
  });
  const round = input.round ?? null;
  const value = input.value ?? null;
  if (place.middle !== null) {
    const { x, y } = place.middle;
    // A long round, such as "once more in order", would run through the holes beside it.
    const size = (round ?? '').length > LONG_ROUND ? 20 : 28;
    return [
      top,
      round === null
        ? null
        : label(x, y + (value === null ? 10 : -4), round, { size, bold: true }, surface),
      value === null ? null : label(x, y + 26, value, { size: 20 }, surface),
    ];
  }
  const both = [round, value].flatMap((word) => (word === null ? [] : [now(word)])).join(' · ');
  return [
    top,
    both === '' ? null : text(middleX, 50, both, { size: 22, anchor: 'middle', bold: true }),
  ];
};

export const keyAt = (box: ViewBox, states: boolean): readonly Child[] => {
  if (!states) return [];
  const y = box.height - 12;
  const third = box.width / 3;
  const sample = (i: number, word: string, mark: Child): readonly Child[] => [
    el('circle', { cx: i * third + 18, cy: y - 5, r: 7 }),
    mark,
    text(i * third + 31, y, word),
  ];
  const at = (i: number): number => i * third + 18;
  return [
    ...sample(0, 'not yet', null),
    ...sample(
      1,
      'earlier',
      el('path', {
        d: path('M', at(1) - 7, y - 5, 'A', 7, 7, '0 0 0', at(1) + 7, y - 5, 'Z'),
        fill: 'currentColor',
      }),
    ),
    ...sample(
      2,
      'this round',
      el('path', {
        d: path('M', at(2) - 8, y - 13, 'l 16 16 M', at(2) + 8, y - 13, 'l -16 16'),
        'stroke-width': 2,
      }),
    ),
  ];
};
