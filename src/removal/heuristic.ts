// A quick valid plan: cheapest supports by summed cost, then trials that leave one rule out.

import { limits } from '../limits.ts';
import type { Graph, Rule } from './graph.ts';
import { Heap } from './heap.ts';
import { type Late, NEVER_LATE } from './model.ts';
import { randomFrom } from './seeded.ts';

/** A graph with its lists by fact, ready for many passes; flat arrays, as passes are many. */
export type Indexed = {
  readonly count: number;
  readonly rules: readonly Rule[];
  readonly targets: readonly number[];
  readonly givers: readonly (readonly number[])[];
  /** Of each rule: what it gives and how much it needs. */
  readonly gives: Int32Array;
  readonly needCount: Int32Array;
  /** The rules that need a fact: `userList` from `userStart[fact]` to `userStart[fact + 1]`. */
  readonly userStart: Int32Array;
  readonly userList: Int32Array;
  /** Rules that need nothing. */
  readonly free: readonly number[];
};

export function indexed(graph: Graph): Indexed {
  const { count, rules, targets } = graph;
  const givers: number[][] = Array.from({ length: count }, () => []);
  const free: number[] = [];
  const userStart = new Int32Array(count + 1);
  rules.forEach((rule, at) => {
    givers[rule.gives]?.push(at);
    for (const need of rule.needs) userStart[need + 1] = (userStart[need + 1] ?? 0) + 1;
    if (rule.needs.length === 0) free.push(at);
  });
  for (let fact = 0; fact < count; fact += 1) {
    userStart[fact + 1] = (userStart[fact + 1] ?? 0) + (userStart[fact] ?? 0);
  }
  const userList = new Int32Array(userStart[count] ?? 0);
  const filled = userStart.slice();
  rules.forEach((rule, at) => {
    for (const need of rule.needs) {
      const next = filled[need] ?? 0;
      userList[next] = at;
      filled[need] = next + 1;
    }
  });
  const gives = Int32Array.from(rules, (rule) => rule.gives);
  const needCount = Int32Array.from(rules, (rule) => rule.needs.length);
  return { count, rules, targets, givers, gives, needCount, userStart, userList, free };
}

export const usersOf = ({ userStart, userList }: Indexed, fact: number): Int32Array =>
  userList.subarray(userStart[fact] ?? 0, userStart[fact + 1] ?? 0);

/** The rule that supports each fact most cheaply by summed cost; -1 where nothing does. */
export function cheapestSupports(
  graph: Indexed,
  cost: Float64Array,
  banned: number,
  allowed?: Uint8Array,
): Int32Array {
  const support = new Int32Array(graph.count).fill(-1);
  const distance = new Float64Array(graph.count).fill(Number.POSITIVE_INFINITY);
  const done = new Uint8Array(graph.count);
  const missing = graph.needCount.slice();
  const sum = cost.slice();
  const heap = new Heap();
  const offer = (at: number, total: number) => {
    const gives = graph.gives[at] ?? 0;
    if (done[gives] || total >= (distance[gives] ?? 0)) return;
    distance[gives] = total;
    support[gives] = at;
    heap.push(total, gives);
  };
  for (const at of graph.free) {
    if (at !== banned && (allowed === undefined || allowed[at])) offer(at, cost[at] ?? 0);
  }
  while (heap.size > 0) {
    const fact = heap.pop();
    if (done[fact]) continue;
    done[fact] = 1;
    const reached = distance[fact] ?? 0;
    const end = graph.userStart[fact + 1] ?? 0;
    for (let n = graph.userStart[fact] ?? 0; n < end; n += 1) {
      const at = graph.userList[n] ?? 0;
      sum[at] = (sum[at] ?? 0) + reached;
      const left = (missing[at] ?? 0) - 1;
      missing[at] = left;
      if (left === 0 && at !== banned && (allowed === undefined || allowed[at])) {
        offer(at, sum[at] ?? 0);
      }
    }
  }
  return support;
}

