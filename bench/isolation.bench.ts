// Isolation on generated networks: seconds, share proven, growth, and least cuts beside networkx.

import { spawnSync } from 'node:child_process';
import { loadavg } from 'node:os';
import { join } from 'node:path';
import { isolatePlain } from '../src/isolation/isolate.ts';
import type { PlainIn, PlainOut } from '../src/isolation/model.ts';
import { isolateProblems } from '../src/isolation/problems.ts';
import { faultsOf } from '../src/isolation/try-every-cut.ts';
import { FAMILIES, type Family, generated } from './isolation-networks.ts';
import { writeMeasured } from './measured.ts';

const SIZES = [625, 1_250, 2_500, 5_000, 10_000];
/** What is promised at this size. */
const PROMISED = { elements: 5_000, seconds: 1 };
const ASKED = [
  { barriers: 1, keep: 0 },
  { barriers: 2, keep: 0 },
  { barriers: 1, keep: 4 },
  { barriers: 2, keep: 4 },
  { barriers: 1, keep: 12 },
  { barriers: 2, keep: 12 },
] as const;

const now = () => performance.now() / 1_000;

/** Of this process: what else the machine does at the time does not count. */
const worked = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

type Run = {
  readonly input: PlainIn;
  readonly result: PlainOut;
  /** Of the processor, and by the clock. */
  readonly seconds: number;
  readonly clock: number;
  readonly faults: readonly string[];
};

/** A service that nothing supplies is no question; it is left out. */
function asked(input: PlainIn): PlainIn {
  const bad = new Set(isolateProblems(input).map(({ path }) => path.split('/')[1]));
  return { ...input, keep: input.keep.filter((_, at) => !bad.has(`${at}`)) };
}

function run(family: Family, elements: number, seed: number, wanted: (typeof ASKED)[number]): Run {
  const input = asked(generated(family, elements, seed, wanted));
  const start = [worked(), now()] as const;
  const wrong = isolateProblems(input);
  const result = isolatePlain(input);
  const [seconds, clock] = [worked() - start[0], now() - start[1]];
  const faults = [...wrong.map(({ why }) => why)];
  if (result.isolable) {
    faults.push(...faultsOf(input, result.closures));
    if ((result.bound ?? 0) > (result.effort ?? 0)) faults.push('bound above');
  }
  return { input, result, seconds, clock, faults };
}

const python = (): boolean =>
  spawnSync('python3', ['-c', 'import networkx'], { encoding: 'utf8' }).status === 0;

type Theirs = { readonly effort: number | null; readonly seconds: number };

function networkx(inputs: readonly PlainIn[]): Theirs[] {
  const file = join(import.meta.dirname, 'isolation.networkx.py');
  const lines = inputs.map((one) => JSON.stringify(one)).join('\n');
  const ran = spawnSync('python3', [file], { input: lines, encoding: 'utf8', maxBuffer: 1e8 });
  if (ran.status !== 0) throw new Error(ran.stderr);
  return ran.stdout
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Theirs);
}

function median(values: readonly number[]): number | null {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? null;
}

const shown = (value: number | null, digits: number): string => value?.toFixed(digits) ?? '–';

const hasNetworkx = python();

function row(family: Family, elements: number, wanted: (typeof ASKED)[number], seeds: number) {
  const runs = Array.from({ length: seeds }, (_, at) => run(family, elements, at + 1, wanted));
  let bad = 0;
  const ratios: number[] = [];
  if (hasNetworkx && elements <= PROMISED.elements && wanted.barriers === 1 && wanted.keep === 0) {
    networkx(runs.map(({ input }) => input)).forEach((theirs, at) => {
      const ours = runs[at];
      if (ours === undefined) return;
      ratios.push(theirs.seconds / ours.seconds);
      if (theirs.effort !== ours.result.effort) {
        process.stdout.write(`seed ${at + 1}: networkx says ${theirs.effort}\n`);
        bad += 1;
      }
    });
  }
  runs.forEach(({ faults }, at) => {
    for (const fault of faults) process.stdout.write(`${family} seed ${at + 1}: ${fault}\n`);
    if (faults.length > 0) bad += 1;
  });
  const times = runs.map(({ seconds }) => seconds);
  if (elements <= PROMISED.elements) bad += times.filter((one) => one > PROMISED.seconds).length;
  const gaps = runs.flatMap(({ result: { bound, effort, proven } }) =>
    proven || effort === null || effort === 0 ? [] : [(effort - (bound ?? 0)) / effort],
  );
  const cells = [
    family,
    elements,
    wanted.barriers,
    wanted.keep,
    `${runs.filter(({ result }) => result.isolable).length} of ${runs.length}`,
    `${runs.filter(({ result }) => result.proven).length} of ${runs.length}`,
    shown(100 * Math.max(0, ...gaps), 1),
    shown(median(times), 3),
    shown(Math.max(...times), 3),
    shown(Math.max(...runs.map(({ clock }) => clock)), 3),
    shown(median(ratios), 1),
  ];
  return { text: `| ${cells.join(' | ')} |`, bad };
}

const HEAD = [
  '| family | elements | barriers | kept | isolable | proven | worst gap % |' +
    ' processor s, median |' +
    ' worst | by the clock, worst | networkx time / ours, median |',
  `|${' --- |'.repeat(11)}`,
];

function option(name: string): string | undefined {
  const at = process.argv.indexOf(name);
  return at < 0 ? undefined : process.argv[at + 1];
}

const seeds = Number(option('--seeds') ?? process.env.BENCH_SEEDS ?? 5);
const sizes = option('--sizes')?.split(',').map(Number) ?? SIZES;
const git = spawnSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' });
const said =
  `${new Date().toISOString().slice(0, 10)}, commit ${git.stdout.trim() || 'unknown'}, ` +
  `Node ${process.version}, seeds 1 to ${seeds}, load ${(loadavg()[0] ?? 0).toFixed(1)} on the ` +
  `machine at the start. Each answer is checked path by path; ${PROMISED.seconds} s is promised ` +
  `up to ${PROMISED.elements} elements, and held against processor time. ` +
  'networkx is Python, given the same networks; its least ' +
  'cut is compared, building its graph counted in, as reading ours is.';
process.stdout.write(`Isolation on generated networks. ${said}\n\n${HEAD.join('\n')}\n`);
const rows: string[] = [];
let bad = 0;
// The first run of the code is slower than all that follow and says nothing of the size.
run('decks', 625, 1, ASKED[3]);
for (const family of FAMILIES) {
  for (const wanted of ASKED) {
    for (const elements of sizes) {
      const one = row(family, elements, wanted, seeds);
      rows.push(one.text);
      bad += one.bad;
      process.stdout.write(`${one.text}\n`);
    }
  }
}
const verdict = bad === 0 ? 'No answer was late or wrong.' : `${bad} answers were late or wrong.`;
process.stdout.write(`\n${verdict}\n`);
if (process.argv.includes('--write')) {
  writeMeasured(['## Isolation', '', said, '', ...HEAD, ...rows, '', verdict]);
}
if (bad > 0) process.exitCode = 1;
