// Gamma functions and the chi-squared figure that lives and counts are worked out with.

import { lnGamma, normalAbove, normalFor } from './distribution.ts';

const TINY = 1e-300;
const STEPS = 100_000;

export const gamma = (x: number): number => Math.exp(lnGamma(x));

/** x^a e^−x / Γ(a), what both forms of the incomplete gamma function begin with. */
const front = (a: number, x: number): number => Math.exp(a * Math.log(x) - x - lnGamma(a));

function series(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < STEPS; n += 1) {
    term *= x / (a + n);
    sum += term;
    if (term < sum * 1e-17) break;
  }
  return sum * front(a, x);
}

/** The continued fraction by Lentz. */
function fraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / (b || TINY);
  let found = d;
  for (let n = 1; n < STEPS; n += 1) {
    const by = -n * (n - a);
    b += 2;
    d = 1 / (by * d + b || TINY);
    c = b + by / c || TINY;
    found *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return found * front(a, x);
}

/** P(a, x), the regularised lower incomplete gamma function; a above nought. */
export function gammaBelow(a: number, x: number): number {
  if (x <= 0) return 0;
  if (x === Number.POSITIVE_INFINITY) return 1;
  return x < a + 1 ? series(a, x) : 1 - fraction(a, x);
}

/** Q(a, x) = 1 − P(a, x), to the last digits where it is small. */
export function gammaAbove(a: number, x: number): number {
  if (x <= 0) return 1;
  if (x === Number.POSITIVE_INFINITY) return 0;
  return x < a + 1 ? 1 - series(a, x) : fraction(a, x);
}

/** ψ(x), the slope of ln Γ. */
export function digamma(x: number): number {
  let at = x;
  let found = 0;
  while (at < 10) {
    found -= 1 / at;
    at += 1;
  }
  const s = 1 / (at * at);
  const tail = s * (1 / 12 - s * (1 / 120 - s * (1 / 252 - s * (1 / 240 - s / 132))));
  return found + Math.log(at) - 1 / (2 * at) - tail;
}

/** ψ′(x), the slope of that. */
export function trigamma(x: number): number {
  let at = x;
  let found = 0;
  while (at < 10) {
    found += 1 / (at * at);
    at += 1;
  }
  const s = 1 / (at * at);
  const tail = s * (1 / 6 - s * (1 / 30 - s * (1 / 42 - s * (1 / 30 - (5 * s) / 66))));
  return found + 1 / at + s / 2 + tail / at;
}

/** ln of the chance that a standard normal figure is above z; it goes on where that underflows. */
export function lnNormalAbove(z: number): number {
  if (z < 30) return Math.log(normalAbove(z));
  const s = 1 / (z * z);
  const tail = Math.log1p(-s * (1 - 3 * s * (1 - 5 * s * (1 - 7 * s))));
  return -0.5 * z * z - Math.log(z) - 0.5 * Math.log(2 * Math.PI) + tail;
}

export const chiSquaredBelow = (x: number, degrees: number): number =>
  gammaBelow(degrees / 2, x / 2);

export const chiSquaredAbove = (x: number, degrees: number): number =>
  gammaAbove(degrees / 2, x / 2);

/** The figure below which chi-squared with so many degrees of freedom lies with this chance. */
export function chiSquaredFor(below: number, degrees: number): number {
  const cube = 2 / (9 * degrees);
  const guess = degrees * (1 - cube + normalFor(1 - below) * Math.sqrt(cube)) ** 3;
  const past = (x: number) =>
    below > 0.5 ? chiSquaredAbove(x, degrees) < 1 - below : chiSquaredBelow(x, degrees) > below;
  let [low, high] = [Math.max(guess, 1e-8), Math.max(guess, 1e-8)];
  for (let grow = 0; grow < 1_000 && past(low); grow += 1) low /= 2;
  for (let grow = 0; grow < 1_000 && !past(high); grow += 1) high *= 1.5;
  for (let halve = 0; halve < 200; halve += 1) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (past(middle)) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
