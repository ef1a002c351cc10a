// A cut that leaves services supplied: least effort by branching on where each supply comes in.

import { limits } from '../limits.ts';
import { type Cut, cutOf } from './cut.ts';
import { closuresToWork, isValve, type Network, reachedFrom } from './network.ts';

/** A place that stays joined, by a way that is open, to one of these sources. */
export type Keep = { readonly place: number; readonly from: readonly number[] };

export type Search = {
  /** How many cuts may be worked out; by the size of the network unless given. */
  readonly cuts?: number;
  readonly late?: () => boolean;
};

export type Kept =
  | { readonly ok: true; readonly cut: Cut; readonly bound: number; readonly proven: boolean }
  /** No choice of closures leaves this one supplied. */
  | { readonly ok: false; readonly lost: Keep | null };

type Branch = { readonly supplied: ReadonlySet<number>; readonly cut: Cut };

export function cutKeeping(
  network: Network,
  barriers: number,
  keeps: readonly Keep[],
  search: Search = {},
): Kept {
  const rootSupplied = new Set(keeps.map(({ place }) => place));
  const root = cutOf(network, barriers, rootSupplied);
  if (root === null) return { ok: false, lost: lostOf(network, barriers, keeps) };
  if (unmet(network, keeps, root) === null) {
    return { ok: true, cut: root, bound: root.bound, proven: isProven(root, root.bound) };
  }
  let best = alongWays(network, barriers, keeps, root, rootSupplied);
  if (best === null) return { ok: false, lost: lostOf(network, barriers, keeps) };
  const open = [{ supplied: rootSupplied, cut: root }] as Branch[];
  const known = new Set<string>();
  const size = network.next.reduce((sum, others) => sum + 1 + others.length, 0);
  let left = search.cuts ?? Math.max(limits.isolation.leastCuts, limits.isolation.cutWork / size);
  for (let branch = takeBest(open); branch !== null; branch = takeBest(open)) {
    if (branch.cut.bound >= best.effort - slack(best)) break;
    const wanting = unmet(network, keeps, branch.cut);
    if (wanting === null) {
      best = branch.cut;
      continue;
    }
    for (const entry of entriesOf(network, wanting, branch.cut)) {
      const supplied = new Set([...branch.supplied, entry]);
      const key = [...supplied].sort((a, b) => a - b).join();
      if (known.has(key)) continue;
      known.add(key);
      left -= 1;
      const cut = cutOf(network, barriers, supplied);
      if (cut !== null && cut.bound < best.effort - slack(best)) open.push({ supplied, cut });
    }
    if (left > 0 && !search.late?.()) continue;
    // Branches that were left out cost more than the best, or lie in one that is still open.
    const bound = open.reduce((least, one) => Math.min(least, one.cut.bound), best.effort);
    return { ok: true, cut: best, bound, proven: isProven(best, bound) };
  }
  return { ok: true, cut: best, bound: best.effort, proven: true };
}

const ROUNDING = 1e-9;

const slack = ({ effort }: Cut): number => ROUNDING * Math.max(1, effort);
const isProven = (cut: Cut, bound: number): boolean => bound >= cut.effort - slack(cut);

function takeBest(open: Branch[]): Branch | null {
  let least = 0;
  const worse = (a: Cut, b: Cut) =>
    a.bound > b.bound + ROUNDING || (a.bound > b.bound - ROUNDING && a.behind > b.behind);
  open.forEach(({ cut }, at) => {
    const other = open[least]?.cut;
    if (other !== undefined && worse(other, cut)) least = at;
  });
  return open.splice(least, 1)[0] ?? null;
}

const shutOf = (network: Network, { shut }: Cut): Set<number> =>
  new Set(shut.map((at) => network.segments.length + at));

/** The first service that this cut takes away. */
export function unmet(network: Network, keeps: readonly Keep[], cut: Cut): Keep | null {
  const shut = shutOf(network, cut);
  for (const keep of keeps) {
    const reached = reachedFrom(network, [keep.place], shut);
    if (!keep.from.some((source) => reached.has(source))) return keep;
  }
  return null;
}

/**
 * The closures round what this service can still reach: its way to a source leaves by one of
 * them, which then stays open and, being supplied, lies on the sources' side.
 */
