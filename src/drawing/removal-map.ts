// The removal order as a map read from left to right: joints and parts, and what waits for what.

import { limits } from '../limits.ts';
import type { PlanView } from '../pack/types.ts';
import { say } from '../words/heard.ts';
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
import { ground } from './theme.ts';

type Order = PlanView['order'];

type Node = {
  readonly id: string;
  readonly number: number;
  readonly joint: boolean;
  readonly lines: readonly string[];
  readonly words: string;
  readonly column: number;
  readonly after: readonly number[];
  /** Those of `after` that are too far off for an arrow; the node names them in words. */
  readonly far: readonly number[];
};

type At = {
  readonly x: number;
  readonly y: number;
  readonly height: number;
};

const COLUMN = 168;

const LINE = 16.25;
const GAP = 14;
const TEXT_X = 34;

/**
 * Columns are depths of waiting; a map wider than the sheet goes on in a band below. An arrow is
 * drawn between neighbouring columns; over a longer reach the element names the numbers it follows.
 */
export const removalMap = (order: Order, options: DrawingOptions = {}): Drawing =>
  removalMaps(order, options, Number.POSITIVE_INFINITY)[0] ?? empty(options);

/** The same map in pieces of whole bands, each no higher than `most` unless one band alone is. */
export const removalMaps = (
  order: Order,
  options: DrawingOptions,
  most: number,
): readonly Drawing[] => {
  const surface = options.surface ?? 'screen';
  const width = options.width ?? PHONE_WIDTH;
  const perBand = Math.max(1, Math.floor((width - 4) / COLUMN));
  const columnWidth = (width - 4) / perBand;
  const nodes = nodesOf(order, perBand, columnWidth - 62);
  const pieces: Drawing[] = [];
  let bands: Node[][] = [];
  const draw = (list: readonly (readonly Node[])[]): Drawing => {
    const { places, height } = placeNodes(list, perBand, columnWidth);
    const all = list.flat();
    return drawing({ x: 0, y: 0, width, height }, altOf(all), surface, [
      ...all.flatMap((node) => arrowsTo(node, nodes, places, columnWidth)),
      ...all.map((node) => nodeAt(node, places.get(node.number), columnWidth, surface)),
    ]);
  };
  for (const band of bandsOf(nodes, perBand)) {
    if (bands.length > 0 && placeNodes([...bands, band], perBand, columnWidth).height > most) {
      pieces.push(draw(bands));
      bands = [];
    }
    bands.push(band);
  }
  if (bands.length > 0) pieces.push(draw(bands));
  return pieces.length === 0 ? [empty(options)] : pieces;
};

const empty = (options: DrawingOptions): Drawing =>
  drawing(
    { x: 0, y: 0, width: options.width ?? PHONE_WIDTH, height: 40 },
    'Removal order: nothing comes off',
    options.surface ?? 'screen',
    [text(4, 24, 'nothing comes off')],
  );

const bandsOf = (nodes: readonly Node[], perBand: number): readonly Node[][] => {
  const bands: Node[][] = [];
  for (const node of nodes) {
    const band = Math.floor(node.column / perBand);
    bands[band] = [...(bands[band] ?? []), node];
  }
  return bands.filter((band) => band !== undefined);
};

const altOf = (nodes: readonly Node[]): string =>
  say(
    'removalOrder',
    nodes.map((node) => `${node.number} ${node.words}`),
  );

const wordsOf = (each: Order[number]): string =>
  each.do === 'undo'
    ? say('undoDrawn', each.name)
    : say('partAway', each.name, each.do === 'aside');

/** Ids may name a joint and a part alike: an id waits for the last element before it of that id. */
const nodesOf = (order: Order, perBand: number, textWidth: number): readonly Node[] => {
  const filled = new Map<number, number>();
  const latest = new Map<string, number>();
  const nodes: Node[] = [];
  order.forEach((each, i) => {
    const all = [...new Set(each.after.map((id) => latest.get(id)))].filter((n) => n !== undefined);
    let column = Math.max(-1, ...all.map((n) => nodes[n]?.column ?? -1)) + 1;
    while ((filled.get(column) ?? 0) >= limits.drawing.mapColumn) column += 1;
    filled.set(column, (filled.get(column) ?? 0) + 1);
    const after = reduced(all, nodes);
    const far =
      column % perBand === 0 ? after : after.filter((n) => nodes[n]?.column !== column - 1);
    nodes.push({
      id: each.id,
      number: i + 1,
      joint: each.do === 'undo',
      words: wordsOf(each),
      lines: [
        // Parts are in bold, which runs wider.
        ...wrap(each.name, each.do === 'undo' ? textWidth : textWidth * 0.86, 13),
        ...(each.do === 'undo' ? [] : [each.do === 'off' ? 'comes off' : 'moved aside']),
        ...(far.length === 0
          ? []
          : wrap(say('afterDrawn', far.map((n) => n + 1).join(', ')), textWidth * 0.9, 13)),
      ],
      column,
      after,
      far,
    });
    latest.set(each.id, i);
  });
  return nodes;
};

