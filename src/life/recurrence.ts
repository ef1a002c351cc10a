// Repair histories: the mean function with a named variance, the power law, a constant rate, trend.

import { limits } from '../limits.ts';
import { normalFor } from '../quantity/distribution.ts';
import { chiSquaredFor } from '../quantity/special.ts';
import type { Problem } from '../quantity/types.ts';
import { type History, readHistories } from './histories.ts';
import { type MeanRow, meanFunction } from './mean-function.ts';
import {
  alike,
  handbookOf,
  laplaceOf,
  type PowerLaw,
  powerLawOf,
  unbiasedOf,
} from './power-law.ts';
import type { RecurrenceInput, RecurrenceOutput } from './recurrence-model.ts';
import { recurrenceWorking } from './recurrence-working.ts';

export type RecurrenceAnswer =
  | { readonly ok: true; readonly result: RecurrenceOutput }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export function recurrenceOf(input: RecurrenceInput): RecurrenceAnswer {
  const { histories, problems } = readHistories(input);
  if (problems.length > 0) return { ok: false, problems };
  const events = histories.reduce((all, { times }) => all + times.length, 0);
  const exposure = histories.reduce((all, { start, end }) => all + end - start, 0);
  const z = normalFor((1 - input.level) / 2);
  const rows = meanFunction(histories, input.variance);
  const law = powerLawOf(histories);
  const constant = constantOf(events, exposure, input);
  const parts = {
    mcf: rows.map((row) => meanRow(row, input, z)),
    powerLaw: law === null ? null : powerLawOut(law, histories, input, z),
    constant,
    trend: trendOf(histories, input.termination),
  };
  const result: RecurrenceOutput = {
    systems: histories.length,
    events,
    level: input.level,
    variance: input.variance,
    ...parts,
    working: recurrenceWorking({ input, histories, rows, law, events, exposure, constant, z }),
    cautions: [...cautionsOf(input, histories, events, parts.trend, rows)],
    notWorkedOut: [...needsOf(input, histories, events, parts)],
  };
  return { ok: true, result };
}

const ratio = (value: number) => ({ value, unit: '1' as const });

function meanRow(row: MeanRow, input: RecurrenceInput, z: number): RecurrenceOutput['mcf'][number] {
  const { t, atRisk, events, mean, variance } = row;
  const by = variance === null ? null : z * Math.sqrt(variance);
  return {
    t: { value: t, unit: input.units },
    atRisk,
    events,
    mcf: ratio(mean),
    variance: variance === null ? null : ratio(variance),
    normal: by === null ? null : [ratio(mean - by), ratio(mean + by)],
    log:
      by === null || mean === 0
        ? null
        : [ratio(mean * Math.exp(-by / mean)), ratio(mean * Math.exp(by / mean))],
  };
}

/** One over a unit, and a unit to a power, in words that stay readable. */
export const perUnit = (units: string): string =>
  /^[\p{L}%]+$/u.test(units) ? `1/${units}` : `1/(${units})`;

type Figure = NonNullable<NonNullable<RecurrenceOutput['powerLaw']>['shape']>;

/** A figure from its logarithm and how that moves with ln Λ and ln β; null beyond all numbers. */
export function figureOf(
  law: PowerLaw,
  ln: number,
  [l, b]: readonly [number, number],
  unit: string,
  z: number,
): Figure | null {
  const { vll, vlb, vbb } = law;
  const error = Math.sqrt(Math.max(0, l * l * vll + 2 * l * b * vlb + b * b * vbb));
  const value = Math.exp(ln);
  if (!Number.isFinite(value * (1 + error)) || value === 0) return null;
  const end = (by: number) => {
    const found = Math.exp(ln + by);
    return Number.isFinite(found) ? found : null;
  };
  return { value, unit, standardError: value * error, limits: [end(-z * error), end(z * error)] };
}

function powerLawOut(
  law: PowerLaw,
  histories: readonly History[],
  { units, termination }: RecurrenceInput,
  z: number,
): NonNullable<RecurrenceOutput['powerLaw']> {
  const { shape, byT, t } = law;
  const [lnT, lnByT] = [Math.log(t), Math.log(byT)];
  const one = (ln: number, slopes: readonly [number, number], unit: string) =>
    figureOf(law, ln, slopes, unit, z);
  const found = termination === undefined ? null : unbiasedOf(law, histories, termination);
  const lambdaUnit = `${perUnit(units)}^β`;
  const rate = lnByT + Math.log(shape) - lnT;
  return {
    shape: one(Math.log(shape), [0, 1], '1'),
    scale: one(lnT - lnByT / shape, [-1 / shape, lnByT / shape], units),
    lambda: one(lnByT - shape * lnT, [1, -shape * lnT], lambdaUnit),
    t: { value: t, unit: units },
    intensity: one(rate, [1, 1], perUnit(units)),
    mtbfNow: one(-rate, [-1, -1], units),
    mtbfCumulative: one(lnT - lnByT, [-1, 0], units),
    unbiased:
      found === null || !Number.isFinite(found.lambda)
        ? null
        : {
            shape: ratio(found.shape),
            lambda: { value: found.lambda, unit: lambdaUnit },
            mtbfNow: { value: found.mtbfNow, unit: units },
          },
    cramerVonMises: found === null ? null : ratio(found.cramerVonMises),
  };
}

