// `decide`: pass, fail or cannot tell of a measured figure with its uncertainty (JCGM 106).

import {
  type Belief,
  chances,
  type Decision,
  decideBy,
  factorFor,
  type Limits,
  above as tail,
} from '../quantity/conformity.ts';
import { readQuantity } from '../quantity/quantity.ts';
import { entered, missing, newSheet, quantity } from '../quantity/sheet.ts';
import type { Problem, Source } from '../quantity/types.ts';
import type { DecideInput, DecideOutput } from './decide-model.ts';
import { inOneUnit } from './one-unit.ts';

export type DecideAnswer =
  | { readonly ok: true; readonly result: DecideOutput }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export const jcgm106 = (place: string): Source => ({
  kind: 'published',
  title: 'JCGM 106, Measurement uncertainty in conformity assessment',
  edition: '2012',
  place,
});
const computed: Source = { kind: 'computed', by: 'decide' };

type Case = { readonly belief: Belief; readonly limits: Limits; readonly unit: string };
type Settled = { readonly ok: true; readonly case: Case; readonly maxRisk: number | null };
type Refused = { readonly ok: false; readonly problems: readonly Problem[] };

function settle(input: DecideInput): Settled | Refused {
  const problems: Problem[] = [];
  const wrong = (path: string, got: unknown, expected: string, why: string) =>
    problems.push({ path, got: got ?? null, expected, why });
  const { measured, u, lower, upper } = input;
  const all = Object.entries({ measured, lower, upper, u }).flatMap(([path, figure]) =>
    figure === undefined ? [] : [{ path, figure, span: path === 'u' }],
  );
  const read = inOneUnit(all);
  if (!read.ok) problems.push(...read.problems);
  const values = read.ok ? read.values : {};
  const spread = values.u ?? (read.ok ? read.spreads.measured : undefined);
  if (u !== undefined && read.ok && read.spreads.measured !== undefined) {
    wrong('u', u, 'u, or measured with its own', 'the uncertainty is given twice');
  }
  if (read.ok && spread === undefined) {
    const expected = 'a standard uncertainty, nought or more';
    wrong('u', u, expected, 'without its uncertainty nothing can be said of a reading');
  }
  if (spread !== undefined && spread < 0) {
    wrong('u', u, 'nought or more', 'no spread can be below nought');
  }
  if (lower === undefined && upper === undefined) {
    wrong('', null, 'lower, upper, or both', 'there is no limit to decide by');
  }
  if (values.lower !== undefined && values.upper !== undefined && values.lower > values.upper) {
    wrong('lower', lower, 'at most upper', 'the lower limit is above the upper one');
  }
  if (input.distribution === 'rectangular' && input.degreesOfFreedom !== undefined) {
    const why = 'a rectangular spread is known from its ends and has no degrees of freedom';
    wrong('degreesOfFreedom', input.degreesOfFreedom, 'no degrees of freedom', why);
  }
  if (input.maxRisk !== undefined && input.guardFactor !== undefined) {
    const why = 'the guard band is given twice, and the two may disagree';
    wrong('guardFactor', input.guardFactor, 'maxRisk or guardFactor', why);
  }
  const risk = input.maxRisk === undefined ? null : readQuantity(input.maxRisk, '1', 'maxRisk');
  if (risk !== null && !risk.ok) problems.push(...risk.problems);
  const maxRisk = risk?.ok ? risk.quantity.value : null;
  if (maxRisk !== null && !(maxRisk > 0 && maxRisk <= 0.5)) {
    wrong('maxRisk', input.maxRisk, 'above 0, at most 0.5', 'such a chance can be no guard');
  }
  if (problems.length > 0 || !read.ok || spread === undefined) return { ok: false, problems };
  const belief: Belief = {
    kind: input.distribution,
    measured: values.measured ?? Number.NaN,
    u: spread,
    degreesOfFreedom: input.degreesOfFreedom ?? null,
  };
  const limits = { lower: values.lower ?? null, upper: values.upper ?? null };
  return { ok: true, case: { belief, limits, unit: read.unit }, maxRisk };
}

