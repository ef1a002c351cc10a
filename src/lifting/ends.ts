// The six multipliers and the recommended weight at one end of a lift, unrounded.

import { entered, type Sheet } from '../quantity/sheet.ts';
import type { Source } from '../quantity/types.ts';
import type { LiftInput, Multiplier } from './model.ts';
import {
  type ConstantSet,
  constantsSource,
  couplingMemorySource,
  couplingSource,
  couplingTable,
  frequencySource,
  limitsSource,
  MOST_ASYMMETRY_DEG,
} from './tables/niosh.ts';
import { frequencyMultiplier, type Timing } from './timing.ts';

export type End = {
  readonly name: 'origin' | 'destination';
  readonly multipliers: Readonly<Record<Multiplier, number | null>>;
  readonly rwlKg: number | null;
  readonly li: number | null;
  readonly needs: Readonly<Record<string, readonly string[]>>;
};

export type Common = {
  readonly input: LiftInput;
  readonly set: ConstantSet;
  readonly timing: Timing;
  readonly travelCm: number | null;
  readonly shareKg: number | null;
};

/** How far the hands travel: between the two heights, or as it is given. */
export function travelOf({ origin, destination, travel }: LiftInput): number | null {
  const [from, to] = [origin?.v?.value, destination?.v?.value];
  if (from !== undefined && to !== undefined) return Math.abs(to - from);
  return travel?.value ?? null;
}

export const couplingSourceOf = (value: number): Source =>
  value === 1 ? couplingMemorySource : couplingSource;

type Row = (
  symbol: string,
  text: string,
  expression: string,
  value: number,
  unit: string,
  source: Source,
) => void;

export function endOf(name: End['name'], common: Common, sheet: Sheet): End | null {
  const given = common.input[name];
  if (given === undefined) return null;
  const tail = name === 'origin' ? '_o' : '_d';
  const at = name === 'origin' ? 'at the origin' : 'at the destination';
  const row: Row = (symbol, text, expression, value, unit, source) =>
    sheet.work(`${symbol}${tail}`, `${text} ${at}`, expression, value, unit, source);
  const multipliers = {
    ...placeMultipliers(given, common, tail, row),
    ...shared(given, common, row),
  };
  const six = Object.values(multipliers);
  const known = six.every((one): one is number => one !== null);
  const { set, shareKg } = common;
  const rwlKg = known ? six.reduce((all, one) => all * one, set.load * set.massKg) : null;
  const needs = needsOf(name, common);
  if (rwlKg === null) return { name, multipliers, rwlKg, li: null, needs };
  const product = ['HM', 'VM', 'DM', 'AM', 'FM', 'CM'].map((one) => `${one}${tail}`).join('*');
  row('RWL', 'recommended weight', `LC * ${product}`, rwlKg, 'kg', constantsSource);
  const li = shareKg === null || rwlKg === 0 ? null : shareKg / rwlKg;
  if (li !== null) row('LI', 'lifting index', `m_p/RWL${tail}`, li, '1', constantsSource);
  return { name, multipliers, rwlKg, li, needs };
}

