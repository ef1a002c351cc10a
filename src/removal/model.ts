// What goes in and comes out of `removal`: the full form, two plain forms, the machine they become.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { readQuantity } from '../quantity/quantity.ts';
import type { Problem, Quantity, Source, Working } from '../quantity/types.ts';
import { say } from '../words/heard.ts';

const MOST_MINUTES = 1_000_000;

/** A bare number is in minutes; a text or a quantity names its unit. */
const minutes = z
  .union([
    z.number(),
    z.string().describe('a figure with its unit, such as "1.5 h"'),
    z.strictObject({ value: z.number(), unit: z.string(), u: z.number().min(0).optional() }),
  ])
  .transform((given, context): number => {
    const read = readQuantity(given, 'min', '');
    const why = read.ok ? null : (read.problems[0]?.why ?? 'it is no time');
    const value = read.ok ? read.quantity.value : 0;
    if (why !== null || value < 0 || value > MOST_MINUTES) {
      const message = why ?? `it is not from 0 to ${MOST_MINUTES} minutes`;
      context.addIssue({ code: 'custom', message, input: given });
      return z.NEVER;
    }
    return value;
  });
const state = z.enum(['off', 'aside']);
const id = z.string().min(1);
const demand = z.strictObject({ part: id, as: state });
const index = z.int().min(0);

export const waySchema = z.strictObject({
  id,
  name: z.string().optional(),
  gives: state,
  joints: z.array(id).optional(),
  clear: z.array(demand).optional(),
  minutes: minutes.nullish(),
  people: z.int().min(1).optional(),
});

export const accessSchema = z.strictObject({
  id,
  name: z.string().optional(),
  clear: z.array(demand).optional(),
  tool: z.string().nullish(),
  place: z.string().nullish(),
});

export const partSchema = z.strictObject({
  name: z.string().optional(),
  ways: z.array(waySchema).optional(),
  stays: z.boolean().optional(),
  on: id.optional(),
});

export const jointSchema = z.strictObject({
  name: z.string().optional(),
  undoMinutes: minutes.nullish(),
  makeMinutes: minutes.nullish(),
  accesses: z.array(accessSchema).optional(),
  between: z.array(id).optional(),
  doNotDisturb: z.union([z.boolean(), z.string()]).optional(),
  medium: z.string().nullish(),
});

/** Counts only inside a pack; `seconds` is for `boxup calc` and the bench. */
export const limitsSchema = z.strictObject({
  nodes: z.int().min(0).optional(),
  seconds: z.number().positive().max(limits.removal.seconds).optional(),
});

export const fullSchema = z.strictObject({
  parts: z.record(id, partSchema),
  joints: z.record(id, jointSchema),
  targets: z.array(demand).min(1),
  already: z
    .strictObject({
      off: z.array(id).optional(),
      aside: z.array(id).optional(),
      joints: z.array(id).optional(),
    })
    .optional(),
  limits: limitsSchema.optional(),
  unknownMinutes: minutes.optional(),
});

const blockers = z.array(z.array(z.array(index))).max(limits.removal.parts);

export const plainSchema = z.strictObject({
  cost: z.array(minutes).max(limits.removal.parts),
  blockers,
  targets: z.array(index).min(1),
  limits: limitsSchema.optional(),
});

export const sequenceSchema = z.strictObject({
  time: z.array(minutes).min(1).max(limits.removal.parts),
  tool: z.array(z.union([z.number(), z.string()])),
  side: z.array(z.union([z.number(), z.string()])),
  tool_change: minutes,
  side_change: minutes,
  blockers,
  limits: limitsSchema.optional(),
});

export const removalSchema = z.union([fullSchema, plainSchema, sequenceSchema]);

export type FullInput = z.infer<typeof fullSchema>;
export type PlainInput = z.infer<typeof plainSchema>;
export type SequenceInput = z.infer<typeof sequenceSchema>;
export type RemovalInput = FullInput | PlainInput | SequenceInput;
export type Demand = z.infer<typeof demand>;
export type State = z.infer<typeof state>;

