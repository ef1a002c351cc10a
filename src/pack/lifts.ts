// How each weight of a job is carried: by hands within the method, by gear that bears it, or asked.

import { chooseGear, type GearNeed } from '../lifting/gear.ts';
import { legLoads } from '../lifting/sling.ts';
import { limits } from '../limits.ts';
import type { Rig } from '../plant/lift-schema.ts';
import { isDay } from '../quantity/day.ts';
import { formatNumber, readQuantity } from '../quantity/quantity.ts';
import type { Quantity } from '../quantity/types.ts';
import type { Tool } from '../tools/tool.ts';
import { type Context, isLiquidLine, type Moved, partOf, wayOf } from './context.ts';
import type { Held } from './fastening-types.ts';
import { handLift } from './hand-lift.ts';
import { holdersOf, holderUnknown, isHeavy, mustBeHeld, weightKg } from './holding.ts';
import type { GearLift, GearLine, HandLift, Lifts, LiftView } from './lift-types.ts';
import { sailingClash } from './sailing.ts';

type Hands = { readonly tools: readonly Tool[]; readonly on: string | null };

export const liftsOf = (c: Context, held: Held): Lifts => {
  const day = c.request.when?.slice(0, 10) ?? held.on;
  const on = held.tools.length === 0 || day === null || !isDay(day) ? null : day;
  const taken = new Set<string>();
  const list = c.moved.map((m) => {
    const before = c.moved.find((x) => x.id === m.id);
    const again = before !== m && before?.way === m.way;
    return viewOf(c, m, { tools: again ? [] : held.tools, on }, taken);
  });
  return { list, sailing: sailingClash(c, list) };
};

const kg = (value: number): Quantity => ({ value, unit: 'kg' });

const viewOf = (c: Context, m: Moved, hands: Hands, taken: Set<string>): LiftView => {
  const part = partOf(c, m.id);
  const way = wayOf(c, m);
  const weight = weightKg(c, m.id);
  const people = way?.people ?? 1;
  const rig = way?.rig;
  const gear = weight === null || rig === undefined ? null : gearLift(c, rig, weight, hands, taken);
  const carried = rig?.hoist === true || rig?.jack === true;
  const hand =
    weight === null || way?.lift === undefined || carried
      ? null
      : handLift(way.lift, weight, people);
  const how = howOf(c, m, { weight, carried, hand, rests: way?.rests === true });
  const found = {
    part: m.id,
    name: part.name,
    as: m.as,
    bench: m.bench,
    weight: weight === null ? null : kg(weight),
    wet: part.wetMass !== undefined,
    how,
    people,
    hand,
    gear,
    held: holdersOf(c, m),
  };
  return { ...found, asks: asksOf(c, m, found) };
};

type Known = {
  readonly weight: number | null;
  readonly carried: boolean;
  readonly hand: HandLift | null;
  readonly rests: boolean;
};

/** Over the limit it goes by hand only where the method says that it may. */
const howOf = (c: Context, m: Moved, known: Known): LiftView['how'] => {
  if (known.weight === null) return 'asked';
  if (known.carried) return 'gear';
  if (known.hand !== null) return known.hand.verdict === 'fits' ? 'by hand' : 'asked';
  if (!isHeavy(c, m.id)) return 'light';
  return known.rests && m.as === 'aside' ? 'slid' : 'asked';
};

const anglesOf = (rig: Rig): readonly number[] =>
  rig.angles ?? (rig.angle === undefined ? [] : [rig.angle]);

