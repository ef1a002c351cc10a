// The removal order as a map read from left to right: joints and parts, and what waits for what.

import type { PlanView } from '../pack/types.ts';
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
  readonly column: number;
  readonly after: readonly number[];
  /** Those of `after` that are too far off for an arrow; the node names them in words. */
  readonly far: readonly number[];
};

type At = {
  readonly x: number;
  readonly y: number;
  readonly height: number;
  readonly band: number;
};

const COLUMN = 172;
const LINE = 16.25;
const GAP = 14;
const TEXT_X = 34;

/**
 * Columns are depths of waiting; a map wider than the sheet goes on in a band below. An arrow is
 * drawn between neighbouring columns; over a longer reach the element names the numbers it follows.
 */
export const removalMap = (order: Order, options: DrawingOptions = {}): Drawing => {
  const surface = options.surface ?? 'screen';
  const width = options.width ?? PHONE_WIDTH;
  const perBand = Math.max(1, Math.floor((width - 4) / COLUMN));
  const columnWidth = (width - 4) / perBand;
  const nodes = nodesOf(order, perBand, columnWidth - 62);
  const { places, height } = placeNodes(nodes, perBand, columnWidth);
  const alt = altOf(order);
  const arrows = nodes.flatMap((node) => arrowsTo(node, nodes, places, columnWidth));
  return drawing({ x: 0, y: 0, width, height: Math.max(height, 40) }, alt, surface, [
    ...arrows,
    ...nodes.map((node, i) => nodeAt(node, places[i], columnWidth, surface)),
    order.length === 0 ? text(4, 24, 'nothing comes off') : null,
  ]);
};

const altOf = (order: Order): string =>
  `Removal order: ${order.map((each, i) => `${i + 1} ${wordsOf(each)}`).join('; ')}`;

const wordsOf = (each: Order[number]): string =>
  each.do === 'undo' ? `undo ${each.name}` : `${each.name} ${each.do}`;

/** Ids may name a joint and a part alike: an id waits for the last element before it of that id. */
const nodesOf = (order: Order, perBand: number, textWidth: number): readonly Node[] => {
  const latest = new Map<string, number>();
  const nodes: Node[] = [];
  order.forEach((each, i) => {
    const all = [...new Set(each.after.map((id) => latest.get(id)))].filter((n) => n !== undefined);
    const column = Math.max(-1, ...all.map((n) => nodes[n]?.column ?? -1)) + 1;
    const after = reduced(all, nodes);
    const far =
      column % perBand === 0 ? after : after.filter((n) => nodes[n]?.column !== column - 1);
    nodes.push({
      id: each.id,
      number: i + 1,
      joint: each.do === 'undo',
      lines: [
        ...wrap(each.name, textWidth, 13),
        ...(each.do === 'undo' ? [] : [each.do === 'off' ? 'comes off' : 'moved aside']),
        ...(far.length === 0
          ? []
          : wrap(`after ${far.map((n) => n + 1).join(', ')}`, textWidth, 13)),
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
  nodes: readonly Node[],
  perBand: number,
  columnWidth: number,
): { readonly places: readonly At[]; readonly height: number } => {
  const heightOf = (node: Node): number => Math.max(34, node.lines.length * LINE + 14);
  const bands = Math.max(0, ...nodes.map((node) => Math.floor(node.column / perBand) + 1));
  const filled = new Map<number, number>();
  const tops: number[] = [];
  let top = 6;
  for (let band = 0; band < bands; band += 1) {
    tops.push(top);
    const inBand = nodes.filter((node) => Math.floor(node.column / perBand) === band);
    const heights = Array.from({ length: perBand }, (_, c) =>
      inBand
        .filter((node) => node.column % perBand === c)
        .reduce((sum, node) => sum + heightOf(node) + GAP, 0),
    );
    top += Math.max(0, ...heights) + 22;
  }
  const places = nodes.map((node) => {
    const band = Math.floor(node.column / perBand);
    const y = (tops[band] ?? 0) + (filled.get(node.column) ?? 0);
    const height = heightOf(node);
    filled.set(node.column, (filled.get(node.column) ?? 0) + height + GAP);
    return { x: 2 + (node.column % perBand) * columnWidth + 24, y, height, band };
  });
  return { places, height: top };
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
  places: readonly At[],
  columnWidth: number,
): readonly Child[] => {
  const to = places[node.number - 1];
  if (to === undefined) return [];
  const y = to.y + to.height / 2;
  const near = node.after.filter((n) => !node.far.includes(n));
  const lines = near.map((n) => {
    const from = places[n];
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
