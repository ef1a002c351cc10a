// `combine`: which of the jobs in their window to do together, each joint and closure paid once.

import { limits } from '../limits.ts';
import { entered, newSheet, type Sheet } from '../quantity/sheet.ts';
import type { Solver } from '../quantity/solver.ts';
import type { Problem, Source } from '../quantity/types.ts';
import { type Best, bestSet } from './best.ts';
import { type Choice, choiceOf, fits, sumOf, windowOf } from './choice.ts';
import type { CombineInput, CombineOutput } from './model.ts';

const computed: Source = { kind: 'computed', by: 'combine' };

/** What only the whole input shows: ids twice, minutes that are missing, a window inside out. */
export function combineProblems(input: CombineInput): readonly Problem[] {
  const problems: Problem[] = [];
  const seen = new Map<string, number>();
  const valued = input.jobs.some(({ value }) => value !== undefined);
  input.jobs.forEach((job, at) => {
    const path = `jobs/${at}`;
    const first = seen.get(job.id);
    if (first !== undefined) {
      const why = `the id stands at jobs/${first} too`;
      problems.push({ path: `${path}/id`, got: job.id, expected: 'an id of its own', why });
    } else seen.set(job.id, at);
    const { earliest, latest } = job.due ?? {};
    if (earliest && latest && earliest.ms > latest.endMs) {
      const expected = `${earliest.given} or later`;
      const why = 'the window ends before it begins';
      problems.push({ path: `${path}/due/latest`, got: latest.given, expected, why });
    }
    if (valued && job.value === undefined) {
      const why = 'other jobs have a value and this one has none';
      const remedy = 'give each job a value in the same measure, or none of them';
      problems.push({ path: `${path}/value`, got: null, expected: 'a figure', why, remedy });
    }
    for (const [kind, table, needed] of [
      ['joint', input.jointMinutes, job.joints],
      ['closure', input.closureMinutes, job.closures],
    ] as const) {
      needed.forEach((id, index) => {
        if (Object.hasOwn(table, id)) return;
        const expected = `an id of ${kind}Minutes`;
        const why = `the minutes of this ${kind} are not given`;
        const remedy = `give them under ${kind}Minutes`;
        problems.push({ path: `${path}/${kind}s/${index}`, got: id, expected, why, remedy });
      });
    }
  });
  return problems;
}

export async function combine(input: CombineInput, solver: Solver): Promise<CombineOutput> {
  const choice = choiceOf(input);
  const valued = input.jobs.some(({ value }) => value !== undefined);
  const best = await bestSet(choice, valued ? ['value', 'saved'] : ['saved', 'count'], solver);
  const sheet = newSheet();
  const { minutes, saved } = rowsOf(sheet, choice, best.set);
  const sum = sumOf(choice, best.set);
  const found = valued ? sum.value : saved;
  const bound = best.proven ? found : Math.max(found, best.bound);
  const unit = valued ? '1' : 'min';
  const most = `most ${valued ? 'value' : 'minutes saved'} any choice can have`;
  sheet.take('B', best.proven ? `${most}: proven` : most, bound, unit, computed);
  const u = uncertainty(choice, best.set);
  return {
    chosen: best.set.map((at) => choice.jobs[at]?.id ?? ''),
    left: leftOut(input, choice, best),
    minutes: { value: clean(minutes), unit: 'min', ...u.minutes },
    minutesSaved: { value: clean(saved), unit: 'min', ...u.saved },
    objective: valued ? 'value' : 'minutes saved',
    value: valued ? { value: clean(sum.value), unit: '1' } : null,
    bound: { value: clean(bound), unit } as CombineOutput['bound'],
    proven: best.proven,
    gap: best.proven || bound === 0 ? 0 : (bound - found) / Math.abs(bound),
    shared: sharedOf(choice, best.set),
    working: [...sheet.rows] as CombineOutput['working'],
    cautions: cautionsOf(input, best),
    notWorkedOut: valued ? [] : [{ output: 'value', needs: ['value of each job'] }],
  };
}

/** Sums of decimals end in digits of rounding that say nothing. */
const clean = (value: number): number => Math.round(value * 1e9) / 1e9 || 0;

