// One time constant through readings above the ambient: a straight line through their logarithms.

import type { Sheet } from '../quantity/sheet.ts';
import type { Source } from '../quantity/types.ts';

export type Reading = { readonly minute: number; readonly celsius: number };

export type Cooling = {
  readonly timeConstantMin: number;
  /** Of the curve at minute 0. */
  readonly startCelsius: number;
  /** Of the first reading that counts. */
  readonly firstMinute: number;
  readonly leftOut: number;
  /** Null: there are no readings. */
  readonly spanMin: number | null;
  readonly worstCelsius: number | null;
};

const own: Source = { kind: 'computed', by: 'cool-down' };
const measured: Source = { kind: 'measured', instrument: 'the thermometer of the readings' };

/**
 * Least squares of ln(T − Ta) against time, each weighed with (T − Ta)², since one kelvin near the
 * ambient moves the logarithm most. Null: from the highest reading on nothing falls.
 */
export function fitted(all: readonly Reading[], ambient: number, sheet: Sheet): Cooling | null {
  const top = Math.max(...all.map(({ celsius }) => celsius));
  // Where the highest stands twice the peak lasts until the later one.
  const from = all.findLastIndex(({ celsius }) => celsius === top);
  const list = all.slice(from);
  const first = list[0];
  const last = list.at(-1);
  if (first === undefined || last === undefined || list.length < 2) return null;
  const sums = { w: 0, t: 0, y: 0 };
  const terms = list.map(({ minute, celsius }) => {
    const above = celsius - ambient;
    return { minute, weight: above * above, y: Math.log(above) };
  });
  for (const { minute, weight, y } of terms) {
    sums.w += weight;
    sums.t += weight * minute;
    sums.y += weight * y;
  }
  const [t, y] = [sums.t / sums.w, sums.y / sums.w];
  let tt = 0;
  let ty = 0;
  for (const term of terms) {
    tt += term.weight * (term.minute - t) ** 2;
    ty += term.weight * (term.minute - t) * (term.y - y);
  }
  const timeConstantMin = -tt / ty;
  if (!(timeConstantMin > 0) || !Number.isFinite(timeConstantMin)) return null;
  const startCelsius = ambient + Math.exp(y + t / timeConstantMin);
  if (!Number.isFinite(startCelsius)) return null;
  for (const [at, { minute, celsius }] of list.entries()) {
    if (at >= SHOWN) break;
    sheet.take(`T${at + 1}`, `reading at minute ${minute}`, celsius, 'Cel', measured);
  }
  sheet.take('W', 'sum of the weights (T - T_a)^2', sums.w, 'K2', own);
  sheet.take('t_m', 'weighed mean of the minutes', t, 'min', own);
  sheet.take('y_m', 'weighed mean of ln(T - T_a)', y, '1', own);
  sheet.take('S_tt', 'weighed sum of (t - t_m)^2', tt, 'min2', own);
  sheet.take('S_ty', 'weighed sum of (t - t_m)*(ln(T - T_a) - y_m)', ty, 'min', own);
  sheet.work('tau', 'time constant', '-S_tt/S_ty', timeConstantMin, 'min', own);
  sheet.work('T_0', 'the curve at minute 0', 'T_a + exp(y_m + t_m/tau)', startCelsius, 'Cel', own);
  const curve = (minute: number) =>
    ambient + (startCelsius - ambient) * Math.exp(-minute / timeConstantMin);
  return {
    timeConstantMin,
    startCelsius,
    firstMinute: first.minute,
    leftOut: from,
    spanMin: last.minute - first.minute,
    worstCelsius: Math.max(...list.map(({ minute, celsius }) => Math.abs(celsius - curve(minute)))),
  };
}

/** Readings written out in the working; the sums hold all. */
const SHOWN = 60;
