// The joint drawn large: its outline, every hole once, what is ticked, and the tightening order.

import type { JointFacts } from '../pack/types.ts';
import { cornerPath, hull, isRing, nearest, type Point } from './outline.ts';
import {
  type Attrs,
  type Child,
  type Drawing,
  type DrawingOptions,
  drawing,
  el,
  g,
  HIT,
  MIN_TEXT,
  ordinal,
  PHONE_WIDTH,
  path,
  type Surface,
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

type Placed = {
  readonly centres: readonly HoleCentre[];
  readonly dots: readonly (Point & { readonly label: string })[];
  readonly outline: readonly Child[];
  readonly box: ViewBox;
  readonly middle: Point | null;
  readonly note: string | null;
};

const MARGIN = 62;
const HOLE = 19;
const HEAD = 62;
const LOW_HEAD = 28;

/** Hole → state from what the record tallies: this round, an earlier one, or not yet. */
export const holeStates = (
  holes: readonly string[],
  round: string,
  rounds: readonly string[],
  tally: Readonly<Record<string, readonly string[]>>,
): Readonly<Record<string, HoleState>> => {
  const at = rounds.indexOf(round);
  const before = at < 0 ? [] : rounds.slice(0, at);
  const stateOf = (hole: string): HoleState => {
    if ((tally[round] ?? []).includes(hole)) return 'this round';
    return before.some((name) => (tally[name] ?? []).includes(hole)) ? 'earlier round' : 'not yet';
  };
  return Object.fromEntries(holes.map((hole) => [hole, stateOf(hole)]));
};

export const jointDrawing = (input: JointInput, options: DrawingOptions = {}): Drawing => {
  const surface = options.surface ?? 'screen';
  const placed = place(input, options.width ?? PHONE_WIDTH);
  const { box } = placed;
  const middleX = box.width / 2;
  const order = input.order ?? [];
  const alt = altOf(input);
  const children: Child[] = [
    ...placed.outline,
    ...heading(input, placed, middleX, surface),
    ...placed.dots.map((dot) =>
      el('circle', { cx: dot.x, cy: dot.y, r: 5, 'data-place': dot.label }),
    ),
    ...placed.dots.map((dot) =>
      text(dot.x + (dot.x > middleX * 1.1 ? -8 : 8), dot.y - 8, dot.label, {
        anchor: dot.x > middleX * 1.1 ? 'end' : 'start',
        extra: halo(surface),
      }),
    ),
    ...placed.centres.map((hole) => holeAt(hole, input.states?.[hole.label] ?? 'not yet', surface)),
    ...placed.centres.map((hole) => orderAt(hole, order.indexOf(hole.label), placed, surface)),
    ...keyAt(box, input.states !== undefined),
  ];
  if (placed.note !== null)
    children.push(text(middleX, box.height - 36, placed.note, { anchor: 'middle' }));
  return drawing(box, alt, surface, children);
};

/** Hole centres of the same drawing, so that buttons can be laid over it. */
export const holeCentres = (
  input: JointInput,
  options: DrawingOptions = {},
): { readonly viewBox: ViewBox; readonly holes: readonly HoleCentre[] } => {
  const placed = place(input, options.width ?? PHONE_WIDTH);
  return { viewBox: placed.box, holes: placed.centres };
};

const altOf = (input: JointInput): string => {
  const count = (state: HoleState): number =>
    Object.values(input.states ?? {}).filter((value) => value === state).length;
  const known = input.joint.layout.kind === 'positions' ? '' : ', positions not known';
  const ticks =
    input.states === undefined
      ? ''
      : `; this round ${count('this round')}, earlier round ${count('earlier round')}, not yet ${count('not yet')}`;
  const round = input.round === undefined || input.round === null ? '' : `; ${input.round}`;
  const order =
    input.order === undefined || input.order.length === 0
      ? ''
      : `; order ${input.order.join(', ')}`;
  return `${input.joint.name}: ${input.joint.holes.length} holes${known}${round}${order}${ticks}`;
};

const place = (input: JointInput, width: number): Placed => {
  const { holes, layout } = input.joint;
  if (holes.length === 0) return inRows(holes, width, HEAD, null, []);
  if (layout.kind !== 'positions' || layout.mm.length !== holes.length)
    return inRows(holes, width, HEAD, 'positions not known', []);
  return atPositions(holes, layout.mm, width);
};

const atPositions = (
  holes: readonly string[],
  mm: readonly (readonly [number, number])[],
  width: number,
): Placed => {
  const extent = extentOf(mm.map(([x, y]) => ({ x, y })));
  const spanX = extent.right - extent.left;
  const spanY = extent.bottom - extent.top;
  const room = width - 2 * MARGIN;
  const scale = Math.min(room / Math.max(spanX, 1e-6), (room * 1.15) / Math.max(spanY, 1e-6), 20);
  const left = (width - spanX * scale) / 2;
  // Positions are mm to the right and down, as one looks at the joint.
  const at = (head: number): readonly Point[] =>
    mm.map(([x, y]) => ({
      x: left + (x - extent.left) * scale,
      y: head + MARGIN + (y - extent.top) * scale,
    }));
  const free = freeMiddle(at(HEAD));
  const head = free ? LOW_HEAD : HEAD;
  const points = at(head);
  const bottom = head + 2 * MARGIN + spanY * scale;
  const outline = outlineOf(points);
  const dots = holes.map((label, i) => ({ label, x: points[i]?.x ?? 0, y: points[i]?.y ?? 0 }));
  const wide = holes.some((label) => widthOf(label, MIN_TEXT) > 2 * HOLE - 4);
  // Under a hole, rather than towards the middle, its place in the order needs room of its own.
  const apart = free ? HIT + 2 : HIT + 14;
  if (nearest(points) < apart || wide) return inRows(holes, width, bottom, null, [outline, dots]);
  return {
    centres: dots.map((dot) => ({ ...dot, radius: HIT / 2 })),
    dots: [],
    outline,
    box: { x: 0, y: 0, width, height: bottom + 30 },
    middle: free ? middleOf(points) : null,
    note: null,
  };
};

type Above = readonly [] | readonly [readonly Child[], Placed['dots']];

/** What the outline needs: the whole circle of a ring, else the holes alone. */
const extentOf = (
  points: readonly Point[],
): Record<'left' | 'right' | 'top' | 'bottom', number> => {
  const ring = isRing(points);
  const xs = ring === null ? points.map((p) => p.x) : [ring.x - ring.radius, ring.x + ring.radius];
  const ys = ring === null ? points.map((p) => p.y) : [ring.y - ring.radius, ring.y + ring.radius];
  return {
    left: Math.min(...xs),
    right: Math.max(...xs),
    top: Math.min(...ys),
    bottom: Math.max(...ys),
  };
};

const middleOf = (points: readonly Point[]): Point => ({
  x: points.reduce((sum, p) => sum + p.x / points.length, 0),
  y: points.reduce((sum, p) => sum + p.y / points.length, 0),
});

/** Whether the round and its figure have room in the middle, as in a ring. */
const freeMiddle = (points: readonly Point[]): boolean => {
  const middle = middleOf(points);
  return points.every((p) => Math.hypot(p.x - middle.x, p.y - middle.y) > 92);
};

/** Holes too close to be pressed, or of unknown place, are ticked in rows of cells. */
const inRows = (
  holes: readonly string[],
  width: number,
  top: number,
  note: string | null,
  above: Above,
): Placed => {
  const longest = Math.max(0, ...holes.map((label) => widthOf(label, MIN_TEXT)));
  const pitchX = Math.max(HIT + 12, longest + 14);
  const perRow = Math.max(1, Math.min(holes.length, Math.floor((width - 16) / pitchX)));
  const pitchY = 84;
  const rows = Math.max(1, Math.ceil(holes.length / perRow));
  const left = (width - perRow * pitchX) / 2 + pitchX / 2;
  const centres = holes.map((label, i) => ({
    label,
    x: left + (i % perRow) * pitchX,
    y: top + 40 + Math.floor(i / perRow) * pitchY,
    radius: HIT / 2,
  }));
  const lines = Array.from({ length: rows }, (_, row) =>
    el('path', {
      d: path('M', 10, top + 40 + row * pitchY, 'L', width - 10, top + 40 + row * pitchY),
      'stroke-dasharray': '10 4 2 4',
      'stroke-width': 0.75,
    }),
  );
  return {
    centres,
    dots: above[1] ?? [],
    outline: [...(above[0] ?? []), ...lines],
    box: { x: 0, y: 0, width, height: top + rows * pitchY + (note === null ? 36 : 60) },
    middle: null,
    note,
  };
};

const outlineOf = (points: readonly Point[]): readonly Child[] => {
  const ring = isRing(points);
  const reach = HOLE + 15;
  if (ring !== null) {
    const { x, y, radius } = ring;
    const far = radius + reach + 8;
    return [
      el('circle', { cx: x, cy: y, r: radius + reach, 'stroke-width': 1.5 }),
      el('circle', {
        cx: x,
        cy: y,
        r: radius,
        'stroke-dasharray': '10 4 2 4',
        'stroke-width': 0.75,
      }),
      radius > 70 ? el('circle', { cx: x, cy: y, r: radius * 0.6, 'stroke-width': 1 }) : null,
      el('path', {
        d: path('M', x - far, y, 'L', x + far, y, 'M', x, y - far, 'L', x, y + far),
        'stroke-dasharray': '10 4 2 4',
        'stroke-width': 0.5,
      }),
    ];
  }
  return [el('path', { d: cornerPath(hull(points), reach), 'stroke-width': 1.5 })];
};

/** Clears the lines behind a letter. */
const halo = (surface: Surface): Attrs => ({
  'paint-order': 'stroke',
  stroke: ground(surface),
  'stroke-width': 4,
});

const holeAt = (hole: HoleCentre, state: HoleState, surface: Surface): Child => {
  const { x, y, label } = hole;
  const cross = HOLE + 3;
  const inside = widthOf(label, MIN_TEXT) <= 2 * HOLE - 4;
  return g(
    { 'data-hole': label, 'data-state': state },
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
      ? text(x, y + 5.5, label, {
          size: 16,
          anchor: 'middle',
          bold: true,
          extra: halo(surface),
        })
      : text(x, y + HOLE + 16, label, { anchor: 'middle', bold: true }),
  );
};

/** The place in the tightening order, as a word outside the hole: `3rd`. */
const orderAt = (hole: HoleCentre, index: number, placed: Placed, surface: Surface): Child => {
  if (index < 0) return null;
  const word = ordinal(index + 1);
  const inside = widthOf(hole.label, MIN_TEXT) <= 2 * HOLE - 4;
  const from = placed.middle;
  if (from === null)
    return text(hole.x, hole.y + HOLE + (inside ? 17 : 32), word, {
      anchor: 'middle',
      extra: halo(surface),
    });
  const angle = Math.atan2(hole.y - from.y, hole.x - from.x);
  return text(hole.x - 37 * Math.cos(angle), hole.y - 34 * Math.sin(angle) + 5, word, {
    anchor: 'middle',
    extra: halo(surface),
  });
};

/** Name, then the round and its figure: in the middle of a ring that has the room, else on top. */
const heading = (
  input: JointInput,
  placed: Placed,
  middleX: number,
  surface: Surface,
): readonly Child[] => {
  const name = wrap(input.joint.name, placed.box.width - 20, 16);
  const top = text(middleX, 22, name.length > 1 ? `${name[0] ?? ''} …` : (name[0] ?? ''), {
    size: 16,
    anchor: 'middle',
  });
  const round = input.round ?? null;
  const value = input.value ?? null;
  if (placed.middle !== null) {
    const { x, y } = placed.middle;
    return [
      top,
      round === null
        ? null
        : text(x, y + (value === null ? 10 : -4), round, {
            size: 28,
            anchor: 'middle',
            bold: true,
          }),
      value === null
        ? null
        : text(x, y + 26, value, { size: 20, anchor: 'middle', extra: halo(surface) }),
    ];
  }
  const both = [round, value].filter((word) => word !== null).join(' · ');
  return [
    top,
    both === '' ? null : text(middleX, 50, both, { size: 22, anchor: 'middle', bold: true }),
  ];
};

const keyAt = (box: ViewBox, states: boolean): readonly Child[] => {
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
