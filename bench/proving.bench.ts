// Proving: a verdict over five readings with 100,000 draws each, beside numpy in the same run.

import { spawnSync } from 'node:child_process';
import { loadavg } from 'node:os';
import { join } from 'node:path';
import { limits } from '../src/limits.ts';
import { fluidOf } from '../src/media/fluid.ts';
import { pumpTestInput } from '../src/proving/pump-model.ts';
import { pumpTest } from '../src/proving/pump-test.ts';
import { writeMeasured } from './measured.ts';

const TIMES = 7;
const SEED = 20261125;
const MOST_SECONDS = 1;

const readings = [2_000, 2_040, 2_080, 2_120, 2_160].map((speed, at) => {
  return { speed, suction: -15, discharge: 150 + 4 * at, flow: 11 + 0.2 * at };
});
const u = { speed: 8, suction: 0.8, discharge: 1.5, flow: 0.25 };
const parabola = [24, -0.03] as const;
const fluid = fluidOf('sea water', 28);
if (fluid?.vapourPressurePa == null) throw new Error('no sea water');

const input = pumpTestInput.parse({
  curve: {
    speed: 2_200,
    points: [0, 6, 12, 18].map((flow) => ({ flow, head: parabola[0] + parabola[1] * flow ** 2 })),
  },
  readings,
  ...{ suctionBore: 50, dischargeBore: 40, gaugeHeights: { suction: 0, discharge: 0.35 } },
  fluid: { name: 'sea water', temperature: 28 },
  headTolerance: 0.06,
  instruments: Object.fromEntries(
    Object.entries(u).map(([name, standard]) => [name, { standard }]),
  ),
  seed: SEED,
});

let seconds = Number.POSITIVE_INFINITY;
let answer = pumpTest(input);
for (let time = 0; time < TIMES; time += 1) {
  const from = performance.now();
  answer = pumpTest(input);
  seconds = Math.min(seconds, (performance.now() - from) / 1_000);
}
if (!answer.ok) throw new Error(JSON.stringify(answer.problems));

type Numpy = {
  readonly version: string;
  readonly seconds: number;
  readonly figures: readonly (readonly (readonly number[])[])[];
};
const asked = {
  case: {
    ...{ u, parabola, bores: [50, 40], density: fluid.densityKgM3, rise: 0.35, curveSpeed: 2_200 },
    vapour: fluid.vapourPressurePa / 1_000,
  },
  ...{ readings, draws: limits.proving.draws, seed: SEED, times: TIMES },
};
const script = join(import.meta.dirname, 'proving.numpy.py');
const ran = spawnSync('python3', [script], { input: JSON.stringify(asked), encoding: 'utf8' });
const theirs = ran.status === 0 ? (JSON.parse(ran.stdout) as Numpy) : null;

const names = [
  'head',
  'headAtCurveSpeed',
  'flowAtCurveSpeed',
  'deviation',
  'npshAvailable',
] as const;
const faults: string[] = [];
let compared = 0;
if (seconds > MOST_SECONDS) faults.push(`slower than ${MOST_SECONDS} s`);
theirs?.figures.forEach((outputs, at) => {
  outputs.forEach(([spread = 0, low = 0, high = 0], of) => {
    const name = names[of] ?? 'head';
    const ours = answer.ok ? answer.result.readings[at]?.[name]?.monteCarlo : undefined;
    compared += 1;
    // Two streams of 100,000: a percent of the spread, and of the ends six percent of it.
    const near =
      ours !== undefined &&
      Math.abs(ours.u / spread - 1) < 0.015 &&
      Math.abs(ours['p2.5'] - low) < 0.06 * spread &&
      Math.abs(ours['p97.5'] - high) < 0.06 * spread;
    if (!near) faults.push(`reading ${at + 1}, ${name}`);
  });
});

const ms = (value: number) => (1_000 * value).toFixed(0);
const git = spawnSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' });
const said =
  `${new Date().toISOString().slice(0, 10)}, commit ${git.stdout.trim() || 'unknown'}, Node ` +
  `${process.version}, numpy ${theirs?.version ?? 'not there'}, seed ${SEED}, load ` +
  `${(loadavg()[0] ?? 0).toFixed(1)} at the end. The quickest of ${TIMES} runs each, one thread; ` +
  `${compared} spreads and intervals compared.`;
const ratio = theirs === null ? '–' : (theirs.seconds / seconds).toFixed(2);
const theirMs = theirs === null ? '–' : ms(theirs.seconds);
const rows = [
  '| what | here, ms | numpy, ms | numpy / here |',
  '| --- | --- | --- | --- |',
  `| verdict over 5 readings, 100,000 draws each | ${ms(seconds)} | ${theirMs} | ${ratio} |`,
];
const verdict = faults.length === 0 ? 'The figures agree.' : `At fault: ${faults.join('; ')}.`;
process.stdout.write(`Proving. ${said}\n\n${rows.join('\n')}\n\n${verdict}\n`);
if (process.argv.includes('--write'))
  writeMeasured(['## Proving', '', said, '', ...rows, '', verdict]);
if (faults.length > 0) process.exitCode = 1;
