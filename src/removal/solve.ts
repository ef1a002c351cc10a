// The cheapest plan and its bound: reduction, quick plan, landmarks, then the solver if still open.

import type { Graph, Rule } from './graph.ts';
import { derivable } from './graph.ts';
import { costOf, type Indexed, indexed, planWithin, quickPlan } from './heuristic.ts';
import { landmarkBound } from './landmarks.ts';
import type { ProgramLimits, Solver, SolverAnswer } from './model.ts';
import { chosenRules, programOf } from './program.ts';
import { reduce } from './reduce.ts';

export type Solved = {
  /** What a person does, in one order that works. */
  readonly actions: readonly number[];
  readonly minutes: number;
  readonly flagged: number;
  /** Of what was minimised. */
  readonly bound: number;
  readonly proven: boolean;
};

export type Tools = { readonly solver: Solver; readonly limits: ProgramLimits };

const TOLERANCE = 1e-6;

type Question = {
  readonly by: 'minutes' | 'flagged';
  /** Where minutes are minimised: at most this many flagged joints. */
  readonly maxFlagged: number | null;
};

export type TwoLevel = {
  readonly plan: Solved;
  /** The cheapest plan when no joint is spared; null when that changes nothing. */
  readonly unspared: Solved | null;
};

/** Fewest flagged joints first, then minutes; null when a target can't be reached. */
export async function solveTwoLevel(graph: Graph, tools: Tools): Promise<TwoLevel | null> {
  const reduced = reduce(graph);
  if (reduced === null) return null;
  const whole = reduced.graph;
  const byMinutes = { by: 'minutes', maxFlagged: null } as const;
  if (!whole.rules.some((rule) => rule.flagged > 0)) {
    return { plan: await cheapest(whole, byMinutes, tools), unspared: null };
  }
  const spared = { ...whole, rules: whole.rules.filter((rule) => rule.flagged === 0) };
  const holds = derivable(spared);
  if (spared.targets.every((target) => holds[target])) {
    const plan = await cheapest(spared, byMinutes, tools);
    return { plan, unspared: await cheapest(whole, byMinutes, tools) };
  }
  const fewest = await cheapest(whole, { by: 'flagged', maxFlagged: null }, tools);
  const atMost = { by: 'minutes', maxFlagged: fewest.flagged } as const;
  const plan = await cheapest(whole, atMost, tools);
  const unspared = await cheapest(whole, byMinutes, tools);
  if (fewest.proven) return { plan, unspared };
  // With the count itself unproven only a bound over every plan is safe.
  const bound = Math.min(plan.minutes, unspared.bound);
  return { plan: { ...plan, bound, proven: false }, unspared };
}

/** The graph must be reachable: `reduce` has said so. */
async function cheapest(given: Graph, question: Question, tools: Tools): Promise<Solved> {
  const reduced = reduce(given);
  if (reduced === null) throw new Error('a reachable graph was found unreachable');
  const { graph, mandatory } = reduced;
  const list = indexed(graph);
  const cost = Float64Array.from(graph.rules, (rule) => rule[costField(question)]);
  // Weighing a flagged joint above all minutes together lets the quick parts see both levels.
  const weight = 1 + Math.ceil(graph.rules.reduce((sum, rule) => sum + rule.cost, 0));
  const level = question.maxFlagged;
  const both =
    level === null
      ? cost
      : Float64Array.from(graph.rules, (rule) => rule.flagged * weight + rule.cost);
  const quick = quickPlan(list, both);
  if (quick === null) throw new Error('a reachable graph has no plan');
  const marks = landmarkBound(list, mandatory, both);
  const whole = cost.every((value) => Number.isInteger(value));
  const raise = (bound: number) => (whole ? Math.ceil(bound - TOLERANCE) : bound);
  const bound = raise(level === null ? marks.bound : marks.bound - weight * level);
  const found = { list, cost, plan: quick };
  const allowed = level === null || flaggedIn(list, quick) <= level;
  if (allowed && costOf(quick, cost) <= bound + TOLERANCE) return solved(found, bound, true);
  const program = programOf(graph, cost, {
    mandatory,
    landmarks: marks.sets,
    maxFlagged: level,
    start: quick,
  });
  const answer = await tools.solver(program, tools.limits);
  return merged(found, answer, bound, raise, level);
}

const costField = (question: Question) => (question.by === 'minutes' ? 'cost' : 'flagged');

type Found = {
  readonly list: Indexed;
  readonly cost: Float64Array;
  readonly plan: readonly number[];
};

function flaggedIn(list: Indexed, plan: readonly number[]): number {
  return plan.reduce((sum, at) => sum + (list.rules[at]?.flagged ?? 0), 0);
}

/** The better of the quick plan and the solver's, the solver's worked out anew from its set. */
function merged(
  found: Found,
  answer: SolverAnswer,
  ownBound: number,
  raise: (bound: number) => number,
  level: number | null,
): Solved {
  const { list, cost } = found;
  const chosen = answer.values === null ? null : chosenRules(list, answer.values);
  const theirs = chosen === null ? null : planWithin(list, chosen, cost);
  const fits = (plan: readonly number[] | null): plan is readonly number[] =>
    plan !== null && (level === null || flaggedIn(list, plan) <= level);
  const candidates = [found.plan, theirs].filter(fits);
  const best = candidates.sort((a, b) => costOf(a, cost) - costOf(b, cost))[0] ?? found.plan;
  const bound = Math.max(ownBound, answer.bound === null ? 0 : raise(answer.bound));
  const value = costOf(best, cost);
  const proven = fits(best) && value <= bound + TOLERANCE;
  return solved({ ...found, plan: best }, Math.min(bound, value), proven);
}

function solved({ list, cost, plan }: Found, bound: number, proven: boolean): Solved {
  const rules = plan.map((at) => list.rules[at]).filter((rule): rule is Rule => rule !== undefined);
  const value = costOf(plan, cost);
  return {
    actions: rules.flatMap((rule) => rule.actions),
    minutes: rules.reduce((sum, rule) => sum + rule.cost, 0),
    flagged: rules.reduce((sum, rule) => sum + rule.flagged, 0),
    bound: proven ? value : Math.max(0, bound),
    proven,
  };
}
