// A fastening in words, the same on screen, sheet and command line: value, clamp, wrench, grip.

import { formatNumber } from '../quantity/quantity.ts';
import { now } from '../words/heard.ts';
import type { Words } from '../words/words.ts';
import type { Band, Fastening, ToolList, WrenchLine } from './fastening-types.ts';

type W = Words['fastenings'];

const kN = (value: number): string => `${formatNumber(value, 3)} kN`;
const percent = (share: number): string => formatNumber(100 * share, 2);

/** `clamps 21 to 39.3 kN; 61 to 114 % of the bolt's yield; may yield where friction is lowest`. */
export function bandWords(band: Band, w: W): string {
  const { yieldShareMin: least, yieldShareMax: most, stripping } = band;
  return [
    w.surface[band.surface],
    w.clamp(formatNumber(band.preloadMin.value, 3), kN(band.preloadMax.value)),
    ...(least === null || most === null
      ? []
      : [w.ofYield(percent(least.value), percent(most.value))]),
    ...(stripping === null ? [] : [w.strips(kN(stripping.load.value), stripping.weaker)]),
    band.verdict === null ? w.notJudged : w.verdicts[band.verdict],
  ].join('; ');
}

/** Of the adapter against the wrench, as a person turns it. */
const angleWords = (deg: number, w: W): string =>
  deg === 0 ? w.ahead : deg === 90 ? w.square : deg === 180 ? w.back : w.atAngle(String(deg));

/** `4 nuts M10 · Middle torque wrench: set to 46 N·m`, then hand and adapter. */
export function wrenchWords(line: WrenchLine, round: string | null, w: W): readonly string[] {
  const set = line.rounds.find((each) => each.round === round);
  const { gripPointMm: grip, offsetMm: offset, angleDeg: angle } = line;
  return [
    `${now(line.what)} · ${w.setTo(line.wrench, set?.shown ?? line.shown)}`,
    grip === null ? w.gripUnknown : w.grip(formatNumber(grip, 4)),
    ...(offset === null || angle === null
      ? []
      : [w.crowfoot(formatNumber(offset, 4), angleWords(angle, w))]),
    ...(set?.belowRange === true ? [w.below] : []),
  ];
}

/** Everything said of one fastening, a line each; the value itself stands above them. */
export function fasteningLines(one: Fastening, w: W): readonly string[] {
  const { tools } = one;
  return [
    ...(one.value.shown !== null && one.value.threadCondition === null ? [w.noCondition] : []),
    ...one.bands.map((band) => bandWords(band, w)),
    ...(one.clampNeeded ? [w.needed(kN(one.clampNeeded.force.value))] : []),
    ...(one.notChecked === null ? [] : [w.notChecked(now(one.notChecked))]),
    ...(tools === null ? [] : [tools.names.join(', ')]),
    ...(tools?.line ? wrenchWords(tools.line, null, w) : []),
    ...(tools?.anyway ? [w.anyway(tools.anyway.by, tools.anyway.against.join('; '))] : []),
    ...(tools?.cautions ?? []),
  ];
}

/** The tools of a job under three heads: to lay out, missing, left in the drawer. */
export function toolLines(list: ToolList | null, w: W): readonly string[] {
  if (list === null) return [w.noList];
  const n = list.layOut.length;
  return [
    ...list.layOut.map(({ name, place }) => (place === null ? name : `${name} · ${place}`)),
    ...(n === 0 ? [] : [list.proven ? w.fewest(n) : w.notProven(n, list.bound)]),
    w.inDateOn(list.on),
  ];
}

export const missingLines = (list: ToolList, w: W): readonly string[] =>
  list.missing.map(({ fastening, why, nearest }) =>
    [
      `${fastening}: ${why}`,
      ...nearest.map((near) => w.nearest(near.name, near.whyNot.join('; '))),
    ].join('; '),
  );

export const asideLines = (list: ToolList, w: W): readonly string[] =>
  list.laidAside.map(({ name, why, instead }) =>
    [
      `${name}: ${why.join('; ')}`,
      ...(instead.length === 0 ? [] : [w.instead(instead.join(', '))]),
    ].join('; '),
  );

export const askLines = (list: ToolList): readonly string[] =>
  list.asks.map(({ fastening, ask }) => `${fastening}: ${ask}`);
