// The friction of a bolt as a band: lowest, nominal, highest, and what torque makes of each.

import type { Problem, Source } from '../quantity/types.ts';
import type { Bearing } from './bearing.ts';
import type { TighteningInput } from './model.ts';
import { entered } from './sheet.ts';
import { type FrictionRange, frictionRange } from './tables/friction-ranges.ts';
import type { Thread } from './thread.ts';
import { frictionOfNutFactor, type TorqueParts, torquePerForceMm, torsionRatio } from './torque.ts';

/** One friction; null what the input does not settle. */
export type End = {
  readonly thread: number | null;
  readonly head: number | null;
  /** Torque for each newton of preload, mm. */
  readonly perForceMm: number | null;
  /** Stress with torsion over stress without. */
  readonly torsion: number | null;
};

export type Band = {
  readonly kind: 'none' | 'given' | 'surface' | 'nut factor';
  readonly low: End;
  readonly nominal: End;
  readonly high: End;
  readonly range: FrictionRange | null;
  readonly parts: TorqueParts | null;
  readonly source: Source;
  readonly problems: readonly Problem[];
};

const UNKNOWN: End = { thread: null, head: null, perForceMm: null, torsion: null };

export const partsOf = (thread: Thread, bearing: Bearing): TorqueParts | null =>
  thread.pitchMm === null || thread.pitchDiameterMm === null || bearing.meanMm === null
    ? null
    : {
        pitchMm: thread.pitchMm,
        pitchDiameterMm: thread.pitchDiameterMm,
        bearingDiameterMm: bearing.meanMm,
      };

function torsionOf(thread: Thread, friction: number | null): number | null {
  const { pitchMm, pitchDiameterMm, stressAreaMm2 } = thread;
  if (friction === null || pitchMm === null || pitchDiameterMm === null) return null;
  return stressAreaMm2 === null
    ? null
    : torsionRatio(pitchMm, pitchDiameterMm, stressAreaMm2, friction);
}

function endOf(
  bolt: Thread,
  parts: TorqueParts | null,
  thread: number | null,
  head: number | null,
): End {
  const perForceMm =
    parts === null || thread === null || head === null
      ? null
      : torquePerForceMm(parts, thread, head);
  return { thread, head, perForceMm, torsion: torsionOf(bolt, thread) };
}

function ofNutFactor(nutFactor: number, thread: Thread, parts: TorqueParts | null): Band {
  const perForceMm = nutFactor * thread.diameterMm;
  const least = thread.pitchMm === null ? 0 : (0.16 * thread.pitchMm) / thread.diameterMm;
  const problems: Problem[] =
    nutFactor < least
      ? [
          {
            path: 'nutFactor',
            got: nutFactor,
            expected: `at least ${least.toPrecision(3)}`,
            why: 'the slope of this thread alone takes more torque than that',
          },
        ]
      : [];
  const both =
    parts === null ? null : Math.max(0, frictionOfNutFactor(parts, nutFactor, thread.diameterMm));
  const end: End = { thread: both, head: both, perForceMm, torsion: torsionOf(thread, both) };
  const ends = { low: end, nominal: end, high: end };
  return { kind: 'nut factor', ...ends, range: null, parts, source: entered, problems };
}

export function bandOf(
  input: TighteningInput,
  thread: Thread,
  bearing: Bearing,
  austenitic: boolean,
): Band {
  const parts = partsOf(thread, bearing);
  const plain = { range: null, parts, source: entered, problems: [] };
  if (input.nutFactor !== undefined) return ofNutFactor(input.nutFactor.value, thread, parts);
  if (input.surface !== undefined) {
    const range = frictionRange(input.surface, austenitic);
    const at = (friction: number) => endOf(thread, parts, friction, friction);
    return {
      ...plain,
      kind: 'surface',
      low: at(range.low),
      nominal: at((range.low + range.high) / 2),
      high: at(range.high),
      range,
      source: range.source,
    };
  }
  const threadFriction = input.frictionThread?.value ?? null;
  const headFriction = input.frictionHead?.value ?? null;
  if (threadFriction === null && headFriction === null) {
    return { ...plain, kind: 'none', low: UNKNOWN, nominal: UNKNOWN, high: UNKNOWN };
  }
  const end = endOf(thread, parts, threadFriction, headFriction);
  return { ...plain, kind: 'given', low: end, nominal: end, high: end };
}
