// The blank list of a second look: in another order than the pack's, without a position in it.

import type { ClosureFacts, Thing } from '../pack/types.ts';
import { hashOf } from '../quantity/sha.ts';

export const CANNOT_TELL = 'can’t tell';
export const ANOTHER = 'another position';

/**
 * In an order made of what it is for and who looks, so that it is the same whenever it is asked
 * for; where that happens to be the pack's own order, the first goes to the end.
 */
export function lookOrder(things: readonly Thing[], ...seed: readonly string[]): readonly Thing[] {
  const keyed = things.map((thing) => ({ thing, key: hashOf([...seed, thing]) }));
  const other = keyed.sort((a, b) => (a.key < b.key ? -1 : 1)).map((k) => k.thing);
  const [first] = other;
  if (first === undefined || other.some((thing, i) => thing !== things[i])) return other;
  return [...other.slice(1), first];
}

/** What may be said of a closure, the same whatever it should be; `turns` are asked for beside. */
export type LookChoices = { readonly choices: readonly string[]; readonly turns: boolean };

const TURNS = /^(?:open|throttled)\b.*?(\d+(?:\.\d+)?)\s*turns?\b/;

/** `Open 3 turns of 8` and `open 3 turns` are one position; other words are as they are. */
export function positionOf(words: string): string {
  const plain = words.trim().toLowerCase().replaceAll(/\s+/g, ' ');
  const turns = TURNS.exec(plain)?.[1];
  return turns === undefined ? plain : `open ${Number(turns)} turns`;
}

const isValve = (words: string): boolean => /^(?:open|shut|open \d+(?:\.\d+)? turns)$/.test(words);

/**
 * A valve is open, shut or so many turns open. A switch or a gear has words of its own: both that
 * it may have, in the order of the alphabet, so that the list tells nothing of which is wanted.
 */
export function choicesOf(closure: ClosureFacts | undefined, said: string | null): LookChoices {
  const known = [closure?.normal, closure?.workPosition, said].filter((x) => typeof x === 'string');
  const words = [...new Set(known.map(positionOf))];
  if (words.every(isValve)) return { choices: ['open', 'shut'], turns: true };
  const seen = new Set<string>();
  const own = known.filter((k) => !seen.has(positionOf(k)) && seen.add(positionOf(k)));
  // One word alone would tell what is wanted.
  const more = own.length < 2 ? ['off', 'on'].filter((w) => !seen.has(w)) : [];
  return { choices: [...own, ...more].sort().concat(ANOTHER), turns: false };
}
