// What comes off, in what order, to free a part: exact where a bound says so, else with its gap.

import { limits } from '../limits.ts';
import { heard } from '../words/heard.ts';
import type { Sentence } from '../words/say.ts';
import { type ChosenSet, orderChosen } from './chosen.ts';
import { graphOf, type MachineGraph, plannable } from './graph.ts';
import {
  type Late,
  type Machine,
  machineOf,
  NEVER_LATE,
  type ProgramLimits,
  plainMachine,
  type RemovalInput,
  type RemovalPlan,
  type RemovalResult,
  type Solver,
} from './model.ts';
import { cautionsOf, minutesOf, stepsInWords } from './result.ts';
import { removalSequence } from './sequence.ts';
import { type Solved, solveTwoLevel, type Tools, type TwoLevel } from './solve.ts';

/** The input must be free of problems (`inputProblems`). */
export async function removal(
  input: RemovalInput,
  solver: Solver,
  given?: ProgramLimits,
  late: Late = NEVER_LATE,
): Promise<RemovalResult> {
  if ('time' in input) return removalSequence(input);
  const { value: machine, said } = heard(() =>
    'cost' in input ? plainMachine(input.cost, input.blockers, input.targets) : machineOf(input),
  );
  const nodes = given?.nodes ?? input.limits?.nodes ?? limits.removal.nodesInPack;
  return removalOf(machine, said, { solver, limits: { nodes }, late });
}

const saidOf = new WeakMap<RemovalPlan, readonly Sentence[]>();

/** What the sentences of a plan say, for whoever carries it into another language. */
export const saidOfPlan = (plan: RemovalPlan): readonly Sentence[] => saidOf.get(plan) ?? [];

async function removalOf(
  machine: Machine,
  known: readonly Sentence[],
  tools: Tools,
): Promise<RemovalResult> {
  const graph = graphOf(machine);
  const answer = await solveTwoLevel(graph, tools);
  if (answer === null) return infeasible(machine, graph);
  const { value: plan, said } = heard(() => planOf(machine, graph, answer, tools.late));
  saidOf.set(plan, [...known, ...said]);
  return plan;
}

function infeasible(machine: Machine, graph: MachineGraph): RemovalResult {
  const reach = plannable(machine, graph);
  const whys = new Set(machine.targets.flatMap((target) => reach.whyNotTarget(target) ?? []));
  return { feasible: false, why: [...whys].join('; '), proven: true };
}

/** In the order found, part by part: of orders with equal changes the first one met stands. */
function setOf(graph: MachineGraph, solved: Solved): ChosenSet {
  const actions = solved.actions.flatMap((at) => graph.actions[at] ?? []);
  return {
    joints: actions.flatMap((one) => (one.kind === 'undo' ? [one.joint] : [])),
    moves: actions.flatMap((one) =>
      one.kind === 'move' ? [{ part: one.part, way: one.way }] : [],
    ),
  };
}

const byNumber = (a: number, b: number) => a - b;

function planOf(
  machine: Machine,
  graph: MachineGraph,
  { plan: solved, unspared }: TwoLevel,
  late: Late,
): RemovalPlan {
  const set = setOf(graph, solved);
  const { minutes, working } = minutesOf(machine, set);
  const ordered = orderChosen(machine, set, late);
  const bound = solved.proven ? minutes : Math.min(solved.bound, minutes);
  const gives = ({ part, way }: { part: number; way: number }) =>
    machine.parts[part]?.ways[way]?.gives;
  const off = set.moves.filter((move) => gives(move) === 'off').map(({ part }) => part);
  const aside = set.moves
    .filter((move) => gives(move) === 'aside' && !off.includes(move.part))
    .map(({ part }) => part);
  const partId = (part: number) => (machine.plain ? part : (machine.parts[part]?.id ?? ''));
  const jointId = (joint: number) => machine.joints[joint]?.id ?? '';
  const flagged = set.joints.filter((joint) => machine.joints[joint]?.protected);
  const { avoided, caution } = avoidedOf(machine, graph, set, minutes, unspared);
  return {
    feasible: true,
    order: stepsInWords(machine, ordered.steps),
    off: [...off].sort(byNumber).map(partId),
    aside: [...aside].sort(byNumber).map(partId),
    joints: [...set.joints].sort(byNumber).map(jointId),
    along: alongWith(machine, [...off, ...aside]),
    minutes: { value: minutes, unit: 'min' },
    bound: { value: bound, unit: 'min' },
    proven: solved.proven,
    gap: minutes === 0 ? 0 : (minutes - bound) / minutes,
    avoided,
    used: flagged.map(jointId),
    orderProven: ordered.price <= ordered.bound,
    orderBound: ordered.bound,
    changes: ordered.price,
    working,
    cautions: [...cautionsOf(machine, set, solved.proven), ...caution],
  };
}

/** Which spared joints the cheapest plan would use, and what sparing them adds. */
function avoidedOf(
  machine: Machine,
  graph: MachineGraph,
  set: ChosenSet,
  minutes: number,
  unspared: Solved | null,
): { avoided: RemovalPlan['avoided']; caution: string[] } {
  const none = { joints: [], minutes: { value: 0, unit: 'min' } };
  if (unspared === null) return { avoided: none, caution: [] };
  const cheap = setOf(graph, unspared);
  const joints = cheap.joints.filter(
    (joint) => machine.joints[joint]?.protected && !set.joints.includes(joint),
  );
  const added = minutes - minutesOf(machine, cheap).minutes;
  const caution = unspared.proven
    ? []
    : ['What avoiding the spared joints adds is not proven: it may be more.'];
  if (joints.length === 0 || added < 0) return { avoided: none, caution };
  const ids = joints.map((joint) => machine.joints[joint]?.id ?? '');
  return { avoided: { joints: ids, minutes: { value: added, unit: 'min' } }, caution };
}

/** Parts that sit on one that moves and do not move by themselves. */
function alongWith(machine: Machine, moved: readonly number[]): RemovalPlan['along'] {
  return machine.parts.flatMap((part, at) => {
    if (moved.includes(at)) return [];
    for (let on = part.on; on !== null; on = machine.parts[on]?.on ?? null) {
      if (moved.includes(on)) return [{ part: part.id, on: machine.parts[on]?.id ?? '' }];
    }
    return [];
  });
}
