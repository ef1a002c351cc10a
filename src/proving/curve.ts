// A smooth curve through reference points, and the flow a displacement pump should give.

export type Point = { readonly x: number; readonly y: number };

export type Piece = {
  readonly from: Point;
  readonly to: Point;
  /** Slope times width at both ends. */
  readonly rise: readonly [number, number];
};

const slope = (a: Point, b: Point): number => (b.y - a.y) / (b.x - a.x);

// Of the parabola through three neighbours at the one in the middle: parabolas come out exact.
function tangent(points: readonly Point[], at: number): number {
  const [before, here, after] = [points[at - 1], points[at], points[at + 1]];
  if (here === undefined) return 0;
  if (before !== undefined && after !== undefined) {
    const [h, k] = [here.x - before.x, after.x - here.x];
    return (k * slope(before, here) + h * slope(here, after)) / (h + k);
  }
  const inner = before ?? after;
  if (inner === undefined) return 0;
  const further = points[at + (before === undefined ? 2 : -2)];
  const end = slope(here, inner);
  if (further === undefined) return end;
  const next = slope(inner, further);
  return end + ((end - next) * (inner.x - here.x)) / (further.x - here.x);
}

/** The piece of the curve that holds x; null outside the points. They stand in order of x. */
export function pieceAt(points: readonly Point[], x: number): Piece | null {
  for (let at = 1; at < points.length; at += 1) {
    const [from, to] = [points[at - 1], points[at]];
    if (from === undefined || to === undefined || x < from.x || x > to.x) continue;
    const width = to.x - from.x;
    return { from, to, rise: [tangent(points, at - 1) * width, tangent(points, at) * width] };
  }
  return null;
}

export function heightAt({ from, to, rise: [a, b] }: Piece, x: number): number {
  const t = (x - from.x) / (to.x - from.x);
  const step = to.y - from.y;
  return from.y + t * (a + t * (3 * step - 2 * a - b + t * (-2 * step + a + b)));
}

export function slopeAt({ from, to, rise: [a, b] }: Piece, x: number): number {
  const width = to.x - from.x;
  const t = (x - from.x) / width;
  const step = to.y - from.y;
  return (a + t * (2 * (3 * step - 2 * a - b) + t * 3 * (-2 * step + a + b))) / width;
}

/** A reference point of a displacement pump: 1/min, kPa, and what slips back, m³/h. */
export type SlipPoint = {
  readonly speed: number;
  readonly pressure: number;
  readonly slip: number;
};

export type SlipModel = {
  /** m³/h a kPa and a turn a minute: slip grows with the pressure, and with the speed. */
  readonly byPressure: number;
  readonly bySpeed: number;
  readonly at: (speed: number, pressure: number) => number;
};

/**
 * Slip as a share of the pressure and of the speed, by least squares; what a point differs by is
 * handed to its neighbourhood, so that the curve goes through all points.
 */
export function slipModel(points: readonly SlipPoint[]): SlipModel | null {
  if (points.length === 0) return null;
  let [pp, pn, nn, ps, ns] = [0, 0, 0, 0, 0];
  for (const { speed, pressure, slip } of points) {
    pp += pressure * pressure;
    pn += pressure * speed;
    nn += speed * speed;
    ps += pressure * slip;
    ns += speed * slip;
  }
  const d = pp * nn - pn * pn;
  const both = d > 1e-9 * pp * nn;
  const byPressure = both ? (ps * nn - ns * pn) / d : pp > 0 ? ps / pp : 0;
  const bySpeed = both ? (ns * pp - ps * pn) / d : pp > 0 ? 0 : ns / nn;
  const plain = (speed: number, pressure: number) => byPressure * pressure + bySpeed * speed;
  const [wideN, wideP] = [Math.sqrt(nn / points.length), Math.sqrt(pp / points.length) || 1];
  const at = (speed: number, pressure: number): number => {
    let [sum, weights] = [0, 0];
    for (const point of points) {
      const left = point.slip - plain(point.speed, point.pressure);
      const square =
        ((speed - point.speed) / wideN) ** 2 + ((pressure - point.pressure) / wideP) ** 2;
      if (square < 1e-18) return plain(speed, pressure) + left;
      sum += left / square;
      weights += 1 / square;
    }
    return plain(speed, pressure) + sum / weights;
  };
  return { byPressure, bySpeed, at };
}
