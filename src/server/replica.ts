// Gives a device everything it needs to fold the record by itself, and no more.

import { type IssuedInterval, sinceLastDone } from '../hours/since.ts';
import { DOES } from '../plant/schema.ts';
import type { Machine, Plant } from '../plant/types.ts';
import { hashOf } from '../quantity/sha.ts';
import { fold } from '../record/fold.ts';
import type {
  ClosureView,
  DueLine,
  MachineView,
  Replica,
  ReplicaAnswer,
  TargetView,
} from '../record/replica.ts';
import type { State } from '../record/types.ts';
import type { ServerParts } from './parts.ts';

const DOING = {
  'renew-in-place': 'renew in place',
  exchange: 'exchange',
  overhaul: 'overhaul off the machine',
} as const;

export async function replicaOf(parts: ServerParts, seen: string): Promise<ReplicaAnswer> {
  const { plant, archive } = parts;
  const [acts, packs] = await Promise.all([archive.acts(), archive.packs()]);
  const state = fold({ acts, packs });
  const stores = parts.held?.(parts.now().utc).stores?.items;
  const own = [plant.issue.hash, acts.map((act) => act.hash), packs.map(({ id }) => id)];
  const now = hashOf(stores === undefined ? own : [...own, stores]);
  if (seen === now) return { seen: now, unchanged: true };
  const replica: Replica = {
    vessel: { id: plant.id, name: plant.name, kind: plant.kind },
    invented: plant.source === 'invented for the demo',
    plantIssue: {
      number: plant.issue.number,
      date: plant.issue.date,
      hash: plant.issue.hash,
    },
    people: plant.people,
    machines: Object.values(plant.machines).map((machine) => machineView(plant, machine)),
    packs,
    acts,
    heads: await archive.heads(),
    due: dueLines(plant, state),
    ...(stores === undefined ? {} : { stores }),
  };
  return { seen: now, unchanged: false, replica };
}

function machineView(plant: Plant, machine: Machine): MachineView {
  const targets = Object.entries(machine.targets).map(([id, target]): TargetView => {
    const does = DOES.filter((each) => target.does[each] !== undefined);
    return {
      id,
      name: nameOfPart(machine, id),
      does: does.map((each) => ({ id: each, name: target.does[each]?.name ?? DOING[each] })),
    };
  });
  const closures = Object.entries(machine.closures).map(([id, closure]): ClosureView => {
    const place = closure.place ?? null;
    return {
      id,
      name: closure.name,
      kind: closure.kind,
      normal: closure.normal ?? null,
      place: place === null ? null : (plant.places[place]?.name ?? place),
    };
  });
  return {
    id: machine.id,
    name: machine.name,
    position: machine.position ?? null,
    plate: machine.plate ?? null,
    targets,
    closures,
  };
}

const nameOfPart = (machine: Machine, id: string): string => machine.parts[id]?.name ?? id;

export function dueLines(plant: Plant, state: State): readonly DueLine[] {
  return Object.values(plant.machines).flatMap((machine) =>
    Object.entries(machine.targets).flatMap(([targetId, target]) =>
      DOES.flatMap((does): DueLine[] => {
        const spec = target.does[does];
        if (spec === undefined) return [];
        const kept = state.machines[machine.id];
        const done = (kept?.done ?? []).filter(
          (each) => each.target === targetId && each.does === does,
        );
        return [
          {
            machine: machine.id,
            machineName: machine.name,
            target: targetId,
            targetName: nameOfPart(machine, targetId),
            does,
            doing: spec.name ?? DOING[does],
            since: sinceLastDone({
              readings: kept?.hours ?? [],
              done,
              interval: intervalOf(machine, spec.interval),
            }),
          },
        ];
      }),
    ),
  );
}

function intervalOf(machine: Machine, id: string | undefined): IssuedInterval | null {
  const value = id === undefined ? undefined : machine.values[id];
  const shown = value?.value;
  if (value === undefined || shown === undefined) return null;
  return { shown, issue: value.issue, date: value.date, authority: value.authority };
}
