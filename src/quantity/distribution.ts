// Normal and Student's t distribution: chance beyond a figure, and the figure for a chance.

const TINY = 1e-300;
const STEPS = 20_000;

/** P(1/2, x): the regularised incomplete gamma function by its series, for small x. */
function halfGammaSeries(x: number): number {
  let term = 1 / Math.sqrt(Math.PI);
  let sum = 2 * term;
  term *= 2;
  for (let n = 1; n < STEPS; n += 1) {
    term *= x / (n + 0.5);
    sum += term;
    if (term < sum * 1e-17) break;
  }
  return sum * Math.sqrt(x) * Math.exp(-x);
}

/** Q(1/2, x) by its continued fraction (Lentz), for large x. */
function halfGammaFraction(x: number): number {
  let b = x + 0.5;
  let c = 1 / TINY;
  let d = 1 / b;
  let found = d;
  for (let n = 1; n < STEPS; n += 1) {
    const a = -n * (n - 0.5);
    b += 2;
    d = 1 / (a * d + b || TINY);
    c = b + a / c || TINY;
    found *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return (found * Math.sqrt(x) * Math.exp(-x)) / Math.sqrt(Math.PI);
}

/** The chance that a standard normal figure is above z, to the last digits far out too. */
export function normalAbove(z: number): number {
  const x = (z * z) / 2;
  const outer = x < 1.5 ? 1 - halfGammaSeries(x) : halfGammaFraction(x);
  return z >= 0 ? outer / 2 : 1 - outer / 2;
}

export const normalBelow = (z: number): number => normalAbove(-z);

const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313,
  -176.61502916214059, 12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6,
  1.5056327351493116e-7,
] as const;

export function lnGamma(x: number): number {
  let sum = 0;
  LANCZOS.forEach((c, at) => {
    sum += at === 0 ? c : c / (x + at - 1);
  });
  const t = x + 6.5;
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(t) - t + Math.log(sum);
}

/** ln Γ(a + 1/2) − ln Γ(a); the difference of two large figures is taken by its series. */
function lnGammaStep(a: number): number {
  if (a < 30) return lnGamma(a + 0.5) - lnGamma(a);
  return 0.5 * Math.log(a) - 1 / (8 * a) + 1 / (192 * a ** 3) - 1 / (640 * a ** 5);
}

/** The continued fraction of the incomplete beta function (Lentz). */
function betaFraction(a: number, b: number, x: number): number {
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1) || TINY);
  let found = d;
  for (let m = 1; m < STEPS; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / (1 + even * d || TINY);
    c = 1 + even / c || TINY;
    found *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + odd * d || TINY);
    c = 1 + odd / c || TINY;
    found *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return found;
}

// Beyond so many degrees of freedom it differs from the normal by less than a part in 1e8.
const MANY = 1e9;

/** The chance that Student's t with so many degrees of freedom is above a figure. */
export function studentAbove(t: number, degrees: number): number {
  if (degrees > MANY) return normalAbove(t);
  if (t < 0) return 1 - studentAbove(-t, degrees);
  const a = degrees / 2;
  const square = t * t;
  const inner = square / (degrees + square);
  // x^(ν/2) (1 − x)^(1/2) / B(ν/2, 1/2), with x = ν/(ν + t²).
  const front = Math.exp(
    lnGammaStep(a) - 0.5 * Math.log(Math.PI) - a * Math.log1p(square / degrees),
  );
  const factor = front * Math.sqrt(inner);
  if (inner > 1.5 / (a + 2.5)) {
    return (factor * betaFraction(a, 0.5, degrees / (degrees + square))) / (2 * a);
  }
  return 0.5 - factor * betaFraction(0.5, a, inner);
}

/** The figure with this chance above it, found by halving; `above` falls from 1 to 0. */
function figureFor(above: (figure: number) => number, risk: number): number {
  if (risk > 0.5) return -figureFor(above, 1 - risk);
  let [low, high] = [0, 1];
  for (let grow = 0; grow < 1_000 && above(high) > risk; grow += 1) high *= 2;
  for (let halve = 0; halve < 200; halve += 1) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (above(middle) > risk) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

export const normalFor = (risk: number): number => figureFor(normalAbove, risk);

export const studentFor = (risk: number, degrees: number): number =>
  figureFor((t) => studentAbove(t, degrees), risk);
