// The working of a wrench setting, row by row, so that it can be done again with a pencil.

import type { Quantity, Source, WorkingRow } from '../quantity/types.ts';
import { LEAST_SHARE, RANGE_2003, RANGE_2017, type Wrench } from './wrench-check.ts';
import type { WrenchSettingInput } from './wrench-input.ts';
import type { Factor } from './wrench-setting.ts';

/** Beside the balance itself, which is statics, the public texts that state it. */
const BALANCE: Source = {
  kind: 'published',
  title: 'TM 9-254, Adapter Length Compensation; TM 1-1500-204-23-9',
  edition: 'as read in public page copies',
  place: 'fig. 4-5 and paragraph 8 (fig. 4-6 is misprinted: its L is a sum, not a product)',
};

const RUN_DOWN: Source = {
  kind: 'published',
  title: 'FAA AC 43.13-1B, Acceptable Methods, Techniques, and Practices',
  edition: '1998, as read in a public copy',
  place: 'paragraphs 7-40 c and d',
};

const FALLBACK_TOLERANCE: Source = {
  kind: 'from memory',
  of: 'ISO 6789 (4 %, and 6 % up to 10 N·m; public texts disagree on the classes)',
};

const entered: Source = { kind: 'entered', by: 'the input' };
const computed: Source = { kind: 'computed', by: 'tightening/wrench-setting' };

type Ends = { readonly torque: Quantity | null; readonly setting: Quantity | null };

export function settingWorking(
  input: WrenchSettingInput,
  factor: Factor,
  ends: Ends,
  wrench: Wrench | undefined,
): WorkingRow[] {
  const rows: WorkingRow[] = [...torqueRows(input), ...factorRows(factor)];
  const known = 'value' in factor;
  if (ends.torque !== null && ends.setting !== null && known) {
    const forward = input.setting === undefined;
    const { torque, setting } = ends;
    rows.push(
      forward
        ? row('S', 'setting of the wrench', 'T * k', setting.value, 'N.m', BALANCE)
        : row('T', 'torque at the bolt', 'S / k', torque.value, 'N.m', BALANCE),
    );
    if (!forward && input.runDown !== undefined) {
      const left = torque.value - input.runDown.value;
      rows.push(row('T_t', 'of it, what tightens', 'T - T_r', left, 'N.m', RUN_DOWN));
    }
    rows.push(...bandRows(wrench, torque.value));
  }
  return [...rows, ...rangeRows(wrench)];
}

function torqueRows({ torque, setting, runDown, includesRunDown }: WrenchSettingInput) {
  const rows: WorkingRow[] = [];
  if (runDown !== undefined) {
    rows.push(given('T_r', 'torque that turns the nut down, measured', runDown));
  }
  if (setting !== undefined) rows.push(given('S', 'setting of the wrench', setting));
  if (torque === undefined) return rows;
  rows.push(given('T_v', 'torque asked for', torque));
  const [expression, value] =
    runDown === undefined || includesRunDown
      ? ['T_v', torque.value]
      : ['T_v + T_r', torque.value + runDown.value];
  const source = runDown === undefined ? computed : RUN_DOWN;
  return [...rows, row('T', 'torque at the bolt', expression, value, 'N.m', source)];
}

function factorRows(factor: Factor): WorkingRow[] {
  if (!('value' in factor)) return [];
  const { lever, value } = factor;
  const text = 'setting over torque at the bolt';
  if (lever === null) {
    const why = `${text}: no adapter, or one at a right angle`;
    return [row('k', why, '1', 1, '1', BALANCE)];
  }
  const { wrenchMm, adapterMm, angleDeg } = lever;
  // Straight ahead, square and straight back are written without a cosine, to be exact.
  const along = angleDeg === 90 ? '0' : angleDeg === 180 ? '-1' : 'cos(a * pi / 180)';
  return [
    row('L', 'drive square to the hand', String(wrenchMm), wrenchMm, 'mm', entered),
    row('E', 'drive square to the bolt', String(adapterMm), adapterMm, 'mm', entered),
    row('a', 'angle of the adapter', String(angleDeg), angleDeg, 'deg', entered),
    row('k', text, `L / (L + E * ${along})`, value, '1', BALANCE),
  ];
}

/** What reaches the bolt when the wrench is off by its tolerance either way. */
function bandRows(wrench: Wrench | undefined, torqueNm: number): WorkingRow[] {
  if (wrench === undefined) return [];
  const usual = (wrench.maxNm ?? Number.POSITIVE_INFINITY) <= 10 ? 0.06 : 0.04;
  const stated = wrench.tolerance !== undefined;
  const p = wrench.tolerance ?? usual;
  return [
    row('p', 'tolerance of the wrench', String(p), p, '1', stated ? entered : FALLBACK_TOLERANCE),
    row('T_lo', 'least at the bolt', 'T * (1 - p)', torqueNm * (1 - p), 'N.m', computed),
    row('T_hi', 'most at the bolt', 'T * (1 + p)', torqueNm * (1 + p), 'N.m', computed),
  ];
}

function rangeRows(wrench: Wrench | undefined): WorkingRow[] {
  if (wrench?.minNm === undefined || wrench.maxNm === undefined) return [];
  const { minNm, maxNm } = wrench;
  const least = Math.max(minNm, LEAST_SHARE * maxNm);
  return [
    row('W_lo', 'lowest mark: the range begins here by 2017', String(minNm), minNm, 'N.m', {
      ...RANGE_2017,
    }),
    row('W_hi', 'greatest mark', String(maxNm), maxNm, 'N.m', entered),
    row('S_lo', 'least setting used, by 2003', `max(W_lo, ${LEAST_SHARE} * W_hi)`, least, 'N.m', {
      ...RANGE_2003,
    }),
  ];
}

const given = (symbol: string, text: string, { value, unit }: Quantity): WorkingRow =>
  row(symbol, text, String(value), value, unit, entered);

function row(
  symbol: string,
  text: string,
  expression: string,
  value: number,
  unit: string,
  source: Source,
): WorkingRow {
  return { symbol, text, expression, value, unit, source };
}
