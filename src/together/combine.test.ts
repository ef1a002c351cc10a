// `combine` against every set of jobs, from printed seeds; the worked cases; an unfinished search.

import { describe, expect, test } from 'vitest';
import { runCalc } from '../calc/register.ts';
import { recheckWorking } from '../quantity/expression.ts';
import type { Solver } from '../quantity/solver.ts';
import type { Working } from '../quantity/types.ts';
import { below, type Random, randomFrom } from '../removal/seeded.ts';
import { solveWithHighs } from '../server/solver-inline.ts';
import type { CombineOutput } from './model.ts';

type Raw = {
  readonly jobs: readonly {
    readonly id: string;
    readonly due: { readonly earliest: string; readonly latest: string };
    readonly minutes: number;
    readonly joints: readonly string[];
    readonly closures: readonly string[];
    readonly value?: number;
  }[];
  readonly jointMinutes: Readonly<Record<string, number>>;
  readonly closureMinutes: Readonly<Record<string, number>>;
  readonly limit: number;
  readonly on: string;
};

async function combined(raw: object, solver: Solver = solveWithHighs): Promise<CombineOutput> {
  const answer = await runCalc('combine', raw, { solver });
  if (!answer.ok) throw new Error(JSON.stringify(answer.error));
  return answer.result as unknown as CombineOutput;
}

async function problems(raw: object) {
  const answer = await runCalc('combine', raw, { solver: solveWithHighs });
  if (answer.ok) throw new Error('it was taken');
  return answer.error.error.problems.map(({ path }) => path).sort();
}

const ON = '2026-06-15';
const dayOf = (offset: number) =>
  new Date(Date.UTC(2026, 5, 15 + offset)).toISOString().slice(0, 10);

/** Decimals, ties, windows that end or begin on the day, things that nobody else needs. */
function randomCase(random: Random): Raw {
  const coarse = random() < 0.5;
  const minutes = (most: number) =>
    coarse ? 5 * below(random, most / 5) : Math.round(random() * most * 10) / 10;
  const named = (letter: string, count: number, most: number) =>
    Object.fromEntries(Array.from({ length: count }, (_, at) => [`${letter}${at}`, minutes(most)]));
  const jointMinutes = named('j', 1 + below(random, 7), 60);
  const closureMinutes = named('c', 1 + below(random, 4), 30);
  const some = (table: object) => Object.keys(table).filter(() => random() < 0.45);
  const valued = random() < 0.7;
  const jobs = Array.from({ length: 1 + below(random, 9) }, (_, at) => {
    const first = below(random, 12) - 9;
    const due = { earliest: dayOf(first), latest: dayOf(first + below(random, 14)) };
    const value = coarse ? below(random, 6) : Math.round(random() * 100) / 10;
    const rest = { minutes: minutes(80), joints: some(jointMinutes) };
    const own = { id: `job ${at}`, due, ...rest, closures: some(closureMinutes) };
    return valued ? { ...own, value } : own;
  });
  return { jobs, jointMinutes, closureMinutes, limit: minutes(400), on: ON };
}

/** Written from the contract alone: minutes, minutes saved, value of a set; null: not allowed. */
function weigh(raw: Raw, set: readonly number[]) {
  const jobs = set.map((at) => raw.jobs[at]).filter((job) => job !== undefined);
  if (jobs.some(({ due }) => raw.on < due.earliest || raw.on > due.latest)) return null;
  const cost = (joints: readonly string[], closures: readonly string[]) =>
    joints.reduce((sum, id) => sum + (raw.jointMinutes[id] ?? Number.NaN), 0) +
    closures.reduce((sum, id) => sum + (raw.closureMinutes[id] ?? Number.NaN), 0);
  const alone = jobs.reduce((sum, job) => sum + job.minutes + cost(job.joints, job.closures), 0);
  const minutes =
    jobs.reduce((sum, job) => sum + job.minutes, 0) +
    cost(
      [...new Set(jobs.flatMap((job) => job.joints))],
      [...new Set(jobs.flatMap((job) => job.closures))],
    );
  if (minutes > raw.limit + 1e-9) return null;
  const value = jobs.reduce((sum, job) => sum + (job.value ?? 0), 0);
  return { minutes, saved: alone - minutes, value, count: jobs.length };
}