/** Limits as for watching that ends at a set time; at a failure they are on the safe side. */
function constantOf(events: number, exposure: number, { units, level }: RecurrenceInput) {
  const tail = (1 - level) / 2;
  const low = (2 * exposure) / chiSquaredFor(1 - tail, 2 * events + 2);
  const high = events === 0 ? null : (2 * exposure) / chiSquaredFor(tail, 2 * events);
  const long = (value: number) => ({ value, unit: units });
  const ends: RecurrenceOutput['constant']['limits'] = [
    long(low),
    high === null ? null : long(high),
  ];
  return {
    rate: { value: events / exposure, unit: perUnit(units) },
    mtbf: events === 0 ? null : long(exposure / events),
    limits: ends,
  };
}

function trendOf(
  histories: readonly History[],
  ended: RecurrenceInput['termination'],
): RecurrenceOutput['trend'] {
  if (ended === undefined) return { laplace: null, milHdbk189: null };
  const [laplace, handbook] = [laplaceOf(histories, ended), handbookOf(histories, ended)];
  return {
    laplace: laplace === null ? null : { ...laplace, unit: '1' },
    milHdbk189: handbook === null ? null : { ...handbook, unit: '1' },
  };
}

type Parts = Pick<RecurrenceOutput, 'mcf' | 'powerLaw' | 'constant' | 'trend'>;

function needsOf(
  { termination }: RecurrenceInput,
  histories: readonly History[],
  events: number,
  { mcf, powerLaw, constant, trend }: Parts,
) {
  const found: { output: string; needs: string[] }[] = [];
  const lacks = (output: string, needs: string) => found.push({ output, needs: [needs] });
  mcf.forEach(({ variance, log }, at) => {
    if (variance === null) {
      for (const part of ['variance', 'normal', 'log']) {
        lacks(`mcf/${at}/${part}`, 'systems: at least 2 at risk');
      }
    } else if (log === null) lacks(`mcf/${at}/log`, 'values above nought');
  });
  const more = 'systems: more events';
  if (powerLaw === null) lacks('powerLaw', events < 2 ? 'systems: at least 2 events' : more);
  else {
    const alone = alike(histories) ? 'one system, or termination time' : null;
    const why = alone ?? 'systems: all watched from 0 to one and the same end';
    for (const part of ['unbiased', 'cramerVonMises'] as const) {
      if (powerLaw[part] !== null) continue;
      const few = termination === 'failure' && events < 3 ? more : why;
      lacks(`powerLaw/${part}`, termination === undefined ? 'termination' : few);
    }
    for (const [name, part] of Object.entries(powerLaw)) {
      if (part === null && name !== 'unbiased' && name !== 'cramerVonMises') {
        lacks(`powerLaw/${name}`, more);
      } else if (part !== null && 'limits' in part) {
        part.limits.forEach((end, at) => {
          if (end === null) lacks(`powerLaw/${name}/limits/${at}`, more);
        });
      }
    }
  }
  if (constant.mtbf === null) {
    lacks('constant/mtbf', 'systems: at least 1 event');
    lacks('constant/limits/1', 'systems: at least 1 event');
  }
  for (const name of ['laplace', 'milHdbk189'] as const) {
    if (trend[name] !== null) continue;
    const started = histories.every(({ start }) => start === 0);
    const why = name === 'laplace' || started ? more : 'systems: all watched from 0';
    lacks(`trend/${name}`, termination === undefined ? 'termination' : why);
  }
  return found;
}

function cautionsOf(
  input: RecurrenceInput,
  histories: readonly History[],
  events: number,
  trend: RecurrenceOutput['trend'],
  rows: readonly MeanRow[],
): readonly string[] {
  const cautions: string[] = [];
  if (events < limits.life.fewFailures) {
    const words = events === 1 ? '1 event' : `${events} events`;
    cautions.push(
      `Few data: ${words} in ${histories.length} histories; take the limits, not the figure.`,
    );
  }
  if (rows.some(({ atRisk }) => atRisk < 2)) {
    cautions.push('Where fewer than 2 are at risk nothing is known of how systems differ.');
  }
  if (events > 0 && input.termination === 'failure') {
    cautions.push(
      'The limits of the constant rate are those for a set time: here on the safe side.',
    );
  }
  const { milHdbk189: test } = trend;
  if (test !== null && Math.min(test.pLower, test.pUpper) < 0.05) {
    const way = test.pLower < test.pUpper ? 'ever faster' : 'ever more slowly';
    cautions.push(`Events come ${way} (5 % test of MIL-HDBK-189): a constant rate misleads here.`);
  }
  if (histories.some(({ values }) => values.some((one) => one !== 1))) {
    cautions.push('Values count in the mean function alone; all else counts events.');
  }
  return cautions;
}
