// What taking a thing off opens, by the words of the person alone: no plant file is asked.

import type { PackFacts } from '../pack/types.ts';
import type { Opening } from './kinds.ts';
import { after, before } from './things.ts';
import type { ActBody } from './types.ts';

/** Facts made from what was seen, not from a plant file; isolation is judged otherwise by them. */
export type SeenFacts = PackFacts & { readonly seen: true };

export const isSeen = (facts: PackFacts | null): facts is SeenFacts =>
  facts !== null && 'seen' in facts;

/** A thing taken off and the joint that held it share a name: `part/cover`, `joint/cover`. */
export const jointOfPart = (id: string): string => id;

export const PROOFS = [
  {
    id: 'static-look',
    name: 'Fill and look',
    what: 'every disturbed wet joint dry at standing head',
  },
  {
    id: 'running',
    name: 'Running look',
    what: 'every disturbed joint dry and quiet, at each speed',
  },
  {
    id: 'after-stop',
    name: 'Hot look after stopping',
    what: 'every disturbed joint, weep hole, bilge and oil looked at just after stopping',
  },
] as const;

/** Not known counts as wet: only a plain "no" spares the look at standing head. */
export const proofsOfTaking = (wet: unknown): readonly string[] =>
  PROOFS.map((p) => p.id).filter((id) => id !== 'static-look' || wet !== 'no');

/** Taking off owes the thing back, its fasteners tight, old seals out, new ones in, and proofs. */
export function tookOff(body: ActBody): readonly Opening[] {
  const thing = String(body.thing);
  const id = after(thing);
  const joint = `joint/${jointOfPart(id)}`;
  const fasteners = Array.isArray(body.fasteners) && body.fasteners.length > 0;
  const left = Number(body.sealsLeft ?? 0) > 0;
  const seals = Number(body.seals ?? 0) > 0 || left;
  const isJoint = before(thing) === 'joint';
  return [
    ...(isJoint ? [] : [{ thing, kind: 'part' } as const]),
    ...(isJoint || fasteners || seals ? [{ thing: joint, kind: 'joint' } as const] : []),
    ...(left ? [{ thing: `old-seal/${id}:seal`, kind: 'old seal' } as const] : []),
    ...(seals ? [{ thing: `new-seal/${id}:seal`, kind: 'new seal' } as const] : []),
    ...proofsOfTaking(body.wet).map((p) => ({ thing: `proof/${p}`, kind: 'proof' }) as const),
  ];
}
