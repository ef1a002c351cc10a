// Generated networks for the bench: decks of lines crossing each other, and lines joined by chance.

import type { PlainIn } from '../src/isolation/model.ts';
import { randomNetwork } from '../src/isolation/random-network.ts';
import { chance } from '../src/quantity/chance.ts';

export const FAMILIES = ['decks', 'by chance'] as const;
export type Family = (typeof FAMILIES)[number];

/** About `elements` nodes, closures among them. */
export function generated(
  family: Family,
  elements: number,
  seed: number,
  asked: { readonly barriers: 1 | 2; readonly keep: number },
): PlainIn {
  const random = chance(seed);
  if (family === 'decks') return decks(random, elements, asked);
  const valves = Math.floor(elements * 0.52);
  const size = {
    junctions: elements - valves - 18,
    valves,
    sources: 12,
    works: 6,
    keep: asked.keep,
    plainEdges: Math.floor(elements * 0.05),
  };
  return randomNetwork(random, size, asked.barriers);
}

/**
 * Junctions in rows and columns, most links with a closure; sources along one side, the work in
 * the middle, and the services to be kept close round it, where cheap cuts take them away.
 */
function decks(
  random: () => number,
  elements: number,
  { barriers, keep }: { readonly barriers: 1 | 2; readonly keep: number },
): PlainIn {
  const wide = Math.max(6, Math.floor(Math.sqrt(elements / 2.3)));
  const nodes: PlainIn['nodes'] = [];
  const edges: [string, string][] = [];
  const name = (x: number, y: number) => `j${x}-${y}`;
  const middle = Math.floor(wide / 2);
  const link = (a: string, b: string) => {
    if (random() < 0.3) return;
    const [id, weight] = [`v${nodes.length}`, 1 + Math.floor(random() * 4)];
    const closes = random() < 0.93;
    if (!closes) {
      edges.push([a, b]);
      return;
    }
    nodes.push({ id, kind: 'valve', weight });
    edges.push([a, id], [id, b]);
  };
  for (let x = 0; x < wide; x += 1) {
    for (let y = 0; y < wide; y += 1) {
      const work = x === middle && y === middle;
      const source = x === 0 && y % 4 === 0;
      nodes.push({ id: name(x, y), kind: work ? 'work' : source ? 'source' : 'junction' });
      if (x > 0) link(name(x - 1, y), name(x, y));
      if (y > 0) link(name(x, y - 1), name(x, y));
    }
  }
  const near = () => {
    const by = (reach: number) => middle + Math.floor((random() - 0.5) * 2 * reach);
    return name(by(4), by(4));
  };
  const kept = Array.from({ length: keep }, near).filter((id) => id !== name(middle, middle));
  return { nodes, edges, barriers, keep: kept };
}