export type OrderStep =
  | {
      readonly do: 'undo';
      readonly joint: string;
      readonly access: string | null;
      readonly reason: string;
    }
  | {
      readonly do: 'off' | 'aside';
      readonly part: string | number;
      readonly way: string | number | null;
      readonly reason: string;
    };

export type RemovalPlan = {
  readonly feasible: true;
  readonly order: readonly OrderStep[];
  /** Parts and joints this plan moves and undoes; what stood in `already` is not among them. */
  readonly off: readonly (string | number)[];
  readonly aside: readonly (string | number)[];
  readonly joints: readonly string[];
  /** Parts that go along because they sit on one that moves. */
  readonly along: readonly { readonly part: string; readonly on: string }[];
  readonly minutes: Quantity;
  readonly bound: Quantity;
  readonly proven: boolean;
  readonly gap: number;
  readonly avoided: { readonly joints: readonly string[]; readonly minutes: Quantity };
  readonly used: readonly string[];
  readonly orderProven: boolean;
  /** No order of the chosen set has fewer changes of tool and place than this. */
  readonly orderBound: number;
  readonly changes: number;
  readonly working: Working;
  readonly cautions: readonly string[];
};

export type NoRemoval = {
  readonly feasible: false;
  readonly why: string;
  readonly proven: true;
};

export type RemovalResult = RemovalPlan | NoRemoval;

export type { Program, ProgramLimits, Solver, SolverAnswer } from '../quantity/solver.ts';

/** Has a limit in seconds struck? Only the shell can know; without it nothing ever is late. */
export type Late = () => boolean;

export const NEVER_LATE: Late = () => false;

/** A demand inside the machine: a state of a part, by the part's index. */
export type Need = { readonly part: number; readonly as: State };

export type MachineWay = {
  readonly id: string;
  readonly name: string;
  readonly gives: State;
  readonly joints: readonly number[];
  readonly clear: readonly Need[];
  readonly minutes: number;
};

export type MachineAccess = {
  readonly id: string;
  readonly name: string;
  readonly clear: readonly Need[];
  readonly tool: string | null;
  readonly place: string | null;
};

export type MachinePart = {
  readonly id: string;
  readonly name: string;
  readonly ways: readonly MachineWay[];
  readonly waysKnown: boolean;
  readonly stays: boolean;
  readonly on: number | null;
};

export type MachineJoint = {
  readonly id: string;
  readonly name: string;
  readonly undo: number;
  readonly make: number;
  /** Null: not stated, so free and "cannot be checked". */
  readonly accesses: readonly MachineAccess[] | null;
  readonly protected: boolean;
};

/** What every form becomes; ids are indexes here, each list in input order. */
export type Machine = {
  readonly plain: boolean;
  readonly parts: readonly MachinePart[];
  readonly joints: readonly MachineJoint[];
  readonly targets: readonly Need[];
  readonly already: {
    readonly off: readonly number[];
    readonly aside: readonly number[];
    readonly joints: readonly number[];
  };
  /** Fields whose minutes are assumed, as the reader would name them, by part or joint. */
  readonly assumed: ReadonlyMap<string, string>;
  readonly unknownMinutes: number;
};

const PROTECTED_MEDIA: readonly string[] = ['fuel', 'lube oil', 'hot-pressure'];

type Assume = (value: number | null | undefined, key: string, text: string) => number;

