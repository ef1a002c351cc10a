// Whether and when renewing before failure pays, by the long-run cost of an hour.

import { limits } from '../limits.ts';
import { carry } from '../quantity/carry.ts';
import { echoed, entered, newSheet, quantity, type Sheet } from '../quantity/sheet.ts';
import { gamma, gammaBelow } from '../quantity/special.ts';
import type { RenewalInput, RenewalOutput } from './renewal-model.ts';
import { ageReplacementSource, byFunction, minimalRepairSource } from './tables/sources.ts';

/** A saving below this is none: the age that promises it hangs on the last digits of the fit. */
export const LEAST_SAVING = 1e-6;

export type RenewalLaw = {
  readonly shape: number;
  readonly scale: number;
  readonly planned: number;
  readonly failure: number;
};

/** Chance of failure before an age. */
export const failedBy = ({ shape, scale }: RenewalLaw, age: number): number =>
  -Math.expm1(-((age / scale) ** shape));

/** Hours to be expected from an item that is taken out at an age: ∫ of the survival to there. */
export function expectedHours({ shape, scale }: RenewalLaw, age: number): number {
  const share = (age / scale) ** shape;
  // So early nearly all live to it; the power itself may be too small for a number.
  if (share < 1e-9) return age * (1 - share / (shape + 1));
  return scale * gamma(1 + 1 / shape) * gammaBelow(1 / shape, share);
}

/** Cost an hour of any law: `failed` the chance to fail before the age, `hours` to be expected. */
export const costRateOf = (costs: Costs, lives: number, failed: number, hours: number): number =>
  (costs.planned * lives + costs.failure * failed) / hours;

type Costs = Pick<RenewalLaw, 'planned' | 'failure'>;

export function ageCostRate(law: RenewalLaw, age: number): number {
  const lives = Math.exp(-((age / law.scale) ** law.shape));
  return costRateOf(law, lives, failedBy(law, age), expectedHours(law, age));
}

export const toFailureRate = ({ shape, scale, failure }: RenewalLaw): number =>
  failure / (scale * gamma(1 + 1 / shape));

/**
 * The age at which hazard × expected hours − chance of failure = planned/(failure − planned);
 * the left side rises with age where the shape is above 1. Null where it never gets there.
 */
export function bestAge(law: RenewalLaw): number | null {
  const { shape, scale, planned, failure } = law;
  if (shape <= 1 || failure <= planned) return null;
  const want = planned / (failure - planned);
  const unit = { ...law, scale: 1 };
  const off = (lnAge: number): number => {
    const u = Math.exp(lnAge);
    return shape * u ** (shape - 1) * expectedHours(unit, u) - failedBy(unit, u) - want;
  };
  // For short ages it is near (β − 1) u^β; for long ones the expected hours are the mean life.
  let low = Math.min(0, Math.log(want / (shape - 1)) / shape) - 1;
  for (let round = 0; round < limits.life.widenings && off(low) > 0; round += 1) low -= 1;
  const mean = gamma(1 + 1 / shape);
  let high = Math.max(0, Math.log((1 + want) / (shape * mean)) / (shape - 1)) + 1;
  if (!(high < LONGEST) || !(off(high) > 0)) return null;
  for (let halve = 0; halve < limits.life.rounds; halve += 1) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (off(middle) > 0) high = middle;
    else low = middle;
  }
  return scale * Math.exp((low + high) / 2);
}

/** ln of so many scales: nothing lives to it. */
const LONGEST = 500;

const source = (policy: RenewalInput['policy']) =>
  policy === 'age' ? ageReplacementSource : minimalRepairSource;

export const renewalOf = (input: RenewalInput) =>
  ({ ok: true, result: carry(input, solve) }) as const;

function solve(input: RenewalInput): RenewalOutput {
  const law = {
    shape: input.shape.value,
    scale: input.scale.value,
    planned: input.costPlanned.value,
    failure: input.costFailure.value,
  };
  const sheet = newSheet();
  sheet.take('β', 'shape', law.shape, '1', entered);
  sheet.take('η', 'scale', law.scale, 'h', entered);
  sheet.take('C_p', 'cost of the planned one', law.planned, '1', entered);
  sheet.take('C_f', 'cost of a failure', law.failure, '1', entered);
  const found = input.policy === 'age' ? byAge(law, sheet) : byRepair(law, sheet);
  const atGiven = (input.at ?? []).map((age, at) => {
    const tail = `_${at + 1}`;
    const rate = rateAt(input.policy, law, age.value, sheet, tail);
    return {
      age: echoed(age.value, 'h', age),
      costRate: Number.isFinite(rate) ? quantity(rate, '1/h') : null,
      failureChance: quantity(failedBy(law, age.value), '1'),
    };
  });
  const beyond = atGiven.flatMap(({ costRate }, at) =>
    costRate === null
      ? [{ output: `atGiven/${at}/costRate`, needs: ['an age with fewer repairs before it'] }]
      : [],
  );
  return {
    ...found,
    atGiven,
    working: sheet.rows,
    cautions: [...cautionsOf(input, law, found.decision)],
    notWorkedOut: [...needsOf(input.policy, found.decision), ...beyond],
  };
}

type Choice = Pick<
  RenewalOutput,
  'decision' | 'age' | 'costRate' | 'costRateToFailure' | 'saving' | 'failureChance'
>;

