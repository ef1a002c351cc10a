// The closures of least effort between the sources and the work, one or two on every path: exact.

import { type Arc, type FlowGraph, flowGraph, pushFlow } from './flow.ts';
import { isValve, type Network } from './network.ts';

export type Cut = {
  /** Indexes into `valves`; of equal cuts the one nearest the work. */
  readonly shut: readonly number[];
  readonly effort: number;
  /** Nothing has less effort than this: the flow that was pushed. */
  readonly bound: number;
  /** How much of the network is behind closures; less is nearer the work. */
  readonly behind: number;
};

/** What a flow of less than this share of the greatest weight leaves is rounding. */
const ROUNDING = 1e-9;

/**
 * Potentials 0 at the sources and `barriers` at the work, rising by at most one through a closure
 * that is shut and not at all elsewhere: the dual of a flow in which a closure carries its weight
 * for nothing and more at a cost of one. `supplied` are places that stay at 0. Null: no choice.
 */
export function cutOf(network: Network, barriers: number, supplied: Iterable<number>): Cut | null {
  const first = network.segments.length;
  const count = network.next.length;
  const inOf = (place: number) => place;
  const outOf = (place: number) => (place < first ? place : place + network.valves.length);
  const start = count + network.valves.length;
  const end = start + 1;
  const graph = opened(network, barriers, { inOf, outOf, start, end });
  // The arcs out of the start come first, two to a place, and have no room until it is supplied.
  for (const place of new Set([...network.sources, ...supplied])) {
    graph.room[4 * place] = Infinity;
    if (isValve(network, place)) graph.room[4 * place + 2] = Infinity;
  }
  const least = ROUNDING * Math.max(1e-6, ...network.weights);
  const pushed = pushFlow(graph, start, end, barriers, least);
  if (pushed === null) return null;
  const { passed, value } = pushed;
  const rises = (at: number) =>
    (passed[outOf(first + at)] ?? 0) > (passed[inOf(first + at)] ?? 0) ? [at] : [];
  const shut = network.valves.flatMap((_, at) => rises(at));
  const effort = shut.reduce((sum, at) => sum + (network.weights[at] ?? 0), 0);
  const behind = network.next.reduce((sum, _, place) => sum + (passed[place] ?? 0), 0);
  return { shut, effort, bound: Math.min(effort, value), behind };
}

type Ends = {
  readonly inOf: (place: number) => number;
  readonly outOf: (place: number) => number;
  readonly start: number;
  readonly end: number;
};

// One network is cut many times, with other places supplied each time.
const graphs = new WeakMap<Network, FlowGraph[]>();

function opened(network: Network, barriers: number, ends: Ends): FlowGraph {
  const known = graphs.get(network) ?? [];
  graphs.set(network, known);
  const graph = known[barriers] ?? built(network, barriers, ends);
  known[barriers] = graph;
  return { ...graph, room: graph.room.slice() };
}

function built(network: Network, barriers: number, { inOf, outOf, start, end }: Ends): FlowGraph {
  const first = network.segments.length;
  const arcs: Arc[] = network.next.flatMap((_, place): Arc[] => [
    [start, inOf(place), 0, 0],
    [start, outOf(place), 0, 0],
  ]);
  network.weights.forEach((weight, at) => {
    arcs.push([inOf(first + at), outOf(first + at), weight, 0]);
    if (barriers > 1) arcs.push([inOf(first + at), outOf(first + at), Infinity, 1]);
  });
  network.next.forEach((others, place) => {
    for (const other of others) arcs.push([outOf(place), inOf(other), Infinity, 0]);
  });
  for (const place of network.works) arcs.push([outOf(place), end, Infinity, 0]);
  return flowGraph(end + 1, arcs);
}
