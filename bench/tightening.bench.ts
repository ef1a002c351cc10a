// Bolts: a million draws of one joint and 100,000 plain sums, beside numpy in the same run.

import { spawnSync } from 'node:child_process';
import { loadavg } from 'node:os';
import { join } from 'node:path';
import { chance } from '../src/quantity/chance.ts';
import { tighteningInput } from '../src/tightening/model.ts';
import { type ScatterCase, scatter } from '../src/tightening/scatter.ts';
import { metricRows } from '../src/tightening/tables/thread-series.ts';
import { threadOf } from '../src/tightening/thread.ts';
import { tightening } from '../src/tightening/tightening.ts';
import { preloadAtYieldShareN, torquePerForceMm, torsionRatio } from '../src/tightening/torque.ts';
import { writeMeasured } from './measured.ts';

const DRAWS = 1_000_000;
const PLAIN = 100_000;
const TIMES = 7;
const SEED = 20261125;

const now = () => performance.now() / 1_000;

const joint: ScatterCase = {
  torqueNm: 48,
  toolScatter: 0.06,
  frictionLow: 0.08,
  frictionHigh: 0.16,
  parts: { pitchMm: 1.5, pitchDiameterMm: 9.0257215, bearingDiameterMm: 12.8 },
  stressAreaMm2: 57.9896,
  yieldMPa: 640,
  loadKN: 8,
  loadShare: 0.25,
  embeddingLossKN: 3,
};

function cases() {
  const next = chance(SEED);
  const known = metricRows.filter(([d]) => d >= 4 && d <= 39);
  const columns = { pitch: [], d2: [], area: [], bearing: [], mu: [], share: [], yield: [] };
  const found: Record<keyof typeof columns, number[]> = columns;
  for (let at = 0; at < PLAIN; at += 1) {
    const [diameterMm, pitchMm] = known[Math.floor(next() * known.length)] ?? [10, 1.5];
    const sizeSource = { kind: 'computed', by: 'bench' } as const;
    const thread = threadOf({ name: '', form: 'metric', diameterMm, pitchMm, sizeSource });
    found.pitch.push(pitchMm);
    found.d2.push(thread.pitchDiameterMm ?? 0);
    found.area.push(thread.stressAreaMm2 ?? 0);
    found.bearing.push(1.28 * diameterMm);
    found.mu.push(0.04 + 0.3 * next());
    found.share.push(0.5 + 0.4 * next());
    found.yield.push(240 + 800 * next());
  }
  return found;
}

type Columns = Readonly<Record<keyof ReturnType<typeof cases>, Float64Array>>;

function plain({ pitch, d2, area, bearing, mu, share, yield: yields }: Columns): number {
  let sum = 0;
  for (let at = 0; at < PLAIN; at += 1) {
    const pitchMm = pitch[at] ?? 0;
    const pitchDiameterMm = d2[at] ?? 0;
    const friction = mu[at] ?? 0;
    const areaMm2 = area[at] ?? 0;
    const torsion = torsionRatio(pitchMm, pitchDiameterMm, areaMm2, friction);
    const force = preloadAtYieldShareN(share[at] ?? 0, yields[at] ?? 0, areaMm2, torsion);
    const parts = { pitchMm, pitchDiameterMm, bearingDiameterMm: bearing[at] ?? 0 };
    sum += (force / 1_000) * torquePerForceMm(parts, friction, friction);
  }
  return sum;
}

/** The whole calculation, working and cautions included, for as many inputs. */
function whole(): number {
  const inputs = [0.08, 0.1, 0.12, 0.14].map((mu) =>
    tighteningInput.parse({
      thread: 'M12',
      strengthClass: '8.8',
      frictionThread: mu,
      frictionHead: mu,
      issuedTorque: 80,
      toolScatter: 0.06,
    }),
  );
  let rows = 0;
  for (let at = 0; at < PLAIN; at += 1) {
    const input = inputs[at % inputs.length];
    const answer = input && tightening(input);
    if (answer?.ok) rows += answer.result.working.length;
  }
  return rows;
}

