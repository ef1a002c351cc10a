// A network of lines made small: what no closure parts becomes one segment, closures stand between.

export type NodeKind = 'source' | 'work' | 'valve' | 'junction';

export type GivenNode = {
  readonly id: string;
  readonly kind: NodeKind;
  /** Effort of shutting it; only closures have one. */
  readonly weight: number;
};

/** Places: segments first, then the closures in input order. */
export type Network = {
  readonly nodes: readonly GivenNode[];
  /** Neighbours of each given node. */
  readonly beside: readonly (readonly number[])[];
  readonly indexOf: ReadonlyMap<string, number>;
  /** The place that each given node lies in. */
  readonly placeOf: readonly number[];
  readonly segments: readonly (readonly number[])[];
  /** The given node of each closure; its place is `segments.length` and its index here. */
  readonly valves: readonly number[];
  readonly weights: readonly number[];
  /** Neighbours of each place. */
  readonly next: readonly (readonly number[])[];
  readonly sources: readonly number[];
  readonly works: readonly number[];
};

/** Ids must be known and given once (`networkProblems`). */
export function networkOf(
  nodes: readonly GivenNode[],
  edges: readonly (readonly [string, string])[],
): Network {
  const indexOf = new Map(nodes.map(({ id }, at) => [id, at]));
  const beside: number[][] = nodes.map(() => []);
  for (const [a, b] of edges) {
    const [from, to] = [indexOf.get(a), indexOf.get(b)];
    if (from === undefined || to === undefined) throw new Error(`edge ${a}, ${b} was not checked`);
    beside[from]?.push(to);
    beside[to]?.push(from);
  }
  const placeOf = nodes.map(() => -1);
  const segments: number[][] = [];
  nodes.forEach(({ kind }, start) => {
    if (kind === 'valve' || (placeOf[start] ?? 0) >= 0) return;
    segments.push(withoutClosure(nodes, beside, start, placeOf, segments.length));
  });
  const valves = nodes.flatMap(({ kind }, at) => (kind === 'valve' ? [at] : []));
  valves.forEach((node, at) => {
    placeOf[node] = segments.length + at;
  });
  const places = [...segments, ...valves.map((node) => [node])];
  const next = places.map((members, own) => {
    const around = members.flatMap((node) => beside[node] ?? []).map((node) => placeOf[node] ?? -1);
    return [...new Set(around)].filter((place) => place !== own);
  });
  const placesOf = (wanted: NodeKind) => [
    ...new Set(nodes.flatMap(({ kind }, at) => (kind === wanted ? [placeOf[at] ?? -1] : []))),
  ];
  return {
    nodes,
    beside,
    indexOf,
    placeOf,
    segments,
    valves,
    weights: valves.map((node) => nodes[node]?.weight ?? 0),
    next,
    sources: placesOf('source'),
    works: placesOf('work'),
  };
}

function withoutClosure(
  nodes: readonly GivenNode[],
  beside: readonly (readonly number[])[],
  start: number,
  placeOf: number[],
  place: number,
): number[] {
  const members = [start];
  placeOf[start] = place;
  for (let at = 0; at < members.length; at += 1) {
    for (const node of beside[members[at] ?? -1] ?? []) {
      if (nodes[node]?.kind === 'valve' || (placeOf[node] ?? 0) >= 0) continue;
      placeOf[node] = place;
      members.push(node);
    }
  }
  return members.sort((a, b) => a - b);
}

export const isValve = ({ segments }: Network, place: number): boolean => place >= segments.length;

/** Places that can be reached from `start` without passing one that is shut. */
export function reachedFrom(
  { next }: Network,
  start: Iterable<number>,
  shut: ReadonlySet<number>,
): Set<number> {
  const found = new Set([...start].filter((place) => !shut.has(place)));
  const list = [...found];
  for (let at = 0; at < list.length; at += 1) {
    for (const place of next[list[at] ?? -1] ?? []) {
      if (found.has(place) || shut.has(place)) continue;
      found.add(place);
      list.push(place);
    }
  }
  return found;
}

/** Fewest closures on the way from each place to the work, its own not counted. */
export function closuresToWork(network: Network): number[] {
  const best = network.next.map(() => Number.POSITIVE_INFINITY);
  const layers: number[][] = [[...network.works]];
  for (const place of network.works) best[place] = 0;
  for (let steps = 0; steps < layers.length; steps += 1) {
    const layer = layers[steps] ?? [];
    for (let at = 0; at < layer.length; at += 1) {
      const place = layer[at] ?? -1;
      if (best[place] !== steps) continue;
      // Leaving a closure towards the work is free; whoever comes to it from beyond passes it.
      const beyond = steps + (isValve(network, place) ? 1 : 0);
      for (const other of network.next[place] ?? []) {
        if ((best[other] ?? 0) <= beyond) continue;
        best[other] = beyond;
        layers[beyond] ??= [];
        layers[beyond].push(other);
      }
    }
  }
  return best;
}
