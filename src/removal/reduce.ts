// Makes the graph smaller without changing its cheapest plans, and finds what every plan holds.

import { limits } from '../limits.ts';
import type { Graph, Rule } from './graph.ts';
import { derivable } from './graph.ts';
import { type Indexed, indexed, usersOf } from './heuristic.ts';
import { type Late, NEVER_LATE } from './model.ts';

export type Reduced = {
  readonly graph: Graph;
  /** Facts that hold in every plan. */
  readonly mandatory: readonly number[];
};

/** Null when a target can't be reached at all. */
export function reduce(graph: Graph, late: Late = NEVER_LATE): Reduced | null {
  let now = relevant(graph);
  for (let round = 0; now !== null; round += 1) {
    const compact: Graph | null = relevant(merge(now));
    if (compact === null) break;
    const necessary = necessaryFacts(compact, late);
    const rules = worthwhile(compact, necessary);
    if (rules.length === compact.rules.length || round >= limits.removal.reductionRounds) {
      const mandatory = new Set(compact.targets.flatMap((target) => necessary.of(target)));
      return { graph: compact, mandatory: [...mandatory] };
    }
    now = relevant({ ...compact, rules });
    if (now === null) throw new Error('a reduction removed the last way to a target');
  }
  return null;
}

/** Only what can hold and what the targets may rest on; null when a target can't be reached. */
export function trim(graph: Graph): Graph | null {
  const kept = relevant(graph);
  return kept === null ? null : relevant(merge(kept));
}

/** Keeps what can hold and what the targets may rest on, and numbers the facts anew. */
function relevant(graph: Graph): Graph | null {
  const holds = derivable(graph);
  if (!graph.targets.every((target) => holds[target])) return null;
  const rules = graph.rules.filter(
    (rule) => !rule.needs.includes(rule.gives) && rule.needs.every((need) => holds[need]),
  );
  const { givers } = indexed({ ...graph, rules });
  const renumbered = new Int32Array(graph.count).fill(-1);
  const queue: number[] = [];
  const keep = (fact: number) => {
    if ((renumbered[fact] ?? 0) >= 0) return;
    renumbered[fact] = queue.length;
    queue.push(fact);
  };
  graph.targets.forEach(keep);
  const kept: Rule[] = [];
  for (let n = 0; n < queue.length; n += 1) {
    for (const at of givers[queue[n] ?? -1] ?? []) {
      const rule = rules[at];
      if (rule === undefined) continue;
      rule.needs.forEach(keep);
      kept.push(rule);
    }
  }
  const to = (fact: number) => renumbered[fact] ?? -1;
  return {
    count: queue.length,
    targets: graph.targets.map(to),
    rules: kept.map((rule) => ({ ...rule, gives: to(rule.gives), needs: rule.needs.map(to) })),
  };
}

/** Folds a fact with one giver into its only user, and away where it merely follows. */
function merge(graph: Graph): Graph {
  const rules: (Rule | null)[] = [...graph.rules];
  const givers: Set<number>[] = Array.from({ length: graph.count }, () => new Set<number>());
  const users: Set<number>[] = Array.from({ length: graph.count }, () => new Set<number>());
  graph.rules.forEach((rule, at) => {
    givers[rule.gives]?.add(at);
    for (const need of rule.needs) users[need]?.add(at);
  });
  let targets = new Set(graph.targets);
  const drop = (at: number) => {
    const rule = rules[at];
    if (!rule) return;
    givers[rule.gives]?.delete(at);
    for (const need of rule.needs) users[need]?.delete(at);
    rules[at] = null;
  };
  const fold = (fact: number, from: Rule, at: number) => {
    const user = rules[at];
    if (!user) return;
    drop(at);
    const needs = [...new Set([...user.needs.filter((need) => need !== fact), ...from.needs])];
    if (needs.includes(user.gives)) return;
    rules[at] = {
      gives: user.gives,
      needs,
      cost: user.cost + from.cost,
      flagged: user.flagged + from.flagged,
      actions: [...from.actions, ...user.actions],
    };
    givers[user.gives]?.add(at);
    for (const need of needs) users[need]?.add(at);
  };
  for (let fact = 0; fact < graph.count; fact += 1) {
    const [giver, ...others] = givers[fact] ?? [];
    const from = giver === undefined ? null : rules[giver];
    if (giver === undefined || !from || others.length > 0) continue;
    const using = [...(users[fact] ?? [])];
    const follows = from.cost === 0 && from.flagged === 0 && from.actions.length === 0;
    if (!follows && (targets.has(fact) || using.length !== 1)) continue;
    for (const at of using) fold(fact, from, at);
    if (targets.has(fact)) {
      targets = new Set([...targets].flatMap((one) => (one === fact ? from.needs : [one])));
    }
    drop(giver);
  }
  const left = rules.filter((rule) => rule !== null);
  return { count: graph.count, targets: [...targets], rules: left };
}