function best<T>(times: number, run: () => T): { readonly seconds: number; readonly value: T } {
  let seconds = Number.POSITIVE_INFINITY;
  let value = run();
  for (let time = 0; time < times; time += 1) {
    const from = now();
    value = run();
    seconds = Math.min(seconds, now() - from);
  }
  return { seconds, value };
}

type Numpy = {
  readonly version: string;
  readonly scatterSeconds: number;
  readonly figures: Readonly<Record<'mean' | 'sd' | 'top' | 'bottom' | 'overYield', number>>;
  readonly plainSeconds: number;
  readonly torqueSum: number;
};

function numpy(columns: ReturnType<typeof cases>): Numpy | null {
  const script = join(import.meta.dirname, 'tightening.numpy.py');
  const input = JSON.stringify({
    case: joint,
    draws: DRAWS,
    seed: SEED,
    times: TIMES,
    cases: columns,
  });
  const { stdout, status } = spawnSync('python3', [script], { input, encoding: 'utf8' });
  return status === 0 ? (JSON.parse(stdout) as Numpy) : null;
}

const columns = cases();
const load = loadavg()[0] ?? 0;
const drawn = best(TIMES, () => scatter(joint, DRAWS, SEED));
const packed = Object.fromEntries(
  Object.entries(columns).map(([name, values]) => [name, Float64Array.from(values)]),
) as Columns;
const evaluated = best(TIMES, () => plain(packed));
const shown = best(1, whole);
const theirs = numpy(columns);

const faults: string[] = [];
if (theirs !== null) {
  const { figures } = theirs;
  const sd = figures.sd / Math.sqrt(DRAWS);
  // Two streams of chance: five standard deviations of their difference.
  if (Math.abs(drawn.value.preloadKN.mean - figures.mean) > 5 * Math.SQRT2 * sd)
    faults.push('mean');
  if (Math.abs(drawn.value.yieldShareTop / figures.top - 1) > 0.002) faults.push('top of the band');
  if (Math.abs(drawn.value.residualClampBottomKN - figures.bottom) > 0.02) faults.push('bottom');
  if (Math.abs(evaluated.value / theirs.torqueSum - 1) > 1e-9) faults.push('sum of torques');
}

const ms = (seconds: number) => (1_000 * seconds).toFixed(1);
const ratio = (other: number | undefined, ours: number) =>
  other === undefined ? '–' : (other / ours).toFixed(2);
const row = (what: string, ours: number, other?: number) =>
  `| ${what} | ${ms(ours)} | ${other === undefined ? '–' : ms(other)} | ${ratio(other, ours)} |`;
const date = new Date().toISOString().slice(0, 10);
const git = spawnSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' });
const said =
  `${date}, commit ${git.stdout.trim() || 'unknown'}, Node ${process.version}, ` +
  `numpy ${theirs?.version ?? 'not there'}, seed ${SEED}, load ${load.toFixed(1)} at the start. ` +
  `The quickest of ${TIMES} runs each, in one process each, one thread; figures of both compared.`;
const rows = [
  '| what | here, ms | numpy, ms | numpy / here |',
  '| --- | --- | --- | --- |',
  row('1,000,000 draws of one joint, with its quantiles', drawn.seconds, theirs?.scatterSeconds),
  row('100,000 preloads and torques', evaluated.seconds, theirs?.plainSeconds),
  row('100,000 whole calculations, working and cautions included', shown.seconds),
];
const verdict = faults.length === 0 ? 'The figures agree.' : `They differ: ${faults.join(', ')}.`;
process.stdout.write(`Bolts. ${said}\n\n${rows.join('\n')}\n\n${verdict}\n`);
if (process.argv.includes('--write'))
  writeMeasured(['## Tightening', '', said, '', ...rows, '', verdict]);
if (faults.length > 0) process.exitCode = 1;