/** The rules that the targets rest on, each after the rules it needs; null if a target has none. */
export function extract(graph: Indexed, support: Int32Array): number[] | null {
  const state = new Uint8Array(graph.count);
  const plan: number[] = [];
  const stack: number[] = [];
  for (const target of graph.targets) {
    stack.push(target);
    while (stack.length > 0) {
      const fact = stack[stack.length - 1] ?? 0;
      const rule = support[fact] ?? -1;
      if (rule < 0) return null;
      if (state[fact] === 2) {
        stack.pop();
        continue;
      }
      if (state[fact] === 1) {
        state[fact] = 2;
        plan.push(rule);
        stack.pop();
        continue;
      }
      state[fact] = 1;
      for (const need of graph.rules[rule]?.needs ?? []) if (state[need] === 0) stack.push(need);
    }
  }
  return plan;
}

export const costOf = (plan: readonly number[], cost: Float64Array): number =>
  plan.reduce((sum, at) => sum + (cost[at] ?? 0), 0);

/** Adds the rules by which one state merely follows from another, so that no step repeats them. */
function withFollowing(graph: Indexed, plan: readonly number[]): number[] {
  const members = new Set(plan);
  const holds = new Set(plan.map((at) => graph.rules[at]?.gives ?? -1));
  const queue = [...holds];
  for (let fact = queue.pop(); fact !== undefined; fact = queue.pop()) {
    for (const at of usersOf(graph, fact)) {
      const rule = graph.rules[at];
      if (rule === undefined || rule.actions.length > 0 || members.has(at)) continue;
      if (!rule.needs.every((need) => holds.has(need))) continue;
      members.add(at);
      if (holds.has(rule.gives)) continue;
      holds.add(rule.gives);
      queue.push(rule.gives);
    }
  }
  return [...members];
}

/** Drops every rule without which the targets still hold; the dearest are tried first. */
export function minimal(graph: Indexed, given: readonly number[], cost: Float64Array): number[] {
  const plan = withFollowing(graph, given);
  const rules = plan.map((at) => graph.rules[at]).filter((rule) => rule !== undefined);
  const costAt = (n: number) => cost[plan[n] ?? -1] ?? 0;
  const done = (n: number) => rules[n]?.actions.length ?? 0;
  const order = plan.map((_, n) => n);
  order.sort((a, b) => costAt(b) - costAt(a) || done(b) - done(a) || b - a);
  const users = new Map<number, number[]>();
  rules.forEach((rule, n) => {
    for (const need of rule.needs) {
      const list = users.get(need);
      if (list === undefined) users.set(need, [n]);
      else list.push(n);
    }
  });
  const dropped = new Uint8Array(plan.length);
  const targets = new Set(graph.targets);
  const givers = new Map<number, number>();
  for (const rule of rules) givers.set(rule.gives, (givers.get(rule.gives) ?? 0) + 1);
  let sequence = plan.map((_, n) => n);
  for (const n of order) {
    const gives = rules[n]?.gives ?? -1;
    // A fact with one giver in the plan is needed as long as someone uses it.
    const wanted = targets.has(gives) || (users.get(gives) ?? []).some((m) => dropped[m] === 0);
    if (wanted && (givers.get(gives) ?? 0) <= 1) continue;
    const rest = sequence.filter((m) => m !== n);
    const next = wanted ? derivation(graph, rules, rest) : rest;
    if (next === null) continue;
    dropped[n] = 1;
    givers.set(gives, (givers.get(gives) ?? 1) - 1);
    sequence = next;
  }
  return sequence.map((n) => plan[n] ?? -1);
}

/** An order in which all these rules can follow one another, if the targets then hold. */
function derivation(
  graph: Indexed,
  rules: readonly Rule[],
  members: readonly number[],
): number[] | null {
  const holds = new Set<number>();
  const order: number[] = [];
  let waiting = [...members];
  for (let grown = true; grown; ) {
    grown = false;
    const still: number[] = [];
    for (const n of waiting) {
      const rule = rules[n];
      if (rule?.needs.every((need) => holds.has(need))) {
        holds.add(rule.gives);
        order.push(n);
        grown = true;
      } else still.push(n);
    }
    waiting = still;
  }
  return graph.targets.every((target) => holds.has(target)) ? order : null;
}

/** The cheapest plan inside a set of rules, as far as summed cost shows; null if there is none. */
export function planWithin(
  graph: Indexed,
  members: Iterable<number>,
  cost: Float64Array,
): number[] | null {
  const allowed = new Uint8Array(graph.rules.length);
  for (const at of members) allowed[at] = 1;
  const plan = extract(graph, cheapestSupports(graph, cost, -1, allowed));
  return plan === null ? null : minimal(graph, plan, cost);
}

