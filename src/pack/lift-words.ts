// A weight in words, the same on screen, sheet and command line: how it goes and what bears it.

import { formatNumber } from '../quantity/quantity.ts';
import type { Words } from '../words/words.ts';
import type { GearLift, HandLift, Lifts, LiftView } from './lift-types.ts';

type W = Words['lifting'];
type Told = (text: string) => string;

const short = (value: number): string => formatNumber(value, 3);

export const liftWeight = (one: LiftView, w: W): string =>
  one.weight === null ? w.noWeight : w.weight(short(one.weight.value), one.wet);

/** `Sea-water pump, off: by lifting gear`. */
export const liftWhat = (one: LiftView, w: W): string => {
  const where = [w[one.as], ...(one.bench ? [w.atBench] : [])].join(', ');
  return `${one.name}, ${where}: ${w.how[one.how]}`;
};

/** `36 kg wet · Sea-water pump, off: by lifting gear`. */
export const liftHead = (one: LiftView, w: W): string =>
  `${liftWeight(one, w)} · ${liftWhat(one, w)}`;

const handLines = (hand: HandLift, people: number, w: W, told: Told): readonly string[] => [
  ...(hand.verdict === null ? [] : [`${w.people(people)}; ${w.verdict(told(hand.verdict))}`]),
  ...(hand.share === null || hand.least === null
    ? []
    : [w.share(short(hand.share.value), short(hand.least.value))]),
  ...(hand.figure === 'best case on a dry floor' ? [w.bestCase] : []),
  ...(hand.helps === null || hand.verdict === 'fits' ? [] : [w.helps(told(hand.helps))]),
  ...(hand.verdict === 'fits' ? [w.holdsFor] : []),
  ...(hand.restsOn === null ? [] : [w.rests(told(hand.restsOn.split(':')[0] ?? ''))]),
];

const gearLines = (gear: GearLift, w: W, told: Told): readonly string[] => [
  ...(gear.legs === 0 || gear.tension === null
    ? []
    : [
        `${w.legs(gear.legs, gear.anglesDeg.map(String).join('/'))}; ` +
          w.tension(short(gear.tension.value)),
      ]),
  ...gear.needs.map((need) =>
    [
      w.need(need.count, w.kinds[need.kind], short(need.bears.value)),
      ...(need.names.length === 0 ? [] : [w.use(need.names.join(', '))]),
    ].join(': '),
  ),
  ...gear.points.map(({ name, bears, rated }) =>
    w.point(name, short(bears.value), rated === null ? null : short(rated.value)),
  ),
  ...(gear.needs.length === 0 ? [] : [gear.on === null ? w.notHeld : w.inDate(gear.on)]),
  ...gear.cautions.map(told),
];

/** Everything said of one weight, a line each, under its head. */
export const liftLines = (one: LiftView, w: W, told: Told): readonly string[] => [
  ...(one.hand === null ? [] : handLines(one.hand, one.people, w, told)),
  ...(one.gear === null ? [] : gearLines(one.gear, w, told)),
  ...(one.held.length === 0 ? [] : [w.held(one.held.map(told).join(', '))]),
  ...one.asks.map((ask) => `${w.ask}: ${told(ask)}`),
];

/** Those worth a line of their own: light parts are in the list of weights. */
export const worthALine = ({ list }: Lifts): readonly LiftView[] =>
  list.filter((one) => one.how !== 'light');

/** The sailing against the work, and what would hang; nothing where no sailing is stated. */
export const sailingLines = ({ sailing }: Lifts, w: W): readonly string[] =>
  sailing === null
    ? []
    : [
        w.sails(sailing.sails, sailing.latestStart),
        ...(sailing.late ? [w.late(sailing.hangs.join(', '))] : []),
      ];

/** What is lifted at a step: the part it speaks of, going off or coming back. */
export const liftAt = (lifts: Lifts | undefined, thing: string): LiftView | null => {
  const part = /^part\/(.+)$/.exec(thing)?.[1];
  return lifts?.list.findLast((one) => one.part === part && one.how !== 'light') ?? null;
};