function bestByTrying(raw: Raw) {
  const valued = raw.jobs[0]?.value !== undefined;
  let top = [Number.NEGATIVE_INFINITY, 0];
  for (let mask = 0; mask < 2 ** raw.jobs.length; mask += 1) {
    const set = raw.jobs.flatMap((_, at) => ((mask >> at) & 1 ? [at] : []));
    const sum = weigh(raw, set);
    if (sum === null) continue;
    const rank = valued ? [sum.value, sum.saved] : [sum.saved, sum.count];
    const [first = 0, second = 0] = rank;
    const [most = 0, next = 0] = top;
    if (first > most + 1e-7 || (first > most - 1e-7 && second > next)) top = rank;
  }
  return top;
}

const FIRST_SEED = 88_000;
const count = process.env.LONG === '1' ? 2_000 : 200;

test(`${count} random cases, seeds ${FIRST_SEED} on, against every set of jobs`, async () => {
  let shared = 0;
  let short = 0;
  for (let seed = FIRST_SEED; seed < FIRST_SEED + count; seed += 1) {
    const raw = randomCase(randomFrom(seed));
    const found = await combined(raw);
    const set = found.chosen.map((id) => raw.jobs.findIndex((job) => job.id === id));
    const own = weigh(raw, set);
    if (own === null) throw new Error(`seed ${seed}: the choice breaks a window or the limit`);
    const [first = 0, second = 0] = bestByTrying(raw);
    const valued = raw.jobs[0]?.value !== undefined;
    expect(found.minutes.value, `seed ${seed}`).toBeCloseTo(own.minutes, 6);
    expect(found.minutesSaved.value, `seed ${seed}`).toBeCloseTo(own.saved, 6);
    expect(valued ? own.value : own.saved, `seed ${seed}`).toBeCloseTo(first, 6);
    expect(valued ? own.saved : own.count, `seed ${seed}`).toBeCloseTo(second, 6);
    expect(found.bound.value, `seed ${seed}`).toBeCloseTo(first, 6);
    expect([found.proven, found.gap]).toEqual([true, 0]);
    expect([...found.chosen, ...found.left.map(({ id }) => id)].sort()).toEqual(
      raw.jobs.map(({ id }) => id).sort(),
    );
    expect(recheckWorking(found.working as Working)).toEqual([]);
    if (own.saved > 0) shared += 1;
    if (found.left.some(({ why }) => why === 'no room')) short += 1;
  }
  expect(shared).toBeGreaterThan(count / 4);
  expect(short).toBeGreaterThan(count / 4);
});

/** 40 jobs in pairs of machines, more than there is time for. */
function large(): Raw {
  const random = randomFrom(88_999);
  const base = randomCase(random);
  const names = Array.from({ length: 30 }, (_, at) => `j${at}`);
  const jobs = Array.from({ length: 40 }, (_, at) => ({
    id: `job ${at}`,
    due: { earliest: '2026-06-01', latest: '2026-06-30' },
    minutes: 10 + below(random, 60),
    joints: names.filter(() => random() < 0.1),
    closures: [],
    value: 1 + below(random, 20),
  }));
  const jointMinutes = Object.fromEntries(names.map((name) => [name, 5 + below(random, 40)]));
  return { ...base, jobs, jointMinutes, limit: 600 };
}

test('40 jobs under a limit are proven; adding or swapping one gains nothing', async () => {
  const raw = large();
  const found = await combined(raw);
  expect(found.proven).toBe(true);
  const set = found.chosen.map((id) => raw.jobs.findIndex((job) => job.id === id));
  const best = weigh(raw, set)?.value ?? 0;
  for (const out of [-1, ...set]) {
    for (const at of raw.jobs.keys()) {
      if (set.includes(at)) continue;
      const other = weigh(raw, [...set.filter((one) => one !== out), at]);
      expect(other === null ? 0 : other.value).toBeLessThanOrEqual(best + 1e-9);
    }
  }
});

