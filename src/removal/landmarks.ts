// A lower bound without a solver: sets of rules of which every plan uses one, each paid for once.

import { limits } from '../limits.ts';
import { Heap } from './heap.ts';
import { type Indexed, usersOf } from './heuristic.ts';
import { type Late, NEVER_LATE } from './model.ts';

export type Landmarks = {
  readonly bound: number;
  readonly sets: readonly (readonly number[])[];
  /** The least that any plan with this rule costs. */
  readonly through: Float64Array;
  /** What of each rule's cost the sets have not paid. */
  readonly unpaid: Float64Array;
};

const TINY = 1e-9;

/** Cuts the graph between nothing and the targets again and again, paying the cheapest. */
export function landmarkBound(
  graph: Indexed,
  mandatory: readonly number[],
  cost: Float64Array,
  late: Late = NEVER_LATE,
): Landmarks {
  const left = Float64Array.from(cost);
  const sets: number[][] = [];
  let bound = 0;
  const pay = (set: readonly number[]) => {
    const least = set.reduce((min, at) => Math.min(min, left[at] ?? 0), Number.POSITIVE_INFINITY);
    for (const at of set) left[at] = (left[at] ?? 0) - least;
    bound += least;
  };
  for (const fact of mandatory) pay(graph.givers[fact] ?? []);
  const size = graph.rules.reduce((all, rule) => all + 2 + rule.needs.length, 0);
  for (let work = limits.removal.landmarkSteps; work > 0 && !late(); work -= 4 * size) {
    const cut = nextCut(graph, left);
    if (cut === null) break;
    sets.push(cut);
    pay(cut);
  }
  const { distance } = dearestNeeds(graph, left);
  // What the sets have not paid for comes on top: the rule itself and its dearest need.
  const through = Float64Array.from(graph.rules, (rule, at) => {
    const dearest = rule.needs.reduce((most, need) => Math.max(most, distance[need] ?? 0), 0);
    return bound + dearest + (left[at] ?? 0);
  });
  return { bound, sets, through, unpaid: left };
}

/** The dearest need of each rule, judged by the longest-step distance; -1 where it has none. */
function dearestNeeds(graph: Indexed, left: Float64Array) {
  const distance = new Float64Array(graph.count).fill(Number.POSITIVE_INFINITY);
  const done = new Uint8Array(graph.count);
  const dearest = new Int32Array(graph.rules.length).fill(-1);
  const missing = graph.needCount.slice();
  const heap = new Heap();
  const offer = (at: number, total: number) => {
    const gives = graph.gives[at] ?? 0;
    if (total >= (distance[gives] ?? 0)) return;
    distance[gives] = total;
    heap.push(total, gives);
  };
  for (const at of graph.free) offer(at, left[at] ?? 0);
  while (heap.size > 0) {
    const fact = heap.pop();
    if (done[fact]) continue;
    done[fact] = 1;
    const end = graph.userStart[fact + 1] ?? 0;
    for (let n = graph.userStart[fact] ?? 0; n < end; n += 1) {
      const at = graph.userList[n] ?? 0;
      missing[at] = (missing[at] ?? 0) - 1;
      if (missing[at] !== 0) continue;
      // Facts are settled in rising distance, so the last need to come is the dearest.
      dearest[at] = fact;
      offer(at, (distance[fact] ?? 0) + (left[at] ?? 0));
    }
  }
  return { distance, dearest };
}

/** Rules of which every plan uses one and that all still cost something; null when none is left. */
function nextCut(graph: Indexed, left: Float64Array): number[] | null {
  const { distance, dearest } = dearestNeeds(graph, left);
  let goal = -1;
  for (const target of graph.targets) {
    if (goal < 0 || (distance[target] ?? 0) > (distance[goal] ?? 0)) goal = target;
  }
  if (goal < 0 || (distance[goal] ?? 0) <= TINY) return null;
  const near = new Uint8Array(graph.count);
  const back = [goal];
  near[goal] = 1;
  for (let fact = back.pop(); fact !== undefined; fact = back.pop()) {
    for (const at of graph.givers[fact] ?? []) {
      const need = dearest[at] ?? -1;
      if (need < 0 || (left[at] ?? 0) > TINY || near[need]) continue;
      near[need] = 1;
      back.push(need);
    }
  }
  return cutBefore(graph, dearest, near);
}

/** Walks forward from nothing and collects the rules that step into the zone near the goal. */
function cutBefore(graph: Indexed, dearest: Int32Array, near: Uint8Array): number[] {
  const cut: number[] = [];
  const seen = new Uint8Array(graph.count);
  const forward: number[] = [];
  const step = (at: number) => {
    const gives = graph.gives[at] ?? 0;
    if (near[gives]) cut.push(at);
    else if (!seen[gives]) {
      seen[gives] = 1;
      forward.push(gives);
    }
  };
  graph.free.forEach(step);
  for (let fact = forward.pop(); fact !== undefined; fact = forward.pop()) {
    for (const at of usersOf(graph, fact)) if (dearest[at] === fact) step(at);
  }
  return cut;
}
