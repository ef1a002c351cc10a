// What acts speak of: the names of things, what undoing one opens, and how an entry is worded.

import type { PackFacts, Thing } from '../pack/types.ts';
import { say } from '../words/heard.ts';
import { missingWords } from './as-found.ts';
import type { Opening } from './kinds.ts';

/** `joint/pump-mounting` → `joint`. */
export const before = (thing: Thing): string => thing.slice(0, Math.max(0, thing.indexOf('/')));

/** `joint/pump-mounting` → `pump-mounting`. */
export const after = (thing: Thing): string => thing.slice(thing.indexOf('/') + 1);

/** The proofs that undoing a thing owes: those its joint names and those that name the thing. */
export function proofsOwed(thing: Thing, facts: PackFacts | null): readonly Opening[] {
  if (facts === null) return [];
  const ids = new Set<string>();
  if (before(thing) === 'joint')
    for (const id of facts.joints[after(thing)]?.proofs ?? []) ids.add(id);
  for (const [id, proof] of Object.entries(facts.proofs))
    if (proof.owedBy.includes(thing)) ids.add(id);
  return [...ids].map((id) => ({ thing: `proof/${id}`, kind: 'proof' }));
}

/** Nothing was backed off: of the proofs its joint owes only the look for leaks opens again. */
export function leakLookOwed(thing: Thing, facts: PackFacts | null): readonly Opening[] {
  const owed = proofsOwed(thing, facts);
  const look = LEAK_LOOKS.find((id) => owed.some((o) => o.thing === `proof/${id}`));
  return look === undefined ? owed : owed.filter((o) => o.thing === `proof/${look}`);
}

/** Filled and looked at while it stands still; a joint of no line is looked at after stopping. */
const LEAK_LOOKS: readonly string[] = ['static-look', 'after-stop'];

/** Undoing a joint owes it made up again, each seal out and a new one in, each loose part back. */
export function undoneJoint(thing: Thing, facts: PackFacts | null): readonly Opening[] {
  const id = after(thing);
  const joint = facts?.joints[id];
  const seals = (joint?.seals ?? []).flatMap((s): Opening[] => [
    { thing: `old-seal/${id}:${s.id}`, kind: 'old seal' },
    { thing: `new-seal/${id}:${s.id}`, kind: 'new seal' },
  ]);
  const loose = (joint?.loose ?? []).map(
    (l): Opening => ({ thing: `loose/${id}:${l.id}`, kind: 'loose part' }),
  );
  return [{ thing, kind: 'joint' }, ...seals, ...loose, ...proofsOwed(thing, facts)];
}

type Counted = { readonly joint: string; readonly name: string; readonly count: number };

/** The seal or loose part that `seal/J:S`, `old-seal/J:S`, `new-seal/J:S` or `loose/J:L` names. */
export function jointOfSeal(thing: Thing, facts: PackFacts | null): Counted | null {
  const [joint = '', part] = after(thing).split(':');
  const known = facts?.joints[joint];
  if (known === undefined || part === undefined) return null;
  const among = before(thing) === 'loose' ? known.loose : known.seals;
  const found = among.find((x) => x.id === part);
  return found === undefined ? null : { joint: known.name, name: found.name, count: found.count };
}

/** An entry in words and its place: `Pump mounting: 6 nuts off`. */
export function wording(
  opening: Opening,
  facts: PackFacts | null,
  said: { readonly [key: string]: unknown },
): { readonly what: string; readonly place: string | null } {
  const { thing, kind } = opening;
  const id = after(thing);
  const part = jointOfSeal(thing, facts);
  const place = facts?.joints[id.split(':')[0] ?? '']?.place ?? null;
  switch (kind) {
    case 'joint':
      return { what: jointWords(id, facts, text(said.what)), place };
    case 'old seal':
      return { what: partWords('oldSealOpen', 'oldSealOfUnknown', id, part), place };
    case 'new seal':
      return { what: partWords('newSealOwed', 'newSealOfUnknown', id, part), place };
    case 'loose part':
      return { what: partWords('looseOpen', 'itemOut', id, part), place };
    case 'part': {
      const name = facts?.parts[id]?.name ?? text(said.what) ?? id;
      return { what: say('partAway', name, said.kind === 'moved-aside'), place: null };
    }
    case 'item':
      return {
        what: say('itemOut', facts?.items[id]?.name ?? facts?.parts[id]?.name ?? id),
        place: null,
      };
    case 'closure': {
      const closure = facts?.closures[id];
      const normal = closure?.normal ? closure.normal : null;
      const off = say('offItsNormalPosition');
      const position = String(said.position ?? closure?.workPosition ?? off);
      return {
        what: say('closureStands', closure?.name ?? text(said.what) ?? id, position, normal),
        place: closure?.place ?? null,
      };
    }
    case 'tag':
      return { what: tagWords(id, facts, said), place: text(said.station) };
    case 'drain':
      return {
        what: say('standsOpen', facts?.closures[id]?.name ?? id),
        place: facts?.closures[id]?.place ?? null,
      };
    case 'temporary': {
      const temp = facts?.temps[id];
      const name = temp?.name ?? text(said.name) ?? say('temporaryThing', id);
      return { what: say('temporaryIn', name, id), place: temp?.where ?? text(said.where) };
    }
    case 'as found':
      return { what: say('asFoundOwed', facts?.asFound?.name ?? id), place: null };
    case 'missing': {
      const name = facts?.items[id]?.name ?? facts?.parts[id]?.name ?? facts?.asFound?.name ?? id;
      const missing = missingWords(said.missing ?? said.left);
      return { what: say('piecesMissingOf', name, missing), place: null };
    }
    case 'proof':
      return { what: say('proofOwed', facts?.proofs[id]?.name ?? id), place: null };
  }
}

const text = (value: unknown): string | null => (typeof value === 'string' ? value : null);

const partWords = (
  known: 'oldSealOpen' | 'newSealOwed' | 'looseOpen',
  unknown: 'oldSealOfUnknown' | 'newSealOfUnknown' | 'itemOut',
  id: string,
  part: Counted | null,
): string => (part === null ? say(unknown, id) : say(known, part.joint, part.count, part.name));

function jointWords(id: string, facts: PackFacts | null, told: string | null): string {
  const joint = facts?.joints[id];
  if (joint === undefined) return say('jointUndone', told ?? id);
  const off = joint.fasteners.map((f) => say('counted', f.count, f.what));
  return off.length === 0 ? say('jointUndone', joint.name) : say('jointOff', joint.name, off);
}

function tagWords(
  id: string,
  facts: PackFacts | null,
  said: { readonly [key: string]: unknown },
): string {
  const closure = text(said.closure);
  if (closure === null) return say('tagHung', id);
  return say('tagHangs', id, facts?.closures[closure]?.name ?? closure);
}