function rowsOf(sheet: Sheet, choice: Choice, set: readonly number[]) {
  const jobs = set.flatMap((at) => choice.jobs[at] ?? []);
  const needed = set.flatMap((at) => choice.needs[at] ?? []);
  const once = [...new Set(needed)].flatMap((at) => choice.things[at] ?? []);
  const every = needed.flatMap((at) => choice.things[at] ?? []);
  const own = sumInto(
    sheet,
    'J',
    'the jobs themselves',
    jobs.map(({ minutes }) => minutes.value),
  );
  const paid = sumInto(
    sheet,
    'P',
    'their joints and closures, each paid once',
    once.map((thing) => thing.minutes),
  );
  const alone = sumInto(
    sheet,
    'A',
    'their joints and closures, paid for each job by itself',
    every.map((thing) => thing.minutes),
  );
  const minutes = own + paid;
  sheet.work('M', 'minutes together', 'J + P', minutes, 'min', computed);
  sheet.work(
    'S',
    'minutes saved against each job by itself',
    'A - P',
    alone - paid,
    'min',
    computed,
  );
  return { minutes, saved: alone - paid };
}

function sumInto(sheet: Sheet, symbol: string, text: string, terms: readonly number[]): number {
  const each = limits.together.termsInARow;
  let sum = 0;
  for (let at = 0; at < Math.max(1, terms.length); at += each) {
    const part = terms.slice(at, at + each);
    for (const term of part) sum += term;
    const last = at + each >= terms.length;
    const before = at === 0 ? [] : [`${symbol}${at / each}`];
    const own = last ? symbol : `${symbol}${at / each + 1}`;
    sheet.work(own, text, [...before, ...part].join(' + ') || '0', sum, 'min', entered);
  }
  return sum;
}

/** Independent inputs: a joint that two jobs need counts once together, and once more saved. */
function uncertainty(choice: Choice, set: readonly number[]) {
  const times = new Map<number, number>();
  for (const at of set) {
    for (const thing of choice.needs[at] ?? []) times.set(thing, (times.get(thing) ?? 0) + 1);
  }
  const own = set.map((at) => choice.jobs[at]?.minutes.u ?? 0);
  const once = [...times.keys()].map((thing) => choice.things[thing]?.u ?? 0);
  const again = [...times].map(([thing, n]) => (n - 1) * (choice.things[thing]?.u ?? 0));
  const root = (parts: readonly number[]) => {
    const u = Math.sqrt(parts.reduce((sum, part) => sum + part * part, 0));
    return u > 0 ? { u } : {};
  };
  return { minutes: root([...own, ...once]), saved: root(again) };
}

function sharedOf(choice: Choice, set: readonly number[]): CombineOutput['shared'] {
  return choice.things.flatMap(({ kind, id }, thing) => {
    const jobs = set.filter((at) => choice.needs[at]?.includes(thing));
    if (jobs.length < 2) return [];
    return [{ kind, id, jobs: jobs.map((at) => choice.jobs[at]?.id ?? '') }];
  });
}

function leftOut(input: CombineInput, choice: Choice, best: Best): CombineOutput['left'] {
  const chosen = new Set(best.set.map((at) => choice.jobs[at]));
  return input.jobs.flatMap((job): CombineOutput['left'] => {
    if (chosen.has(job)) return [];
    const stands = windowOf(job, input.on);
    if (stands !== 'open') return [{ id: job.id, why: stands }];
    const with_ = [...best.set, choice.jobs.indexOf(job)].sort((a, b) => a - b);
    const room = fits(choice, sumOf(choice, with_).minutes);
    return [{ id: job.id, why: room ? 'worth nothing here' : 'no room' }];
  });
}

function cautionsOf(input: CombineInput, best: Best): string[] {
  const overdue = input.jobs.filter((job) => windowOf(job, input.on) === 'overdue');
  const said = overdue.map(
    ({ id, due }) =>
      `${id} was due by ${due?.latest?.given}: overdue, and not weighed here. To go on without ` +
      'it, or to do it now, is a decision with a name, a reason and a limit.',
  );
  if (!best.proven) said.push('Not proven best: the bound says how much a better choice may have.');
  else if (!best.restProven) {
    said.push('Another choice may have as much and save more minutes: that is not proven.');
  }
  const several = best.set.length > 1;
  const hands =
    'Two machines that stand in for each other are not opened by the same hands before the ' +
    'first is run and passed: a slip made on one is then made on both. The choice knows ' +
    'minutes, not machines.';
  return several ? [...said, hands] : said;
}