export function decide(input: DecideInput): DecideAnswer {
  const settled = settle(input);
  if (!settled.ok) return settled;
  const { belief, limits, unit } = settled.case;
  const found = chances(belief, limits);
  const { rule } = input;
  const factor =
    rule === undefined
      ? null
      : rule === 'simple'
        ? 0
        : (input.guardFactor ??
          (settled.maxRisk === null ? null : factorFor(settled.maxRisk, belief)));
  const decision =
    rule === undefined || factor === null ? null : decideBy(rule, belief, limits, factor);
  const result = {
    verdict: decision?.verdict ?? null,
    probabilityConforming: quantity(found.conforming, '1'),
    below: quantity(found.below, '1'),
    above: quantity(found.above, '1'),
    guardFactor: factor === null ? null : quantity(factor, '1'),
    guardBand: decision === null ? null : quantity(decision.guardBand, unit),
    riskAtLimit: decision === null ? null : quantity(decision.riskAtLimit, '1'),
  };
  const need = rule === undefined ? ['rule'] : ['maxRisk or guardFactor'];
  const names = ['verdict', 'guardFactor', 'guardBand', 'riskAtLimit'];
  const needs = Object.fromEntries(names.map((name) => [name, need]));
  return {
    ok: true,
    result: {
      ...result,
      working: [...rowsOf(settled.case, factor, decision)],
      cautions: cautionsOf(input, settled.case, decision),
      notWorkedOut: [...missing(result, needs)],
    } as DecideOutput,
  };
}

function tailText(argument: string, { kind, degreesOfFreedom }: Belief): string {
  if (kind === 'rectangular') return `max(0,min(1,(1-(${argument})/sqrt(3))/2))`;
  return degreesOfFreedom === null ? `Φ(-(${argument}))` : `Φt(-(${argument}),ν)`;
}

function rowsOf(one: Case, factor: number | null, decision: Decision | null) {
  const { belief, limits, unit } = one;
  const { take, work, rows } = newSheet();
  take('y', 'measured', belief.measured, unit, entered);
  take('u', 'its standard uncertainty', belief.u, unit, entered);
  if (limits.lower !== null) take('L', 'lower limit', limits.lower, unit, entered);
  if (limits.upper !== null) take('U', 'upper limit', limits.upper, unit, entered);
  if (belief.degreesOfFreedom !== null) {
    take('ν', 'degrees of freedom', belief.degreesOfFreedom, '1', entered);
  }
  const found = chances(belief, limits);
  const from = jcgm106('clauses 7.2 to 7.4');
  if (belief.u > 0) {
    const side = (symbol: string, text: string, argument: string, value: number) =>
      work(symbol, text, tailText(argument, belief), value, '1', from);
    if (limits.lower !== null) {
      side('pL', 'chance to be below the lower limit', '(y-L)/u', found.below);
    }
    if (limits.upper !== null) {
      side('pU', 'chance to be above the upper limit', '(U-y)/u', found.above);
    }
    const sum = [limits.lower === null ? '' : '-pL', limits.upper === null ? '' : '-pU'].join('');
    const whole = limits.lower !== null && limits.upper !== null ? found.conforming : null;
    const single = limits.lower === null ? '(y-U)/u' : '(L-y)/u';
    if (whole !== null) work('pc', 'chance that it conforms', `max(0,1${sum})`, whole, '1', from);
    else side('pc', 'chance that it conforms', single, found.conforming);
  }
  if (decision !== null && factor !== null) guardRows({ take, work, rows }, one, factor, decision);
  return rows;
}

function guardRows(
  { take, work }: ReturnType<typeof newSheet>,
  { belief, limits, unit }: Case,
  factor: number,
  decision: Decision,
): void {
  const from = jcgm106('clause 8.3');
  take('g', 'guard factor', factor, '1', computed);
  if (belief.u > 0) {
    work(
      'pg',
      'chance beyond it, on one side',
      tailText('g', belief),
      tail(factor, belief),
      '1',
      from,
    );
  }
  work('w', 'guard band', 'g*u', decision.guardBand, unit, from);
  const { lower, upper } = decision.accept;
  const inward = limits.lower !== null && lower !== null && lower >= limits.lower;
  const sign = inward || (limits.upper !== null && upper !== null && upper <= limits.upper);
  const [low, high] = sign ? ['L+w', 'U-w'] : ['L-w', 'U+w'];
  if (lower !== null) work('AL', 'lower acceptance limit', low, lower, unit, from);
  if (upper !== null) work('AU', 'upper acceptance limit', high, upper, unit, from);
}

function cautionsOf(input: DecideInput, one: Case, decision: Decision | null): string[] {
  const said: string[] = [];
  if (one.belief.u === 0) said.push('The uncertainty is given as nought: no reading is exact.');
  if (decision?.noRoom === true) {
    said.push(
      'The limits lie too close for this uncertainty: no reading could pass at this risk. ' +
        'A better instrument or more readings are needed.',
    );
  }
  if (input.rule === 'simple') {
    said.push('By the simple rule a reading at the limit is as likely wrong as right.');
  }
  if (input.degreesOfFreedom !== undefined && input.degreesOfFreedom < 1) {
    said.push('Under one degree of freedom says next to nothing.');
  }
  return said;
}