function entriesOf(network: Network, keep: Keep, cut: Cut): number[] {
  const shut = shutOf(network, cut);
  const reached = reachedFrom(network, [keep.place], shut);
  if (shut.has(keep.place)) return [keep.place];
  return [...shut].filter((valve) => (network.next[valve] ?? []).some((at) => reached.has(at)));
}

/** Where a supply may run: with `barriers` closures still to come before the work. */
const mayRun = (network: Network, barriers: number): boolean[] =>
  closuresToWork(network).map((closures) => closures >= barriers);

function lostOf(network: Network, barriers: number, keeps: readonly Keep[]): Keep | null {
  const allowed = mayRun(network, barriers);
  return keeps.find((keep) => wayOf(network, keep, allowed, () => 1) === null) ?? null;
}

/** A valid answer at once: supplies run the way that opens least of the cheapest cut. */
function alongWays(
  network: Network,
  barriers: number,
  keeps: readonly Keep[],
  root: Cut,
  rootSupplied: ReadonlySet<number>,
): Cut | null {
  const allowed = mayRun(network, barriers);
  const supplied = new Set(rootSupplied);
  let cut: Cut | null = root;
  for (let wanting = unmet(network, keeps, root); wanting !== null; ) {
    const shut = shutOf(network, cut);
    const priceOf = (place: number): number =>
      shut.has(place) ? 1 + (network.weights[place - network.segments.length] ?? 0) : 0;
    const way = wayOf(network, wanting, allowed, priceOf);
    if (way === null) return null;
    for (const place of way) supplied.add(place);
    cut = cutOf(network, barriers, supplied);
    if (cut === null) return null;
    wanting = unmet(network, keeps, cut);
  }
  return cut;
}

/** The cheapest way of a supply through allowed places; few prices differ, so rounds settle it. */
function wayOf(
  network: Network,
  { place: start, from }: Keep,
  allowed: readonly boolean[],
  priceOf: (place: number) => number,
): number[] | null {
  if (allowed[start] !== true) return null;
  const best = network.next.map(() => Number.POSITIVE_INFINITY);
  const before = network.next.map(() => -1);
  best[start] = 0;
  const heap: [number, number][] = [[0, start]];
  for (let top = pop(heap); top !== null; top = pop(heap)) {
    const [price, place] = top;
    if (price > (best[place] ?? 0)) continue;
    if (from.includes(place)) return traced(before, place);
    for (const other of network.next[place] ?? []) {
      if (allowed[other] !== true) continue;
      const reached = price + priceOf(other) + (isValve(network, other) ? STEP : 0);
      if (reached >= (best[other] ?? 0)) continue;
      best[other] = reached;
      before[other] = place;
      push(heap, [reached, other]);
    }
  }
  return null;
}

/** Of ways that open equally much the shorter one is taken. */
const STEP = 1e-6;

function traced(before: readonly number[], end: number): number[] {
  const way = [end];
  for (let at = before[end] ?? -1; at >= 0; at = before[at] ?? -1) way.push(at);
  return way;
}

function push(heap: [number, number][], one: [number, number]): void {
  heap.push(one);
  for (let at = heap.length - 1; at > 0; ) {
    const above = (at - 1) >> 1;
    const [child, parent] = [heap[at], heap[above]];
    if (child === undefined || parent === undefined || parent[0] <= child[0]) return;
    heap[at] = parent;
    heap[above] = child;
    at = above;
  }
}

function pop(heap: [number, number][]): [number, number] | null {
  const top = heap[0];
  const last = heap.pop();
  if (top === undefined || last === undefined) return null;
  if (heap.length === 0) return top;
  heap[0] = last;
  for (let at = 0; ; ) {
    const [left, right] = [2 * at + 1, 2 * at + 2];
    let least = at;
    for (const child of [left, right]) {
      if ((heap[child]?.[0] ?? Infinity) < (heap[least]?.[0] ?? Infinity)) least = child;
    }
    if (least === at) return top;
    const [a, b] = [heap[at], heap[least]];
    if (a === undefined || b === undefined) return top;
    heap[at] = b;
    heap[least] = a;
    at = least;
  }
}
