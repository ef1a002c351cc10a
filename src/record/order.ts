// Causal order: parents before children, then by hash; who is whose ancestor; who waits for whom.

import type { Act } from './types.ts';

export type Ordered = {
  /** Folded acts, each after all its ancestors, otherwise by hash. */
  readonly acts: readonly Act[];
  readonly indexOf: ReadonlyMap<string, number>;
  /** True when the act at index `a` is an ancestor of the act at index `b`. */
  readonly isAncestor: (a: number, b: number) => boolean;
  readonly heads: readonly string[];
  readonly waiting: readonly string[];
};

/** The same acts in any order, any number of times, give the same result. */
export function order(given: readonly Act[]): Ordered {
  const byHash = new Map(given.map((act) => [act.hash, act]));
  const { acts, waiting } = causal(byHash);
  const indexOf = new Map(acts.map((act, i) => [act.hash, i]));
  const isParent = new Set(acts.flatMap((act) => act.parents));
  return {
    acts,
    indexOf,
    isAncestor: ancestry(acts, indexOf),
    heads: acts
      .map((a) => a.hash)
      .filter((h) => !isParent.has(h))
      .sort(),
    waiting: waiting.sort(),
  };
}

function causal(byHash: ReadonlyMap<string, Act>): { acts: Act[]; waiting: string[] } {
  const children = new Map<string, string[]>();
  const missing = new Map<string, number>();
  const ready = new Heap();
  for (const act of byHash.values()) {
    const parents = new Set(act.parents);
    missing.set(act.hash, parents.size);
    if (parents.size === 0) ready.push(act.hash);
    for (const parent of parents) {
      const list = children.get(parent);
      if (list === undefined) children.set(parent, [act.hash]);
      else list.push(act.hash);
    }
  }
  const acts: Act[] = [];
  for (let hash = ready.pop(); hash !== undefined; hash = ready.pop()) {
    const act = byHash.get(hash);
    if (act === undefined) throw new Error(`act ${hash} was counted but is not there`);
    acts.push(act);
    missing.delete(hash);
    for (const child of children.get(hash) ?? []) {
      const left = (missing.get(child) ?? 0) - 1;
      missing.set(child, left);
      if (left === 0) ready.push(child);
    }
  }
  return { acts, waiting: [...missing.keys()] };
}

/**
 * Acts are laid on chains in which each is an ancestor of the next; a clock for each act says how
 * far up every chain its ancestors reach. The number of chains is the number of devices that
 * worked apart, so the clocks stay short however long the record grows.
 */
function ancestry(
  acts: readonly Act[],
  indexOf: ReadonlyMap<string, number>,
): Ordered['isAncestor'] {
  const chainOf = new Int32Array(acts.length);
  const placeOf = new Int32Array(acts.length);
  const clocks: number[][] = [];
  const lengths: number[] = [];
  acts.forEach((act, i) => {
    const clock: number[] = [];
    for (const parent of act.parents) {
      const p = indexOf.get(parent) ?? -1;
      const upTo = clocks[p] ?? [];
      for (let c = 0; c < upTo.length; c++) clock[c] = Math.max(clock[c] ?? 0, upTo[c] ?? 0);
    }
    // A chain whose last act is an ancestor goes on with this one; else a new chain begins.
    let chain = lengths.findIndex((length, c) => (clock[c] ?? 0) === length);
    if (chain < 0) chain = lengths.push(0) - 1;
    const place = (lengths[chain] ?? 0) + 1;
    lengths[chain] = place;
    for (let c = clock.length; c <= chain; c++) clock[c] = 0;
    clock[chain] = place;
    chainOf[i] = chain;
    placeOf[i] = place;
    clocks.push(clock);
  });
  return (a, b) => a !== b && (clocks[b]?.[chainOf[a] ?? -1] ?? 0) >= (placeOf[a] ?? Infinity);
}

/** A binary heap of hashes, smallest first. */
class Heap {
  readonly #items: string[] = [];

  push(hash: string): void {
    const items = this.#items;
    let i = items.push(hash) - 1;
    while (i > 0) {
      const up = (i - 1) >> 1;
      const parent = items[up] ?? '';
      if (parent <= hash) break;
      items[i] = parent;
      i = up;
    }
    items[i] = hash;
  }

  pop(): string | undefined {
    const items = this.#items;
    const top = items[0];
    const last = items.pop();
    if (last === undefined || items.length === 0) return top;
    let i = 0;
    for (;;) {
      let child = 2 * i + 1;
      if (child >= items.length) break;
      if ((items[child + 1] ?? '\uffff') < (items[child] ?? '')) child += 1;
      const below = items[child] ?? '';
      if (below >= last) break;
      items[i] = below;
      i = child;
    }
    items[i] = last;
    return top;
  }
}
