// How many will be asked for: the Poisson law, and renewals of items that are new at the start.

import { limits } from '../limits.ts';
import { lnGamma } from '../quantity/distribution.ts';
import { gamma, gammaBelow } from '../quantity/special.ts';

/** The chance of each count from `from` on; what lies outside is nothing. */
export type Counts = { readonly from: number; readonly chance: Float64Array };

const NOTHING = 1e-18;

/** Worked outwards from the likeliest count, so that no start is too small for a number. */
export function poissonCounts(mean: number): Counts {
  if (mean === 0) return { from: 0, chance: Float64Array.of(1) };
  const middle = Math.floor(mean);
  const top = Math.exp(middle * Math.log(mean) - mean - lnGamma(middle + 1));
  const down: number[] = [];
  for (let k = middle, p = top; k > 0 && p > NOTHING * top; k -= 1) {
    p *= k / mean;
    down.push(p);
  }
  const up: number[] = [];
  for (let k = middle + 1, p = top; p > NOTHING * top; k += 1) {
    p *= mean / k;
    up.push(p);
  }
  const chance = Float64Array.from([...down.reverse(), top, ...up]);
  return { from: middle - down.length, chance: whole(chance) };
}

function whole(chance: Float64Array): Float64Array {
  const sum = chance.reduce((all, one) => all + one, 0);
  return chance.map((one) => one / sum);
}

export type Lives = { readonly shape: number; readonly scale: number };

/**
 * Chance that one place has had its k-th failure by the end, k = 1, 2, …: the law of lives is
 * folded with itself on two grids, and the error that falls with their step is taken out.
 */
export function renewalsBy(lives: Lives, hours: number): readonly number[] {
  const { cells } = limits.life;
  const fine = hours / lives.scale > 20 ? 4 * cells : 2 * cells;
  const [coarse, close] = [folded(lives, hours, fine / 2), folded(lives, hours, fine)];
  const gain = 2 ** Math.min(2, 1 + lives.shape) - 1;
  return close.map((one, at) => {
    const better = one + (one - (coarse[at] ?? 0)) / gain;
    return Math.min(1, Math.max(0, better));
  });
}

// Each life is spread over its cell by its own mean there, so that the rule is of second order.
function folded({ shape, scale }: Lives, hours: number, cells: number): readonly number[] {
  const step = hours / cells;
  const mean = scale * gamma(1 + 1 / shape);
  const failed = new Float64Array(cells + 1);
  const weight = new Float64Array(cells + 1);
  let areaBefore = 0;
  for (let at = 1; at <= cells; at += 1) {
    const share = ((at * step) / scale) ** shape;
    failed[at] = -Math.expm1(-share);
    const area = mean * gammaBelow(1 / shape, share);
    const [from, to] = [(at - 1) * step, at * step];
    const mass = (failed[at] ?? 0) - (failed[at - 1] ?? 0);
    const first = from * (1 - (failed[at - 1] ?? 0)) - to * (1 - (failed[at] ?? 0));
    const late = (first + area - areaBefore - from * mass) / step;
    weight[at - 1] = (weight[at - 1] ?? 0) + mass - late;
    weight[at] = (weight[at] ?? 0) + late;
    areaBefore = area;
  }
  const found: number[] = [failed[cells] ?? 0];
  let last = failed;
  for (let k = 2; k <= limits.life.renewals && (found.at(-1) ?? 0) > 1e-16; k += 1) {
    const next = new Float64Array(cells + 1);
    for (let at = 1; at <= cells; at += 1) {
      let sum = 0;
      for (let back = 0; back < at; back += 1) sum += (weight[back] ?? 0) * (last[at - back] ?? 0);
      next[at] = sum;
    }
    last = next;
    found.push(last[cells] ?? 0);
  }
  return found;
}

/** Of so many places alike, all new at the start. */
export function renewalCounts(lives: Lives, hours: number, fitted: number): Counts {
  const by = [1, ...renewalsBy(lives, hours)];
  const one = by.map((chance, at) => Math.max(0, chance - (by[at + 1] ?? 0)));
  let square: Counts = trimmed({ from: 0, chance: Float64Array.from(one) });
  let all: Counts | null = null;
  for (let left = fitted; left > 0; left = Math.floor(left / 2)) {
    if (left % 2 === 1) all = all === null ? square : together(all, square);
    if (left > 1) square = together(square, square);
  }
  return all ?? square;
}

function together(a: Counts, b: Counts): Counts {
  const chance = new Float64Array(a.chance.length + b.chance.length - 1);
  for (let i = 0; i < a.chance.length; i += 1) {
    const one = a.chance[i] ?? 0;
    for (let j = 0; j < b.chance.length; j += 1) {
      chance[i + j] = (chance[i + j] ?? 0) + one * (b.chance[j] ?? 0);
    }
  }
  return trimmed({ from: a.from + b.from, chance });
}

function trimmed({ from, chance }: Counts): Counts {
  let [low, high] = [0, chance.length];
  while (low < high - 1 && (chance[low] ?? 0) < NOTHING) low += 1;
  while (high > low + 1 && (chance[high - 1] ?? 0) < NOTHING) high -= 1;
  return { from: from + low, chance: whole(chance.slice(low, high)) };
}

export const chanceOf = ({ from, chance }: Counts, count: number): number =>
  chance[count - from] ?? 0;

/** The chance that no more than so many are asked for. */
export function upTo({ from, chance }: Counts, stock: number): number {
  let sum = 0;
  for (let at = 0; at < chance.length && from + at <= stock; at += 1) sum += chance[at] ?? 0;
  return Math.min(1, sum);
}

/** The least stock that serves with this chance. */
export function stockFor({ from, chance }: Counts, level: number): number {
  let sum = 0;
  for (let at = 0; at < chance.length; at += 1) {
    sum += chance[at] ?? 0;
    if (sum >= level - 1e-12) return from + at;
  }
  return from + chance.length - 1;
}

export const meanOf = ({ from, chance }: Counts): number =>
  chance.reduce((all, one, at) => all + one * (from + at), 0);

/** How many will be short on the average. */
export const shortOf = ({ from, chance }: Counts, stock: number): number =>
  chance.reduce((all, one, at) => all + one * Math.max(0, from + at - stock), 0);
