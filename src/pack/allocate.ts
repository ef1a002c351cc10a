// Shares out what is held among those who need it, so that as much as can be met is met.

import { limits } from '../limits.ts';

export type Want = {
  readonly count: number;
  /** Things that do for it, the one to use first standing first. */
  readonly may: readonly string[];
};

/**
 * By augmenting paths: one unit at a time is given, and where all of a thing is gone somebody who
 * can take another gives up a unit. What comes out meets as many units as any sharing could.
 */
export function allocate(
  wants: readonly Want[],
  stock: ReadonlyMap<string, number>,
): readonly ReadonlyMap<string, number>[] {
  const given = wants.map(() => new Map<string, number>());
  const left = new Map(stock);
  let rounds = 0;
  const give = (want: number, tried: Set<string>): boolean => {
    for (const thing of wants[want]?.may ?? []) {
      if (tried.has(thing)) continue;
      tried.add(thing);
      rounds += 1;
      if (rounds > limits.stores.fittingRounds) return false;
      const free = left.get(thing) ?? 0;
      if (free >= 1) {
        left.set(thing, free - 1);
        return take(want, thing);
      }
      for (let other = 0; other < wants.length; other += 1) {
        const has = given[other]?.get(thing) ?? 0;
        if (other === want || has === 0 || !give(other, tried)) continue;
        given[other]?.set(thing, has - 1);
        return take(want, thing);
      }
    }
    return false;
  };
  const take = (want: number, thing: string): true => {
    const own = given[want];
    own?.set(thing, (own.get(thing) ?? 0) + 1);
    return true;
  };
  wants.forEach(({ count }, at) => {
    for (let unit = 0; unit < count; unit += 1) if (!give(at, new Set())) break;
  });
  return given.map((one) => new Map([...one].filter(([, n]) => n > 0)));
}