/** Leaves out what another one already waits for, so that the map shows each reason once. */
const reduced = (all: readonly number[], nodes: readonly Node[]): readonly number[] => {
  const reached = new Set<number>();
  const stack = all.flatMap((n) => nodes[n]?.after ?? []);
  while (stack.length > 0) {
    const next = stack.pop();
    if (next === undefined || reached.has(next)) continue;
    reached.add(next);
    stack.push(...(nodes[next]?.after ?? []));
  }
  return all.filter((n) => !reached.has(n));
};

const placeNodes = (
  bands: readonly (readonly Node[])[],
  perBand: number,
  columnWidth: number,
): { readonly places: ReadonlyMap<number, At>; readonly height: number } => {
  const places = new Map<number, At>();
  let top = 6;
  for (const band of bands) {
    const filled = new Map<number, number>();
    for (const node of band) {
      const column = node.column % perBand;
      const y = filled.get(column) ?? top;
      const height = Math.max(34, node.lines.length * LINE + 14);
      places.set(node.number, { x: 2 + column * columnWidth + 24, y, height });
      filled.set(column, y + height + GAP);
    }
    top = Math.max(...filled.values()) + 16;
  }
  return { places, height: Math.max(40, top - 16) };
};

const nodeAt = (
  node: Node,
  at: At | undefined,
  columnWidth: number,
  surface: 'screen' | 'paper',
): Child => {
  if (at === undefined) return null;
  const width = columnWidth - 28;
  const middle = at.y + at.height / 2;
  const first = middle - (node.lines.length * LINE) / 2 + 12;
  const number = text(at.x + 15, middle + 5, String(node.number), { anchor: 'middle', bold: true });
  return g(
    { 'data-node': node.number, 'data-kind': node.joint ? 'joint' : 'part' },
    node.joint
      ? el('circle', { cx: at.x + 15, cy: middle, r: 15, fill: ground(surface) })
      : el('rect', {
          x: at.x,
          y: at.y,
          width,
          height: at.height,
          fill: ground(surface),
          'stroke-width': 1.75,
        }),
    number,
    ...paragraph(at.x + TEXT_X, first, node.lines, { bold: !node.joint }),
  );
};

/** From the right side of a neighbour to the left side of the node, or a stub with a number. */
const arrowsTo = (
  node: Node,
  nodes: readonly Node[],
  places: ReadonlyMap<number, At>,
  columnWidth: number,
): readonly Child[] => {
  const to = places.get(node.number);
  if (to === undefined) return [];
  const y = to.y + to.height / 2;
  const near = node.after.filter((n) => !node.far.includes(n));
  const lines = near.map((n) => {
    const from = places.get(n + 1);
    const source = nodes[n];
    if (from === undefined || source === undefined) return null;
    const startX = from.x + columnWidth - 28;
    const startY = from.y + from.height / 2;
    const turn = to.x - 15;
    return el('path', {
      d: path(
        ...['M', source.joint ? textEnd(source, from) : startX, startY, 'L', turn, startY],
        ...['L', turn, y, 'L', to.x, y],
      ),
      'data-arrow': `${n + 1} ${node.number}`,
    });
  });
  const stub =
    node.far.length === 0 || near.length > 0
      ? null
      : el('path', { d: path('M', to.x - 20, y, 'L', to.x, y), 'data-far': node.number });
  const head = node.after.length === 0 ? null : arrowHead(to.x, y, 0);
  return [...lines, stub, head];
};

const textEnd = (node: Node, at: At): number =>
  at.x + TEXT_X + Math.max(0, ...node.lines.map((line) => line.length)) * 7.8 + 6;
