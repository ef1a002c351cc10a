// What each leg of a sling carries, by statics: the pulls of all legs together hold the weight up.

import { entered, newSheet } from '../quantity/sheet.ts';
import type { Source, Working } from '../quantity/types.ts';

export type LegLoads = {
  /** One a leg, as the mass that would pull alike: what the marked safe load is held against. */
  readonly loadsKg: readonly number[];
  /** The pull in the worst leg. */
  readonly tensionN: number;
  readonly working: Working;
  /** What is to be said besides, by its name. */
  readonly cautions: readonly ('legsFour' | 'legsWide')[];
};

/** Standard gravity. */
const GRAVITY = 9.80665;
const WIDE_DEG = 60;

const statics: Source = { kind: 'computed', by: 'statics' };

/**
 * `anglesDeg` of the legs from straight down: one for all, or one each of two unlike legs. Three
 * legs stand evenly round and share alike. Of four stiff points two opposite ones may hold all:
 * two are counted. Null where the angle asked for is not given, or the legs can't balance.
 */
export function legLoads(
  weightKg: number,
  legs: number,
  anglesDeg: readonly number[],
): LegLoads | null {
  const [first, second] = anglesDeg;
  const sheet = newSheet();
  sheet.take('m', 'weight on the sling', weightKg, 'kg', entered);
  const given = legs === 1 ? (first ?? 0) : first;
  if (given === undefined || anglesDeg.some((deg) => deg < 0 || deg >= 90)) return null;
  if (legs === 1 && given !== 0) return null;
  const loadsKg: number[] = [];
  if (legs === 2 && second !== undefined && second !== given) {
    sheet.take('a', 'first leg from straight down', given, 'deg', entered);
    sheet.take('b', 'second leg from straight down', second, 'deg', entered);
    const both = Math.sin(((given + second) * Math.PI) / 180);
    const one = (weightKg * Math.sin((second * Math.PI) / 180)) / both;
    const two = (weightKg * Math.sin((given * Math.PI) / 180)) / both;
    sheet.work('m1', 'on the first leg', 'm*sin(b*pi/180)/sin((a+b)*pi/180)', one, 'kg', statics);
    sheet.work('m2', 'on the second leg', 'm*sin(a*pi/180)/sin((a+b)*pi/180)', two, 'kg', statics);
    loadsKg.push(one, two);
  } else {
    const counted = legs === 4 ? 2 : legs;
    const each = weightKg / (counted * Math.cos((given * Math.PI) / 180));
    sheet.take('n', 'legs counted', counted, '1', entered);
    sheet.take('a', 'each leg from straight down', given, 'deg', entered);
    sheet.work('m1', 'on each leg', 'm/(n*cos(a*pi/180))', each, 'kg', statics);
    for (let leg = 0; leg < legs; leg += 1) loadsKg.push(each);
  }
  const worst = Math.max(...loadsKg);
  const tensionN = worst * GRAVITY;
  sheet.work('F', 'pull in the worst leg', `${worst}*${GRAVITY}`, tensionN, 'N', statics);
  const cautions = [
    ...(legs === 4 ? (['legsFour'] as const) : []),
    ...(Math.max(...anglesDeg, 0) > WIDE_DEG ? (['legsWide'] as const) : []),
  ];
  return { loadsKg, tensionN, working: [...sheet.rows], cautions };
}
