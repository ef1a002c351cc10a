// How a joint is made up: its holes, its tightening rounds, its order, in words and counts.

import type { Fastener, Joint } from '../plant/schema.ts';
import type { Machine } from '../plant/types.ts';
import { boltOrder, layoutPoints, type Point } from '../tightening/pattern.ts';
import type { Speech } from '../words/say.ts';

export type JointShape = {
  readonly fasteners: readonly {
    readonly id: string;
    readonly what: string;
    readonly count: number;
    readonly holes: readonly string[];
  }[];
  /** Hole labels in their natural order, and in tightening order. */
  readonly holes: readonly string[];
  readonly order: readonly string[];
  readonly rounds: readonly string[];
  readonly points: readonly Point[] | null;
  readonly threaded: boolean;
  /** In words: `4 nuts M12 and 2 bolts M10`. */
  readonly words: string;
};

const PLURALS: Record<Fastener['kind'], [string, string]> = {
  bolt: ['bolt', 'bolts'],
  'cap screw': ['cap screw', 'cap screws'],
  'stud and nut': ['nut', 'nuts'],
  nut: ['nut', 'nuts'],
  'hose clip': ['hose clip', 'hose clips'],
  clamp: ['clamp', 'clamps'],
  connector: ['connector', 'connectors'],
  'hose end': ['hose end', 'hose ends'],
  'union nut': ['union nut', 'union nuts'],
  plug: ['plug', 'plugs'],
};

const THREADED: readonly Fastener['kind'][] = ['bolt', 'cap screw', 'stud and nut', 'nut'];

export const isThreaded = (fastener: Fastener): boolean => THREADED.includes(fastener.kind);

export const fastenerWords = (fastener: Fastener, say: Speech['say']): string => {
  const [one, many] = PLURALS[fastener.kind];
  const what = fastener.count === 1 ? one : many;
  return fastener.thread === undefined ? what : say('ofThread', what, fastener.thread);
};

export const joined = (words: readonly string[], say: Speech['say']): string =>
  words.length < 2 ? (words[0] ?? '') : say('and', words);

export const jointShape = (machine: Machine, joint: Joint, say: Speech['say']): JointShape => {
  let next = 1;
  const fasteners = Object.entries(joint.fasteners ?? {}).map(([id, f]) => {
    const holes = Array.from({ length: f.count }, (_, i) => String(f.holes?.[i] ?? next + i));
    next += f.count;
    return { id, what: fastenerWords(f, say), count: f.count, holes, f };
  });
  const holes = inNumberOrder(fasteners.flatMap((f) => f.holes));
  const threaded = fasteners.some((row) => isThreaded(row.f));
  const points = holes.length === 0 ? null : layoutPoints(joint.layout, holes.length);
  const rounds = roundsOf(machine, joint, holes.length, threaded);
  return {
    fasteners: fasteners.map(({ f: _, ...row }) => row),
    holes,
    order: tighteningOrder(joint, holes, points),
    rounds,
    points,
    threaded,
    words: joined(
      fasteners.map((f) => say('counted', f.count, f.what)),
      say,
    ),
  };
};

/**
 * Layout and cross order count holes round the joint, not fastener by fastener: studs in 1, 2, 4, 5
 * and bolts in 3, 6 are holes 1 to 6. Labels that are no numbers keep the order they were given in.
 */
const inNumberOrder = (holes: readonly string[]): string[] =>
  holes.every((hole) => /^\d+$/.test(hole))
    ? [...holes].sort((a, b) => Number(a) - Number(b))
    : [...holes];

/** Whether any threaded fastener of the joint has a value in force. */
export const hasTorque = (machine: Machine, joint: Joint): boolean =>
  Object.values(joint.fasteners ?? {}).some(
    (f) =>
      isThreaded(f) && f.tightening !== undefined && machine.values[f.tightening] !== undefined,
  );

/**
 * Rounds follow the passes of PCC-1 as publicly stated (30, 60, 100 %, once more in order) from
 * four bolts up; two or three are started by hand and brought to the value together.
 */
const roundsOf = (machine: Machine, joint: Joint, n: number, threaded: boolean): string[] => {
  const union = Object.values(joint.fasteners ?? {}).some((f) => f.kind === 'union nut');
  if (n === 0) return ['made'];
  if (!threaded) return union ? ['hand', 'made'] : ['made'];
  const sealed = Object.keys(joint.seals ?? {}).length > 0;
  const byHandFirst = n > 1 || sealed ? ['hand'] : [];
  if (!hasTorque(machine, joint)) return [...byHandFirst, 'tight'];
  if (n >= 4) return ['hand', '30 %', '60 %', '100 %', 'once more in order'];
  return [...byHandFirst, '100 %'];
};

const tighteningOrder = (
  joint: Joint,
  holes: readonly string[],
  points: readonly Point[] | null,
): string[] => {
  if (holes.length < 4 || points === null || joint.layout === undefined) return [...holes];
  return boltOrder(joint.layout, holes.length)?.map((k) => holes[k - 1] ?? String(k)) ?? [...holes];
};