test('a search that is stopped says so, with a bound that no choice passes', async () => {
  const raw = large();
  const stopped: Solver = async () => ({ status: 'stopped', values: null, bound: null });
  const quick = await combined(raw, stopped);
  const best = await combined(raw);
  expect(quick.proven).toBe(false);
  expect(quick.gap).toBeGreaterThan(0);
  expect(quick.bound.value).toBeGreaterThanOrEqual(best.value?.value ?? Number.NaN);
  expect(quick.cautions.join()).toMatch(/Not proven best/);
});

const pump = { id: 'pump', minutes: 60, joints: ['s', 'd'], closures: ['v', 'o'], value: 10 };
const impeller = { id: 'impeller', minutes: 30, joints: ['s', 'c'], closures: ['v'], value: 6 };
const strainer = { id: 'strainer', minutes: 20, joints: ['l'], closures: ['v'], value: 3 };
const three = {
  jobs: [pump, impeller, strainer],
  jointMinutes: { s: 25, d: 20, c: 15, l: 10 },
  closureMinutes: { v: 12, o: 8 },
  on: '2026-03-14T09:00:00Z',
};

describe('the worked cases of its document', () => {
  test('three jobs that share a suction joint and the sea valve', async () => {
    const found = await combined(three);
    expect(found.minutes).toEqual({ value: 200, unit: 'min' });
    expect(found.minutesSaved).toEqual({ value: 49, unit: 'min' });
    expect(found.value).toEqual({ value: 19, unit: '1' });
  });

  test('with two and a half hours the pump alone is worth more than the other two', async () => {
    const found = await combined({ ...three, limit: '2.5 h' });
    expect(found.chosen).toEqual(['pump']);
    expect(found.minutes.value).toBe(125);
    expect(found.bound).toEqual({ value: 10, unit: '1' });
    expect(found.left.map(({ why }) => why)).toEqual(['no room', 'no room']);
  });
});

test('without values minutes saved decide; uncertainty goes along', async () => {
  const jobs = three.jobs.map(({ value: _, ...job }) => job);
  const jointMinutes = { ...three.jointMinutes, s: { value: 25, unit: 'min', u: 3 } };
  const found = await combined({ ...three, jobs, jointMinutes, limit: 170 });
  expect(found.chosen).toEqual(['pump', 'impeller']);
  expect(found.objective).toBe('minutes saved');
  expect(found.minutes).toEqual({ value: 170, unit: 'min', u: 3 });
  expect(found.minutesSaved).toEqual({ value: 37, unit: 'min', u: 3 });
  expect(found.value).toBeNull();
});

test('a day as an end holds to its last moment; overdue is said and not weighed', async () => {
  const due = { earliest: '2026-03-14', latest: '2026-03-14' };
  const late = { latest: '2026-03-14T08:59:59Z' };
  const soon = { earliest: '2026-03-14T09:00:01Z' };
  const jobs = [
    { ...pump, due },
    { ...impeller, due: late },
    { ...strainer, due: soon },
  ];
  const found = await combined({ ...three, jobs });
  expect(found.chosen).toEqual(['pump']);
  expect(found.left).toEqual([
    { id: 'impeller', why: 'overdue' },
    { id: 'strainer', why: 'not yet due' },
  ]);
  expect(found.cautions.join()).toMatch(/impeller was due by/);
});

test('nothing that fits, nothing in its window: no job, no minutes, proven', async () => {
  const found = await combined({ ...three, limit: 10 });
  expect([found.chosen, found.minutes.value, found.proven, found.gap]).toEqual([[], 0, true, 0]);
  const due = { earliest: '2027-01-01' };
  const none = await combined({ ...three, jobs: [{ ...pump, due }] });
  expect([none.chosen, none.minutes.value, none.minutesSaved.value]).toEqual([[], 0, 0]);
});

test('bad input is listed, all of it', async () => {
  const due = { earliest: '2026-04-01', latest: '2026-03-01' };
  const { value: _, ...unvalued } = impeller;
  const jobs = [
    { ...pump, due },
    { ...unvalued, id: 'pump', joints: ['s', 'x'] },
  ];
  expect(await problems({ ...three, jobs })).toEqual([
    'jobs/0/due/latest',
    'jobs/1/id',
    'jobs/1/joints/1',
    'jobs/1/value',
  ]);
  expect(await problems({ ...three, on: '2026-02-30', limit: -1, hands: 2 })).toEqual([
    'hands',
    'limit',
    'on',
  ]);
});
