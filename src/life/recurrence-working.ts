// The sums behind a repair history: each step of the mean function, and the power law's equation.

import { limits } from '../limits.ts';
import { entered, newSheet, type Sheet } from '../quantity/sheet.ts';
import type { WorkingRow } from '../quantity/types.ts';
import type { History } from './histories.ts';
import type { MeanRow } from './mean-function.ts';
import type { PowerLaw } from './power-law.ts';
import type { RecurrenceInput, RecurrenceOutput } from './recurrence-model.ts';
import { bySum, byTop, growthSource, nelsonSource } from './tables/sources.ts';

type Case = {
  readonly input: RecurrenceInput;
  readonly histories: readonly History[];
  readonly rows: readonly MeanRow[];
  readonly law: PowerLaw | null;
  readonly events: number;
  readonly exposure: number;
  readonly constant: RecurrenceOutput['constant'];
  readonly z: number;
};

export function recurrenceWorking(given: Case): readonly WorkingRow[] {
  const sheet = newSheet();
  const { input, events, exposure, constant, rows, law, z } = given;
  sheet.take('N', 'events', events, '1', entered);
  sheet.take('S', 'time watched, of all together', exposure, input.units, entered);
  const { rate, mtbf } = constant;
  sheet.work('ρ', 'constant rate', 'N/S', rate.value, rate.unit, growthSource);
  if (mtbf !== null)
    sheet.work('θ', 'its mean between', 'S/N', mtbf.value, input.units, growthSource);
  meanRows(sheet, rows, input, z);
  if (law !== null) lawRows(sheet, given, law);
  return sheet.rows;
}

function meanRows(sheet: Sheet, rows: readonly MeanRow[], { units }: RecurrenceInput, z: number) {
  if (rows.length > limits.life.termsInARow) {
    const { mean, t } = rows.at(-1) ?? { mean: 0, t: 0 };
    const text = `mean function at ${t} ${units}, ${rows.length} steps`;
    sheet.take(`M_${rows.length}`, text, mean, '1', bySum);
    return;
  }
  rows.forEach(({ t, value, atRisk, mean }, at) => {
    const text = `mean function at ${t} ${units}`;
    const before = at === 0 ? '' : `M_${at} + `;
    sheet.work(`M_${at + 1}`, text, `${before}${value}/${atRisk}`, mean, '1', nelsonSource);
  });
  const last = rows.length;
  const variance = rows.at(-1)?.variance ?? null;
  if (variance === null || variance === 0) return;
  const mean = rows.at(-1)?.mean ?? 0;
  sheet.take('z', 'standard deviations to each side', z, '1', bySum);
  sheet.take('v', 'its variance there, by the one named', variance, '1', bySum);
  for (const [tail, sign] of [
    ['lower', -1],
    ['upper', 1],
  ] as const) {
    const said = `M_${last} ${sign < 0 ? '-' : '+'} z*sqrt(v)`;
    const end = mean + sign * z * Math.sqrt(variance);
    // A limit near nought is a difference of like figures.
    if (Math.abs(end) < 1e-3 * mean) continue;
    sheet.work(`M_${tail}`, `${tail} normal limit there`, said, end, '1', nelsonSource);
  }
}

/** N/β = N D/E − X: the shape comes out of the sums it was put into. */
function lawRows(sheet: Sheet, { histories, input }: Case, law: PowerLaw): void {
  const { units } = input;
  const { t, events, shape, byT, sumLn, exposure } = law;
  sheet.take('T', 'the greatest end', t, units, entered);
  const by = { kind: 'computed', by: 'halving until its equation holds' } as const;
  sheet.take('β', 'shape', shape, '1', by);
  const times = histories.flatMap((one) => one.times);
  const short = (count: number) => count <= limits.life.termsInARow;
  const sum = (symbol: string, text: string, terms: readonly string[] | null, value: number) =>
    terms === null
      ? sheet.take(symbol, text, value, '1', bySum)
      : sheet.work(symbol, text, terms.join(' + ') || '0', value, '1', growthSource);
  const lns = short(times.length) ? times.map((time) => `ln(${time}/T)`) : null;
  sum('X', 'sum of ln (time/T) of the events', lns, sumLn);
  const ends = short(2 * histories.length) ? histories : null;
  const part = (of: (time: number) => string) =>
    ends?.flatMap(({ start, end }) => [of(end), ...(start > 0 ? [`-1*${of(start)}`] : [])]) ?? null;
  const [zero, one] = exposure;
  sum(
    'E',
    'sum of (end/T)^β − (start/T)^β',
    part((time) => `(${time}/T)^β`),
    zero,
  );
  const slope = part((time) => `(${time}/T)^β*ln(${time}/T)`);
  sum('D', 'its slope in β', one === 0 ? ['0'] : slope, one);
  const again = events / ((events * one) / zero - sumLn);
  sheet.work('β_s', 'shape out of its own equation', 'N/(N*D/E - X)', again, '1', growthSource);
  sheet.work('Λ', 'events of one system up to T', 'N/E', byT, '1', growthSource);
  const scale = t * byT ** (-1 / shape);
  if (Number.isFinite(scale) && scale > 0) {
    sheet.work('η', 'scale', 'T*Λ^(-1/β)', scale, units, growthSource);
  }
  const rate = (byT * shape) / t;
  sheet.work('u', 'events in a unit of time at T', 'Λ*β/T', rate, `1/(${units})`, growthSource);
  sheet.work('M_now', 'mean time between at T', '1/u', 1 / rate, units, growthSource);
  sheet.work('M_all', 'mean time between up to T', 'T/Λ', t / byT, units, growthSource);
  sheet.take('v_b', 'variance of ln β', law.vbb, '1', byTop);
  sheet.take('v_l', 'variance of ln Λ', law.vll, '1', byTop);
  sheet.take('c', 'covariance of the two', law.vlb, '1', byTop);
  const error = shape * Math.sqrt(law.vbb);
  sheet.work('e_β', 'standard error of β', 'β*sqrt(v_b)', error, '1', growthSource);
}
