// A lift by hand as the plant says it is done, weighed by the calculation within its own limits.

import { lift } from '../lifting/lift.ts';
import { liftInput } from '../lifting/model.ts';
import type { WayLift } from '../plant/lift-schema.ts';
import { readQuantity } from '../quantity/quantity.ts';
import type { Quantity, Working } from '../quantity/types.ts';
import type { HandLift } from './lift-types.ts';

/** A part goes off once and back once: as seldom, and as short, as the method's table goes. */
const SELDOM = { frequency: 0.2, duration: 1 } as const;

const cm = (text: string): number => {
  const read = readQuantity(text, 'cm', '');
  return read.ok ? read.quantity.value : 0;
};

const end = ({ h, v, asymmetry }: WayLift['origin']) => ({
  h: cm(h),
  v: cm(v),
  ...(asymmetry === undefined ? {} : { asymmetry }),
});

export const handLift = (way: WayLift, weightKg: number, people: number): HandLift => {
  const { origin, destination, travel, headroom, ...said } = way;
  const from = end(origin);
  const to = destination === undefined ? null : end(destination);
  const read = liftInput.safeParse({
    ...said,
    ...SELDOM,
    weight: weightKg,
    people,
    origin: from,
    ...(to === null ? {} : { destination: to }),
    ...(travel === undefined ? {} : { travel: cm(travel) }),
    ...(headroom === undefined ? {} : { headroom: cm(headroom) }),
  });
  const ends = {
    from: { hCm: from.h, vCm: from.v },
    to: to === null ? null : { hCm: to.h, vCm: to.v },
  };
  if (!read.success)
    return unweighed(
      ends,
      read.error.issues.map((one) => one.message),
    );
  const answer = lift(read.data);
  if (!answer.ok)
    return unweighed(
      ends,
      answer.problems.map((one) => one.why),
    );
  const { result } = answer;
  const rwls = [result.origin?.rwl, result.destination?.rwl].filter(
    (one): one is NonNullable<typeof one> => one !== null && one !== undefined,
  );
  const least = rwls.reduce<Quantity | null>(
    (a, b) => (a === null || b.value < a.value ? (b as Quantity) : a),
    null,
  );
  const verdictNeeds = result.notWorkedOut.find((one) => one.output === 'verdict');
  return {
    verdict: result.verdict,
    figure: result.figure,
    share: result.share as Quantity | null,
    least,
    reasons: result.reasons,
    helps: result.whatHelpsMost?.advice ?? null,
    lacks: verdictNeeds?.needs ?? [],
    cautions: result.cautions,
    restsOn: result.restsOn,
    ...ends,
    working: result.working as Working,
  };
};

const unweighed = (ends: Pick<HandLift, 'from' | 'to'>, lacks: readonly string[]): HandLift => ({
  verdict: null,
  figure: 'within the method',
  share: null,
  least: null,
  reasons: [],
  helps: null,
  lacks,
  cautions: [],
  restsOn: null,
  ...ends,
  working: [],
});
