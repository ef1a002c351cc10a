// The outline of a joint from its hole positions: a ring's circle, or the hull with round corners.

import { path } from './svg.ts';

export type Point = { readonly x: number; readonly y: number };

/** The least distance between any two points; one point alone is infinitely far. */
export const nearest = (points: readonly Point[]): number => {
  let least = Number.POSITIVE_INFINITY;
  points.forEach((a, i) => {
    for (const b of points.slice(i + 1)) least = Math.min(least, Math.hypot(a.x - b.x, a.y - b.y));
  });
  return least;
};

/** The circle through all points about their middle, or null when they don't lie on one. */
export const isRing = (points: readonly Point[]): (Point & { readonly radius: number }) | null => {
  if (points.length < 3) return null;
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  const mean = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0) / list.length;
  const boxed = {
    x: (Math.min(...xs) + Math.max(...xs)) / 2,
    y: (Math.min(...ys) + Math.max(...ys)) / 2,
  };
  for (const middle of [{ x: mean(xs), y: mean(ys) }, boxed]) {
    const radii = points.map((p) => Math.hypot(p.x - middle.x, p.y - middle.y));
    const radius = mean(radii);
    if (points.length > 4 && radii.every((r) => Math.abs(r - radius) < radius * 0.02))
      return { ...middle, radius };
    if (points.length <= 4 && isRegular(points, middle, radius)) return { ...middle, radius };
  }
  return null;
};

/** Three or four holes make a ring only when evenly spaced; a rectangle also lies on a circle. */
const isRegular = (points: readonly Point[], middle: Point, radius: number): boolean => {
  const angles = points
    .map((p) => Math.atan2(p.y - middle.y, p.x - middle.x))
    .sort((a, b) => a - b);
  const step = (2 * Math.PI) / points.length;
  return (
    points.every(
      (p) => Math.abs(Math.hypot(p.x - middle.x, p.y - middle.y) - radius) < radius * 0.02,
    ) && angles.every((angle, i) => Math.abs(angle - (angles[0] ?? 0) - i * step) < 0.05)
  );
};

/** Convex hull, anticlockwise in a y-up frame (Andrew's monotone chain). */
export const hull = (points: readonly Point[]): readonly Point[] => {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  if (sorted.length < 3) return sorted;
  const half = (list: readonly Point[]): readonly Point[] => {
    const chain: Point[] = [];
    for (const p of list) {
      while (chain.length >= 2 && turn(chain.at(-2), chain.at(-1), p) <= 0) chain.pop();
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half([...sorted].reverse())];
};

const turn = (a: Point | undefined, b: Point | undefined, c: Point): number =>
  a === undefined || b === undefined ? 1 : (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

/** The hull grown by `reach`, with corners that are arcs about the hull's own points. */
export const cornerPath = (points: readonly Point[], reach: number): string => {
  const first = points[0];
  if (first === undefined) return '';
  if (points.length === 1) {
    const { x, y } = first;
    return path(
      'M',
      x - reach,
      y,
      'A',
      reach,
      reach,
      '0 1 0',
      x + reach,
      y,
      'A',
      reach,
      reach,
      '0 1 0',
      x - reach,
      y,
      'Z',
    );
  }
  const parts: (string | number)[] = [];
  points.forEach((p, i) => {
    const before = points[(i - 1 + points.length) % points.length] ?? p;
    const after = points[(i + 1) % points.length] ?? p;
    const from = normal(before, p);
    const to = normal(p, after);
    parts.push(i === 0 ? 'M' : 'L', p.x + from.x * reach, p.y + from.y * reach);
    parts.push('A', reach, reach, '0 0 1', p.x + to.x * reach, p.y + to.y * reach);
  });
  return path(...parts, 'Z');
};

const normal = (a: Point, b: Point): Point => {
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  return { x: (b.y - a.y) / length, y: -(b.x - a.x) / length };
};