/** A plan made anew from distorted costs; null where there is none. */
function planFor(graph: Indexed, seen: Float64Array, cost: Float64Array): number[] | null {
  const found = extract(graph, cheapestSupports(graph, seen, -1));
  return found === null ? null : minimal(graph, found, cost);
}

/** A valid plan, improved by trials until the stated count of steps is used; null: infeasible. */
export function quickPlan(
  graph: Indexed,
  cost: Float64Array,
  late: Late = NEVER_LATE,
): number[] | null {
  const first = planFor(graph, cost, cost);
  if (first === null) return null;
  const work = { left: limits.removal.heuristicSteps, late };
  return shaken(graph, cost, improved(graph, cost, first, work), work);
}

/** A plan that keeps to what a lower bound left unpaid, improved by trials. */
export function planAlong(
  graph: Indexed,
  cost: Float64Array,
  unpaid: Float64Array,
  late: Late = NEVER_LATE,
): number[] {
  const work = { left: limits.removal.heuristicSteps / 2, late };
  let best: number[] | null = null;
  for (const share of UNPAID_SHARES) {
    const seen = unpaid.map((value, at) => value + share * (cost[at] ?? 0));
    const plan = improved(graph, cost, planFor(graph, seen, cost) ?? [], work);
    if (best === null || costOf(plan, cost) < costOf(best, cost)) best = plan;
  }
  return best ?? [];
}

/** How much of a rule's own cost still counts when the unpaid part leads. */
const UNPAID_SHARES = [0.02, 0.3];

type Work = { left: number; readonly late: Late };

const isSpent = ({ left, late }: Work): boolean => left <= 0 || late();

const sizeOf = ({ rules, userList }: Indexed): number => 2 * rules.length + userList.length;

/** Leaves out one rule after another and plans anew, as long as that helps. */
function improved(
  graph: Indexed,
  cost: Float64Array,
  plan: readonly number[],
  work: Work,
): number[] {
  const size = sizeOf(graph);
  let best = [...plan];
  let bestCost = costOf(best, cost);
  for (const sunk of [0, 0.5]) {
    for (let better = true; better && !isSpent(work); ) {
      better = false;
      for (const rule of [...best].reverse()) {
        if ((graph.givers[graph.gives[rule] ?? 0]?.length ?? 0) < 2) continue;
        if (isSpent(work)) break;
        work.left -= size;
        const trial = trialWithout(graph, cost, best, rule, sunk);
        if (trial === null) continue;
        const trialCost = costOf(trial, cost);
        if (trialCost >= bestCost - 1e-9) continue;
        best = trial;
        bestCost = trialCost;
        better = true;
        break;
      }
    }
  }
  return best;
}

/** Distorts the costs a little, from a fixed seed, and keeps what comes out better. */
function shaken(graph: Indexed, cost: Float64Array, plan: readonly number[], work: Work): number[] {
  const random = randomFrom(SHAKING_SEED);
  const size = sizeOf(graph);
  let best = [...plan];
  for (let trial = 0; trial < limits.removal.shakings && !isSpent(work); trial += 1) {
    work.left -= size;
    const seen = cost.map((value) => value * (0.6 + 0.8 * random()));
    for (const at of best) seen[at] = 0.7 * (seen[at] ?? 0);
    const found = planFor(graph, seen, cost);
    if (found === null || costOf(found, cost) > 1.15 * costOf(best, cost)) continue;
    const better = improved(graph, cost, found, work);
    if (costOf(better, cost) < costOf(best, cost) - 1e-9) best = better;
  }
  return best;
}

const SHAKING_SEED = 4_711;

/** Plans anew without one rule; the other rules of the plan are already paid for, or partly. */
function trialWithout(
  graph: Indexed,
  cost: Float64Array,
  plan: readonly number[],
  rule: number,
  sunk: number,
): number[] | null {
  const trial = Float64Array.from(cost);
  for (const at of plan) trial[at] = (cost[at] ?? 0) * sunk;
  const found = extract(graph, cheapestSupports(graph, trial, rule));
  return found === null ? null : minimal(graph, found, cost);
}
