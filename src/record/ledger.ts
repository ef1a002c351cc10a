// Debts of one job: which acts opened a thing, which closed it, and what is still open in a view.

import type { Thing } from '../pack/types.ts';
import { expectedCount, type Opening } from './kinds.ts';
import { everything, type IsAncestor, type Said, type View } from './said.ts';
import { isCountedSeal, sealCounted } from './seal-counts.ts';
import { after } from './things.ts';

type Opened = { readonly said: Said; readonly opening: Opening };
type Account = {
  readonly opened: Opened[];
  readonly closers: Said[];
  /** For each closer, the closers of the same thing said without knowing it. */
  apart: ReadonlyMap<Said, readonly Said[]>;
};

export type Ledger = {
  readonly accounts: ReadonlyMap<Thing, Account>;
  readonly isAncestor: IsAncestor;
};

export function makeLedger(said: readonly Said[], isAncestor: IsAncestor): Ledger {
  const accounts = new Map<Thing, Account>();
  const account = (thing: Thing): Account => {
    let found = accounts.get(thing);
    if (found === undefined) {
      found = { opened: [], closers: [], apart: new Map() };
      accounts.set(thing, found);
    }
    return found;
  };
  for (const s of said) {
    for (const opening of s.row.opens(s.body, s.facts))
      account(opening.thing).opened.push({ said: s, opening });
    for (const thing of s.row.closes(s.body, s.facts)) account(thing).closers.push(s);
  }
  const ledger: Ledger = { accounts, isAncestor };
  for (const one of accounts.values()) one.apart = apartFrom(ledger, one.closers);
  return ledger;
}

/** Worked out once: most acts have nobody beside them, and then nothing is kept. */
function apartFrom(ledger: Ledger, closers: readonly Said[]): Account['apart'] {
  const apart = new Map<Said, readonly Said[]>();
  for (const c of closers) {
    const beside = closers.filter((other) => concurrent(ledger, c, other));
    if (beside.length > 0) apart.set(c, beside);
  }
  return apart;
}

export const concurrent = (ledger: Ledger, a: Said, b: Said): boolean =>
  a !== b && !ledger.isAncestor(a.index, b.index) && !ledger.isAncestor(b.index, a.index);

const holesSaid = new WeakMap<Said, readonly string[]>();

/** Holes of a round that a `made` speaks of; a count that differs from the facts says none. */
export function holesOf(made: Said): readonly string[] {
  const before = holesSaid.get(made);
  if (before !== undefined) return before;
  const holes = holesIn(made);
  holesSaid.set(made, holes);
  return holes;
}

function holesIn(made: Said): readonly string[] {
  const known = made.facts?.joints[after(String(made.body.thing))]?.holes ?? [];
  if (known.length === 0) return ['all'];
  if (Array.isArray(made.body.holes)) {
    const said = new Set(made.body.holes.map(String));
    return known.filter((hole) => said.has(hole));
  }
  const expected = expectedCount('made', made.body, made.facts);
  return made.body.count === undefined || made.body.count === expected ? known : [];
}

export function roundsOf(thing: Thing, facts: Said['facts']): readonly string[] {
  const rounds = facts?.joints[after(thing)]?.rounds ?? [];
  return rounds.length === 0 ? ['made'] : rounds;
}

/** The round a `made` speaks of; null where it does not say and there are several. */
export function roundOf(made: Said): string | null {
  if (made.body.round !== undefined) return String(made.body.round);
  const rounds = roundsOf(String(made.body.thing), made.facts);
  return rounds.length === 1 ? (rounds[0] ?? null) : null;
}

/** Two acts on one thing collide when each was said without knowing the other. */
export function collide(ledger: Ledger, a: Said, b: Said): boolean {
  if (!concurrent(ledger, a, b)) return false;
  const both = (kind: string) => a.act.kind === kind && b.act.kind === kind;
  // Two people may tick different holes of one joint, or undo different ones, at the same time.
  if (both('made'))
    return roundOf(a) === roundOf(b) && holesOf(a).some((h) => holesOf(b).includes(h));
  if (both('undone') && Array.isArray(a.body.holes) && Array.isArray(b.body.holes)) {
    const others = b.body.holes;
    return a.body.holes.some((h) => others.includes(h));
  }
  return true;
}

/** Holes of one round recorded after the given undoings, less those two people ticked apart. */
export function tallied(
  ledger: Ledger,
  thing: Thing,
  round: string,
  since: readonly Said[],
  view: View,
): ReadonlySet<string> {
  const account = ledger.accounts.get(thing);
  const counts = (m: Said): boolean =>
    view(m.index) &&
    roundOf(m) === round &&
    since.every((o) => ledger.isAncestor(o.index, m.index));
  const holes = new Set<string>();
  for (const m of account?.closers ?? []) {
    if (!counts(m)) continue;
    const beside = account?.apart.get(m)?.filter(counts) ?? [];
    for (const hole of holesOf(m)) {
      // A hole that two people ticked without knowing of each other is ticked by neither.
      if (!beside.some((n) => holesOf(n).includes(hole))) holes.add(hole);
    }
  }
  return holes;
}

/** True when the round holds every hole, after all the undoings given. */
export function roundFull(
  ledger: Ledger,
  thing: Thing,
  round: string,
  since: readonly Said[],
  view: View,
  facts: Said['facts'],
): boolean {
  const known = facts?.joints[after(thing)]?.holes ?? [];
  const holes = tallied(ledger, thing, round, since, view);
  return (known.length === 0 ? ['all'] : known).every((hole) => holes.has(hole));
}

/** The acts that made one opening good, or null while it stands open in this view. */
export function closedBy(
  ledger: Ledger,
  thing: Thing,
  opened: Said,
  view: View,
): readonly Said[] | null {
  const closers = (ledger.accounts.get(thing)?.closers ?? []).filter(
    (c) => view(c.index) && ledger.isAncestor(opened.index, c.index),
  );
  if (!thing.startsWith('joint/')) {
    const apart = ledger.accounts.get(thing)?.apart;
    const standing = closers.filter((c) => apart?.get(c)?.some((o) => view(o.index)) !== true);
    const met = isCountedSeal(thing) ? sealCounted(thing, standing) : standing.length > 0;
    return met ? standing : null;
  }
  // A pack amended since may ask for other rounds; those it was made up by still hold.
  const byFacts = new Set(closers.map((c) => c.facts));
  for (const facts of byFacts) {
    const rounds = roundsOf(thing, facts);
    if (rounds.every((r) => roundFull(ledger, thing, r, [opened], view, facts))) return closers;
  }
  return null;
}

export const openingsOf = (ledger: Ledger, thing: Thing, view: View): readonly Opened[] =>
  (ledger.accounts.get(thing)?.opened ?? []).filter((o) => view(o.said.index));

/** Openings of a thing that are not made good in this view. */
export function unclosed(ledger: Ledger, thing: Thing, view: View = everything): readonly Opened[] {
  const closed: Said[] = [];
  const open: Opened[] = [];
  for (const o of openingsOf(ledger, thing, view).toReversed()) {
    // What makes a later undoing good makes good every undoing that it knew of.
    const known = closed.some((c) => ledger.isAncestor(o.said.index, c.index));
    if (known || closedBy(ledger, thing, o.said, view) !== null) closed.push(o.said);
    else open.push(o);
  }
  return open.reverse();
}
