// Every choice of closures tried one after another: slow, and independent of flows and potentials.

import type { PlainIn } from './model.ts';

/** What a given choice of closures fails in. */
export function faultsOf(input: PlainIn, closures: readonly string[]): string[] {
  const around = neighbours(input);
  const shut = new Set(closures);
  const faults: string[] = [];
  if (least(input, around, shut) < input.barriers) faults.push('too few closures on a path');
  if (!keeps(input, around, shut)) faults.push('a service is lost');
  return faults;
}

/** The least effort of a choice that isolates and keeps; null: there is none. */
export function leastByTrying(input: PlainIn): number | null {
  const beside = neighbours(input);
  const valves = input.nodes.filter(({ kind }) => kind === 'valve');
  let effort: number | null = null;
  for (let choice = 0; choice < 2 ** valves.length; choice += 1) {
    const chosen = valves.filter((_, at) => Math.floor(choice / 2 ** at) % 2 === 1);
    const sum = chosen.reduce((total, { weight }) => total + (weight ?? 1), 0);
    if (effort !== null && sum >= effort) continue;
    const shut = new Set(chosen.map(({ id }) => id));
    if (least(input, beside, shut) < input.barriers) continue;
    if (keeps(input, beside, shut)) effort = sum;
  }
  return effort;
}

function neighbours({ nodes, edges }: PlainIn): Map<string, string[]> {
  const beside = new Map<string, string[]>(nodes.map(({ id }) => [id, []]));
  for (const [a, b] of edges) {
    beside.get(a)?.push(b);
    beside.get(b)?.push(a);
  }
  return beside;
}

/** Fewest shut closures between any source and any work, by rounds until nothing falls. */
function least(
  { nodes }: PlainIn,
  beside: ReadonlyMap<string, readonly string[]>,
  shut: ReadonlySet<string>,
): number {
  const far = new Map<string, number>();
  for (const { id, kind } of nodes) if (kind === 'source') far.set(id, 0);
  for (let changed = true; changed; ) {
    changed = false;
    for (const [id, own] of [...far]) {
      for (const other of beside.get(id) ?? []) {
        const reached = own + (shut.has(other) ? 1 : 0);
        if (reached >= (far.get(other) ?? Number.POSITIVE_INFINITY)) continue;
        far.set(other, reached);
        changed = true;
      }
    }
  }
  const works = nodes.filter(({ kind }) => kind === 'work');
  return Math.min(...works.map(({ id }) => far.get(id) ?? Number.POSITIVE_INFINITY));
}

function keeps(
  { nodes, keep }: PlainIn,
  beside: ReadonlyMap<string, readonly string[]>,
  shut: ReadonlySet<string>,
): boolean {
  const sources = nodes.flatMap(({ id, kind }) => (kind === 'source' ? [id] : []));
  return keep.every((one) => {
    const reached = new Set([typeof one === 'string' ? one : one.node]);
    for (const id of reached) {
      for (const other of beside.get(id) ?? []) if (!shut.has(other)) reached.add(other);
    }
    if (typeof one === 'string') return sources.some((source) => reached.has(source));
    return one.from.every((source) => reached.has(source));
  });
}
