// Small random machines from a seed, for tests that compare with trying everything.

import type { Demand, FullInput } from './model.ts';
import { below, randomFrom } from './seeded.ts';

/** Off, aside, alternatives, circles, spared joints, unknown minutes, parts on parts. */
export function smallMachine(seed: number): FullInput {
  const random = randomFrom(seed);
  const chance = (share: number) => random() < share;
  const partCount = 2 + below(random, 4);
  const jointCount = 1 + below(random, 6);
  const part = () => `p${below(random, partCount)}`;
  const demand = (): Demand => ({ part: part(), as: chance(0.6) ? 'off' : 'aside' });
  const some = <T>(most: number, make: () => T): T[] =>
    Array.from({ length: below(random, most + 1) }, make);
  const minutes = () => (chance(0.1) ? null : below(random, 9));
  const parts: Record<string, FullInput['parts'][string]> = {};
  for (let at = 0; at < partCount; at += 1) {
    const ways = Array.from({ length: 1 + below(random, 3) }, (_, n) => ({
      id: `w${n}`,
      gives: chance(0.65) ? ('off' as const) : ('aside' as const),
      joints: [...new Set(some(2, () => `j${below(random, jointCount)}`))],
      clear: some(chance(0.5) ? 2 : 1, demand).filter(({ part: other }) => other !== `p${at}`),
      minutes: minutes(),
    }));
    parts[`p${at}`] = {
      ...(chance(0.05) ? {} : { ways }),
      ...(chance(0.05) ? { stays: true } : {}),
      ...(at > 0 && chance(0.15) ? { on: `p${below(random, at)}` } : {}),
    };
  }
  const joints: Record<string, FullInput['joints'][string]> = {};
  for (let at = 0; at < jointCount; at += 1) {
    const accesses = Array.from({ length: chance(0.05) ? 0 : 1 + below(random, 3) }, (_, n) => ({
      id: `a${n}`,
      clear: some(chance(0.4) ? 2 : 1, demand),
      tool: chance(0.1) ? null : `tool ${below(random, 3)}`,
      place: chance(0.1) ? null : `place ${below(random, 3)}`,
    }));
    joints[`j${at}`] = {
      undoMinutes: minutes(),
      makeMinutes: minutes(),
      ...(chance(0.1) ? {} : { accesses }),
      ...(chance(0.1) ? { doNotDisturb: true } : {}),
      ...(chance(0.15) ? { medium: 'fuel' } : chance(0.2) ? { medium: 'sea water' } : {}),
    };
  }
  const already = chance(0.2)
    ? {
        off: some(1, part),
        aside: some(1, part),
        joints: some(1, () => `j${below(random, jointCount)}`),
      }
    : undefined;
  return {
    parts,
    joints,
    targets: [demand(), ...(chance(0.3) ? [demand()] : [])],
    ...(already === undefined ? {} : { already }),
    ...(chance(0.2) ? { unknownMinutes: below(random, 20) } : {}),
  };
}
