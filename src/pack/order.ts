// Steps put in order: what the machine demands always holds, the trade's rules where left free.

import type { Step } from './types.ts';

/** A step while it is made; `rank` is its place where nothing demands otherwise. */
export type DraftStep = Omit<Step, 'needs'> & {
  readonly rank: number;
  readonly needs: readonly string[];
};

/** A rule of the trade: `first` before `next`, unless the machine demands the opposite. */
export type Preference = {
  readonly first: string;
  readonly next: string;
  readonly why: string;
  /** The joints it speaks of, where a note may have to name them. */
  readonly names?: string;
};

export type Ordered = { readonly steps: readonly Step[]; readonly given: readonly Preference[] };

/**
 * Keeps every `needs`, then adds the preferences one by one, leaving out each that would close a
 * circle (returned in `given`: given up), and lists the steps by rank among those that are free.
 */
export const orderSteps = (
  drafts: readonly DraftStep[],
  preferences: readonly Preference[],
): Ordered => {
  const ids = new Set(drafts.map((d) => d.id));
  const before = new Map<string, Set<string>>();
  for (const d of drafts)
    before.set(d.id, new Set(d.needs.filter((n) => n !== d.id && ids.has(n))));
  const given: Preference[] = [];
  for (const p of preferences) {
    if (!ids.has(p.first) || !ids.has(p.next) || p.first === p.next) continue;
    if (reaches(before, p.first, p.next)) given.push(p);
    else before.get(p.next)?.add(p.first);
  }
  return { steps: sorted(drafts, before), given };
};

/** Whether `from` must wait for `to`, directly or through others. */
const reaches = (before: ReadonlyMap<string, ReadonlySet<string>>, from: string, to: string) => {
  const seen = new Set<string>();
  const stack = [from];
  for (let id = stack.pop(); id !== undefined; id = stack.pop()) {
    if (id === to) return true;
    if (seen.has(id)) continue;
    seen.add(id);
    stack.push(...(before.get(id) ?? []));
  }
  return false;
};

const sorted = (
  drafts: readonly DraftStep[],
  before: ReadonlyMap<string, ReadonlySet<string>>,
): Step[] => {
  const left = new Map(drafts.map((d) => [d.id, new Set(before.get(d.id))]));
  const then = new Map<string, string[]>();
  for (const [id, firsts] of before)
    for (const f of firsts) then.set(f, [...(then.get(f) ?? []), id]);
  const byId = new Map(drafts.map((d) => [d.id, d]));
  const free = drafts.filter((d) => left.get(d.id)?.size === 0);
  const steps: Step[] = [];
  while (free.length > 0) {
    free.sort((a, b) => b.rank - a.rank || (a.id < b.id ? 1 : -1));
    const d = free.pop();
    if (d === undefined) break;
    steps.push(asStep(d, byId));
    for (const id of then.get(d.id) ?? []) {
      const rest = left.get(id);
      rest?.delete(d.id);
      const draft = byId.get(id);
      if (rest?.size === 0 && draft !== undefined) free.push(draft);
    }
  }
  if (steps.length !== drafts.length)
    throw new Error(
      `the steps form a circle: ${[...left]
        .filter(([, s]) => s.size > 0)
        .map(([id]) => id)
        .slice(0, 6)
        .join(', ')}`,
    );
  return steps;
};

const asStep = (draft: DraftStep, byId: ReadonlyMap<string, DraftStep>): Step => {
  const { rank: _, ...step } = draft;
  return { ...step, needs: [...new Set(draft.needs)].filter((n) => n !== draft.id && byId.has(n)) };
};
