// Paths through the network as it was given: the one with fewest closures, for whoever must look.

import type { Network } from './network.ts';

export type Path = { readonly nodes: readonly number[]; readonly closures: number };

/** The path of fewest closures, and of those of fewest steps, between two sets of nodes. */
export function fewestClosures(
  { nodes, beside }: Network,
  from: readonly number[],
  goal: (node: number) => boolean,
): Path | null {
  const best = nodes.map(() => Number.POSITIVE_INFINITY);
  const before = nodes.map(() => -1);
  const layers: number[][] = [[...from]];
  for (const node of from) best[node] = 0;
  for (let closures = 0; closures < layers.length; closures += 1) {
    const layer = layers[closures] ?? [];
    for (let at = 0; at < layer.length; at += 1) {
      const node = layer[at] ?? -1;
      if (best[node] !== closures) continue;
      if (goal(node)) return { nodes: back(before, node), closures };
      for (const other of beside[node] ?? []) {
        const reached = closures + (nodes[other]?.kind === 'valve' ? 1 : 0);
        if ((best[other] ?? 0) <= reached) continue;
        best[other] = reached;
        before[other] = node;
        layers[reached] ??= [];
        layers[reached].push(other);
      }
    }
  }
  return null;
}

function back(before: readonly number[], end: number): number[] {
  const path = [end];
  for (let node = before[end] ?? -1; node >= 0; node = before[node] ?? -1) path.push(node);
  return path.reverse();
}
