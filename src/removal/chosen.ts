// The order of a chosen set: which access opens each joint, and when each part moves.

import { limits } from '../limits.ts';
import type { Late, Machine, MachineAccess, MachineWay, Need } from './model.ts';
import { fewestChanges, type Option, type Ordered } from './order.ts';

export type ChosenSet = {
  readonly joints: readonly number[];
  readonly moves: readonly { readonly part: number; readonly way: number }[];
};

export type Done =
  | { readonly kind: 'undo'; readonly joint: number; readonly access: number | null }
  | { readonly kind: 'move'; readonly part: number; readonly way: number };

export type ChosenOrder = Pick<Ordered, 'price' | 'bound'> & { readonly steps: readonly Done[] };

/** What stands off, aside and undone while a set is carried out. */
class Standing {
  private readonly level: Uint8Array;
  private readonly undone: Uint8Array;
  private readonly machine: Machine;

  constructor(machine: Machine) {
    this.machine = machine;
    this.level = new Uint8Array(machine.parts.length);
    this.undone = new Uint8Array(machine.joints.length);
    for (const part of machine.already.aside) this.move(part, 1);
    for (const part of machine.already.off) this.move(part, 2);
    for (const joint of machine.already.joints) this.undone[joint] = 1;
  }

  move(part: number, level: number): void {
    this.level[part] = Math.max(this.level[part] ?? 0, level);
  }

  undo(joint: number): void {
    this.undone[joint] = 1;
  }

  /** A part goes where the part it sits on goes. */
  holds({ part, as }: Need): boolean {
    const wanted = as === 'off' ? 2 : 1;
    for (let at: number | null = part; at !== null; at = this.machine.parts[at]?.on ?? null) {
      if ((this.level[at] ?? 0) >= wanted) return true;
    }
    return false;
  }

  opens(access: MachineAccess): boolean {
    return access.clear.every((need) => this.holds(need));
  }

  frees(way: MachineWay): boolean {
    return (
      way.joints.every((joint) => this.undone[joint] === 1) &&
      way.clear.every((need) => this.holds(need))
    );
  }
}

/** The order of the set with the fewest changes; a part moves as soon as nothing holds it. */
export function orderChosen(machine: Machine, set: ChosenSet, late: Late): ChosenOrder {
  const options = set.joints.map((joint, item): Option[] => {
    const accesses = machine.joints[joint]?.accesses ?? null;
    if (accesses === null) return [{ item, option: -1, tool: null, place: null }];
    return accesses.map(({ tool, place }, option) => ({ item, option, tool, place }));
  });
  const standingOf = (done: Uint8Array): Standing => {
    const standing = new Standing(machine);
    set.joints.forEach((joint, item) => {
      if (done[item]) standing.undo(joint);
    });
    moveFree(machine, set, standing, new Set(), () => undefined);
    return standing;
  };
  const ready = (done: Uint8Array): Option[] => {
    const standing = standingOf(done);
    return options.flatMap((list, item) => {
      if (done[item]) return [];
      const accesses = machine.joints[set.joints[item] ?? -1]?.accesses ?? null;
      if (accesses === null) return list;
      return list.filter((_, at) => {
        const access = accesses[at];
        return access !== undefined && standing.opens(access);
      });
    });
  };
  const exact = set.joints.length <= limits.removal.exactOrderSteps;
  const ordered = fewestChanges({
    items: set.joints.length,
    options,
    toolPrice: 1,
    placePrice: 1,
    ready,
    late,
    maxStates: exact
      ? limits.removal.exactOrderStates
      : limits.removal.orderWork / set.joints.length,
  });
  if (ordered === null) throw new Error('the chosen set cannot be carried out in any order');
  return { ...ordered, steps: withMoves(machine, set, ordered.steps) };
}

/** Moves every part of the set that is free, again and again until nothing more moves. */
function moveFree(
  machine: Machine,
  set: ChosenSet,
  standing: Standing,
  moved: Set<number>,
  note: (move: { part: number; way: number }) => void,
): void {
  for (let grown = true; grown; ) {
    grown = false;
    set.moves.forEach((move, at) => {
      const way = machine.parts[move.part]?.ways[move.way];
      if (moved.has(at) || way === undefined || !standing.frees(way)) return;
      standing.move(move.part, way.gives === 'off' ? 2 : 1);
      moved.add(at);
      note(move);
      grown = true;
    });
  }
}

function withMoves(machine: Machine, set: ChosenSet, undoing: readonly Option[]): Done[] {
  const standing = new Standing(machine);
  const moved = new Set<number>();
  const steps: Done[] = [];
  const move = () =>
    moveFree(machine, set, standing, moved, (one) => {
      steps.push({ kind: 'move', ...one });
    });
  move();
  for (const { item, option } of undoing) {
    const joint = set.joints[item];
    if (joint === undefined) continue;
    standing.undo(joint);
    steps.push({ kind: 'undo', joint, access: option < 0 ? null : option });
    move();
  }
  if (moved.size !== set.moves.length) {
    throw new Error('the chosen set leaves a part that nothing frees');
  }
  return steps;
}
