// Generated plants for the bench: layered with 2 % back arcs, and cyclic; the seed says it all.

import type { Demand, FullInput } from '../src/removal/model.ts';
import { below, type Random, randomFrom } from '../src/removal/seeded.ts';

export const FAMILIES = ['layered', 'cyclic'] as const;
export type Family = (typeof FAMILIES)[number];

/** How deep things stand in one another's way. */
const LAYERS = 10;
const BACK_ARCS = 0.02;

/** Which part may stand in the way of `part`; null: nothing does. */
type InTheWay = (part: number) => number | null;

function layered(random: Random, count: number): InTheWay {
  const width = Math.ceil(count / LAYERS);
  return (part) => {
    const layer = Math.floor(part / width);
    if (random() < BACK_ARCS) {
      const later = (layer + 1) * width;
      return later >= count ? null : later + below(random, count - later);
    }
    if (layer === 0) return null;
    // Mostly the layer before, sometimes one before that.
    const before = Math.max(0, layer - 1 - (random() < 0.2 ? 1 + below(random, 3) : 0));
    const near = (part % width) - 4 + below(random, 9);
    return before * width + ((near + width) % width);
  };
}

function cyclic(random: Random, count: number): InTheWay {
  return (part) => {
    const other = (part + count + below(random, 41) - 20) % count;
    return other === part ? null : other;
  };
}

/** One in so many parts of the cyclic family can be reached from outside. */
const OUTSIDE = 30;

export function generatedPlant(family: Family, count: number, seed: number): FullInput {
  const random = randomFrom(seed * 7_919 + count);
  const inTheWay = family === 'layered' ? layered(random, count) : cyclic(random, count);
  const demands = (part: number, least: number, most: number): Demand[] => {
    if (family === 'cyclic' && part % OUTSIDE === 0) return [];
    const parts = new Set<number>();
    const wanted = least + below(random, most - least + 1);
    for (let n = 0; n < wanted; n += 1) {
      const other = inTheWay(part);
      if (other !== null && other !== part) parts.add(other);
    }
    return [...parts].map((other) => ({
      part: `p${other}`,
      as: random() < 0.7 ? 'off' : 'aside',
    }));
  };
  const parts: Record<string, FullInput['parts'][string]> = {};
  const joints: Record<string, FullInput['joints'][string]> = {};
  for (let part = 0; part < count; part += 1) {
    const own = [`j${part}a`, `j${part}b`];
    for (const joint of own) joints[joint] = jointOf(random, () => demands(part, 0, 1));
    const more = family === 'cyclic' ? 1 : 0;
    const ways = Array.from({ length: 1 + more + below(random, 3) }, (_, n) => ({
      id: `w${n}`,
      gives: n > 0 && random() < 0.3 ? ('aside' as const) : ('off' as const),
      joints: random() < 0.5 ? own : [own[below(random, 2)] ?? ''],
      clear: demands(part, 1, 2),
      minutes: 1 + below(random, 20),
    }));
    parts[`p${part}`] = { ways };
  }
  const targets = [1, 2].map((n) => ({ part: `p${count - n * 7}`, as: 'off' as const }));
  return { parts, joints, targets };
}

function jointOf(random: Random, clear: () => Demand[]): FullInput['joints'][string] {
  const accesses = Array.from({ length: 1 + below(random, 2) }, (_, n) => ({
    id: `a${n}`,
    clear: random() < 0.3 ? clear() : [],
    tool: `tool ${below(random, 8)}`,
    place: `place ${below(random, 12)}`,
  }));
  return {
    undoMinutes: 1 + below(random, 8),
    makeMinutes: 1 + below(random, 12),
    accesses,
    ...(random() < 0.02 ? { medium: 'fuel' } : {}),
  };
}
