// The order in which a joint is slackened: far side first, broken with the nuts on, then undone.

import type { Source } from '../quantity/types.ts';
import { insideOutOrder, middleOf, type Point } from './pattern.ts';

export type Slackening = {
  /**
   * Bolt numbers from 1. Each is turned a part of a turn, in this order, round after round until
   * all are slack: the far side opens first, away from whoever stands there.
   */
  readonly ease: readonly number[];
  /** The bolts beyond the middle, seen from where the person stands; empty where not known. */
  readonly farSide: readonly number[];
  /** The joint is broken while every nut is still on, by some turns. */
  readonly nutsOnWhenBroken: true;
  /** Only after that: the near ones last, so that the part hangs where it can be seen. */
  readonly takeOff: readonly number[];
  readonly says: readonly string[];
  readonly sources: { readonly farSideFirst: Source; readonly nutsOn: Source };
  /** What is not known and should be asked. */
  readonly asks: readonly string[];
};

/** Both tell of a joint whose bolts were all out before it was broken: the cover flew off. */
const REPORTS: Source = {
  kind: 'published',
  title: 'MAIB Safety Digest 1/2022; IMCA Safety Flash 11/05',
  edition: 'as read in public copies',
  place: 'a cover taken off with all bolts out before the joint was cracked',
};

/** So far beyond the middle that a bolt is on the far side, in shares of the joint's half width. */
const BEYOND = 0.1;

/**
 * `points` as on the drawing (y down), null where unknown; `stands` is the direction from the
 * middle of the joint to the person, null where unknown.
 */
export function slackening(
  count: number,
  points: readonly Point[] | null,
  stands: Point | null,
): Slackening {
  const numbers = Array.from({ length: count }, (_, i) => i + 1);
  const placed = points !== null && points.length === count && count > 0 ? points : null;
  const across = placed === null ? numbers : insideOutOrder(placed).reverse();
  const known = placed !== null && stands !== null && Math.hypot(...stands) > 0;
  const farness = known ? farnessOf(placed, stands) : numbers.map(() => 0);
  const far = (bolt: number): number => farness[bolt - 1] ?? 0;
  // Outer bolts first where two are as far as each other, so that the middle lets go last.
  const rank = (bolt: number): number => across.indexOf(bolt);
  const ease = [...numbers].sort((a, b) => far(b) - far(a) || rank(a) - rank(b));
  return {
    ease,
    farSide: known ? ease.filter((bolt) => far(bolt) > BEYOND) : [],
    nutsOnWhenBroken: true,
    takeOff: ease,
    says: [
      'Slacken each a part of a turn, far side first, round after round; no bolt comes out yet.',
      'Break the joint with every nut still on by some turns, away from you, and watch it.',
      'Only when it is broken, drained and quiet are the nuts taken off.',
    ],
    sources: { farSideFirst: { kind: 'common practice, no source' }, nutsOn: REPORTS },
    asks: known ? [] : asksOf(placed, stands),
  };
}

/** From -1, nearest, to 1, farthest; figures this close are equal. */
function farnessOf(points: readonly Point[], stands: Point): number[] {
  const [cx, cy] = middleOf(points);
  const length = Math.hypot(...stands);
  const along = points.map(([x, y]) => -((x - cx) * stands[0] + (y - cy) * stands[1]) / length);
  const most = Math.max(...along.map(Math.abs));
  return along.map((one) => (most === 0 ? 0 : Math.round((100 * one) / most) / 100));
}

const asksOf = (points: readonly Point[] | null, stands: Point | null): string[] => [
  ...(points === null ? ['where the bolts lie'] : []),
  ...(stands === null ? ['from which side the joint is worked on: the far side opens first'] : []),
];
