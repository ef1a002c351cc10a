// Numbers by chance from a given seed: the same seed, the same numbers, everywhere.

export type Random = () => number;

/** A seeded generator of numbers from 0 to 1 (mulberry32). */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

export const below = (random: Random, count: number): number => Math.floor(random() * count);