/** What must bear how much, then which of the gear held does. */
const gearLift = (
  c: Context,
  rig: Rig,
  weight: number,
  { tools, on }: Hands,
  taken: Set<string>,
): GearLift => {
  const legs = rig.legs ?? 0;
  const anglesDeg = anglesOf(rig);
  const loads = legs === 0 ? null : legLoads(weight, legs, anglesDeg);
  const worst = loads === null ? weight : Math.max(...loads.loadsKg);
  const angleDeg = legs > 1 ? Math.max(...anglesDeg, 0) : 0;
  const need = (kind: GearNeed['kind'], count: number | undefined, bearsKg: number): GearNeed[] =>
    count === undefined || count === 0 ? [] : [{ kind, count, bearsKg, angleDeg }];
  const needs = [
    ...need('chain block', rig.hoist === true ? 1 : 0, weight),
    ...need('jack', rig.jack === true ? 1 : 0, weight),
    ...(legs > 0 && loads === null
      ? []
      : [
          ...need('sling', legs, worst),
          ...need('shackle', rig.shackles, worst),
          ...need('eye bolt', rig.eyeBolts, worst),
        ]),
  ];
  const choices = on === null ? [] : chooseGear(needs, tools, on, taken);
  for (const { chosen } of choices) for (const { id } of chosen) taken.add(id);
  const lines = needs.map((one, i): GearLine => {
    const choice = choices[i];
    return {
      kind: one.kind,
      count: one.count,
      bears: kg(one.bearsKg),
      names: choice?.chosen.map(({ name }) => name) ?? [],
      missing: choice?.missing ?? 0,
      against: choice?.against ?? [],
    };
  });
  return {
    on,
    legs,
    anglesDeg,
    tension: loads === null ? null : { value: loads.tensionN, unit: 'N' },
    needs: lines,
    points: pointsOf(c, rig, weight, worst),
    cautions: [
      ...(loads?.cautions ?? []).map((key) => c.say(key)),
      ...(legs === 0 ? [] : [c.say('legsStraight')]),
    ],
    working: loads?.working ?? [],
  };
};

const pointsOf = (c: Context, rig: Rig, weight: number, worst: number): GearLift['points'] => {
  const one = (ref: { readonly part: string; readonly point: string }, bears: number) => {
    const point = c.machine.parts[ref.part]?.liftPoints?.[ref.point];
    const read = point?.rated === undefined ? null : readQuantity(point.rated, 'kg', ref.point);
    const rated = read?.ok === true ? read.quantity : null;
    return {
      name: point?.name ?? `${partOf(c, ref.part).name}: ${ref.point}`,
      bears: kg(bears),
      rated,
      holds: rated === null ? null : rated.value >= bears,
    };
  };
  return [
    ...(rig.from === undefined ? [] : [one(rig.from, weight)]),
    ...(rig.points ?? []).map((ref) => one(ref, worst)),
  ];
};

const asksOf = (c: Context, m: Moved, view: Omit<LiftView, 'asks'>): readonly string[] => {
  const { weight, gear, hand, how } = view;
  if (weight === null) return [c.say('askMass')];
  const heavy = isHeavy(c, m.id);
  const rig = wayOf(c, m)?.rig;
  const lineOf = partOf(c, m.id).line;
  return [
    ...(heavy && !view.wet && isLiquidLine(c.machine, lineOf) ? [c.say('askWet')] : []),
    ...(how === 'asked' ? [whyNotByHand(c, hand)] : []),
    ...(gear !== null && gear.legs > 0 && gear.tension === null ? [c.say('askAngle')] : []),
    ...(rig?.hoist === true && rig.from === undefined ? [c.say('askFrom')] : []),
    ...(gear?.points ?? []).flatMap(({ name, bears, rated, holds }) => {
      const must = formatNumber(bears.value, 3);
      if (holds === null) return [c.say('askRated', name, must)];
      const has = formatNumber(rated?.value ?? 0, 3);
      return holds ? [] : [c.say('ratedLess', name, has, must)];
    }),
    ...(gear?.needs ?? []).flatMap(({ kind, missing, bears, against }) =>
      missing === 0
        ? []
        : [
            c.say(
              'gearMissing',
              missing,
              kind,
              formatNumber(bears.value, 3),
              against.map((one) => `${one.name}: ${one.why.join(', ')}`),
            ),
          ],
    ),
    ...(mustBeHeld(c, m) && holderUnknown(c, m) ? [c.say('askHolder')] : []),
  ];
};

const whyNotByHand = (c: Context, hand: HandLift | null): string => {
  if (hand === null) return c.say('askHow', formatNumber(limits.pack.liftingKg));
  if (hand.verdict === null) return c.say('askReach', hand.lacks);
  return c.say('notByHand', hand.verdict, hand.reasons);
};
