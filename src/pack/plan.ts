// The removal of one job: the machine as the calculation wants it, and its answer with names.

import type { Machine } from '../plant/types.ts';
import type { FullInput, OrderStep, RemovalPlan } from '../removal/model.ts';
import type { PackRequest, PlanView } from './types.ts';

type Demand = { readonly part: string; readonly as: 'off' | 'aside' };
type Already = NonNullable<FullInput['already']>;

/**
 * The machine as the bench sees it: the part lies there and stays, what sits on it comes off by
 * its own ways, and nothing asks any more for the part itself to be away.
 */
export const onTheBench = (input: FullInput, part: string): FullInput => {
  const without = (clear: readonly Demand[] | undefined) =>
    (clear ?? []).filter((x) => x.part !== part);
  return {
    ...input,
    parts: Object.fromEntries(
      Object.entries(input.parts).map(([id, p]) => {
        if (id === part) return [id, { name: p.name ?? id, stays: true }];
        const { on, ...rest } = p;
        const ways = p.ways?.map((w) => ({ ...w, clear: without(w.clear) }));
        const sits = on === undefined || on === part ? {} : { on };
        return [id, { ...rest, ...sits, ...(ways === undefined ? {} : { ways }) }];
      }),
    ),
    joints: Object.fromEntries(
      Object.entries(input.joints).map(([id, j]) => {
        const accesses = j.accesses?.map((a) => ({ ...a, clear: without(a.clear) }));
        return [id, { ...j, ...(accesses === undefined ? {} : { accesses }) }];
      }),
    ),
  };
};

/** The whole machine as `removal` takes it, with the parts to take and what is off already. */
export const removalInput = (
  machine: Machine,
  take: readonly Demand[],
  already: Already,
): FullInput => ({
  parts: Object.fromEntries(
    Object.entries(machine.parts).map(([id, p]) => [
      id,
      {
        name: p.name,
        ...(p.stays === undefined ? {} : { stays: p.stays }),
        ...(p.on === undefined ? {} : { on: p.on }),
        ...(p.ways === undefined
          ? {}
          : {
              ways: Object.entries(p.ways).map(([wayId, w]) => ({
                id: wayId,
                ...(w.name === undefined ? {} : { name: w.name }),
                gives: w.gives,
                joints: w.joints,
                clear: w.clear ?? [],
                minutes: w.minutes ?? null,
                ...(w.people === undefined ? {} : { people: w.people }),
              })),
            }),
      },
    ]),
  ),
  joints: Object.fromEntries(
    Object.entries(machine.joints).map(([id, j]) => [
      id,
      {
        name: j.name,
        undoMinutes: j.undoMinutes ?? null,
        makeMinutes: j.makeMinutes ?? null,
        ...(j.between === undefined ? {} : { between: j.between }),
        ...(j.doNotDisturb === undefined ? {} : { doNotDisturb: j.doNotDisturb }),
        ...(j.medium === undefined ? {} : { medium: j.medium }),
        ...(j.accesses === undefined
          ? {}
          : {
              accesses: Object.entries(j.accesses).map(([accessId, a]) => ({
                id: accessId,
                ...(a.name === undefined ? {} : { name: a.name }),
                clear: a.clear ?? [],
                tool: a.tool ?? null,
                place: a.place ?? null,
              })),
            }),
      },
    ]),
  ),
  targets: take.map((t) => ({ part: t.part, as: t.as })),
  already,
});

export const alreadyOf = (request: PackRequest): Already => ({
  off: [...(request.already?.off ?? [])],
  aside: [...(request.already?.aside ?? [])],
  joints: [...(request.already?.joints ?? [])],
});

/** What stands off once a plan has been carried out: where the bench work begins. */
export const alreadyAfter = (already: Already, plan: RemovalPlan, bench: string): Already => ({
  off: [...(already.off ?? []), ...plan.off.map(String)].filter((p) => p !== bench),
  aside: [...(already.aside ?? []), ...plan.aside.map(String)],
  joints: [...(already.joints ?? []), ...plan.joints],
});

export const planView = (machine: Machine, plan: RemovalPlan): PlanView => ({
  order: plan.order.map((row, i) => orderRow(machine, plan.order.slice(0, i), row)),
  minutes: plan.minutes,
  bound: plan.bound,
  proven: plan.proven,
  gap: plan.gap,
  orderProven: plan.orderProven,
  avoided: plan.avoided.joints.length === 0 ? null : plan.avoided,
  used: plan.used,
  cautions: plan.cautions,
  working: plan.working,
});

/**
 * The plan in the order of the pack's steps, so that map and steps number alike. Where the trade's
 * order differs from the one with the fewest changes of tool and place, that is no longer claimed.
 */
export const inStepOrder = (view: PlanView, stepIds: readonly string[]): PlanView => {
  const verbs = { undo: 'undone joint', off: 'moved-off part', aside: 'moved-aside part' } as const;
  const at = (row: OrderRow): number => stepIds.indexOf(`${verbs[row.do]}/${row.id}`);
  const order = [...view.order].sort((a, b) => at(a) - at(b));
  const same = order.every((row, i) => row === view.order[i]);
  return { ...view, order, orderProven: view.orderProven && same };
};

type OrderRow = PlanView['order'][number];

const orderRow = (machine: Machine, before: readonly OrderStep[], row: OrderStep): OrderRow => {
  if (row.do === 'undo') {
    const joint = machine.joints[row.joint];
    const access = row.access === null ? undefined : joint?.accesses?.[row.access];
    return {
      do: 'undo',
      id: row.joint,
      name: joint?.name ?? row.joint,
      way: null,
      access: row.access,
      tool: access?.tool ?? null,
      place: access?.place ?? null,
      reason: row.reason,
      after: (access?.clear ?? []).flatMap((x) => movedBefore(before, x.part)),
    };
  }
  const id = String(row.part);
  const way = row.way === null ? undefined : machine.parts[id]?.ways?.[String(row.way)];
  const joints = (way?.joints ?? []).filter((j) =>
    before.some((b) => b.do === 'undo' && b.joint === j),
  );
  return {
    do: row.do,
    id,
    name: machine.parts[id]?.name ?? id,
    way: row.way === null ? null : String(row.way),
    access: null,
    tool: null,
    place: null,
    reason: row.reason,
    after: [...joints, ...(way?.clear ?? []).flatMap((x) => movedBefore(before, x.part))],
  };
};

const movedBefore = (before: readonly OrderStep[], part: string): string[] =>
  before.some((b) => b.do !== 'undo' && String(b.part) === part) ? [part] : [];
