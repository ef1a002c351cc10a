// Uncertainty carried through a model: first order (GUM), and by draws from a seed (GUM, Part 1).

import { chance, meanAndSd, normals, quantile } from './chance.ts';

export type Uncertain = {
  readonly value: number;
  /** Standard uncertainty. */
  readonly u: number;
  readonly kind?: 'normal' | 'rectangular';
  readonly degreesOfFreedom?: number;
};

export type Model = (x: readonly number[]) => number;

export type Linear = {
  readonly value: number;
  readonly u: number;
  /** What each input adds: slope times its standard uncertainty, with its sign. */
  readonly parts: readonly number[];
  /** Welch and Satterthwaite; null: as many as one likes. */
  readonly degreesOfFreedom: number | null;
};

// The slope is taken close by, so that a bend does not count as spread.
const CLOSE = 0.01;

/** First order: each slope times its standard uncertainty, put together with any correlation. */
export function linear(
  model: Model,
  inputs: readonly Uncertain[],
  correlation: (i: number, j: number) => number = () => 0,
): Linear {
  const best = inputs.map(({ value }) => value);
  const parts = inputs.map(({ u }, at) => {
    if (u === 0) return 0;
    const moved = (by: number) => model(best.map((value, i) => (i === at ? value + by : value)));
    return (moved(CLOSE * u) - moved(-CLOSE * u)) / (2 * CLOSE);
  });
  let square = 0;
  parts.forEach((a, i) => {
    parts.forEach((b, j) => {
      square += i === j ? a * a : a * b * correlation(i, j);
    });
  });
  const u = Math.sqrt(Math.max(0, square));
  let weight = 0;
  parts.forEach((part, at) => {
    const degrees = inputs[at]?.degreesOfFreedom;
    if (degrees !== undefined) weight += part ** 4 / degrees;
  });
  const degreesOfFreedom = weight > 0 ? u ** 4 / weight : null;
  return { value: model(best), u, parts, degreesOfFreedom };
}

export type Drawn = {
  readonly u: number;
  readonly low: number;
  readonly high: number;
  /** Of the draws, how many had an answer. */
  readonly share: number;
};

const TAIL = 0.025;
const ROOT3 = Math.sqrt(3);

/**
 * Draws the inputs and works out all figures of a model; each figure's spread and its 2.5 % and
 * 97.5 % points; null where fewer than half the draws had an answer.
 */
export function monteCarlo(
  inputs: readonly Uncertain[],
  model: (x: Float64Array, out: Float64Array) => void,
  outputs: number,
  draws: number,
  seed: number,
): readonly (Drawn | null)[] {
  const next = chance(seed);
  const normal = normals(next);
  const x = Float64Array.from(inputs, ({ value }) => value);
  const moving = inputs.flatMap(({ value, u, kind }, at) =>
    u > 0 ? [{ at, value, u, rectangular: kind === 'rectangular' }] : [],
  );
  const out = new Float64Array(outputs);
  const kept = Array.from({ length: outputs }, () => new Float64Array(draws));
  const counts = new Array<number>(outputs).fill(0);
  for (let draw = 0; draw < draws; draw += 1) {
    for (const { at, value, u, rectangular } of moving) {
      x[at] = value + u * (rectangular ? ROOT3 * (2 * next() - 1) : normal());
    }
    model(x, out);
    for (let k = 0; k < outputs; k += 1) {
      const figure = out[k] ?? Number.NaN;
      const values = kept[k];
      const count = counts[k] ?? 0;
      if (values === undefined || !Number.isFinite(figure)) continue;
      values[count] = figure;
      counts[k] = count + 1;
    }
  }
  return kept.map((values, k) => {
    const count = counts[k] ?? 0;
    if (count * 2 < draws || count < 2) return null;
    const found = values.subarray(0, count);
    const u = meanAndSd(found).sd;
    const low = quantile(found, TAIL);
    return { u, low, high: quantile(found, 1 - TAIL), share: count / draws };
  });
}

export type Line = {
  readonly intercept: number;
  readonly slope: number;
  readonly uIntercept: number;
  readonly uSlope: number;
  readonly correlation: number;
  /** Of the points about the line. */
  readonly sd: number;
};

/** Least-squares line with the uncertainty of its two figures (GUM H.3); three points or more. */
export function fitLine(xs: readonly number[], ys: readonly number[]): Line | null {
  const n = xs.length;
  if (n < 3 || ys.length !== n) return null;
  const [sx, sy] = [xs, ys].map((all) => all.reduce((sum, one) => sum + one, 0)) as [
    number,
    number,
  ];
  const sxx = xs.reduce((sum, x) => sum + x * x, 0);
  const sxy = xs.reduce((sum, x, at) => sum + x * (ys[at] ?? 0), 0);
  const d = n * sxx - sx * sx;
  if (!(d > 0)) return null;
  const slope = (n * sxy - sx * sy) / d;
  const intercept = (sy * sxx - sx * sxy) / d;
  const rest = xs.reduce((sum, x, at) => sum + ((ys[at] ?? 0) - intercept - slope * x) ** 2, 0);
  const sd = Math.sqrt(rest / (n - 2));
  const uIntercept = sd * Math.sqrt(sxx / d);
  const uSlope = sd * Math.sqrt(n / d);
  return { intercept, slope, uIntercept, uSlope, correlation: -sx / Math.sqrt(n * sxx), sd };
}
