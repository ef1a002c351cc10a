// A lift by hand: recommended weight at both ends, the share of each person, and a verdict.

import { formatNumber } from '../quantity/quantity.ts';
import { weakestOf } from '../quantity/rests.ts';
import { echoed, entered, missing, newSheet, quantity, type Sheet } from '../quantity/sheet.ts';
import type { Problem, Source } from '../quantity/types.ts';
import { type Common, couplingSourceOf, type End, endOf, travelOf } from './ends.ts';
import type { LiftInput, LiftOutput, LiftVerdict, Multiplier } from './model.ts';
import { MULTIPLIERS } from './model.ts';
import { type Outside, outsideOf, unsaid } from './outside.ts';
import { constantsSource, meaningSource, sets, teamShares, teamSource } from './tables/niosh.ts';
import { type Timing, timingOf } from './timing.ts';

export type LiftAnswer =
  | { readonly ok: true; readonly result: LiftOutput }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export function lift(input: LiftInput): LiftAnswer {
  const sheet = newSheet();
  const set = sets[input.constants];
  const load = set.load * set.massKg;
  const pounds = set.massKg === 1 ? String(set.load) : `${set.load}*${set.massKg}`;
  sheet.work('LC', 'load constant', pounds, load, 'kg', constantsSource);
  const timing = timingOf(input, sheet);
  const travelCm = travelOf(input);
  if (travelCm !== null) travelRow(input, travelCm / set.lengthCm, sheet);
  const shareKg = shareOf(input, sheet);
  const common: Common = { input, set, timing, travelCm, shareKg };
  const ends = [endOf('origin', common, sheet), endOf('destination', common, sheet)] as const;
  const outside = outsideOf(input);
  const asked = ends.filter((end): end is End => end !== null);
  const nothing = timing.perMinute === null && timing.duration === null && shareKg === null;
  if (nothing && asked.every((end) => !worked(end)) && outside.length === 0) {
    const why = 'nothing can be worked out from this';
    return { ok: false, problems: [{ path: '', got: null, expected: 'weight and origin', why }] };
  }
  return { ok: true, result: resultOf(input, { timing, shareKg, ends, asked, outside }, sheet) };
}

const worked = ({ multipliers }: End): boolean =>
  (['hm', 'vm', 'dm', 'fm', 'cm'] as const).some((one) => multipliers[one] !== null);

type Found = {
  readonly timing: Timing;
  readonly shareKg: number | null;
  readonly ends: readonly [End | null, End | null];
  readonly asked: readonly End[];
  readonly outside: readonly Outside[];
};

function resultOf(input: LiftInput, found: Found, sheet: Sheet): LiftOutput {
  const { timing, shareKg, ends, asked, outside } = found;
  const verdict = verdictOf(found);
  const out = (value: number | null, unit: string) =>
    value === null ? null : quantity(value, unit);
  const endOut = (end: End | null) => {
    if (end === null) return null;
    const { hm, vm, dm, am, fm, cm } = end.multipliers;
    const one = (value: number | null) => out(value, '1');
    const multipliers = {
      hm: one(hm),
      vm: one(vm),
      dm: one(dm),
      am: one(am),
      fm: one(fm),
      cm: one(cm),
    };
    return { rwl: out(end.rwlKg, 'kg'), li: out(end.li, '1'), multipliers };
  };
  const [from, to] = ends;
  const helps = helpsMost(asked);
  const result = {
    frequencyUsed: out(timing.perMinute, '1/min'),
    durationClass: timing.duration,
    recoveryNeeded: out(timing.recoveryMin, 'min'),
    origin: endOut(from),
    destination: endOut(to),
    share:
      shareKg === null
        ? null
        : echoed(shareKg, 'kg', input.people === 1 ? input.weight : undefined),
    figure: outside.length > 0 ? 'best case on a dry floor' : 'within the method',
    verdict,
    reasons: reasonsOf(found, verdict),
    restsOn: verdict === null ? null : weakest(input, found),
    whatHelpsMost: helps,
  };
  const nested = {
    ...result,
    ...Object.fromEntries(asked.flatMap((end) => flat(end))),
  };
  const notWorkedOut = missing(nested, needsOf(input, found));
  const cautions = cautionsOf(input, found, verdict);
  return { ...result, working: [...sheet.rows], cautions, notWorkedOut } as unknown as LiftOutput;
}

const flat = (end: End): [string, number | null][] => [
  [`${end.name}/rwl`, end.rwlKg],
  [`${end.name}/li`, end.li],
  ...MULTIPLIERS.map((one): [string, number | null] => [
    `${end.name}/multipliers/${one}`,
    end.multipliers[one],
  ]),
];

function travelRow(input: LiftInput, travel: number, sheet: Sheet): void {
  const set = sets[input.constants];
  const [from, to] = [input.origin?.v?.value, input.destination?.v?.value];
  const both = from !== undefined && to !== undefined;
  const cm = both ? `abs(${to} - ${from})` : String(input.travel?.value);
  const expression = set.lengthCm === 1 ? cm : `${cm}/${set.lengthCm}`;
  sheet.work('D', 'travel', expression, travel, set.name === 'us' ? '[in_i]' : 'cm', entered);
}

/** What each counts for: a team lifts less than its people do singly. */
function shareOf({ weight, people }: LiftInput, sheet: Sheet): number | null {
  if (weight === undefined) return null;
  sheet.take('m', 'weight', weight.value, 'kg', entered);
  const team = teamShares[people];
  if (team === undefined) return null;
  const [over, under] = team;
  const share = (weight.value * under) / (people * over);
  const source = people === 1 ? entered : teamSource;
  const expression = people === 1 ? 'm' : `m*${under}/(${people}*${over})`;
  sheet.work('m_p', 'share that each counts for', expression, share, 'kg', source);
  return share;
}

