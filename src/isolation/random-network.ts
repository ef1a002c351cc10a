// Networks by chance from given random numbers, for tests and benches: shapes of small vessels.

import type { PlainIn } from './model.ts';

type Node = PlainIn['nodes'][number];

export type Size = {
  readonly junctions: number;
  readonly valves: number;
  readonly sources: number;
  readonly works: number;
  readonly keep: number;
  readonly plainEdges: number;
};

export function randomNetwork(random: () => number, size: Size, barriers: 1 | 2): PlainIn {
  const below = (count: number) => Math.floor(random() * count);
  const many = (kind: Node['kind'], count: number, letter: string): Node[] =>
    Array.from({ length: count }, (_, at) => ({ id: `${letter}${at}`, kind }));
  const junctions = many('junction', size.junctions, 'j');
  const sources = many('source', size.sources, 's');
  const works = many('work', size.works, 'w');
  const valves = many('valve', size.valves, 'v').map((one) => ({ ...one, weight: below(4) + 1 }));
  const edges: [string, string][] = [];
  const pick = (list: readonly Node[]) => list[below(list.length)]?.id ?? '';
  const join = (a: string, b: string) => {
    if (a !== b) edges.push([a, b]);
  };
  const free = [...valves];
  const between = (a: string, b: string) => {
    const first = free.pop();
    if (first === undefined) return join(a, b);
    join(a, first.id);
    const second = random() < 0.3 ? free.pop() : undefined;
    if (second !== undefined) join(first.id, second.id);
    join(second?.id ?? first.id, b);
    // Some closures part three ways.
    if (random() < 0.1) join(first.id, pick(junctions));
  };
  for (const { id } of [...sources, ...works]) between(id, pick(junctions));
  while (free.length > 0) between(pick(junctions), pick(junctions));
  for (let at = 0; at < size.plainEdges; at += 1) join(pick(junctions), pick(junctions));
  const keep = Array.from({ length: size.keep }, () => {
    const node = pick(junctions);
    return random() < 0.3 ? { node, from: [pick(sources)] } : node;
  });
  return { nodes: [...junctions, ...sources, ...works, ...valves], edges, barriers, keep };
}
