// How many spares to hold so that they last with a stated chance.

import { limits } from '../limits.ts';
import { carry } from '../quantity/carry.ts';
import { entered, newSheet, quantity, type Sheet } from '../quantity/sheet.ts';
import {
  type Counts,
  chanceOf,
  meanOf,
  poissonCounts,
  renewalCounts,
  shortOf,
  stockFor,
  upTo,
} from './demand.ts';
import type { SparesInput, SparesOutput } from './spares-model.ts';
import { poissonSource, renewalSource } from './tables/sources.ts';

/** The stock is chosen at the best figures; how sure it is then varies with theirs. */
export function sparesOf(input: SparesInput) {
  const stock = stockFor(countsOf(input), input.serviceLevel);
  return { ok: true, result: carry(input, (one: SparesInput) => solve(one, stock)) } as const;
}

function countsOf({ fitted, rate, shape, scale, hours }: SparesInput): Counts {
  if (shape === undefined || scale === undefined) {
    return poissonCounts(Math.max(0, fitted * (rate?.value ?? 0) * hours.value));
  }
  const lives = { shape: shape.value, scale: scale.value };
  return renewalCounts(lives, hours.value, fitted);
}

function solve(input: SparesInput, stock: number): SparesOutput {
  const counts = countsOf(input);
  const achieved = upTo(counts, stock);
  const byRate = input.rate !== undefined;
  const mean = byRate
    ? input.fitted * (input.rate?.value ?? 0) * input.hours.value
    : meanOf(counts);
  const short = shortOf(counts, stock);
  const sheet = newSheet();
  sheet.take('n', 'places alike', input.fitted, '1', entered);
  sheet.take('t', 'hours each runs', input.hours.value, 'h', entered);
  lawRows(sheet, input, mean);
  countRows(sheet, counts, stock, byRate);
  shortRows(sheet, { stock, mean, short });
  return {
    stock,
    achieved: quantity(achieved, '1'),
    expectedDemand: quantity(mean, '1'),
    expectedShort: quantity(short, '1'),
    table: tableOf(counts, stock),
    working: sheet.rows,
    cautions: [...cautionsOf(input)],
    notWorkedOut: [],
  };
}

function lawRows(sheet: Sheet, { rate, shape, scale }: SparesInput, mean: number): void {
  if (shape === undefined || scale === undefined) {
    sheet.take('λ', 'failures an hour of each', rate?.value ?? 0, '1/h', entered);
    sheet.work('m', 'demand to be expected', 'n*λ*t', mean, '1', poissonSource);
    return;
  }
  sheet.take('β', 'shape', shape.value, '1', entered);
  sheet.take('η', 'scale', scale.value, 'h', entered);
  sheet.take('m', 'demand to be expected', mean, '1', renewalSource);
}

/** The chance of each count, added up; long ones are cut to their sum. */
function countRows(sheet: Sheet, counts: Counts, stock: number, byRate: boolean): void {
  const from = byRate ? poissonSource : renewalSource;
  const enough = upTo(counts, stock);
  if (stock > limits.life.termsInARow || counts.from > 0) {
    sheet.take('P', 'chance that the stock is enough', enough, '1', from);
    return;
  }
  const names: string[] = [];
  for (let k = 0; k <= stock; k += 1) {
    const expression = k === 0 ? 'exp(-m)' : `p_${k - 1}*m/${k}`;
    const text = `chance that ${k} are asked for`;
    const p = chanceOf(counts, k);
    sheet.work(`p_${k}`, text, byRate ? expression : String(p), p, '1', from);
    names.push(`p_${k}`);
  }
  sheet.work('P', 'chance that the stock is enough', names.join(' + '), enough, '1', from);
}

type Short = { readonly stock: number; readonly mean: number; readonly short: number };

function shortRows(sheet: Sheet, { stock, mean, short }: Short): void {
  const text = 'short on the average';
  const known = sheet.rows.some(({ symbol }) => symbol === 'p_0');
  // m less what the stock serves: a small difference of large figures is no check.
  const sound = known && short > 1e-4 * Math.max(1, mean);
  const served = Array.from({ length: stock }, (_, k) => `${stock - k}*p_${k}`);
  const said = [`m - ${stock}`, ...served].join(' + ');
  const source = { kind: 'computed', by: 'a sum over all counts' } as const;
  sheet.work('s', text, sound ? said : String(short), short, '1', source);
}

function tableOf(counts: Counts, stock: number): SparesOutput['table'] {
  const { tableRows } = limits.life;
  const last = Math.max(9, stock + 3);
  const first = Math.max(0, last + 1 - tableRows);
  return Array.from({ length: last - first + 1 }, (_, at) => ({
    stock: first + at,
    probability: quantity(upTo(counts, first + at), '1'),
  }));
}

function cautionsOf({ rate, shape, fitted }: SparesInput): readonly string[] {
  const cautions =
    rate !== undefined
      ? ['A constant rate is taken: failures come as often when new as when old.']
      : ['Each is taken as new at the start, and renewed only when it fails.'];
  if (fitted > 1) {
    cautions.push('The places are taken as independent: one cause that fails all is not in it.');
  }
  if ((shape?.value ?? 1) < 0.5) {
    cautions.push('With a shape below 0.5 the chances are good to about four places only.');
  }
  return cautions;
}
