// `pump-test`: each reading at the speed of the curve with its uncertainty, and a verdict.

import { limits } from '../limits.ts';
import { quantity } from '../quantity/sheet.ts';
import type { Problem, Quantity } from '../quantity/types.ts';
import { type Drawn, linear, monteCarlo, type Uncertain } from '../quantity/uncertainty.ts';
import { pumpCautions, pumpNeeds } from './pump-cautions.ts';
import { figureOut, type Reference } from './pump-figures.ts';
import { type Case, caseOf, mediumOf, referenceOf, wrongReadings } from './pump-given.ts';
import {
  type Judged,
  judge,
  leastChance,
  requirementsOf,
  restsOn,
  settledBy,
  together,
  type Worked,
} from './pump-judge.ts';
import { OUTPUTS, type PumpTestInput, type PumpTestOutput, UNITS } from './pump-model.ts';
import { judgedRows, readingRows } from './pump-working.ts';

export type PumpTestAnswer =
  | { readonly ok: true; readonly result: PumpTestOutput }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const DEFAULT_SEED = 1;

/** First order, output by output; null where the inputs do not settle it. */
export function workedOut(inputs: readonly Uncertain[], reference: Reference): Worked {
  const out = new Float64Array(OUTPUTS.length);
  const found = OUTPUTS.map((name, at) => {
    const model = (x: readonly number[]): number => {
      figureOut(reference, x, out);
      return out[at] ?? Number.NaN;
    };
    const one = linear(model, inputs);
    if (!Number.isFinite(one.value)) return [name, null];
    // At the end of the curve one side has no answer: the other side stands for both.
    return [name, Number.isFinite(one.u) ? one : atTheEnd(model, inputs, one.value)];
  });
  return Object.fromEntries(found) as Worked;
}

function atTheEnd(
  model: (x: readonly number[]) => number,
  inputs: readonly Uncertain[],
  value: number,
) {
  const best = inputs.map((one) => one.value);
  const parts = inputs.map(({ u }, at) => {
    if (u === 0) return 0;
    const step = u / 100;
    const moved = (by: number) => model(best.map((one, i) => (i === at ? one + by : one))) - value;
    const [low, high] = [moved(-step), moved(step)];
    if (Number.isFinite(low) && Number.isFinite(high)) return 50 * (high - low);
    return 100 * (Number.isFinite(high) ? high : Number.isFinite(low) ? -low : 0);
  });
  return { value, u: Math.hypot(...parts), parts, degreesOfFreedom: null };
}

export function drawnOut(
  inputs: readonly Uncertain[],
  reference: Reference,
  seed: number,
): readonly (Drawn | null)[] | null {
  if (!inputs.some(({ u }) => u > 0)) return null;
  const model = (x: Float64Array, out: Float64Array) => figureOut(reference, x, out);
  return monteCarlo(inputs, model, OUTPUTS.length, limits.proving.draws, seed);
}

type Shown = Quantity & {
  readonly monteCarlo?: { readonly u: number; readonly 'p2.5': number; readonly 'p97.5': number };
};

function shownOf(worked: Worked, drawn: readonly (Drawn | null)[] | null) {
  return Object.fromEntries(
    OUTPUTS.map((name, at) => {
      const one = worked[name];
      if (one === null) return [name, null];
      const { value, u } = one;
      const draws = drawn?.[at] ?? null;
      const shown: Shown = {
        ...{ value, unit: UNITS[name] },
        ...(u > 0 ? { u } : {}),
        ...(u > 0 && draws !== null
          ? { monteCarlo: { u: draws.u, 'p2.5': draws.low, 'p97.5': draws.high } }
          : {}),
      };
      return [name, shown];
    }),
  );
}

function oneReading(judged: readonly Judged[], worked: Worked, drawn: ReturnType<typeof drawnOut>) {
  const chance = leastChance(judged);
  return {
    ...shownOf(worked, drawn),
    verdict: together(judged),
    probabilityConforming: chance === null ? null : quantity(chance, '1'),
  };
}

export function pumpTest(input: PumpTestInput): PumpTestAnswer {
  const medium = mediumOf(input);
  const reference = referenceOf(input);
  const cases: readonly Case[] = input.readings.map((one) => caseOf(input, one, medium));
  const asked = requirementsOf(input);
  const problems = [
    ...(medium.problem === null ? [] : [medium.problem]),
    ...wrongReadings(input, cases),
    ...(asked.ok ? [] : asked.problems),
  ];
  if (problems.length > 0 || !asked.ok) return { ok: false, problems };
  const worked = cases.map(({ inputs }) => workedOut(inputs, reference));
  if (worked.every((one) => OUTPUTS.every((name) => one[name] === null))) {
    const why = 'nothing can be worked out: no reading has what one figure needs';
    const expected = 'suction and discharge with a fluid, or head, or flow with a curve';
    return { ok: false, problems: [{ path: 'readings', got: null, expected, why }] };
  }
  const seed = input.seed ?? DEFAULT_SEED;
  const judged = judge(asked.list, worked);
  const verdict = together(judged);
  const chance = leastChance(judged);
  const readings = worked.map((one, at) => {
    const own = judged.filter(({ reading }) => reading === at);
    // Each reading draws from a stream of its own, so that one more does not change the others.
    return oneReading(own, one, drawnOut(cases[at]?.inputs ?? [], reference, seed + at));
  });
  const result = {
    readings,
    verdict,
    probabilityConforming: chance === null ? null : quantity(chance, '1'),
    settledBy: settledBy(verdict === 'cannot tell' ? judged : []),
    restsOn: restsOn(judged),
    working: [
      ...cases.flatMap(({ figures }, at) => readingRows(figures, reference, at)),
      ...judgedRows(judged),
    ],
    cautions: [...medium.cautions, ...pumpCautions(input, cases, worked, judged)],
    notWorkedOut: pumpNeeds(cases, worked, reference, asked.list, judged),
  };
  return { ok: true, result: result as PumpTestOutput };
}
