// Whether a measured figure is within its limits: chance, guard band and verdict (JCGM 106).

import { normalAbove, normalFor, studentAbove, studentFor } from './distribution.ts';

/** What is believed of the true value: its spread about the measured one. */
export type Belief = {
  readonly kind: 'normal' | 'rectangular';
  readonly measured: number;
  /** Standard uncertainty. */
  readonly u: number;
  /** Null: as many as one likes. */
  readonly degreesOfFreedom: number | null;
};

export type Limits = { readonly lower: number | null; readonly upper: number | null };

const ROOT3 = Math.sqrt(3);

/** The chance to be more than so many standard uncertainties above the measured figure. */
export function above(factor: number, { kind, degreesOfFreedom }: Omit<Belief, 'measured' | 'u'>) {
  if (kind === 'rectangular') return Math.min(1, Math.max(0, (1 - factor / ROOT3) / 2));
  return degreesOfFreedom === null ? normalAbove(factor) : studentAbove(factor, degreesOfFreedom);
}

/** How many standard uncertainties leave this chance above. */
export function factorFor(risk: number, belief: Omit<Belief, 'measured' | 'u'>): number {
  if (belief.kind === 'rectangular') return ROOT3 * (1 - 2 * risk);
  return belief.degreesOfFreedom === null
    ? normalFor(risk)
    : studentFor(risk, belief.degreesOfFreedom);
}

function beyond(distance: number, belief: Belief): number {
  if (belief.u === 0) return distance < 0 ? 1 : 0;
  return above(distance / belief.u, belief);
}

export type Chances = {
  readonly below: number;
  readonly above: number;
  readonly conforming: number;
};

export function chances(belief: Belief, { lower, upper }: Limits): Chances {
  const low = lower === null ? 0 : beyond(belief.measured - lower, belief);
  const high = upper === null ? 0 : beyond(upper - belief.measured, belief);
  // From the side that is small, so that digits near nought and near one are kept.
  const conforming =
    upper === null ? inside(lower, belief, 1) : lower === null ? inside(upper, belief, -1) : null;
  return { below: low, above: high, conforming: conforming ?? Math.max(0, 1 - low - high) };
}

const inside = (limit: number | null, belief: Belief, sign: number): number => {
  if (limit === null) return 1;
  const distance = sign * (belief.measured - limit);
  return belief.u === 0 ? (distance < 0 ? 0 : 1) : above(-distance / belief.u, belief);
};

export const RULES = ['simple', 'guarded-accept', 'guarded-reject'] as const;
export type Rule = (typeof RULES)[number];
export const VERDICTS = ['pass', 'fail', 'cannot tell'] as const;
export type Verdict = (typeof VERDICTS)[number];

export type Decision = {
  readonly verdict: Verdict;
  /** Where a pass ends, or under `guarded-reject` where a fail begins. */
  readonly accept: Limits;
  readonly guardBand: number;
  /** The chance that the word is wrong for a reading that stands at that limit. */
  readonly riskAtLimit: number;
  /** A pass is out of reach: the guard bands meet, or the other limit adds too much. */
  readonly noRoom: boolean;
};

const within = (value: number, { lower, upper }: Limits): boolean =>
  (lower === null || value >= lower) && (upper === null || value <= upper);

const moved = ({ lower, upper }: Limits, by: number): Limits => ({
  lower: lower === null ? null : lower + by,
  upper: upper === null ? null : upper - by,
});

const failing = (belief: Belief, limits: Limits): number => {
  const { below, above: high } = chances(belief, limits);
  return Math.min(1, below + high);
};

/** The verdict by a rule with its guard factor (so many standard uncertainties; 0 for `simple`). */
export function decideBy(rule: Rule, belief: Belief, limits: Limits, factor: number): Decision {
  const guardBand = rule === 'simple' ? 0 : factor * belief.u;
  const bare = within(belief.measured, limits);
  if (rule !== 'guarded-accept') {
    const accept = moved(limits, -guardBand);
    const clearly = rule === 'simple' ? !bare : !within(belief.measured, accept);
    const verdict = bare ? 'pass' : clearly ? 'fail' : 'cannot tell';
    const at = { ...belief, measured: accept.upper ?? accept.lower ?? belief.measured };
    const risk = rule === 'simple' ? failing(at, limits) : 1 - failing(at, limits);
    // With no spread the reading is the value, and the word at the limit is right.
    const riskAtLimit = belief.u === 0 ? 0 : risk;
    return { verdict, accept, guardBand, riskAtLimit, noRoom: false };
  }
  const accept = moved(limits, guardBand);
  const at = { ...belief, measured: accept.upper ?? accept.lower ?? belief.measured };
  const riskAtLimit = belief.u === 0 ? 0 : failing(at, limits);
  // What is promised counts both limits: near one of them the other may add to the risk.
  const promised = above(factor, belief);
  const crossed = accept.lower !== null && accept.upper !== null && accept.lower > accept.upper;
  const kept = belief.u === 0 || failing(belief, limits) <= promised * (1 + 1e-9);
  const passes = within(belief.measured, accept) && kept;
  const verdict = passes ? 'pass' : bare ? 'cannot tell' : 'fail';
  const { lower, upper } = limits;
  const middle = lower === null || upper === null ? null : (lower + upper) / 2;
  const best = middle === null ? 0 : failing({ ...belief, measured: middle }, limits);
  const noRoom = belief.u > 0 && (crossed || best > promised * (1 + 1e-9));
  return { verdict, accept, guardBand, riskAtLimit, noRoom };
}