function placeMultipliers(
  given: NonNullable<LiftInput['origin']>,
  { set }: Common,
  tail: string,
  row: Row,
) {
  const length = (cm: number) => cm / set.lengthCm;
  const unit = set.name === 'us' ? '[in_i]' : 'cm';
  const scaled = (cm: number) => (set.lengthCm === 1 ? String(cm) : `${cm}/${set.lengthCm}`);
  const far = (value: number, most: number) => value > most * (1 + 1e-12);
  let hm: number | null = null;
  if (given.h !== undefined) {
    const h = length(given.h.value);
    row('H', 'hands ahead of the ankles', scaled(given.h.value), h, unit, entered);
    const beyond = far(h, set.farH);
    hm = beyond ? 0 : set.nearH / Math.max(set.nearH, h);
    const expression = beyond ? '0' : `${set.nearH}/max(${set.nearH}, H${tail})`;
    row('HM', 'for the reach', expression, hm, '1', beyond ? limitsSource : constantsSource);
  }
  let vm: number | null = null;
  if (given.v !== undefined) {
    const v = length(given.v.value);
    row('V', 'hands above the floor', scaled(given.v.value), v, unit, entered);
    const beyond = far(v, set.highV);
    vm = beyond ? 0 : 1 - set.slopeV * Math.abs(v - set.bestV);
    const expression = beyond ? '0' : `1 - ${set.slopeV}*abs(V${tail} - ${set.bestV})`;
    row('VM', 'for the height', expression, vm, '1', beyond ? limitsSource : constantsSource);
  }
  const a = given.asymmetry?.value ?? 0;
  row('A', 'twist, in degrees,', String(a), a, 'deg', entered);
  const beyond = a > MOST_ASYMMETRY_DEG;
  const am = beyond ? 0 : 1 - 0.0032 * a;
  const expression = beyond ? '0' : `1 - 0.0032*A${tail}`;
  row('AM', 'for the twist', expression, am, '1', beyond ? limitsSource : constantsSource);
  return { hm, vm, am };
}

function shared(given: NonNullable<LiftInput['origin']>, common: Common, row: Row) {
  const { input, set, timing, travelCm } = common;
  const kneeCm = set.kneeV * set.lengthCm;
  let dm: number | null = null;
  if (travelCm !== null) {
    const d = travelCm / set.lengthCm;
    const beyond = d > set.mostD * (1 + 1e-12);
    dm = beyond ? 0 : 0.82 + set.travel / Math.max(set.leastD, d);
    const expression = beyond ? '0' : `0.82 + ${set.travel}/max(${set.leastD}, D)`;
    row('DM', 'for the travel', expression, dm, '1', beyond ? limitsSource : constantsSource);
  }
  let fm: number | null = null;
  const from = input.origin?.v?.value;
  if (timing.perMinute !== null && timing.duration !== null && from !== undefined) {
    const found = frequencyMultiplier(timing.perMinute, timing.duration, atLeast(from, kneeCm));
    fm = found.value;
    row('FM', 'for how often', found.expression, fm, '1', frequencySource);
  }
  let cm: number | null = null;
  const height = given.v?.value;
  if (input.coupling !== undefined && height !== undefined) {
    cm = couplingTable[input.coupling][atLeast(height, kneeCm) ? 1 : 0];
    row('CM', 'for the grip', String(cm), cm, '1', couplingSourceOf(cm));
  }
  return { dm, fm, cm };
}

/** `30 in` is the knee itself, whatever the last digit of its centimetres. */
const atLeast = (value: number, knee: number): boolean => value >= knee * (1 - 1e-12);

function needsOf(name: End['name'], { input, timing, travelCm, shareKg }: Common) {
  const lacks = (what: string, is: unknown) => (is === undefined || is === null ? [what] : []);
  const given = input[name];
  const v = lacks(`${name}/v`, given?.v);
  const hm = lacks(`${name}/h`, given?.h);
  const dm = travelCm === null ? [...v, ...lacks('destination/v or travel', travelCm)] : [];
  const fm = [
    ...lacks('frequency or spell', timing.perMinute),
    ...lacks('duration', timing.duration),
    ...lacks('origin/v', input.origin?.v),
  ];
  const cm = [...lacks('coupling', input.coupling), ...v];
  const rwl = [...new Set([...hm, ...v, ...dm, ...fm, ...cm])];
  const weight = shareKg === null ? ['weight'] : [];
  const li = [...rwl, ...(input.weight === undefined ? weight : lacks('people', shareKg))];
  return {
    [`${name}/rwl`]: rwl,
    [`${name}/li`]: li.length === 0 ? ['a recommended weight above nought'] : li,
    [`${name}/multipliers/hm`]: hm,
    [`${name}/multipliers/vm`]: v,
    [`${name}/multipliers/dm`]: dm,
    [`${name}/multipliers/fm`]: fm,
    [`${name}/multipliers/cm`]: cm,
  };
}
