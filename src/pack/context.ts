// What the parts of a pack's making share: the machine, the plan and the names of things.

import type { Does, DoesSpec, Joint, Part, Target } from '../plant/schema.ts';
import { LIQUIDS } from '../plant/schema.ts';
import type { Machine, Plant } from '../plant/types.ts';
import type { RemovalPlan } from '../removal/model.ts';
import type { Speech } from '../words/say.ts';
import type { Fastenings } from './fastening-types.ts';
import { type Isolation, isolationOf } from './isolation.ts';
import { type JointShape, jointShape } from './joint-shape.ts';
import { type Lifts, NO_LIFTS } from './lift-types.ts';
import { NO_SEALS, type SealList } from './seal-types.ts';
import type { PackRequest } from './types.ts';

/** A part that was moved, in the order of removal, with the way that moved it last. */
export type Moved = {
  readonly id: string;
  readonly as: 'off' | 'aside';
  readonly way: string;
  readonly bench: boolean;
  readonly reason: string;
};

/** A joint that was undone, in the order of removal. */
export type Undone = {
  readonly id: string;
  readonly access: string | null;
  readonly bench: boolean;
  readonly reason: string;
};

export type Context = {
  readonly plant: Plant;
  readonly machine: Machine;
  readonly request: PackRequest;
  readonly targetId: string;
  readonly target: Target;
  readonly spec: DoesSpec;
  readonly does: Does;
  readonly plans: readonly RemovalPlan[];
  readonly moved: readonly Moved[];
  readonly undone: readonly Undone[];
  /** Parts whose item is taken out: the target of an exchange, what is renewed in place. */
  readonly items: readonly string[];
  readonly isolation: Isolation;
  readonly shapes: Readonly<Record<string, JointShape>>;
  readonly fastenings: Fastenings;
  readonly lifts: Lifts;
  readonly seals: SealList;
  /** Says a sentence in English and keeps what was said, so that it can be told in any language. */
  readonly say: Speech['say'];
};

export const partOf = (c: Pick<Context, 'machine'>, id: string): Part =>
  c.machine.parts[id] ?? { name: id };

export const jointOf = (c: Pick<Context, 'machine'>, id: string): Joint =>
  c.machine.joints[id] ?? { name: id };

export const isLiquidLine = (machine: Machine, line: string | undefined): boolean =>
  line !== undefined && LIQUIDS.includes(machine.lines[line]?.medium ?? '');

/** A joint is wet when a part it joins belongs to a line with a liquid. */
export const isWet = (machine: Machine, jointId: string): boolean =>
  (machine.joints[jointId]?.between ?? []).some((p) =>
    isLiquidLine(machine, machine.parts[p]?.line),
  );

const OPENING = ['hose clip', 'hose end', 'union nut', 'plug'];

/** Whether undoing a wet joint opens its line: a sealed face, a hose end or a union; no bracket. */
export const opensLine = (machine: Machine, jointId: string): boolean => {
  const joint = machine.joints[jointId];
  if (joint === undefined || !isWet(machine, jointId)) return false;
  return (
    Object.keys(joint.seals ?? {}).length > 0 ||
    joint.blank !== undefined ||
    Object.values(joint.fasteners ?? {}).some((f) => OPENING.includes(f.kind))
  );
};

/** A joint where two runs of one medium meet, or a run meets the part the job is about. */
export const isPipeJoint = (machine: Machine, jointId: string): boolean => {
  if (!opensLine(machine, jointId)) return false;
  const media = (machine.joints[jointId]?.between ?? []).flatMap((p) => {
    const line = machine.parts[p]?.line;
    return line === undefined ? [] : [machine.lines[line]?.medium];
  });
  return media.some((m, i) => m !== undefined && media.indexOf(m) !== i);
};

/** A place by its name where the plant names it, else as it was typed. */
export const placeName = (c: Pick<Context, 'plant'>, place: string | undefined): string | null =>
  place === undefined ? null : (c.plant.places[place]?.name ?? place);

/** The parts a joint joins that this job moves. */
export const movedBetween = (c: Context, jointId: string): string[] =>
  (jointOf(c, jointId).between ?? []).filter((p) => c.moved.some((m) => m.id === p));

export const accessOf = (c: Context, undone: Undone) =>
  undone.access === null ? undefined : jointOf(c, undone.id).accesses?.[undone.access];

export const wayOf = (c: Context, moved: Moved) => partOf(c, moved.id).ways?.[moved.way];

/** The joints that mount the target, and those by which its pipes meet it. */
export const targetJoints = (c: Context): { mounting: string[]; pipes: string[] } => {
  const root = c.moved.some((m) => m.id === c.targetId) ? c.targetId : null;
  const touching = c.undone
    .filter((u) => !u.bench && root !== null && (jointOf(c, u.id).between ?? []).includes(root))
    .map((u) => u.id);
  const pipes = touching.filter((j) => isPipeJoint(c.machine, j));
  return { mounting: touching.filter((j) => !pipes.includes(j)), pipes };
};

export const makeContext = (
  base: Omit<
    Context,
    | 'plans'
    | 'moved'
    | 'undone'
    | 'items'
    | 'isolation'
    | 'shapes'
    | 'fastenings'
    | 'lifts'
    | 'seals'
  >,
  plans: readonly RemovalPlan[],
): Context => {
  const moved: Moved[] = [];
  const undone: Undone[] = [];
  plans.forEach((plan, k) => {
    for (const step of plan.order) {
      if (step.do === 'undo')
        undone.push({
          id: step.joint,
          access: step.access,
          bench: k > 0,
          reason: step.reason,
        });
      else {
        const id = String(step.part);
        const row: Moved = {
          id,
          as: step.do,
          way: String(step.way),
          bench: k > 0,
          reason: step.reason,
        };
        moved.push(row);
      }
    }
  });
  const renews = base.spec.renews ?? [];
  const out =
    base.does === 'renew-in-place'
      ? renews
      : [base.targetId, ...renews.filter((p) => p !== base.targetId)];
  const shapes: Record<string, JointShape> = {};
  for (const u of undone)
    shapes[u.id] ??= jointShape(
      base.machine,
      base.machine.joints[u.id] ?? { name: u.id },
      base.say,
    );
  const isolation = isolationOf(base.machine, base.request, base.spec.isolation ?? base.targetId);
  const fastenings: Fastenings = { list: [], tools: null };
  return {
    ...base,
    plans,
    moved,
    undone,
    items: out,
    isolation,
    shapes,
    fastenings,
    lifts: NO_LIFTS,
    seals: NO_SEALS,
  };
};
