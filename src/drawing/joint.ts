// The joint drawn large: its outline, every hole once, what is ticked, and the tightening order.

import { say } from '../words/heard.ts';
import {
  HOLE,
  type HoleCentre,
  type HoleState,
  heading,
  holeAt,
  type JointInput,
  keyAt,
  label,
  orderAt,
} from './joint-marks.ts';
import { cornerPath, hull, isRing, nearest, type Point } from './outline.ts';
import {
  type Child,
  type Drawing,
  type DrawingOptions,
  drawing,
  el,
  HIT,
  MIN_TEXT,
  PHONE_WIDTH,
  path,
  text,
  type ViewBox,
  widthOf,
} from './svg.ts';

export type { HoleCentre, HoleState, JointInput } from './joint-marks.ts';

type Placed = {
  readonly centres: readonly HoleCentre[];
  readonly dots: readonly (Point & { readonly label: string })[];
  readonly outline: readonly Child[];
  readonly box: ViewBox;
  readonly middle: Point | null;
  readonly note: string | null;
};

const MARGIN = 62;
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
      label(
        dot.x + (dot.x > middleX * 1.1 ? -8 : 8),
        dot.y - 8,
        dot.label,
        { anchor: dot.x > middleX * 1.1 ? 'end' : 'start' },
        surface,
      ),
    ),
    ...placed.centres.map((hole) => holeAt(hole, input.states?.[hole.label] ?? 'not yet', surface)),
    ...placed.centres.map((hole) =>
      orderAt(hole, order.indexOf(hole.label), placed.middle, surface),
    ),
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
  const known = input.joint.layout.kind === 'positions';
  const words = (['this round', 'earlier round', 'not yet'] as const).map((state) =>
    say('stateCount', state, count(state)),
  );
  const order = input.order ?? [];
  return say(
    'jointDrawn',
    input.joint.name,
    input.joint.holes.length,
    known,
    input.round ?? null,
    order.length === 0 ? null : order.join(', '),
    input.states === undefined ? null : say('listed', words),
  );
};

const place = (input: JointInput, width: number): Placed => {
  const { holes, layout } = input.joint;
  if (holes.length === 0) return inRows(holes, width, HEAD, null, []);
  if (layout.kind !== 'positions' || layout.mm.length !== holes.length)
    return inRows(holes, width, HEAD, 'positions not known', []);
  const said = (input.round ?? null) !== null || (input.value ?? null) !== null;
  return atPositions(holes, layout.mm, width, said);
};

const atPositions = (
  holes: readonly string[],
  mm: readonly (readonly [number, number])[],
  width: number,
  said: boolean,
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
  const free = freeMiddle(at(HEAD), said ? 92 : 58);
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
const freeMiddle = (points: readonly Point[], least: number): boolean => {
  const middle = middleOf(points);
  return points.every((p) => Math.hypot(p.x - middle.x, p.y - middle.y) > least);
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
