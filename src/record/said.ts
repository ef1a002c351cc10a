// What one job's acts say, each with the pack that was in force for the person who said it.

import type { Pack, PackFacts, Step } from '../pack/types.ts';
import { type KindRow, kindOf } from './kinds.ts';
import type { Ordered } from './order.ts';
import { isStart } from './strip.ts';
import type { Act, ActBody } from './types.ts';

/** An act that counts: known, of sound body, not corrected away. `index` is its causal place. */
export type Said = {
  readonly act: Act;
  readonly index: number;
  readonly row: KindRow;
  readonly body: ActBody;
  readonly pack: Pack | null;
  readonly facts: PackFacts | null;
};

/** Which acts somebody had seen; the whole record is `everything`. */
export type View = (index: number) => boolean;

export const everything: View = () => true;

export type IsAncestor = Ordered['isAncestor'];

export const viewOf =
  (of: { readonly index: number }, isAncestor: IsAncestor): View =>
  (index) =>
    isAncestor(index, of.index);

export type Effective = {
  readonly acts: readonly { readonly act: Act; readonly index: number; readonly row: KindRow }[];
  readonly unknown: readonly string[];
};

/** Sets aside unknown acts and those corrected away; a corrected correction counts again. */
export function effective(ordered: Ordered): Effective {
  const unknown: string[] = [];
  const known = ordered.acts.flatMap((act, index) => {
    const row = kindOf(act.kind);
    const sound =
      row !== null &&
      act.version === row.version &&
      row.stream.includes(act.stream.kind) &&
      row.body.safeParse(act.body).success;
    if (!sound || row === null) {
      unknown.push(act.hash);
      return [];
    }
    return [{ act, index, row }];
  });
  const void_ = new Set<number>();
  for (const { act, index } of [...known].reverse()) {
    if (act.kind !== 'corrected' || void_.has(index)) continue;
    const target = ordered.indexOf.get(String(act.body.of));
    if (target === undefined || !ordered.isAncestor(target, index)) continue;
    if (!isStart(ordered.acts[target]?.kind ?? '')) void_.add(target);
  }
  return { acts: known.filter(({ index }) => !void_.has(index)), unknown: unknown.sort() };
}

/** The packs of a job from its first to the one in force, and what stands undecided between. */
export type Chain = {
  readonly packs: readonly string[];
  readonly inForce: string | null;
  /** Amendments of one pack that stand side by side, in causal order. */
  readonly rivals: readonly (readonly Said[])[];
};

export const rivalsId = (first: Said): string => `two amendments ${String(first.body.from)}`;

/** Follows the amendments in view; two of one pack stop it until a person decides for one. */
export function chainOf(
  first: string,
  amended: readonly Said[],
  decided: readonly Said[],
  view: View,
): Chain {
  const packs = [first];
  const rivals: Said[][] = [];
  let inForce: string | null = first;
  // Each amendment leads to another pack; a chain longer than their number goes in a circle.
  for (let i = 0; i <= amended.length && inForce !== null; i++) {
    const from: string = inForce;
    const next = amended.filter((a) => view(a.index) && a.body.from === from);
    const targets = [...new Set(next.map((a) => String(a.body.to)))];
    const [one] = next;
    if (one === undefined || packs.includes(targets[0] ?? '')) break;
    if (targets.length === 1) inForce = targets[0] ?? null;
    else {
      rivals.push(next);
      const choice = decided
        .filter((d) => view(d.index) && d.body.finding === rivalsId(one))
        .at(-1);
      inForce = targets.find((t) => t === choice?.body.pack) ?? null;
    }
    packs.push(...(inForce === null ? targets : [inForce]));
  }
  return { packs, inForce, rivals };
}

/** Facts of a chain of packs: a later pack's word on a thing replaces an earlier one's. */
export function mergedFacts(packs: readonly Pack[]): PackFacts | null {
  const last = packs.at(-1);
  if (last === undefined) return null;
  if (packs.length === 1) return last.facts;
  const merge = <T>(pick: (f: PackFacts) => Readonly<Record<string, T>>) =>
    Object.assign({}, ...packs.map((p) => pick(p.facts))) as Readonly<Record<string, T>>;
  return {
    joints: merge((f) => f.joints),
    parts: merge((f) => f.parts),
    items: merge((f) => f.items),
    closures: merge((f) => f.closures),
    temps: merge((f) => f.temps),
    checks: merge((f) => f.checks),
    settings: merge((f) => f.settings),
    proofs: merge((f) => f.proofs),
    ...(last.facts.asFound === undefined ? {} : { asFound: last.facts.asFound }),
    isolation: last.facts.isolation,
    ...(last.facts.looks === undefined ? {} : { looks: last.facts.looks }),
  };
}

const stepsByPack = new WeakMap<Pack, ReadonlyMap<string, Step>>();

export function stepOf(pack: Pack | null, id: string | null): Step | null {
  if (pack === null || id === null) return null;
  let steps = stepsByPack.get(pack);
  if (steps === undefined) {
    steps = new Map(pack.steps.map((s) => [s.id, s]));
    stepsByPack.set(pack, steps);
  }
  return steps.get(id) ?? null;
}