type Necessary = {
  /** Is `other` part of every way to make `fact` hold? */
  readonly has: (fact: number, other: number) => boolean;
  readonly of: (fact: number) => number[];
};

/** All that is known without looking: a fact is part of every way to itself. */
const NOTHING_KNOWN: Necessary = {
  has: (fact, other) => fact === other,
  of: (fact) => [fact],
};

/** For each fact the facts that hold in every plan for it: the greatest fixed point, by bits. */
function necessaryFacts(graph: Graph, late: Late): Necessary {
  const words = (graph.count + 31) >> 5;
  if (graph.count * words > limits.removal.necessaryWords) return NOTHING_KNOWN;
  const list = indexed(graph);
  let left = limits.removal.necessarySteps;
  const bits = new Uint32Array(graph.count * words).fill(0xffffffff);
  const all = new Uint32Array(words);
  const one = new Uint32Array(words);
  const waiting = new Uint8Array(graph.count).fill(1);
  const order = derivationOrder(list);
  for (let changed = true; changed; ) {
    changed = false;
    for (const fact of order) {
      if (!waiting[fact]) continue;
      waiting[fact] = 0;
      // Before it has settled the sets say too much: then nothing of them may be used.
      if (left < 0 || late()) return NOTHING_KNOWN;
      meet(fact);
      if (!store(fact)) continue;
      changed = true;
      for (const at of usersOf(list, fact)) waiting[list.gives[at] ?? 0] = 1;
    }
  }
  function meet(fact: number): void {
    all.fill(0xffffffff);
    for (const at of list.givers[fact] ?? []) {
      one.fill(0);
      for (const need of graph.rules[at]?.needs ?? []) {
        const from = need * words;
        left -= words;
        for (let w = 0; w < words; w += 1) one[w] = (one[w] ?? 0) | (bits[from + w] ?? 0);
      }
      for (let w = 0; w < words; w += 1) all[w] = (all[w] ?? 0) & (one[w] ?? 0);
    }
    all[fact >> 5] = (all[fact >> 5] ?? 0) | (1 << (fact & 31));
  }
  function store(fact: number): boolean {
    let changed = false;
    for (let w = 0; w < words; w += 1) {
      const now = all[w] ?? 0;
      if (bits[fact * words + w] === now) continue;
      bits[fact * words + w] = now;
      changed = true;
    }
    return changed;
  }
  const has = (fact: number, other: number) =>
    ((bits[fact * words + (other >> 5)] ?? 0) & (1 << (other & 31))) !== 0;
  const of = (fact: number) =>
    Array.from({ length: graph.count }, (_, other) => other).filter((other) => has(fact, other));
  return { has, of };
}

/** Facts in an order in which they can come to hold; sweeps in this order settle soonest. */
function derivationOrder(list: Indexed): number[] {
  const { free, rules } = list;
  const missing = rules.map((rule) => rule.needs.length);
  const seen = new Uint8Array(list.count);
  const order: number[] = [];
  const reach = (fact: number) => {
    if (seen[fact]) return;
    seen[fact] = 1;
    order.push(fact);
  };
  for (const at of free) reach(rules[at]?.gives ?? 0);
  for (let n = 0; n < order.length; n += 1) {
    for (const at of usersOf(list, order[n] ?? 0)) {
      missing[at] = (missing[at] ?? 0) - 1;
      if (missing[at] === 0) reach(rules[at]?.gives ?? 0);
    }
  }
  return order;
}

/** Drops rules that go round in a circle and rules that another one always matches or beats. */
function worthwhile(graph: Graph, necessary: Necessary): Rule[] {
  const { givers, rules } = indexed(graph);
  const dropped = new Uint8Array(rules.length);
  rules.forEach((rule, at) => {
    if (rule.needs.some((need) => necessary.has(need, rule.gives))) dropped[at] = 1;
  });
  const beats = (better: Rule, worse: Rule) =>
    better.cost <= worse.cost &&
    better.flagged <= worse.flagged &&
    better.needs.every((need) => worse.needs.some((other) => necessary.has(other, need)));
  for (const list of givers) {
    for (const worse of list) {
      if (dropped[worse]) continue;
      const worseRule = rules[worse];
      const beaten = list.some((better) => {
        const betterRule = rules[better];
        if (better === worse || dropped[better] || !betterRule || !worseRule) return false;
        return beats(betterRule, worseRule);
      });
      if (beaten) dropped[worse] = 1;
    }
  }
  return rules.filter((_, at) => dropped[at] === 0);
}
