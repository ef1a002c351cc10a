// Starts Boxup from a bare clone: installs what the lock file asks for, then hands over to Node 24.
// It has no dependency and runs on Node 20, because it comes before anything is installed.

import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  existsSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { constants, hostname, tmpdir } from 'node:os';
import { delimiter, dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '..');
const at = (...parts) => join(root, ...parts);
const leastNode = 24;
const lockWaitMs = 30 * 60_000;
const longTestMs = 6 * 3_600_000;
const say = (text) => process.stderr.write(`boxup: ${text}\n`);

class Stop extends Error {}

/* ---------- installing, once for each lock file ---------- */

const sha256 = (...chunks) => {
  const hash = createHash('sha256');
  for (const chunk of chunks) hash.update(chunk);
  return hash.digest('hex');
};
const wantedStamp = () =>
  sha256(readFileSync(at('package-lock.json')), `${process.platform}-${process.arch}`);
const readOr = (path, other) => {
  try {
    return readFileSync(path, 'utf8').trim();
  } catch {
    return other;
  }
};
const stampFile = () => at('node_modules', '.boxup-stamp');
const stamp = () => writeFileSync(stampFile(), `${wantedStamp()}\n`);
const installed = () => readOr(stampFile(), '') === wantedStamp();

/** Whoever has run npm themselves need not do it again: npm notes what it put there. */
function installedByHand() {
  const packages = (...path) => JSON.parse(readOr(at(...path), '{}')).packages ?? {};
  const wanted = packages('package-lock.json');
  const there = packages('node_modules', '.package-lock.json');
  const same = (name) => wanted[name] && there[name]?.integrity === wanted[name].integrity;
  const needed = Object.keys(wanted).filter((name) => name !== '' && !wanted[name].optional);
  return Object.keys(there).length > 0 && [...needed, ...Object.keys(there)].every(same);
}

function install() {
  if (installed()) return;
  underLock('install', () => {
    if (installed()) return;
    if (installedByHand()) return stamp();
    say('installing the packages of package-lock.json …');
    const npm = process.env.npm_execpath;
    const [command, first] = npm?.endsWith('.js') ? [process.execPath, [npm]] : ['npm', []];
    // npm's output goes to standard error: standard output belongs to the command's result.
    const done = spawnSync(command, [...first, 'ci', '--include=dev', '--include=optional'], {
      cwd: root,
      stdio: ['ignore', 2, 2],
    });
    if (done.error)
      throw new Stop(`npm is needed to install the packages (${done.error.message}).`);
    if (done.status !== 0) throw new Stop('npm ci failed; its own words stand above.');
    stamp();
  });
}

/* ---------- one at a time: a lock file that outlives nobody ---------- */

const pause = (ms) => Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms);

function holderIsGone(text) {
  const [pid, host, since] = text.split(' ');
  if (Date.now() - Number(since) > lockWaitMs) return true;
  if (host !== hostname()) return false;
  try {
    process.kill(Number(pid), 0);
    return false;
  } catch (error) {
    return error.code === 'ESRCH';
  }
}

function takeLock(lock, mine) {
  const own = `${lock}.${process.pid}`;
  writeFileSync(own, mine);
  try {
    linkSync(own, lock); // appears whole or not at all, and never over another's
    return true;
  } catch (error) {
    if (error.code !== 'EEXIST') throw error;
    return false;
  } finally {
    unlinkSync(own);
  }
}

function breakStaleLock(lock) {
  const seen = readOr(lock, '');
  if (seen === '' || !holderIsGone(seen)) return;
  const aside = `${lock}.stale.${process.pid}`;
  try {
    renameSync(lock, aside);
  } catch {
    return; // someone else was quicker
  }
  if (readOr(aside, '') !== seen) takeLock(lock, readOr(aside, ''));
  rmSync(aside, { force: true });
}

function underLock(name, work) {
  mkdirSync(at('.boxup'), { recursive: true });
  const lock = at('.boxup', `${name}.lock`);
  const mine = `${process.pid} ${hostname()} ${Date.now()}`;
  const until = Date.now() + lockWaitMs;
  for (let told = false; !takeLock(lock, mine); told = true) {
    breakStaleLock(lock);
    if (!told) say(`waiting for another ${name} to end …`);
    if (Date.now() > until) throw new Stop(`another ${name} holds .boxup/${name}.lock.`);
    pause(200);
  }
  try {
    return work();
  } finally {
    if (readOr(lock, '') === mine) rmSync(lock, { force: true });
  }
}

/* ---------- the Node that runs the program ---------- */

function node24() {
  const own = at('node_modules', '.bin', 'node');
  if (existsSync(own)) return own;
  if (Number(process.versions.node.split('.')[0]) >= leastNode) return process.execPath;
  throw new Stop(
    `Boxup needs Node ${leastNode} or later on ${process.platform}-${process.arch}; this is ` +
      `${process.version}, and a Node ${leastNode} comes with the packages on Linux only.`,
  );
}

