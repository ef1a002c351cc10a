// For tests: says a job again with one act left out, later acts getting new parents and numbers.

import { makeAct } from './act.ts';
import { order } from './order.ts';
import type { Act } from './types.ts';

/** The same acts in causal order without `left`; its children take its parents. */
export function leaveOut(acts: readonly Act[], left: string): Act[] {
  const now = new Map<string, readonly string[]>();
  const seqs = new Map<string, number>();
  const said: Act[] = [];
  for (const act of order(acts).acts) {
    const parents = [...new Set(act.parents.flatMap((p) => now.get(p) ?? []))];
    if (act.hash === left) {
      now.set(act.hash, parents);
      continue;
    }
    const deviceSeq = (seqs.get(act.device) ?? 0) + 1;
    seqs.set(act.device, deviceSeq);
    const { vessel, device, at } = act;
    const again = makeAct(act, { vessel, device, deviceSeq, parents, at });
    now.set(act.hash, [again.hash]);
    said.push(again);
  }
  return said;
}
