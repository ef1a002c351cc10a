// What holds a heavy part while its joints are loose: in before the first lets go, never a hand.

import { limits } from '../limits.ts';
import { readQuantity } from '../quantity/quantity.ts';
import { type Context, isPipeJoint, type Moved, partOf, wayOf } from './context.ts';

type Asked = Pick<Context, 'machine'>;

const kgOf = (text: string | undefined, part: string): number | null => {
  const read = text === undefined ? null : readQuantity(text, 'kg', part);
  return read?.ok === true ? read.quantity.value : null;
};

/** What is lifted: with what stays in it where that is stated, and piece by piece. */
export const weightKg = (c: Asked, part: string): number | null => {
  const { mass, wetMass, pieces = 1 } = partOf(c, part);
  const whole = kgOf(wetMass, part) ?? kgOf(mass, part);
  return whole === null ? null : whole / pieces;
};

export const isHeavy = (c: Asked, part: string): boolean =>
  (weightKg(c, part) ?? 0) >= limits.pack.liftingKg;

/** Whether it would fall, swing or press on a hand as soon as its joints are loose. */
export const mustBeHeld = (c: Context, m: Moved): boolean =>
  !m.bench && wayOf(c, m)?.rests !== true && isHeavy(c, m.id) && first(c, m);

/** Held once: a part that goes aside before it comes off hangs on the same support. */
const first = (c: Context, m: Moved): boolean => c.moved.find((x) => x.id === m.id) === m;

/** By name, as they are put in; one without a name where the plant says nothing. */
export const holdersOf = (c: Context, m: Moved): readonly string[] => {
  if (!mustBeHeld(c, m)) return [];
  const way = wayOf(c, m);
  if (way?.temporary !== undefined && way.temporary.length > 0) return way.temporary;
  const { rig } = way ?? {};
  const name = partOf(c, m.id).name.toLowerCase();
  if (rig?.hoist === true) return [c.say('hoistFor', name)];
  if (rig?.jack === true) return [c.say('jackFor', name)];
  if (rig?.legs !== undefined) return [c.say('slingFor', name)];
  const stated = way?.support ?? partOf(c, m.id).carriedBy;
  return [stated ?? c.say('supportFor', name)];
};

/** Nothing in the plant says what could hold it. */
export const holderUnknown = (c: Context, m: Moved): boolean => {
  const way = wayOf(c, m);
  if (!mustBeHeld(c, m) || way?.rig !== undefined || (way?.temporary ?? []).length > 0)
    return false;
  return way?.support === undefined && partOf(c, m.id).carriedBy === undefined;
};

/**
 * The joints that wait for what holds the part: those that mount it, with the most fasteners, or
 * each of its way where none does. One of them is the last, or stands before the last.
 */
export const holdingJoints = (c: Context, m: Moved): readonly string[] => {
  const own = c.undone.filter((u) => u.bench === m.bench).map((u) => u.id);
  const joints = (wayOf(c, m)?.joints ?? []).filter((j) => own.includes(j));
  const mounts = holdsWeight(c, joints);
  return mounts.length === 0 ? joints : mounts;
};

/** Of the joints a part leaves by, those that mount it: no pipe joint, with the most fasteners. */
export const holdsWeight = (c: Context, joints: readonly string[]): string[] => {
  const mounts = joints.filter((j) => !isPipeJoint(c.machine, j));
  const holes = (j: string) => c.shapes[j]?.holes.length ?? 0;
  const most = Math.max(0, ...mounts.map(holes));
  return mounts.filter((j) => holes(j) === most);
};

/** What holds the parts that this joint mounts, while it is loose. */
export const heldAt = (c: Context, joint: string): readonly string[] =>
  c.moved.flatMap((m) =>
    mustBeHeld(c, m) && holdingJoints(c, m).includes(joint) ? holdersOf(c, m) : [],
  );