// Anything started by `env node` must find the same Node, not the system's.
const childEnv = (extra = {}) => ({
  ...process.env,
  PATH: `${at('node_modules', '.bin')}${delimiter}${process.env.PATH ?? ''}`,
  NODE_COMPILE_CACHE: process.env.NODE_COMPILE_CACHE ?? at('node_modules', '.cache', 'boxup'),
  ...extra,
});
const quiet = ['--disable-warning=ExperimentalWarning'];

/** Runs a script to its end; its output goes to standard error unless `stdio` says otherwise. */
function runToEnd(script, args, { env = {}, stdio = ['ignore', 2, 2] } = {}) {
  const command = [...quiet, at(...script), ...args];
  const done = spawnSync(node24(), command, { cwd: root, env: childEnv(env), stdio });
  return done.status ?? 1;
}

/** Hands over to the command: same folder, same streams, same signals, same exit code. */
function handOver(args) {
  const child = spawn(node24(), [...quiet, at('src', 'cli', 'main.ts'), ...args], {
    stdio: 'inherit',
    env: childEnv(),
  });
  const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'];
  // At a terminal Ctrl-C reaches the child by itself; a second one would cut its tidying short.
  const forwards = (signal) => signal !== 'SIGINT' || !process.stdin.isTTY;
  for (const signal of signals) process.on(signal, () => forwards(signal) && child.kill(signal));
  endWithNpm(child);
  child.on('error', (error) => {
    say(error.message);
    process.exitCode = 2;
  });
  child.on('exit', (code, signal) => {
    process.exitCode = signal ? 128 + (constants.signals[signal] ?? 0) : (code ?? 1);
    for (const name of signals) process.removeAllListeners(name);
  });
}

// npm passes a signal to the shell between it and us, which ends without passing it on: the server
// would stay behind and hold its port.
function endWithNpm(child) {
  if (process.env.npm_lifecycle_event === undefined) return;
  const parent = process.ppid;
  const watch = setInterval(() => process.ppid !== parent && child.kill('SIGTERM'), 500);
  child.on('exit', () => clearInterval(watch));
}

/* ---------- building the app ---------- */

function* filesUnder(folder) {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) yield* filesUnder(path);
    else yield path;
  }
}

const notInApp = /\.test\.tsx?$|^src.(?:archive|cli|exchange|paper|server|testing)\b/;

function appHash() {
  const named = ['vite.config.ts', 'package-lock.json'].map((name) => at(name));
  const files = [...named, ...filesUnder(at('src'))].map((path) => path.slice(root.length + 1));
  const used = files.filter((path) => existsSync(at(path)) && !notInApp.test(path)).sort();
  return sha256(...used.flatMap((path) => [path, readFileSync(at(path))]));
}

/** Builds the app unless what it is made of has not changed since; true when it stands ready. */
function build() {
  const stamp = at('dist', '.boxup-stamp');
  if (readOr(stamp, '') === appHash()) return true;
  return underLock('build', () => {
    const hash = appHash();
    if (readOr(stamp, '') === hash) return true;
    say('building the app …');
    const env = { NODE_ENV: 'production' };
    if (runToEnd(['node_modules', 'vite', 'bin', 'vite.js'], ['build'], { env }) !== 0)
      return false;
    writeFileSync(stamp, `${hash}\n`);
    return true;
  });
}

/* ---------- testing ---------- */

const tools = { chromium: 'chromium', pdftotext: 'poppler-utils', strace: 'strace' };
const found = (command) =>
  (process.env.PATH ?? '')
    .split(delimiter)
    .some((folder) => folder && existsSync(join(folder, command)));

function installTools() {
  const missing = Object.entries(tools).filter(([command]) => !found(command));
  if (missing.length === 0) return;
  const packages = missing.map(([, name]) => name);
  if (!found('apt-get') || process.getuid?.() !== 0) {
    say(`not here: ${packages.join(', ')} (Debian's names); tests that need them will say so.`);
    return;
  }
  say(`installing ${packages.join(', ')} …`);
  const apt = (...args) =>
    spawnSync('apt-get', ['-o', 'DPkg::Lock::Timeout=300', '-y', ...args], {
      stdio: ['ignore', 2, 2],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    }).status === 0;
  const done = apt('update') && apt('install', '--no-install-recommends', ...packages);
  if (!done) say(`could not install ${packages.join(', ')}; going on without.`);
}

const checks = [
  ['lint and format', ['node_modules', '@biomejs', 'biome', 'bin', 'biome'], ['check']],
  ['types', ['node_modules', 'typescript', 'bin', 'tsc'], ['--noEmit', '-p', '.']],
];

/** Sums vitest's report: a file that could not run, or an error outside a test, has failed. */
export function sumReport(report, exitCode) {
  const files = report?.testResults ?? [];
  const broken = files.filter((f) => f.status === 'failed' && f.assertionResults.length === 0);
  const passed = report?.numPassedTests ?? 0;
  const failed = (report?.numFailedTests ?? 0) + broken.length;
  const skipped = (report?.numPendingTests ?? 0) + (report?.numTodoTests ?? 0);
  return { passed, failed: failed === 0 && exitCode !== 0 ? 1 : failed, skipped };
}

