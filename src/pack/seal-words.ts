// The seals of a pack in words, the same on screen, sheet and command line: draw, short, near.

import { formatNumber } from '../quantity/quantity.ts';
import type { Words } from '../words/words.ts';
import type {
  ConsumableNeed,
  Drawn,
  NearSeal,
  NotDrawn,
  SealList,
  SealNeed,
  SpareNeed,
} from './seal-types.ts';

type W = Words['seals'];
/** Tells a sentence of the pack in the language of who reads it. */
type Tell = (text: string) => string;

export function drawnWords(one: Drawn, w: W, tell: Tell): string {
  const { name, mark, place, count, until, anyway, notChecked } = one;
  return [
    `${w.draw(count, place)}: ${name}${mark === null ? '' : ` ${mark}`}`,
    ...(until === null ? [] : [w.until(until)]),
    ...notChecked.map(tell),
    ...(anyway === null ? [] : [w.anyway(anyway.by, anyway.against.map(tell).join('; '))]),
  ].join('; ');
}

const notDrawnWords = (one: NotDrawn, tell: Tell): string =>
  `${one.name}${one.place === null ? '' : `, ${one.place}`}: ${one.why.map(tell).join('; ')}`;

/** `1 × Spigot O-ring, ISO 3601 99.5x3, NBR · Pump mounting`. */
export const needWords = (need: SealNeed, w: W, tell: Tell): string => {
  const figures = [need.size, need.thickness, need.compound].filter((each) => each !== null);
  const size = figures.length === 0 ? [w.size] : figures;
  return `${need.count} × ${[tell(need.name), ...size].join(', ')} · ${need.jointName}`;
};

/** Under a seal, a line each: what is drawn, what is short, how it goes in, what is against it. */
export const needLines = (need: SealNeed, w: W, tell: Tell): readonly string[] => [
  ...need.drawn.map((one) => drawnWords(one, w, tell)),
  ...((need.short ?? 0) > 0 ? [w.shortOf(need.short ?? 0, need.count)] : []),
  ...(need.grease === null ? [] : [w.grease(tell(need.grease))]),
  ...(need.sealant === null ? [] : [w.sealant(tell(need.sealant))]),
  ...need.notes.map(tell),
  ...need.against.map((one) => `${w.against}: ${tell(one)}`),
];

/** What is near and why not, and what cannot be checked. */
export const doubtLines = (need: SealNeed, tell: Tell): readonly string[] => [
  ...need.notDrawn.map((one) => notDrawnWords(one, tell)),
  ...need.notChecked.map(tell),
];

export const shortLines = (list: SealList, w: W, tell: Tell): readonly string[] => [
  ...list.needs.flatMap((need) =>
    (need.short ?? 0) > 0
      ? [`${needWords(need, w, tell)}: ${w.shortOf(need.short ?? 0, need.count)}`]
      : [],
  ),
  ...list.spares.flatMap(({ name, short }) =>
    (short ?? 0) > 0 ? [`${name}: ${w.shortOf(short ?? 0, 1)}`] : [],
  ),
];

export const spareLines = (one: SpareNeed, w: W, tell: Tell): readonly string[] => [
  ...one.drawn.map((drawn) => `${one.name}: ${drawnWords(drawn, w, tell)}`),
  ...((one.short ?? 0) > 0 ? [`${one.name}: ${w.shortOf(one.short ?? 0, 1)}`] : []),
  ...one.notDrawn.map((near) => notDrawnWords(near, tell)),
];

export const consumableWords = (one: ConsumableNeed, w: W, tell: Tell): string =>
  [
    `${tell(one.name)}, ${one.amount === null ? w.amountOpen : tell(one.amount)}` +
      `${one.amountSource === null ? '' : ` (${tell(one.amountSource)})`} · ${one.jointName}`,
    ...(one.held === null ? [] : [w.from(one.held.place ?? one.held.name)]),
    ...one.against.map(tell),
  ].join('; ');

export function nearWords(one: NearSeal, w: W, tell: Tell): string {
  const years = one.years === null ? null : formatNumber(one.years, 3);
  const limit = one.renewAfterYears === null ? null : formatNumber(one.renewAfterYears, 3);
  const age =
    years === null
      ? [w.nearUnknown, ...(limit === null ? [] : [w.nearLimit(limit)])]
      : one.doNow && limit !== null
        ? [w.nearOld(years, limit)]
        : [w.nearAge(years), ...(limit === null ? [] : [w.nearLimit(limit)])];
  return `${tell(one.name)} · ${one.jointName}: ${age.join(', ')}`;
}

/** What the list rests on: the day, the rule, or that nothing is kept. */
export const restsOn = (list: SealList, w: W): string =>
  !list.held || list.on === null ? w.noList : `${w.inDateOn(list.on)}, ${w.rule(list.rule)}`;
