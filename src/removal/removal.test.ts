// Removal against trying everything: seeds are printed in the titles, full counts with LONG=1.

import { describe, expect, test } from 'vitest';
import { solveWithHighs } from '../server/solver-inline.ts';
import { graphOf } from './graph.ts';
import { indexed, planWithin } from './heuristic.ts';
import { type FullInput, machineOf, type RemovalInput, type RemovalPlan } from './model.ts';
import { chosenRules, programOf } from './program.ts';
import { smallMachine } from './random-machine.ts';
import { reduce } from './reduce.ts';
import { removal } from './removal.ts';
import removalTable from './tables/andor_removal_open.json' with { type: 'json' };
import sequenceTable from './tables/andor_sequence_open.json' with { type: 'json' };
import { bestByStates, faultsOf, fewestByTrying, jointCost } from './try-everything.ts';

const long = process.env.LONG === '1';
const FIRST_SEED = 20_000;
const count = long ? 3_000 : 300;
const seeds = Array.from({ length: count }, (_, at) => FIRST_SEED + at);

async function planned(input: RemovalInput): Promise<RemovalPlan> {
  const result = await removal(input, solveWithHighs);
  if (!result.feasible) throw new Error(result.why);
  return result;
}

describe(`${count} random small machines, seeds ${FIRST_SEED} on, against every state`, () => {
  test('feasible, spared joints, minutes, proven; the order can be carried out', async () => {
    let feasible = 0;
    for (const seed of seeds) {
      const input = smallMachine(seed);
      const best = bestByStates(input);
      const found = await removal(input, solveWithHighs);
      expect({ seed, feasible: found.feasible }).toEqual({ seed, feasible: best !== null });
      if (!found.feasible || best === null) {
        if (!found.feasible) expect(found.why.length, `seed ${seed}`).toBeGreaterThan(5);
        continue;
      }
      feasible += 1;
      expect({ seed, faults: faultsOf(input, found) }).toEqual({ seed, faults: [] });
      const spared = found.joints.filter((id) => jointCost(input, id).spared > 0);
      expect({ seed, minutes: found.minutes.value, spared: spared.length }).toEqual({
        seed,
        minutes: best.minutes,
        spared: best.spared,
      });
      expect(found.proven, `seed ${seed}`).toBe(true);
      expect(found.bound.value).toBe(found.minutes.value);
      expect(found.gap).toBe(0);
      expect([...found.used].sort()).toEqual([...spared].sort());
      if (found.avoided.joints.length > 0) {
        const free = bestByStates(input, false);
        expect({ seed, added: found.avoided.minutes.value }).toEqual({
          seed,
          added: found.minutes.value - (free?.minutes ?? Number.NaN),
        });
      }
    }
    expect(feasible).toBeGreaterThan(count / 3);
  });

  test('the order has the fewest changes of tool and place', async () => {
    let compared = 0;
    for (const seed of seeds) {
      const input = smallMachine(seed);
      const found = await removal(input, solveWithHighs);
      if (!found.feasible) continue;
      const fewest = fewestByTrying(input, found);
      expect({ seed, changes: found.changes, bound: found.orderBound }).toEqual({
        seed,
        changes: fewest,
        bound: fewest,
      });
      expect(found.orderProven).toBe(true);
      if (fewest > 0) compared += 1;
    }
    expect(compared).toBeGreaterThan(count / 40);
  });

  test('the integer program alone, without reduction, gives the same minutes', async () => {
    for (const seed of seeds) {
      const input: FullInput = smallMachine(seed);
      const best = bestByStates(input, false);
      const graph = graphOf(machineOf(input));
      if (best === null || reduce(graph) === null || graph.targets.length === 0) continue;
      const cost = Float64Array.from(graph.rules, (rule) => rule.cost);
      const options = { mandatory: [], landmarks: [], start: [] };
      const program = programOf(indexed(graph), cost, options);
      const answer = await solveWithHighs(program, { nodes: 10_000 });
      expect({ seed, status: answer.status }).toEqual({ seed, status: 'optimal' });
      const plan = planWithin(
        indexed(graph),
        chosenRules(indexed(graph), answer.values ?? new Map()),
        cost,
      );
      const minutes = plan?.reduce((sum, at) => sum + (graph.rules[at]?.cost ?? 0), 0);
      expect({ seed, minutes, bound: Math.round(answer.bound ?? -1) }).toEqual({
        seed,
        minutes: best.minutes,
        bound: best.minutes,
      });
    }
  });
});

describe('generated instances with an optimum by two other methods', () => {
  test.each(removalTable.instances)('andor_removal_open $id', async (instance) => {
    const { cost, blockers, targets, optimum } = instance;
    const found = await removal({ cost, blockers, targets }, solveWithHighs);
    expect(found.feasible).toBe(optimum !== null);
    expect(found.proven).toBe(true);
    if (!found.feasible) return;
    expect(found.minutes).toEqual({ value: optimum, unit: 'min' });
    const gone = new Set<number>();
    for (const step of found.order) {
      if (step.do === 'undo') throw new Error('a plain form has no joints');
      const groups = blockers[Number(step.part)] ?? [];
      const free = groups.length === 0 || groups[Number(step.way)]?.every((one) => gone.has(one));
      expect(free).toBe(true);
      gone.add(Number(step.part));
    }
    expect(targets.every((part) => gone.has(part))).toBe(true);
    expect([...gone].reduce((sum, part) => sum + (cost[part] ?? 0), 0)).toBe(optimum);
  });

  test.each(sequenceTable.instances)('andor_sequence_open $id', async (instance) => {
    const { id: _, n, optimum, ...input } = instance;
    const found = await planned(input);
    expect(found.minutes).toEqual({ value: optimum, unit: 'min' });
    expect(found.bound).toEqual(found.minutes);
    expect(found.proven).toBe(true);
    const parts = found.order.map((step) => (step.do === 'undo' ? -1 : Number(step.part)));
    expect(new Set(parts).size).toBe(n);
    let minutes = 0;
    parts.forEach((part, at) => {
      const before = parts[at - 1];
      const gone = parts.slice(0, at);
      const groups = input.blockers[part] ?? [];
      expect(groups.length === 0 || groups.some((g) => g.every((b) => gone.includes(b)))).toBe(
        true,
      );
      minutes += input.time[part] ?? 0;
      if (before === undefined) return;
      minutes += input.tool[part] === input.tool[before] ? 0 : input.tool_change;
      minutes += input.side[part] === input.side[before] ? 0 : input.side_change;
    });
    expect(minutes).toBe(optimum);
  });
});
