// Removal on generated plants: time, share proven, gap, and the same programs given to cbc.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Program, RemovalResult } from '../src/removal/model.ts';
import { removal } from '../src/removal/removal.ts';
import { faultsOf } from '../src/removal/try-everything.ts';
import { solverWithin } from '../src/server/solver.ts';
import { writeMeasured } from './measured.ts';
import { FAMILIES, type Family, generatedPlant } from './removal-plants.ts';

const SIZES = [250, 500, 1_000, 2_000, 4_000];
/** What is promised, and what the solver is given of it: the rest is reading and ordering. */
const PROMISED_SECONDS = 3;
const SOLVER_SECONDS = 2.2;
const NO_END = 1_000_000_000;

type Run = {
  readonly result: RemovalResult;
  readonly faults: readonly string[];
  readonly seconds: number;
  /** The first program that the solver was asked, and how long it took over it. */
  readonly asked: { readonly program: Program; readonly seconds: number; done: boolean } | null;
};

const now = () => performance.now() / 1_000;

async function run(family: Family, size: number, seed: number): Promise<Run> {
  const input = generatedPlant(family, size, seed);
  const start = now();
  const timed = solverWithin(SOLVER_SECONDS);
  let asked: Run['asked'] = null;
  const result = await removal(
    input,
    async (program, limits) => {
      const from = now();
      const answer = await timed.solver(program, limits);
      asked ??= { program, seconds: now() - from, done: answer.status === 'optimal' };
      return answer;
    },
    { nodes: NO_END },
    timed.late,
  );
  const seconds = now() - start;
  await timed.close();
  const faults = result.feasible ? faultsOf(input, result) : [];
  if (result.feasible && result.bound.value > result.minutes.value) faults.push('bound above');
  return { result, faults, seconds, asked };
}

const folder = mkdtempSync(join(tmpdir(), 'removal-bench-'));

/** Seconds that cbc takes over the same text; null where it is not done in time. */
function cbcSeconds(program: Program): number | null {
  const file = join(folder, 'program.lp');
  writeFileSync(file, program.text);
  const from = now();
  const args = [file, '-sec', `${PROMISED_SECONDS}`, '-ratio', '0', '-allow', '0', 'solve', 'quit'];
  const { stdout } = spawnSync('cbc', args, { encoding: 'utf8' });
  return /Optimal solution found/.test(stdout) ? now() - from : null;
}

const hasCbc = spawnSync('cbc', ['quit']).error === undefined;

function median(values: readonly number[]): number | null {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? null;
}

const shown = (value: number | null, digits: number): string => value?.toFixed(digits) ?? '–';

async function row(
  family: Family,
  size: number,
  seeds: number,
): Promise<{ text: string; bad: number }> {
  const runs: Run[] = [];
  const ratios: number[] = [];
  let cbcDone = 0;
  for (let seed = 1; seed <= seeds; seed += 1) {
    const one = await run(family, size, seed);
    runs.push(one);
    for (const fault of one.faults) process.stdout.write(`${family} ${size} ${seed}: ${fault}\n`);
    if (one.asked === null || !hasCbc) continue;
    const theirs = cbcSeconds(one.asked.program);
    if (theirs !== null) cbcDone += 1;
    if (theirs !== null && one.asked.done) ratios.push(theirs / one.asked.seconds);
  }
  const plans = runs.flatMap(({ result }) => (result.feasible ? [result] : []));
  const open = plans.filter(({ proven }) => !proven);
  const asked = runs.flatMap((one) => one.asked ?? []);
  const late = runs.filter(({ seconds }) => seconds > PROMISED_SECONDS).length;
  const invalid = runs.filter(({ faults }) => faults.length > 0).length;
  const times = runs.map(({ seconds }) => seconds);
  const cells = [
    family,
    size,
    `${runs.length - open.length} of ${runs.length}`,
    runs.length - plans.length,
    shown(open.length === 0 ? 0 : 100 * (median(open.map(({ gap }) => gap)) ?? 0), 1),
    shown(100 * Math.max(0, ...open.map(({ gap }) => gap)), 1),
    shown(median(times), 2),
    shown(Math.max(...times), 2),
    `${asked.length} (${asked.filter(({ done }) => done).length} / ${hasCbc ? cbcDone : '–'})`,
    shown(median(ratios), 2),
  ];
  return { text: `| ${cells.join(' | ')} |`, bad: late + invalid };
}

const HEAD = [
  '| family | parts | proven | of them infeasible | gap of the rest, median % | worst % |' +
    ' seconds, median | worst | solver asked (done: here / cbc) | cbc time / ours, median |',
  `|${' --- |'.repeat(10)}`,
];

function option(name: string): string | undefined {
  const at = process.argv.indexOf(name);
  return at < 0 ? undefined : process.argv[at + 1];
}

const seeds = Number(option('--seeds') ?? process.env.BENCH_SEEDS ?? 5);
const sizes = option('--sizes')?.split(',').map(Number) ?? SIZES;
const git = spawnSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' });
const date = new Date().toISOString().slice(0, 10);
const load = loadavg()[0] ?? 0;
const said =
  `${date}, commit ${git.stdout.trim() || 'unknown'}, Node ${process.version}, ` +
  `seeds 1 to ${seeds}, ` +
  `load ${load.toFixed(1)} on the machine at the start. Each answer is checked step by step; ` +
  `${PROMISED_SECONDS} s are promised, ${SOLVER_SECONDS} s of them end the solver. ` +
  'cbc is Debian’s, native code, given the text of the first program that the solver was asked.';
process.stdout.write(`Removal on generated plants. ${said}\n\n${HEAD.join('\n')}\n`);
const rows: string[] = [];
let bad = 0;
for (const family of FAMILIES) {
  for (const size of sizes) {
    const one = await row(family, size, seeds);
    rows.push(one.text);
    bad += one.bad;
    process.stdout.write(`${one.text}\n`);
  }
}
rmSync(folder, { recursive: true });
const verdict = bad === 0 ? 'No answer was late or wrong.' : `${bad} answers were late or wrong.`;
process.stdout.write(`\n${verdict}\n`);
if (process.argv.includes('--write')) {
  writeMeasured(['## Removal', '', said, '', ...HEAD, ...rows, '', verdict]);
}
if (bad > 0) process.exitCode = 1;
