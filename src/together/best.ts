// The best set of jobs: one measure after another made greatest by a solver, its sets counted anew.

import { limits } from '../limits.ts';
import type { Program, Solver } from '../quantity/solver.ts';
import { type Choice, fits, type Sum, sumOf } from './choice.ts';

export type Measure = 'value' | 'saved' | 'count';

export type Best = {
  readonly set: readonly number[];
  /** No set has more of the first measure. */
  readonly bound: number;
  readonly proven: boolean;
  /** Whether the measures after the first are proven too. */
  readonly restProven: boolean;
};

type Floor = { readonly measure: Measure; readonly least: number };

const NEAR = 1e-9;
const near = (size: number): number => NEAR * Math.max(1, Math.abs(size));

/** Greatest in the first measure, then in the next among those that are equal. */
export async function bestSet(
  choice: Choice,
  measures: readonly Measure[],
  solver: Solver,
): Promise<Best> {
  const all = choice.jobs.map((_, at) => at);
  const whole = sumOf(choice, all);
  const [first = 'saved', ...rest] = measures;
  const noneLoses = choice.jobs.every(({ value }) => (value?.value ?? 0) >= 0);
  if (noneLoses && fits(choice, whole.minutes)) {
    return { set: all, bound: whole[first], proven: true, restProven: true };
  }
  const start = quickSet(choice, first);
  const top = await greatest(choice, first, [], start, solver);
  const { bound, proven } = top;
  let { set } = top;
  let restProven = proven;
  const floors: Floor[] = [{ measure: first, least: sumOf(choice, set)[first] }];
  for (const measure of rest) {
    const next = await greatest(choice, measure, floors, set, solver);
    set = next.set;
    restProven &&= next.proven;
    floors.push({ measure, least: sumOf(choice, set)[measure] });
  }
  return { set, bound, proven, restProven };
}

type Level = { set: readonly number[]; bound: number; proven: boolean };

/** The solver counts to within 1e-6, so a set that is over after all is cut off and asked anew. */
async function greatest(
  choice: Choice,
  measure: Measure,
  floors: readonly Floor[],
  start: readonly number[],
  solver: Solver,
): Promise<Level> {
  const cuts: (readonly number[])[] = [];
  let best = start;
  for (let round = 0; round < limits.together.rounds; round += 1) {
    const program = programOf(choice, measure, floors, cuts, best);
    const answer = await solver(program.program, { nodes: limits.together.nodes });
    if (answer.status === 'infeasible' || answer.values === null) {
      const bound = answer.bound === null ? mostOf(choice, measure) : -answer.bound / program.scale;
      // The start fits and is not cut off, so nothing is better than it once all else is.
      if (answer.status === 'infeasible') return levelOf(choice, measure, best, null);
      return levelOf(choice, measure, best, bound);
    }
    const values = answer.values;
    const set = choice.jobs.flatMap((_, at) => ((values.get(`x${at}`) ?? 0) > 0.5 ? [at] : []));
    const sum = sumOf(choice, set);
    if (!fits(choice, sum.minutes) || !keeps(sum, floors)) {
      cuts.push(set);
      continue;
    }
    if (sum[measure] > sumOf(choice, best)[measure]) best = set;
    const told = answer.status === 'optimal' ? null : answer.bound;
    if (answer.status === 'optimal') return levelOf(choice, measure, best, null);
    const bound = told === null ? mostOf(choice, measure) : -told / program.scale;
    return levelOf(choice, measure, best, bound);
  }
  return levelOf(choice, measure, best, mostOf(choice, measure));
}

const keeps = (sum: Sum, floors: readonly Floor[]): boolean =>
  floors.every(({ measure, least }) => sum[measure] >= least - near(least));

function levelOf(
  choice: Choice,
  measure: Measure,
  set: readonly number[],
  told: number | null,
): Level {
  const found = sumOf(choice, set)[measure];
  const bound = Math.max(found, Math.min(told ?? found, mostOf(choice, measure)));
  const proven = bound <= found + near(found);
  return { set, bound: proven ? found : bound, proven };
}

/** What no set can pass: every job that adds to the measure. */
function mostOf(choice: Choice, measure: Measure): number {
  if (measure !== 'value')
    return sumOf(
      choice,
      choice.jobs.map((_, at) => at),
    )[measure];
  return choice.jobs.reduce((sum, { value }) => sum + Math.max(0, value?.value ?? 0), 0);
}

