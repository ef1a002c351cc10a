// Weighs a pump's readings against its limits, and names the reading that would settle a doubt.

import { type Belief, chances, type Verdict } from '../quantity/conformity.ts';
import { readQuantity } from '../quantity/quantity.ts';
import { weakestOf } from '../quantity/rests.ts';
import type { Problem, Source } from '../quantity/types.ts';
import type { Linear } from '../quantity/uncertainty.ts';
import { INPUTS } from './pump-figures.ts';
import { type OutputName, type PumpTestInput, UNITS } from './pump-model.ts';
import { gradeSource, grades } from './tables/iso9906.ts';

/** A pass is wrong in at most this share of the cases, and so is a fail. */
export const RISK = 0.05;

export type Requirement = {
  readonly of: OutputName;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly reading: number | null;
  readonly source: Source;
  /** Its tolerance already holds what instruments of its class add. */
  readonly byGrade: boolean;
};

const entered: Source = { kind: 'entered', by: 'the input' };

type Share = NonNullable<PumpTestInput['headTolerance']>;
const bandOf = (share: Share): readonly [number, number] =>
  Array.isArray(share) ? [share[0].value, share[1].value] : [-share.value, share.value];

export type Requirements =
  | { readonly ok: true; readonly list: readonly Requirement[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export function requirementsOf(input: PumpTestInput): Requirements {
  const { grade, curve } = input;
  const list: Requirement[] = [];
  const problems: Problem[] = [];
  const displaces = curve !== undefined && 'displacement' in curve;
  const add = (band: readonly [number, number], source: Source, byGrade: boolean) =>
    list.push({ of: 'deviation', lower: band[0], upper: band[1], reading: null, source, byGrade });
  if (typeof grade === 'string') add(grades[grade].head, gradeSource, true);
  const tolerances = typeof grade === 'object' ? grade : input;
  // A pump with a curve is held at its head, a displacement pump at its flow.
  const share = displaces ? tolerances.flowTolerance : tolerances.headTolerance;
  if (share !== undefined) add(bandOf(share), entered, false);
  (input.limits ?? []).forEach(({ of, lower, upper, reading = null }, at) => {
    const path = `limits/${at}`;
    const read = (bound: unknown, name: string): number | null => {
      if (bound === undefined) return null;
      const found = readQuantity(bound, UNITS[of], `${path}/${name}`);
      if (found.ok) return found.quantity.value;
      problems.push(...found.problems);
      return null;
    };
    const ends = { lower: read(lower, 'lower'), upper: read(upper, 'upper') };
    if (lower === undefined && upper === undefined) {
      const why = 'a limit has a lower or an upper end';
      problems.push({ path, got: null, expected: 'lower, upper, or both', why });
    }
    if (ends.lower !== null && ends.upper !== null && ends.lower > ends.upper) {
      const why = 'the lower limit is above the upper one';
      problems.push({ path, got: ends.lower, expected: `at most ${ends.upper}`, why });
    }
    if (reading !== null && reading >= input.readings.length) {
      const expected = `0 to ${input.readings.length - 1}`;
      problems.push({ path: `${path}/reading`, got: reading, expected, why: 'no such reading' });
    }
    list.push({ of, ...ends, reading, source: entered, byGrade: false });
  });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, list };
}

export type Judged = {
  readonly reading: number;
  readonly requirement: Requirement;
  readonly verdict: Verdict;
  /** Null: by the simple rule of a grade, without any uncertainty. */
  readonly chance: number | null;
  readonly linear: Linear;
};

export type Worked = Readonly<Record<OutputName, Linear | null>>;

const verdictOf = (chance: number): Verdict =>
  chance >= 1 - RISK ? 'pass' : chance <= RISK ? 'fail' : 'cannot tell';

/** Each requirement at each reading that settles it; what can't be weighed is left out. */
export function judge(list: readonly Requirement[], readings: readonly Worked[]): Judged[] {
  return readings.flatMap((worked, reading) =>
    list.flatMap((requirement): Judged[] => {
      if (requirement.reading !== null && requirement.reading !== reading) return [];
      const linear = worked[requirement.of];
      if (linear === null) return [];
      const { value: measured, u } = linear;
      const { lower, upper } = requirement;
      if (u === 0) {
        if (!requirement.byGrade) return [];
        const within =
          (lower === null || measured >= lower) && (upper === null || measured <= upper);
        return [{ reading, requirement, verdict: within ? 'pass' : 'fail', chance: null, linear }];
      }
      const belief: Belief = { kind: 'normal', measured, u, degreesOfFreedom: null };
      const chance = chances(belief, { lower, upper }).conforming;
      return [{ reading, requirement, verdict: verdictOf(chance), chance, linear }];
    }),
  );
}

export function together(judged: readonly Judged[]): Verdict | null {
  if (judged.length === 0) return null;
  if (judged.some(({ verdict }) => verdict === 'fail')) return 'fail';
  return judged.every(({ verdict }) => verdict === 'pass') ? 'pass' : 'cannot tell';
}

export const leastChance = (judged: readonly Judged[]): number | null => {
  const known = judged.flatMap(({ chance }) => (chance === null ? [] : [chance]));
  return known.length === 0 ? null : Math.min(...known);
};

const MEASURES: Readonly<Record<string, string>> = {
  givenHead: 'head',
  volume: 'flow',
  time: 'flow',
};

export type Settles = { readonly reading: number; readonly measure: string; readonly why: string };

/** The measure that adds most to the doubt of the least likely requirement. */
export function settledBy(judged: readonly Judged[]): Settles | null {
  const open = judged.filter(({ verdict }) => verdict === 'cannot tell');
  const [worst] = [...open].sort((a, b) => (a.chance ?? 1) - (b.chance ?? 1));
  if (worst === undefined) return null;
  const { parts, u, value } = worst.linear;
  const sizes = parts.map(Math.abs);
  const at = sizes.indexOf(Math.max(...sizes));
  const name = INPUTS[at] ?? 'speed';
  const measure = MEASURES[name] ?? name;
  const left = Math.sqrt(Math.max(0, u * u - (sizes[at] ?? 0) ** 2));
  const { lower, upper } = worst.requirement;
  const alone =
    left === 0 ||
    verdictOf(
      chances(
        { kind: 'normal', measured: value, u: left, degreesOfFreedom: null },
        { lower, upper },
      ).conforming,
    ) !== 'cannot tell';
  const share = Math.round(100 * ((sizes[at] ?? 0) / u) ** 2);
  const what = `reading ${worst.reading + 1}: ${measure} brings ${share} % of the doubt`;
  const why = alone
    ? `${what}; taken again with a better instrument it can settle this`
    : `${what}; read it better first, it may still not be enough`;
  return { reading: worst.reading, measure, why };
}

export const restsOn = (judged: readonly Judged[]): string | null =>
  weakestOf(judged.map(({ requirement }) => requirement.source));