function runVitest(args, env) {
  const folder = mkdtempSync(join(tmpdir(), 'boxup-test-'));
  const file = join(folder, 'report.json');
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`];
  const script = ['node_modules', 'vitest', 'vitest.mjs'];
  const stdio = ['ignore', 'inherit', 'inherit'];
  const exitCode = runToEnd(script, ['run', ...reporters, ...args], { env, stdio });
  const text = readOr(file, '');
  rmSync(folder, { recursive: true, force: true });
  const report = text === '' ? undefined : JSON.parse(text);
  return { report, exitCode, ...sumReport(report, exitCode) };
}

/** Writes the figures that tests hand over in `task.meta.measured`, with date and commit. */
function writeMeasured(report) {
  const git = spawnSync('git', ['rev-parse', '--short', 'HEAD'], { cwd: root, encoding: 'utf8' });
  const rows = (report?.testResults ?? []).flatMap((file) =>
    file.assertionResults
      .filter((test) => test.meta?.measured !== undefined)
      .map((test) => [test.fullName, test.status, String(test.meta.measured)])
      .map((cells) => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`),
  );
  const head = [
    '## Laws and tests in full',
    '',
    `Written by \`npm run test:long\` on ${new Date().toISOString().slice(0, 10)}, ` +
      `commit ${git.status === 0 ? git.stdout.trim() : 'unknown'}, Node ${leastNode}.`,
    '',
    '| law or test | result | seeds and figures |',
    '| --- | --- | --- |',
  ];
  mkdirSync(at('docs'), { recursive: true });
  const file = at('docs', 'measured.md');
  const old = existsSync(file) ? readFileSync(file, 'utf8') : '# Measured\n';
  // Other sections (the benches') stand; only this one is written anew.
  const others = old
    .split(/^(?=## )/m)
    .filter((section) => !section.startsWith('## Laws and tests in full'))
    .map((section) => section.trimEnd());
  writeFileSync(file, `${[...others, [...head, ...rows].join('\n')].join('\n\n')}\n`);
}

function test(args, long) {
  installTools();
  let passed = 0;
  let failed = 0;
  const count = (name, ok) => {
    process.stdout.write(`${ok ? 'passed' : 'FAILED'}: ${name}\n`);
    if (ok) passed += 1;
    else failed += 1;
  };
  if (args.length === 0) {
    const stdio = ['ignore', 'inherit', 'inherit'];
    for (const [name, script, rest] of checks) count(name, runToEnd(script, rest, { stdio }) === 0);
  }
  count('build of the app', build());
  const env = { NODE_ENV: 'test', TZ: 'UTC', ...(long ? { LONG: '1' } : {}) };
  const tests = runVitest(long ? [...args, `--testTimeout=${longTestMs}`] : args, env);
  if (long) writeMeasured(tests.report);
  if (tests.skipped > 0) process.stdout.write(`${tests.skipped} skipped\n`);
  process.stdout.write(`${passed + tests.passed} passed, ${failed + tests.failed} failed\n`);
  process.exitCode = failed + tests.failed === 0 ? 0 : 1;
}

function bench(args) {
  const folder = at('bench');
  // What exports something is there for the others to use; what exports nothing is a bench.
  const isBench = (name) =>
    /(?<!\.test)\.ts$/.test(name) && !/^export /m.test(readFileSync(join(folder, name), 'utf8'));
  const all = existsSync(folder) ? readdirSync(folder).filter(isBench) : [];
  const wanted = all.filter((name) => args.length === 0 || args.some((a) => name.startsWith(a)));
  if (wanted.length === 0) throw new Stop(`no such bench; there are: ${all.join(', ') || 'none'}.`);
  const stdio = ['ignore', 'inherit', 'inherit'];
  const codes = wanted.sort().map((name) => runToEnd(['bench', name], [], { stdio }));
  process.exitCode = Math.max(...codes);
}

/* ---------- what to do ---------- */

function main([what, ...args]) {
  if (!['start', 'test', 'test-long', 'bench', 'cli'].includes(what)) {
    throw new Stop('launch.mjs takes start, test, test-long, bench or cli.');
  }
  install();
  if (what === 'cli') return handOver(args);
  if (what === 'test' || what === 'test-long') return test(args, what === 'test-long');
  if (what === 'bench') return bench(args);
  if (!build()) throw new Stop('the app could not be built; the reasons stand above.');
  return handOver(['serve', ...args]);
}

const startedDirectly =
  process.argv[1] !== undefined &&
  statSync(process.argv[1], { throwIfNoEntry: false })?.ino ===
    statSync(fileURLToPath(import.meta.url)).ino;
if (startedDirectly) {
  try {
    main(process.argv.slice(2));
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    say(error.message);
    process.exitCode = 2;
  }
}
