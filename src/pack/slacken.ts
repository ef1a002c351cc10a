// The order in which the fasteners of a joint are slackened, by its own hole labels.

import { type Slackening, slackening } from '../tightening/pattern-slacken.ts';
import { accessOf, type Context, jointOf, opensLine, type Undone } from './context.ts';

export type Easing = {
  /** Holes in the order in which each is turned a part of a turn; null where no place is known. */
  readonly order: string | null;
  /** Those beyond the middle from where the person stands; null where that is not known. */
  readonly far: string | null;
  /** Whether the description says where the person stands. */
  readonly known: boolean;
};

/** As one looks at the joint drawn: x to the right, y down. */
const STANDS = { above: [0, -1], below: [0, 1], left: [-1, 0], right: [1, 0] } as const;

const orderOf = (c: Context, u: Undone): Slackening | null => {
  const shape = c.shapes[u.id];
  if (shape === undefined || shape.holes.length < 2) return null;
  // Cleats and clamps of a lid hold it as bolts do; a guard's latches hold nothing back.
  const clamps =
    opensLine(c.machine, u.id) &&
    Object.values(jointOf(c, u.id).fasteners ?? {}).some(({ kind }) => kind === 'clamp');
  if (!shape.threaded && !clamps) return null;
  const stands = accessOf(c, u)?.stands;
  return slackening(shape.holes.length, shape.points, stands === undefined ? null : STANDS[stands]);
};

/** What the step of undoing says of it; null for a joint that has no such order. */
export const easingOf = (c: Context, u: Undone): Easing | null => {
  const found = orderOf(c, u);
  if (found === null) return null;
  const holes = c.shapes[u.id]?.holes ?? [];
  const listed = (bolts: readonly number[]): string | null =>
    bolts.length === 0 ? null : bolts.map((n) => holes[n - 1] ?? String(n)).join(', ');
  const known = found.farSide.length > 0;
  return {
    order: c.shapes[u.id]?.points == null ? null : listed(found.ease),
    far: known ? listed(found.farSide) : null,
    known,
  };
};

/** The holes as they are slackened; as they are numbered where no order is known. */
export const slackenedIn = (c: Context, u: Undone): readonly string[] => {
  const holes = c.shapes[u.id]?.holes ?? [];
  return orderOf(c, u)?.ease.map((n) => holes[n - 1] ?? String(n)) ?? holes;
};