/** One job after another, each time the one that adds most for its minutes, while it fits. */
export function quickSet(choice: Choice, measure: Measure): readonly number[] {
  let set: readonly number[] = [];
  let sum = sumOf(choice, set);
  const left = new Set(choice.jobs.keys());
  for (let steps = 0; left.size > 0 && steps < limits.together.quickSteps; ) {
    let top: { at: number; set: readonly number[]; sum: Sum; rate: number } | null = null;
    for (const at of left) {
      steps += 1;
      const with_ = [...set, at].sort((a, b) => a - b);
      const next = sumOf(choice, with_);
      const adds = next[measure] - sum[measure];
      if (!fits(choice, next.minutes) || adds < 0) {
        if (!fits(choice, next.minutes)) left.delete(at);
        continue;
      }
      const rate = (adds + NEAR) / (next.minutes - sum.minutes + NEAR);
      if (top === null || rate > top.rate) top = { at, set: with_, sum: next, rate };
    }
    if (top === null) break;
    left.delete(top.at);
    ({ set, sum } = top);
  }
  return set;
}

type Term = readonly [coefficient: number, name: string];

function termsOf(choice: Choice, measure: Measure): Term[] {
  const jobs = choice.jobs.map((job, at): Term => {
    if (measure === 'count') return [1, `x${at}`];
    if (measure === 'value') return [job.value?.value ?? 0, `x${at}`];
    const own = (choice.needs[at] ?? []).reduce(
      (sum, thing) => sum + (choice.things[thing]?.minutes ?? 0),
      0,
    );
    return [own, `x${at}`];
  });
  if (measure !== 'saved') return jobs;
  return [...jobs, ...choice.things.map(({ minutes }, at): Term => [-minutes, `y${at}`])];
}

const scaled = (terms: readonly Term[], scale: number): Term[] =>
  terms.map(([coefficient, name]) => [coefficient * scale, name]);

/** A power of ten that brings the greatest coefficient to between 100 and 1000. */
function scaleOf(terms: readonly Term[]): number {
  const most = terms.reduce((top, [coefficient]) => Math.max(top, Math.abs(coefficient)), 0);
  return most === 0 ? 1 : 10 ** (2 - Math.floor(Math.log10(most)));
}

const TERMS_A_LINE = 8;
const number = (value: number): string => String(Number(value.toPrecision(15)));

function linear(terms: readonly Term[]): string {
  const kept = terms.filter(([coefficient]) => coefficient !== 0);
  if (kept.length === 0) return '0 x0';
  return kept
    .map(([coefficient, name], at) => {
      const line = at > 0 && at % TERMS_A_LINE === 0 ? '\n   ' : ' ';
      return `${line}${coefficient < 0 ? '-' : '+'} ${number(Math.abs(coefficient))} ${name}`;
    })
    .join('');
}

/** `x` a job is chosen, `y` a thing is paid for; the minutes of both stay within the limit. */
function programOf(
  choice: Choice,
  measure: Measure,
  floors: readonly Floor[],
  cuts: readonly (readonly number[])[],
  start: readonly number[],
): { readonly program: Program; readonly scale: number } {
  const aim = termsOf(choice, measure);
  const scale = scaleOf(aim);
  const time: Term[] = [
    ...choice.jobs.map(({ minutes }, at): Term => [minutes.value, `x${at}`]),
    ...choice.things.map(({ minutes }, at): Term => [minutes, `y${at}`]),
  ];
  const rows = choice.needs.flatMap((needs, job) =>
    needs.map((thing) => `y${thing} - x${job} >= 0`),
  );
  const byTime = scaleOf(time);
  if (Number.isFinite(choice.limit)) {
    rows.push(`${linear(scaled(time, byTime))} <= ${number(choice.limit * byTime)}`);
  }
  for (const floor of floors) {
    const terms = termsOf(choice, floor.measure);
    const by = scaleOf(terms);
    rows.push(`${linear(scaled(terms, by))} >= ${number((floor.least - near(floor.least)) * by)}`);
  }
  for (const cut of cuts) {
    // What costs too much costs no less with more; what falls short of a floor is cut off alone.
    const inside = new Set(cut);
    const over = !fits(choice, sumOf(choice, cut).minutes);
    const terms = choice.jobs.flatMap((_, at): Term[] =>
      inside.has(at) ? [[1, `x${at}`]] : over ? [] : [[-1, `x${at}`]],
    );
    rows.push(`${linear(terms)} <= ${cut.length - 1}`);
  }
  const text = [
    'Minimize',
    ` obj:${linear(scaled(aim, -scale))}`,
    'Subject To',
    ...rows.map((row, at) => ` c${at}: ${row}`),
    'Bounds',
    ...choice.things.map((_, at) => ` 0 <= y${at} <= 1`),
    'Binary',
    ...choice.jobs.map((_, at) => ` x${at}`),
    'End',
    '',
  ].join('\n');
  const used = new Set(start.flatMap((job) => choice.needs[job] ?? []));
  const known = new Map([
    ...start.map((job): [string, number] => [`x${job}`, 1]),
    ...[...used].map((thing): [string, number] => [`y${thing}`, 1]),
  ]);
  return { program: { text, start: known }, scale };
}
