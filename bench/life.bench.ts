// Lives: a Weibull fit of 1e5 and 1e6 records, most cut short, beside survreg of R in the same run.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { type LifeRecord, lifeData } from '../src/life/data.ts';
import { fitLaw } from '../src/life/fit.ts';
import { chance } from '../src/quantity/chance.ts';
import { writeMeasured } from './measured.ts';

const SEED = 20261125;
const TIMES = 5;
const LEAST = 5;
const SIZES = [100_000, 1_000_000];

const now = () => performance.now() / 1_000;

/** Shape 1.8, scale 9000 h; each is watched for a time of its own, so that most have not failed. */
function records(count: number): readonly LifeRecord[] {
  const next = chance(SEED);
  return Array.from({ length: count }, () => {
    const life = 9_000 * (-Math.log(1 - next())) ** (1 / 1.8);
    const watched = 1 + 8_000 * next();
    const lower = Math.min(life, watched);
    return { type: life <= watched ? 'exact' : 'right', lower, upper: lower, n: 1 };
  });
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

type Theirs = {
  readonly version: string;
  readonly seconds: number;
  readonly mu: number;
  readonly lnSigma: number;
  readonly seMu: number;
  readonly seLnSigma: number;
};

function survreg(lives: readonly LifeRecord[]): Theirs | null {
  const folder = mkdtempSync(join(tmpdir(), 'life-'));
  const file = join(folder, 'lives.bin');
  const columns = new Float64Array(2 * lives.length);
  lives.forEach(({ type, lower }, at) => {
    columns[at] = lower;
    columns[lives.length + at] = type === 'exact' ? 1 : 0;
  });
  writeFileSync(file, new Uint8Array(columns.buffer));
  const script = join(import.meta.dirname, 'life.survreg.R');
  const args = [script, file, String(lives.length), '3'];
  const { stdout, status } = spawnSync('Rscript', args, { encoding: 'utf8' });
  rmSync(folder, { recursive: true });
  return status === 0 ? (JSON.parse(stdout) as Theirs) : null;
}

const faults: string[] = [];

function measure(count: number) {
  const lives = records(count);
  // Reading in is timed on its own: what R is given is in columns already.
  const read = best(TIMES, () => lifeData(lives));
  const fitted = best(TIMES, () => fitLaw('weibull', read.value, null));
  const theirs = survreg(lives);
  const fit = fitted.value;
  if (fit === null) faults.push(`no fit of ${count}`);
  if (fit !== null && theirs !== null) {
    const pairs = [
      [fit.mu, theirs.mu],
      [fit.lnSigma, theirs.lnSigma],
      [Math.sqrt(fit.vmm), theirs.seMu],
      [Math.sqrt(fit.vss), theirs.seLnSigma],
    ] as const;
    // survreg stops at a relative change of 1e-9 of the log-likelihood.
    if (pairs.some(([a, b]) => Math.abs(a / b - 1) > 1e-5)) faults.push(`figures of ${count}`);
    if (theirs.seconds / (read.seconds + fitted.seconds) < LEAST) faults.push(`speed of ${count}`);
  }
  return { count, read: read.seconds, fit: fitted.seconds, failures: read.value.failures, theirs };
}

const load = loadavg()[0] ?? 0;
const found = SIZES.map(measure);
const ms = (seconds: number | undefined) =>
  seconds === undefined ? '–' : (1_000 * seconds).toFixed(1);
const ratio = (other: number | undefined, ours: number) =>
  other === undefined ? '–' : (other / ours).toFixed(1);
const date = new Date().toISOString().slice(0, 10);
const git = spawnSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' });
const said =
  `${date}, commit ${git.stdout.trim() || 'unknown'}, Node ${process.version}, ` +
  `${found[0]?.theirs?.version ?? 'R not there'}, seed ${SEED}, load ${load.toFixed(1)} at the ` +
  `start. The quickest of ${TIMES} runs here and 3 of R, a thread each; parameters and standard ` +
  'errors of both compared to 5 digits.';
const rows = [
  '| records | failed | reading in, ms | fit, errors, ms | survreg, ms | survreg / both here |',
  '| --- | --- | --- | --- | --- | --- |',
  ...found.map(({ count, failures, read, fit, theirs }) => {
    const by = ratio(theirs?.seconds, read + fit);
    return `| ${count} | ${failures} | ${ms(read)} | ${ms(fit)} | ${ms(theirs?.seconds)} | ${by} |`;
  }),
];
const agree = found.some(({ theirs }) => theirs === null) ? 'R was not there.' : 'They agree.';
const verdict = faults.length === 0 ? agree : `At fault: ${faults.join(', ')}.`;
process.stdout.write(`Lives. ${said}\n\n${rows.join('\n')}\n\n${verdict}\n`);
if (process.argv.includes('--write'))
  writeMeasured(['## Lives', '', said, '', ...rows, '', verdict]);
if (faults.length > 0) process.exitCode = 1;