function toJoint(key: string, joint: FullInput['joints'][string], needs: Needs, assume: Assume) {
  const name = joint.name ?? key;
  const accesses = joint.accesses?.map((access) => ({
    id: access.id,
    name: access.name ?? access.id,
    clear: needs(access.clear ?? []),
    tool: access.tool ?? null,
    place: access.place ?? null,
  }));
  const stated = joint.doNotDisturb !== undefined && joint.doNotDisturb !== false;
  const ofJoint = `joint/${key}`;
  return {
    id: key,
    name,
    undo: assume(joint.undoMinutes, ofJoint, say('undoingJoint', name)),
    make: assume(joint.makeMinutes, ofJoint, say('makingJoint', name)),
    accesses: accesses ?? null,
    protected: stated || PROTECTED_MEDIA.includes(joint.medium ?? ''),
  };
}

type Needs = (demands: readonly Demand[]) => Need[];

/** Turns the full form into the machine; ids must have been checked (`idProblems`). */
export function machineOf(input: FullInput): Machine {
  const partAt = new Map(Object.keys(input.parts).map((key, at) => [key, at]));
  const jointAt = new Map(Object.keys(input.joints).map((key, at) => [key, at]));
  const at = (map: Map<string, number>, key: string): number => {
    const found = map.get(key);
    if (found === undefined) throw new Error(`id ${key} was not checked`);
    return found;
  };
  const needs: Needs = (demands) => demands.map(({ part, as }) => ({ part: at(partAt, part), as }));
  const unknownMinutes = input.unknownMinutes ?? limits.removal.unknownMinutes;
  const assumed = new Map<string, string>();
  const assume: Assume = (value, key, text) => {
    if (value !== undefined && value !== null) return value;
    const before = assumed.get(key);
    assumed.set(key, before === undefined ? text : say('listed', [before, text]));
    return unknownMinutes;
  };
  const parts = Object.entries(input.parts).map(([key, part]) => ({
    id: key,
    name: part.name ?? key,
    waysKnown: part.ways !== undefined,
    stays: part.stays ?? false,
    on: part.on === undefined ? null : at(partAt, part.on),
    ways: (part.stays ? [] : (part.ways ?? [])).map((way) => ({
      id: way.id,
      name: way.name ?? way.id,
      gives: way.gives,
      joints: (way.joints ?? []).map((joint) => at(jointAt, joint)),
      clear: needs(way.clear ?? []),
      minutes: assume(
        way.minutes,
        `way/${key}/${way.id}`,
        say('wayOfPart', way.name ?? way.id, part.name ?? key),
      ),
    })),
  }));
  const joints = Object.entries(input.joints).map(([key, joint]) =>
    toJoint(key, joint, needs, assume),
  );
  const already = {
    off: (input.already?.off ?? []).map((part) => at(partAt, part)),
    aside: (input.already?.aside ?? []).map((part) => at(partAt, part)),
    joints: (input.already?.joints ?? []).map((joint) => at(jointAt, joint)),
  };
  const targets = needs(input.targets);
  return { plain: false, parts, joints, targets, already, assumed, unknownMinutes };
}

/** Turns a plain form into the machine: a way off for each group of blockers. */
export function plainMachine(
  cost: readonly number[],
  blockerGroups: readonly (readonly (readonly number[])[])[],
  targets: readonly number[],
): Machine {
  const parts = cost.map((partMinutes, part) => {
    const groups = blockerGroups[part] ?? [];
    const ways = (groups.length === 0 ? [[]] : groups).map((group, way) => ({
      id: `${way}`,
      name: `${way}`,
      gives: 'off' as const,
      joints: [],
      clear: group.map((blocker) => ({ part: blocker, as: 'off' as const })),
      minutes: partMinutes,
    }));
    return { id: `${part}`, name: `${part}`, ways, waysKnown: true, stays: false, on: null };
  });
  return {
    plain: true,
    parts,
    joints: [],
    targets: targets.map((part) => ({ part, as: 'off' })),
    already: { off: [], aside: [], joints: [] },
    assumed: new Map(),
    unknownMinutes: limits.removal.unknownMinutes,
  };
}

export const COMPUTED: Source = { kind: 'computed', by: 'removal' };
export type { Problem };
