// The plain form with times: every part comes off, and changes of tool and side cost minutes.

import { limits } from '../limits.ts';
import { graphOf, plannable } from './graph.ts';
import { COMPUTED, plainMachine, type RemovalResult, type SequenceInput } from './model.ts';
import { fewestChanges, type Option } from './order.ts';
import { sumRows } from './result.ts';

export function removalSequence(input: SequenceInput): RemovalResult {
  const count = input.time.length;
  const options = input.time.map((_, item): Option[] => [
    { item, option: 0, tool: `${input.tool[item]}`, place: `${input.side[item]}` },
  ]);
  const gone = (done: Uint8Array, group: readonly number[]) => group.every((part) => done[part]);
  const groupOf = (done: Uint8Array, item: number): number => {
    const groups = input.blockers[item] ?? [];
    return groups.length === 0 ? 0 : groups.findIndex((group) => gone(done, group));
  };
  const exact = count <= limits.removal.exactOrderSteps;
  const ordered = fewestChanges({
    items: count,
    options,
    toolPrice: input.tool_change,
    placePrice: input.side_change,
    ready: (done) =>
      options.flatMap((list, item) => (!done[item] && groupOf(done, item) >= 0 ? list : [])),
    maxStates: exact ? limits.removal.exactOrderStates : limits.removal.orderWork / count,
  });
  if (ordered === null) return neverAllOff(input);
  const times = input.time.reduce((sum, time) => sum + time, 0);
  const minutes = times + ordered.price;
  const bound = times + ordered.bound;
  const proven = ordered.price <= ordered.bound;
  const done = new Uint8Array(count);
  const order = ordered.steps.map(({ item }) => {
    const way = groupOf(done, item);
    const group = input.blockers[item]?.[way] ?? [];
    done[item] = 1;
    const reason =
      group.length === 0
        ? 'every part comes off; nothing is in the way of this one'
        : `every part comes off; ${group.join(', ')} had to be off first`;
    return { do: 'off' as const, part: item, way, reason };
  });
  const rows = sumRows('T', 'times of the parts', input.time.map(String), input.time);
  return {
    feasible: true,
    order,
    off: order.map(({ part }) => part),
    aside: [],
    joints: [],
    along: [],
    minutes: { value: minutes, unit: 'min' },
    bound: { value: bound, unit: 'min' },
    proven,
    gap: minutes === 0 ? 0 : (minutes - bound) / minutes,
    avoided: { joints: [], minutes: { value: 0, unit: 'min' } },
    used: [],
    orderProven: proven,
    orderBound: ordered.bound,
    changes: ordered.price,
    working: [
      ...rows,
      ...changeRows(
        input,
        order.map(({ part }) => part),
        rows,
        minutes,
      ),
    ],
    cautions: [],
  };
}

function changeRows(
  input: SequenceInput,
  order: readonly number[],
  rows: ReturnType<typeof sumRows>,
  minutes: number,
) {
  const changes = (list: readonly (string | number)[]) =>
    order.filter((part, at) => at > 0 && list[part] !== list[order[at - 1] ?? -1]).length;
  const row = (symbol: string, text: string, expression: string, value: number) => ({
    symbol,
    text,
    expression,
    value,
    unit: 'min',
    source: COMPUTED,
  });
  const tools = changes(input.tool);
  const sides = changes(input.side);
  const total = rows[rows.length - 1]?.symbol ?? '0';
  return [
    row('C', 'changes of tool', `${tools} * ${input.tool_change}`, tools * input.tool_change),
    row('S', 'changes of side', `${sides} * ${input.side_change}`, sides * input.side_change),
    row('minutes', 'in all', `${total} + C + S`, minutes),
  ];
}

function neverAllOff(input: SequenceInput): RemovalResult {
  const every = input.time.map((_, part) => part);
  const machine = plainMachine(input.time, input.blockers, every);
  const reach = plannable(machine, graphOf(machine));
  for (const need of machine.targets) {
    const why = reach.whyNotTarget(need);
    if (why !== null) return { feasible: false, why, proven: true };
  }
  throw new Error('no order was found although every part can come off');
}
