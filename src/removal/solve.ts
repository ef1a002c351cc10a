// The cheapest plan and its bound: reduction, quick plan, landmarks, then the solver if still open.

import { limits } from '../limits.ts';
import { derivable, type Graph, type Rule } from './graph.ts';
import { costOf, type Indexed, indexed, planAlong, planWithin, quickPlan } from './heuristic.ts';
import { landmarkBound } from './landmarks.ts';
import type { Late, ProgramLimits, Solver } from './model.ts';
import { chosenRules, programOf } from './program.ts';
import { reduce, trim } from './reduce.ts';

export type Solved = {
  /** What a person does, in one order that works. */
  readonly actions: readonly number[];
  readonly minutes: number;
  readonly flagged: number;
  /** Of the minutes. */
  readonly bound: number;
  readonly proven: boolean;
};

export type Tools = {
  readonly solver: Solver;
  readonly limits: ProgramLimits;
  readonly late: Late;
};

const TOLERANCE = 1e-6;

/** Another round pays only when this share of the rules or less is left. */
const FEW_LEFT_OUT = 0.97;

export type TwoLevel = {
  readonly plan: Solved;
  /** The cheapest plan when no joint is spared; null when that changes nothing. */
  readonly unspared: Solved | null;
};

/** Fewest flagged joints first, then minutes; null when a target can't be reached. */
export async function solveTwoLevel(graph: Graph, tools: Tools): Promise<TwoLevel | null> {
  const whole = trim(graph);
  if (whole === null) return null;
  if (!whole.rules.some((rule) => rule.flagged > 0)) {
    return { plan: await cheapest(whole, 0, null, tools), unspared: null };
  }
  const spared = { ...whole, rules: whole.rules.filter((rule) => rule.flagged === 0) };
  const holds = derivable(spared);
  if (spared.targets.every((target) => holds[target])) {
    const plan = await cheapest(spared, 0, null, tools);
    return { plan, unspared: await cheapest(whole, 0, plan, tools) };
  }
  // One flagged joint weighs more than all minutes together, so both levels are one sum.
  const weight = 1 + Math.ceil(whole.rules.reduce((sum, rule) => sum + rule.cost, 0));
  const plan = await cheapest(whole, weight, null, tools);
  const unspared = await cheapest(whole, 0, plan, tools);
  // What both bounds say of the minutes is true; the greater says more.
  const bound = plan.proven
    ? plan.bound
    : Math.min(plan.minutes, Math.max(plan.bound, unspared.bound));
  return { plan: { ...plan, bound }, unspared };
}

/** A plan as what is done and what it costs; it outlives the graph it was found in. */
type Found = {
  readonly actions: readonly number[];
  readonly minutes: number;
  readonly flagged: number;
};

/** A graph narrowed to the rules that a better plan than `best` may use; null: there is none. */
type Narrowed = {
  readonly best: Found;
  readonly bound: number;
  readonly rest: {
    readonly list: Indexed;
    readonly cost: Float64Array;
    readonly mandatory: readonly number[];
    readonly landmarks: readonly (readonly number[])[];
    readonly start: readonly number[];
  } | null;
};

/** The graph must be reachable: `trim` has said so. `known` is a plan to be beaten. */
async function cheapest(
  given: Graph,
  weight: number,
  known: Found | null,
  tools: Tools,
): Promise<Solved> {
  if (known !== null && tools.late()) return { ...known, bound: 0, proven: false };
  const whole = given.rules.every(({ cost }) => Number.isInteger(cost));
  const narrowed = narrow(given, weight, known, { whole, late: tools.late });
  const { best, rest } = narrowed;
  if (rest === null) return solved(best, weight, weigh(best, weight));
  if (tools.late()) return solved(best, weight, narrowed.bound);
  const program = programOf(rest.list, rest.cost, {
    mandatory: rest.mandatory,
    landmarks: rest.landmarks,
    start: rest.start,
  });
  const answer = await tools.solver(program, tools.limits);
  const chosen = answer.values === null ? null : chosenRules(rest.list, answer.values);
  // The solver's figures are rounded: its set is worked out anew.
  const theirs = chosen === null ? null : planWithin(rest.list, chosen, rest.cost);
  const found = theirs === null ? best : foundOf(rest.list, theirs);
  const plan = weigh(found, weight) < weigh(best, weight) ? found : best;
  const told = answer.bound ?? 0;
  const raised = whole ? Math.ceil(told - TOLERANCE) : told;
  return solved(plan, weight, Math.max(narrowed.bound, raised));
}

const weigh = (one: Pick<Found, 'minutes' | 'flagged'>, weight: number): number =>
  one.flagged * weight + one.minutes;

function solved(plan: Found, weight: number, bound: number): Solved {
  const proven = weigh(plan, weight) <= bound + TOLERANCE;
  const minutes = Math.max(0, Math.min(plan.minutes, bound - weight * plan.flagged));
  return { ...plan, bound: proven ? plan.minutes : minutes, proven };
}

function foundOf(list: Indexed, plan: readonly number[]): Found {
  const rules = plan.map((at) => list.rules[at]).filter((rule): rule is Rule => rule !== undefined);
  return {
    actions: rules.flatMap((rule) => rule.actions),
    minutes: rules.reduce((sum, rule) => sum + rule.cost, 0),
    flagged: rules.reduce((sum, rule) => sum + rule.flagged, 0),
  };
}

/** Quick plans and landmarks in turn, each round leaving out rules that no better plan can use. */
function narrow(
  given: Graph,
  weight: number,
  known: Found | null,
  { whole, late }: { readonly whole: boolean; readonly late: Late },
): Narrowed {
  const step = whole ? 1 : TOLERANCE;
  let best = known;
  let bound = 0;
  let graph: Graph = given;
  for (let round = 0; ; round += 1) {
    const reduced = reduce(graph, late);
    if (reduced === null) {
      if (best === null) throw new Error('a reachable graph was found unreachable');
      return { best, bound: weigh(best, weight), rest: null };
    }
    const { mandatory } = reduced;
    const list = indexed(reduced.graph);
    const cost = Float64Array.from(list.rules, (rule) => rule.flagged * weight + rule.cost);
    const start = quickPlan(list, cost, late);
    if (start === null) throw new Error('a reachable graph has no plan');
    const { bound: paid, sets, through, unpaid } = landmarkBound(list, mandatory, cost, late);
    const along = late() ? start : planAlong(list, cost, unpaid, late);
    for (const found of [foundOf(list, start), foundOf(list, along)]) {
      if (best === null || weigh(found, weight) < weigh(best, weight)) best = found;
    }
    if (best === null) throw new Error('no plan came of a reachable graph');
    const most = weigh(best, weight);
    // Plans left out before cost as much as the best, so it caps what the rest proves.
    bound = Math.min(most, Math.max(bound, whole ? Math.ceil(paid - TOLERANCE) : paid));
    if (most <= bound + TOLERANCE) return { best, bound: most, rest: null };
    const rules = list.rules.filter((_, at) => (through[at] ?? 0) <= most - step + TOLERANCE);
    const few = rules.length > FEW_LEFT_OUT * list.rules.length;
    if (few || round >= limits.removal.narrowingRounds || late()) {
      return {
        best,
        bound,
        rest: {
          list,
          cost,
          mandatory,
          landmarks: sets,
          start: costOf(along, cost) < costOf(start, cost) ? along : start,
        },
      };
    }
    graph = { ...reduced.graph, rules };
  }
}