function verdictOf({ asked, outside }: Found): LiftVerdict | null {
  if (outside.length > 0) return 'outside the method: use gear or a second person';
  if (asked.some(({ rwlKg }) => rwlKg === 0)) return 'too heavy for nearly all';
  const indexes = asked.map(({ li }) => li);
  const known = indexes.filter((one) => one !== null);
  const most = Math.max(0, ...known);
  if (most > 3 + 1e-9) return 'too heavy for nearly all';
  if (most > 1 + 1e-9) return 'too heavy for some';
  return known.length === 0 || known.length < indexes.length ? null : 'fits';
}

function reasonsOf({ asked, outside, shareKg }: Found, verdict: LiftVerdict | null): string[] {
  const share = shareKg === null ? 'the weight' : `${formatNumber(shareKg)} kg`;
  const over = asked.flatMap(({ name, li, rwlKg }) => {
    if (rwlKg === 0) return [`at the ${name} nothing is recommended to be lifted by hand`];
    if (li === null || rwlKg === null || li <= 1 + 1e-9) return [];
    return [`at the ${name} ${share} is above ${formatNumber(rwlKg)} kg`];
  });
  const fits = verdict === 'fits' ? [`${share} is within the recommended weight`] : [];
  const reasons = [...outside.map(({ why }) => why), ...over, ...fits];
  return reasons.length === 0 ? ['cannot be checked: see notWorkedOut'] : reasons;
}

/** The weakest kind of source under the verdict, and of what. */
function weakest(input: LiftInput, { asked, outside }: Found): string {
  const grips = asked.flatMap(({ multipliers: { cm } }) => (cm === null ? [] : [cm]));
  const sources: readonly Source[] = [
    ...outside.map(({ source }) => source),
    ...(input.people > 1 ? [teamSource] : []),
    ...grips.map(couplingSourceOf),
  ];
  return weakestOf([...sources, meaningSource]) ?? meaningSource.kind;
}

const advice: Readonly<Record<Multiplier, string>> = {
  hm: 'Bring the load closer to the body.',
  vm: 'Begin or end the lift nearer to knuckle height, 75 cm.',
  dm: 'Shorten the way up or down.',
  am: 'Turn with the feet in place of twisting.',
  fm: 'Lift less often, or rest longer between.',
  cm: 'Give it handles, or a better grip.',
};

function helpsMost(asked: readonly End[]): LiftOutput['whatHelpsMost'] {
  const [first, ...others] = asked.filter(({ rwlKg }) => rwlKg !== null);
  if (first === undefined) return null;
  const worse = others.reduce((a, b) => ((b.rwlKg ?? 0) < (a.rwlKg ?? 0) ? b : a), first);
  const least = MULTIPLIERS.reduce((a, b) =>
    (worse.multipliers[b] ?? 1) < (worse.multipliers[a] ?? 1) ? b : a,
  );
  if ((worse.multipliers[least] ?? 1) >= 1) {
    return { multiplier: null, at: worse.name, advice: 'Make it lighter, or share it.' };
  }
  return { multiplier: least, at: worse.name, advice: advice[least] };
}

function needsOf(input: LiftInput, { timing, asked, shareKg }: Found) {
  const weight = input.weight === undefined ? ['weight'] : [];
  const own = Object.assign({}, ...asked.map(({ needs }) => needs)) as Readonly<
    Record<string, readonly string[]>
  >;
  const rwls = asked.flatMap(({ name, rwlKg }) =>
    rwlKg === null ? (own[`${name}/rwl`] ?? []) : [],
  );
  const first = asked.length === 0 ? ['origin'] : [...new Set(rwls)];
  const team = input.weight !== undefined && shareKg === null ? ['people'] : [];
  return {
    ...own,
    frequencyUsed: timing.perMinute === null ? ['frequency or spell'] : [],
    durationClass: ['duration'],
    recoveryNeeded: ['duration'],
    origin: ['origin'],
    destination: ['destination'],
    share: [...weight, ...team],
    verdict: [...weight, ...first],
    restsOn: [...weight, ...first],
    whatHelpsMost: first,
  };
}

function cautionsOf(input: LiftInput, found: Found, verdict: LiftVerdict | null): string[] {
  const said: string[] = [...found.timing.cautions];
  if (found.asked.some(({ name }) => input[name]?.asymmetry === undefined)) {
    said.push('Twist is not given: taken as none, the load straight ahead.');
  }
  if (found.outside.length > 0) {
    said.push(
      'Outside the method: the figure is the best case on a dry floor, no limit to lift to.',
    );
  }
  const silent = unsaid(input);
  if (silent.length > 0) {
    said.push(
      `Nothing is said of ${silent.join(', ')}: the figure holds for a person standing upright ` +
        'on a firm, still floor, both hands on the load, in mild air, holding nothing.',
    );
  }
  if (input.people > 1) {
    const heaviest = 'the heavier end may count for more than its share';
    said.push(
      `A team is outside the equation itself; the rule of teams is from memory, and ${heaviest}.`,
    );
  }
  if (input.weight !== undefined) {
    said.push('The weight is of all that is lifted: wet, with what hangs on it.');
  }
  if (verdict === 'fits') {
    said.push('Within it, too, some are hurt: a person who can not lift it says so.');
  }
  if (verdict !== null) {
    said.push(`The verdict "${verdict}" rests on what is ${weakest(input, found)}.`);
  }
  return said;
}
