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
  sumRows(list, { w: sums.w, t, y, tt, ty }, sheet);
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

/** Readings of which the sums are written out; of more the sums alone stand. */
const WRITTEN_OUT = 12;
const SHOWN = 60;

type Sums = {
  readonly w: number;
  readonly t: number;
  readonly y: number;
  readonly tt: number;
  readonly ty: number;
};

function sumRows(list: readonly Reading[], { w, t, y, tt, ty }: Sums, sheet: Sheet): void {
  list.slice(0, SHOWN).forEach(({ minute, celsius }, at) => {
    sheet.take(`T${at + 1}`, `reading at minute ${minute}`, celsius, 'Cel', measured);
  });
  const row = (
    symbol: string,
    text: string,
    term: (above: string, minute: number) => string,
    value: number,
    unit: string,
    over = '',
  ) => {
    const terms = list.map(({ minute }, at) => term(`(T${at + 1} - T_a)`, minute));
    const expression = over === '' ? terms.join(' + ') : `(${terms.join(' + ')})/${over}`;
    if (list.length > WRITTEN_OUT) sheet.take(symbol, text, value, unit, own);
    else sheet.work(symbol, text, expression, value, unit, own);
  };
  row('W', 'weights, (T - T_a)^2 each', (above) => `${above}^2`, w, 'K2');
  row('t_m', 'mean minute, weighed', (above, at) => `${above}^2*${at}`, t, 'min', 'W');
  row('y_m', 'mean of ln(T - T_a), weighed', (above) => `${above}^2*ln${above}`, y, '1', 'W');
  const spread = (above: string, at: number) => `${above}^2*(${at} - t_m)`;
  row('S_tt', 'spread of the minutes', (above, at) => `${above}^2*(${at} - t_m)^2`, tt, 'K2.min2');
  const along = (above: string, at: number) => `${spread(above, at)}*(ln${above} - y_m)`;
  row('S_ty', 'fall of the logarithm with them', along, ty, 'K2.min');
}
