// Orders steps with the fewest priced changes of tool and place: best first, with a bound.

import { Heap } from './heap.ts';
import type { Late } from './model.ts';

export type Option = {
  readonly item: number;
  /** Which of the item's accesses; passed back to the caller. */
  readonly option: number;
  /** Null is "not stated": it is no change, and the one before stays in hand. */
  readonly tool: string | null;
  readonly place: string | null;
};

export type OrderProblem = {
  readonly items: number;
  /** Every way each item can be done, ready or not. */
  readonly options: readonly (readonly Option[])[];
  readonly toolPrice: number;
  readonly placePrice: number;
  /** The items that can be done next; once ready an item stays ready. */
  readonly ready: (done: Uint8Array) => readonly Option[];
  /** Nodes of the search; past that the best found stands with its bound. */
  readonly maxStates: number;
  readonly late?: Late;
};

export type Ordered = {
  readonly steps: readonly Option[];
  readonly price: number;
  /** No order is cheaper than this. */
  readonly bound: number;
};

type Hand = { readonly tool: string | null; readonly place: string | null };

type Node = {
  readonly done: Uint8Array;
  readonly hand: Hand;
  readonly price: number;
  readonly steps: readonly Option[];
  readonly before: Node | null;
  /** What can be done next, once nothing more can be done without a change. */
  readonly ready: readonly Option[];
};

/** Null when some item never becomes ready. */
export function fewestChanges(given: OrderProblem): Ordered | null {
  const problem = { ...given, ready: remembered(given) };
  const stillOwed = owedBy(problem);
  const start = settle(problem, {
    done: new Uint8Array(problem.items),
    hand: { tool: null, place: null },
    price: 0,
    steps: [],
    before: null,
    ready: [],
  });
  const greedy = byHand(problem, start);
  if (greedy === null) return null;
  const nodes: Node[] = [start];
  const best = new Map<string, number>([[keyOf(start), 0]]);
  const open = new Heap();
  open.push(stillOwed(start), 0);
  let bound = 0;
  while (open.size > 0) {
    const node = nodes[open.pop()];
    if (node === undefined) break;
    if ((best.get(keyOf(node)) ?? 0) < node.price) continue;
    bound = Math.max(bound, node.price + stillOwed(node));
    if (isDone(node)) return { ...stepsOf(node), bound: node.price };
    if (bound >= greedy.price) break;
    if (nodes.length > problem.maxStates || problem.late?.()) return { ...greedy, bound };
    for (const option of node.ready) {
      const next = settle(problem, take(problem, node, option));
      const key = keyOf(next);
      if ((best.get(key) ?? Number.POSITIVE_INFINITY) <= next.price) continue;
      const least = next.price + stillOwed(next);
      if (least >= greedy.price) continue;
      best.set(key, next.price);
      open.push(least, nodes.push(next) - 1);
    }
  }
  // Nothing that could be cheaper is open any more.
  return { ...greedy, bound: greedy.price };
}

/** Asks once what is ready after the same things are done. */
function remembered({ ready }: OrderProblem): OrderProblem['ready'] {
  const known = new Map<string, readonly Option[]>();
  return (done) => {
    const key = done.join('');
    const before = known.get(key);
    if (before !== undefined) return before;
    const now = ready(done);
    known.set(key, now);
    return now;
  };
}

const isDone = (node: Node) => node.done.every((one) => one === 1);

function keyOf(node: Node): string {
  return `${node.done.join('')}|${node.hand.tool}|${node.hand.place}`;
}

function price(problem: OrderProblem, hand: Hand, option: Option): number {
  const other = (now: string | null, next: string | null) =>
    now !== null && next !== null && now !== next;
  return (
    (other(hand.tool, option.tool) ? problem.toolPrice : 0) +
    (other(hand.place, option.place) ? problem.placePrice : 0)
  );
}

const after = (hand: Hand, option: Option): Hand => ({
  tool: option.tool ?? hand.tool,
  place: option.place ?? hand.place,
});

function take(problem: OrderProblem, node: Node, option: Option): Node {
  const done = node.done.slice();
  done[option.item] = 1;
  return {
    done,
    hand: after(node.hand, option),
    price: node.price + price(problem, node.hand, option),
    steps: [option],
    before: node,
    ready: [],
  };
}

/** Does at once whatever needs no change: leaving it for later can't be cheaper. */
function settle(problem: OrderProblem, node: Node): Node {
  const done = node.done.slice();
  const steps = [...node.steps];
  const { tool, place } = node.hand;
  let ready: readonly Option[] = [];
  for (let grown = true; grown; ) {
    grown = false;
    ready = problem.ready(done);
    for (const option of ready) {
      if (done[option.item]) continue;
      const sameTool = option.tool === null || option.tool === tool;
      const samePlace = option.place === null || option.place === place;
      if (!sameTool || !samePlace) continue;
      done[option.item] = 1;
      steps.push(option);
      grown = true;
    }
  }
  return { ...node, done, steps, ready };
}

/**
 * A lower bound of the changes still to come: items of which no two can be done with the same tool
 * (or at the same place), nor any with the one in hand, need a change each.
 */
function owedBy(problem: OrderProblem): (node: Node) => number {
  const choices = (field: 'tool' | 'place') =>
    problem.options
      .map((options, item) => ({ item, values: [...new Set(options.map((one) => one[field]))] }))
      .filter(({ values }) => values.length > 0 && !values.includes(null))
      .sort((a, b) => a.values.length - b.values.length || a.item - b.item);
  const tools = choices('tool');
  const places = choices('place');
  const apart = (lists: typeof tools, done: Uint8Array, inHand: string | null): number => {
    const taken = new Set<string | null>(inHand === null ? [] : [inHand]);
    let count = 0;
    for (const { item, values } of lists) {
      if (done[item] || values.some((value) => taken.has(value))) continue;
      for (const value of values) taken.add(value);
      count += 1;
    }
    return inHand === null ? Math.max(0, count - 1) : count;
  };
  return ({ done, hand }) =>
    problem.toolPrice * apart(tools, done, hand.tool) +
    problem.placePrice * apart(places, done, hand.place);
}

/** Always the cheapest next step; of equal ones that which frees most for the same hand. */
function byHand(problem: OrderProblem, start: Node): Omit<Ordered, 'bound'> | null {
  let node = start;
  for (let left = problem.items; left > 0 && !isDone(node); left -= 1) {
    const { ready } = node;
    const handOf = (option: Option) => `${option.tool}|${option.place}`;
    const counts = new Map<string, number>();
    for (const one of ready) counts.set(handOf(one), (counts.get(handOf(one)) ?? 0) + 1);
    const alike = (option: Option) => counts.get(handOf(option)) ?? 0;
    let next: Option | null = null;
    let nextScore = Number.POSITIVE_INFINITY;
    for (const option of ready) {
      const score = price(problem, node.hand, option) - alike(option) / (1 + ready.length);
      if (score >= nextScore) continue;
      next = option;
      nextScore = score;
    }
    if (next === null) return null;
    node = settle(problem, take(problem, node, next));
  }
  return isDone(node) ? stepsOf(node) : null;
}

function stepsOf(node: Node): Omit<Ordered, 'bound'> {
  const chain: Option[][] = [];
  for (let at: Node | null = node; at !== null; at = at.before) chain.unshift([...at.steps]);
  return { steps: chain.flat(), price: node.price };
}