function byAge(law: RenewalLaw, sheet: Sheet): Choice {
  const rate = toFailureRate(law);
  const mean = gamma(1 + 1 / law.shape);
  sheet.take('Γ', 'gamma function of 1 + 1/β', mean, '1', byFunction);
  const text = 'cost of an hour, run to failure';
  sheet.work('c_f', text, 'C_f/(η*Γ)', rate, '1/h', ageReplacementSource);
  const age = bestAge(law);
  const costRate = age === null ? rate : ageCostRate(law, age);
  const saving = 1 - costRate / rate;
  if (age === null || !(saving >= LEAST_SAVING)) {
    return {
      decision: 'run to failure',
      age: null,
      costRate: quantity(rate, '1/h'),
      costRateToFailure: quantity(rate, '1/h'),
      saving: quantity(0, '1'),
      failureChance: quantity(1, '1'),
    };
  }
  sheet.take('T', 'age of the least cost', age, 'h', ageReplacementSource);
  rateAt('age', law, age, sheet, '');
  const hours = expectedHours(law, age);
  const hazard = (law.shape / law.scale) * (age / law.scale) ** (law.shape - 1);
  const said = '(β/η)*(T/η)^(β - 1)';
  sheet.work('h', 'hazard at that age', said, hazard, '1/h', ageReplacementSource);
  const left = hazard * hours - failedBy(law, age);
  sheet.work('k', 'what is equal at the best age', 'h*H - F', left, '1', ageReplacementSource);
  const ratio = law.planned / (law.failure - law.planned);
  sheet.work('k_c', 'the same by the costs', 'C_p/(C_f - C_p)', ratio, '1', ageReplacementSource);
  sheet.work('s', 'saving', '1 - c/c_f', saving, '1', ageReplacementSource);
  return {
    decision: 'renew at age',
    age: quantity(age, 'h'),
    costRate: quantity(costRate, '1/h'),
    costRateToFailure: quantity(rate, '1/h'),
    saving: quantity(saving, '1'),
    failureChance: quantity(failedBy(law, age), '1'),
  };
}

/** Repairs between bring the item back as it was: their number grows as (T/η)^β. */
function byRepair(law: RenewalLaw, sheet: Sheet): Choice {
  const { shape, scale, planned, failure } = law;
  const nothing = { costRateToFailure: null, saving: null };
  if (shape <= 1) {
    // The longer it runs the less an hour costs: what it comes to in the end.
    const rate = shape === 1 ? failure / scale : 0;
    const expression = shape === 1 ? 'C_f/η' : '0';
    const text = 'cost of an hour in the end';
    sheet.work('c', text, expression, rate, '1/h', minimalRepairSource);
    const chance = quantity(1, '1');
    const decision = 'run to failure';
    return {
      decision,
      age: null,
      costRate: quantity(rate, '1/h'),
      failureChance: chance,
      ...nothing,
    };
  }
  const age = scale * (planned / (failure * (shape - 1))) ** (1 / shape);
  const said = 'η*(C_p/(C_f*(β - 1)))^(1/β)';
  sheet.work('T', 'age of the least cost', said, age, 'h', minimalRepairSource);
  const rate = rateAt('minimal-repair', law, age, sheet, '');
  return {
    decision: 'renew at age',
    age: quantity(age, 'h'),
    costRate: quantity(rate, '1/h'),
    failureChance: quantity(failedBy(law, age), '1'),
    ...nothing,
  };
}

function rateAt(
  policy: RenewalInput['policy'],
  law: RenewalLaw,
  age: number,
  sheet: Sheet,
  tail: string,
): number {
  const from = source(policy);
  if (tail !== '') sheet.take(`T${tail}`, 'age that was given', age, 'h', entered);
  const failed = failedBy(law, age);
  const share = `1 - exp(-(T${tail}/η)^β)`;
  // Near nought the sum loses digits that the figure itself keeps.
  const keeps = failed > 1e-3;
  sheet.work(
    `F${tail}`,
    'chance of failure before it',
    keeps ? share : String(failed),
    failed,
    '1',
    keeps ? from : byFunction,
  );
  if (policy === 'minimal-repair') {
    const rate = (law.planned + law.failure * (age / law.scale) ** law.shape) / age;
    if (!Number.isFinite(rate)) return rate;
    const said = `(C_p + C_f*(T${tail}/η)^β)/T${tail}`;
    sheet.work(`c${tail}`, 'cost of an hour', said, rate, '1/h', from);
    return rate;
  }
  const hours = expectedHours(law, age);
  const text = 'hours to be expected from each, the area under survival';
  sheet.take(`H${tail}`, text, hours, 'h', byFunction);
  const rate = ageCostRate(law, age);
  const said = `(C_p*exp(-(T${tail}/η)^β) + C_f*F${tail})/H${tail}`;
  sheet.work(`c${tail}`, 'cost of an hour', said, rate, '1/h', from);
  return rate;
}

function needsOf(policy: RenewalInput['policy'], decision: Choice['decision']) {
  const lacks = (output: string, need: string) => ({ output, needs: [need] });
  const age =
    decision === 'run to failure' ? [lacks('age', 'none: renewing by age does not pay')] : [];
  if (policy === 'age') return age;
  const why = 'policy: age';
  return [...age, lacks('costRateToFailure', why), lacks('saving', why)];
}

function cautionsOf(input: RenewalInput, law: RenewalLaw, decision: Choice['decision']) {
  const cautions: string[] = [];
  if (law.shape <= 1) {
    cautions.push('Failures grow no more likely with age: a new one fails as soon as an old one.');
  } else if (input.policy === 'age' && law.failure <= law.planned) {
    cautions.push(
      'A failure costs no more than a planned renewal, so that renewing saves nothing.',
    );
  } else if (decision === 'run to failure') {
    cautions.push('Renewing at any age saves less than a millionth.');
  }
  cautions.push(
    'It weighs cost alone: where a failure can hurt people, whoever sets the interval decides.',
  );
  return cautions;
}
