// A swarm of supposed vessels: each has a kind of use and a spell it is in; readings weigh them.

import { chance, normals } from '../quantity/chance.ts';
import { CHANGE, clipped, endings, loose, OFF, spellKinds } from './kinds.ts';

/** What is known of some days in a row: the hours they added, or only that they passed. */
export type Stretch = {
  readonly days: number;
  readonly hours: number | null;
  /** Standard uncertainty of those hours, from rounding and from the hour of the reading. */
  readonly sd: number;
};

const LOOSE = spellKinds.length;
const RUN = 0;
const STAND = 1;
const LAY_UP = 2;

const tables = spellKinds.map(({ run, stand, layUp }) => [
  endings(run.spell),
  endings(stand.spell),
  endings(layUp.spell),
]);

/** One figure a member, in one array each: resampling copies them. */
const FIELDS = [
  'state',
  'age',
  'run',
  'runSd',
  'stand',
  'standSd',
  'factor',
  'waited',
  'from',
  'to',
  'drift',
  'driftSd',
  'keep',
  'stop',
  'runMean',
  'runVar',
  'standMean',
  'standVar',
] as const;
type Fields = Record<(typeof FIELDS)[number], Float64Array>;

export type Swarm = {
  readonly kind: number;
  readonly size: number;
  /** ln of how likely the readings so far are for this kind, weights not yet counted in. */
  evidence: number;
  readonly of: Fields;
  readonly logWeight: Float64Array;
  readonly next: () => number;
  readonly normal: () => number;
};

const between = (next: () => number, [low, high]: readonly [number, number]): number =>
  low + (high - low) * next();

export const KINDS = LOOSE + 1;

/** Members of one kind; `rate` is the history's own mean, about which the loose kind spreads. */
export function newSwarm(kind: number, size: number, rate: number, seed: number): Swarm {
  const next = chance(seed + kind);
  const normal = normals(next);
  const empty = FIELDS.map((name) => [name, new Float64Array(size)] as const);
  const of = Object.fromEntries(empty) as Fields;
  const logWeight = new Float64Array(size);
  const evidence = kind === LOOSE ? Math.log(loose.prior) : 0;
  const swarm = { kind, size, evidence, of, logWeight, next, normal };
  for (let at = 0; at < size; at += 1) {
    of.factor[at] = 1;
    if (kind === LOOSE) drawLoose(swarm, at, rate);
    else drawSpells(swarm, at, kind);
    settle(swarm, at);
  }
  return swarm;
}

function drawSpells({ of, next, normal }: Swarm, at: number, index: number): void {
  const kind = spellKinds[index];
  if (kind === undefined) throw new Error(`there is no kind of use ${index}`);
  of.run[at] = kind.run.hours * Math.exp((next() < 0.75 ? 0.01 : 0.25) * normal());
  of.runSd[at] = kind.run.sd;
  of.stand[at] = kind.stand.hours;
  of.standSd[at] = kind.stand.sd;
  const running = next() < kind.run.spell.days / (kind.run.spell.days + kind.stand.spell.days);
  of.state[at] = running ? RUN : STAND;
  of.age[at] = Math.floor(next() * (running ? kind.run : kind.stand).spell.days);
  if (kind.season === null) of.to[at] = 0;
  else if (next() < 0.9) {
    of.from[at] = kind.season.from + 3 * normal();
    of.to[at] = kind.season.to + 3 * normal();
  } else {
    of.from[at] = 365 * next();
    of.to[at] = ((of.from[at] ?? 0) + 183 + 25 * normal()) % 365;
  }
}

function drawLoose({ of, next, normal }: Swarm, at: number, rate: number): void {
  const mean = Math.max(0.01, Math.min(24, rate * Math.exp(loose.mean * normal())));
  of.run[at] = mean;
  of.runSd[at] = mean * between(next, loose.daily);
  of.state[at] = RUN;
  of.driftSd[at] = between(next, loose.drift);
  of.keep[at] = Math.exp(-1 / between(next, loose.memory));
  of.drift[at] = (of.driftSd[at] ?? 0) * normal();
  const [low, high] = loose.stop;
  of.stop[at] = low * (high / low) ** next();
}

/** Works out the mean and variance of its days anew. */
function settle({ of }: Swarm, at: number): void {
  const factor = of.factor[at] ?? 1;
  const run = clipped((of.run[at] ?? 0) * factor, of.runSd[at] ?? 0);
  const stand = clipped((of.stand[at] ?? 0) * factor, of.standSd[at] ?? 0);
  of.runMean[at] = run.mean;
  of.runVar[at] = run.variance;
  of.standMean[at] = stand.mean;
  of.standVar[at] = stand.variance;
}

const SOUGHT = 0.1;

/** Goes on by one day: the spell it is in, its drift, now and then a new level of use. */
function advance(swarm: Swarm, at: number, seeking: boolean): void {
  const { kind, of, next, normal } = swarm;
  if (kind === LOOSE) {
    const keep = of.keep[at] ?? 0;
    const shock = (of.driftSd[at] ?? 0) * Math.sqrt(1 - keep * keep);
    of.drift[at] = keep * (of.drift[at] ?? 0) + shock * normal();
    const running = of.state[at] === RUN;
    if (next() < (running ? (of.stop[at] ?? 0) : 1 / loose.still)) {
      of.state[at] = running ? LAY_UP : RUN;
    }
    return;
  }
  const state = of.state[at] ?? 0;
  const age = of.age[at] ?? 0;
  const ends = age > 0 && next() < (tables[kind]?.[state]?.[age - 1] ?? 1);
  if (!ends) {
    of.age[at] = age + 1;
    return;
  }
  of.age[at] = 1;
  const layUp = spellKinds[kind]?.layUp.chance ?? 0;
  if (state !== RUN) {
    of.state[at] = RUN;
    return;
  }
  // A rare lay-up is tried more often than it happens, and weighed down for it.
  const tried = seeking ? Math.max(layUp, SOUGHT) : layUp;
  const still = next() < tried;
  of.state[at] = still ? LAY_UP : STAND;
  if (tried === layUp) return;
  const { logWeight } = swarm;
  const ratio = still ? layUp / tried : (1 - layUp) / (1 - tried);
  logWeight[at] = (logWeight[at] ?? 0) + Math.log(ratio);
}

/**
 * Now and then the level of use changes for good. It is proposed more often than it happens and
 * near the level that the reading asks for; the weight makes up for both. Returns the factor of
 * the stretch.
 */
function change(swarm: Swarm, at: number, stretch: Stretch, mean: number): number {
  const { of, next, normal, logWeight } = swarm;
  if (of.factor[at] !== 1) return 1;
  const waited = of.waited[at] ?? 0;
  // While it hardly runs no change can be seen; it is looked for once it runs again.
  if (stretch.hours === null || mean < CHANGE.leastHours) {
    of.waited[at] = waited + stretch.days;
    return 1;
  }
  of.waited[at] = 0;
  const happens = Math.min(0.5, CHANGE.chance * (stretch.days + waited));
  if (next() > CHANGE.proposed) {
    logWeight[at] = (logWeight[at] ?? 0) + Math.log((1 - happens) / (1 - CHANGE.proposed));
    return 1;
  }
  // It may have come at any time within the stretch.
  const before = next() * (waited + stretch.days) < waited;
  const part = before ? 1 : 1 - 0.9 * next() * next();
  const level = (stretch.hours / mean - 1 + part) / part;
  const wanted = Math.log(Math.min(4, Math.max(level, 0.05)));
  const drawnLog = next() < 0.5 ? wanted + CHANGE.near * normal() : usual(swarm);
  const guided =
    (0.5 * bell((drawnLog - wanted) / CHANGE.near)) / CHANGE.near + 0.5 * usualDensity(drawnLog);
  logWeight[at] =
    (logWeight[at] ?? 0) +
    Math.log(((happens / CHANGE.proposed) * usualDensity(drawnLog)) / guided);
  of.factor[at] = Math.exp(drawnLog);
  settle(swarm, at);
  return 1 - part + part * (of.factor[at] ?? 1);
}

const bell = (z: number): number => Math.exp((-z * z) / 2);
const levels = CHANGE.levels.map(Math.log);

/** A new level in ln: mostly near one of the usual ones, else anything. */
function usual({ next, normal }: Swarm): number {
  if (next() > CHANGE.usual) return CHANGE.spread * normal();
  return (levels[Math.floor(next() * levels.length)] ?? 0) + CHANGE.close * normal();
}

function usualDensity(value: number): number {
  const near = levels.reduce((sum, level) => sum + bell((value - level) / CHANGE.close), 0);
  return (
    (CHANGE.usual * near) / levels.length / CHANGE.close +
    ((1 - CHANGE.usual) * bell(value / CHANGE.spread)) / CHANGE.spread
  );
}

function inSeason({ of }: Swarm, at: number, dayOfYear: number): boolean {
  const [from, to] = [of.from[at] ?? 0, of.to[at] ?? 0];
  if (to === 0 && from === 0) return true;
  return from <= to ? dayOfYear >= from && dayOfYear <= to : dayOfYear >= from || dayOfYear <= to;
}

const moments = { mean: 0, variance: 0 };

/** Mean and variance of the hours of this day; one object is used again and again. */
function today(swarm: Swarm, at: number, dayOfYear: number): typeof moments {
  const { of } = swarm;
  const state = of.state[at] ?? 0;
  if (state === LAY_UP) {
    moments.mean = 0;
    moments.variance = 0;
    return moments;
  }
  moments.mean = (state === RUN ? of.runMean[at] : of.standMean[at]) ?? 0;
  moments.variance = (state === RUN ? of.runVar[at] : of.standVar[at]) ?? 0;
  if (swarm.kind === LOOSE) {
    const level = Math.exp(of.drift[at] ?? 0);
    moments.mean = Math.min(24, moments.mean * level);
    moments.variance *= level * level;
  } else if (!inSeason(swarm, at, dayOfYear)) {
    // A still day and a short one are drawn, not averaged: nought hours are then likely.
    const share = swarm.next() < OFF.chance ? OFF.share : 0;
    moments.mean *= share;
    moments.variance *= share * share;
  }
  return moments;
}

/** Hours of this day drawn by chance. */
function drawn(swarm: Swarm, at: number, dayOfYear: number): number {
  const { of, next, normal } = swarm;
  const state = of.state[at] ?? 0;
  if (state === LAY_UP) return 0;
  const factor = of.factor[at] ?? 1;
  const mean = ((state === RUN ? of.run[at] : of.stand[at]) ?? 0) * factor;
  const sd = (state === RUN ? of.runSd[at] : of.standSd[at]) ?? 0;
  let hours = Math.min(24, Math.max(0, mean + sd * normal()));
  if (swarm.kind === LOOSE) hours = Math.min(24, hours * Math.exp(of.drift[at] ?? 0));
  else if (!inSeason(swarm, at, dayOfYear)) hours *= next() < OFF.chance ? OFF.share : 0;
  return hours;
}

/** A reading that no member explains still leaves each some weight. */
const UNEXPLAINED = 5e-4;

/** Lets the days of one stretch pass and weighs each member by the hours they added. */
export function observe(swarm: Swarm, stretch: Stretch, daysOfYear: ArrayLike<number>): void {
  const { size, logWeight } = swarm;
  const own = stretch.sd * stretch.sd;
  for (let at = 0; at < size; at += 1) {
    let [mean, variance] = [0, own];
    for (let day = 0; day < stretch.days; day += 1) {
      advance(swarm, at, true);
      const { mean: m, variance: v } = today(swarm, at, daysOfYear[day] ?? 0);
      mean += m;
      variance += v;
    }
    if (stretch.hours === null) continue;
    mean *= change(swarm, at, stretch, mean);
    const miss = (stretch.hours - mean) ** 2 / variance;
    const likely = Math.exp(-miss / 2) / Math.sqrt(variance) + UNEXPLAINED;
    logWeight[at] = (logWeight[at] ?? 0) + Math.log(likely);
  }
  if (stretch.hours !== null) thin(swarm);
}

function weightsOf({ size, logWeight }: Swarm): { weights: Float64Array; logMean: number } {
  let most = Number.NEGATIVE_INFINITY;
  for (let at = 0; at < size; at += 1) most = Math.max(most, logWeight[at] ?? most);
  const weights = Float64Array.from(logWeight, (value) => Math.exp(value - most));
  let sum = 0;
  for (let at = 0; at < size; at += 1) sum += weights[at] ?? 0;
  for (let at = 0; at < size; at += 1) weights[at] = (weights[at] ?? 0) / sum;
  return { weights, logMean: most + Math.log(sum / size) };
}

/** Keeps members in proportion to their weight once few carry most of it. */
function thin(swarm: Swarm): void {
  const { weights } = weightsOf(swarm);
  let squares = 0;
  for (const weight of weights) squares += weight * weight;
  if (1 / squares < swarm.size / 3) resample(swarm, 0.5);
}

/** ln of how likely all readings so far are for this kind. */
export const evidenceOf = (swarm: Swarm): number => swarm.evidence + weightsOf(swarm).logMean;

/**
 * Draws members by their weight to a power, and what that leaves over they keep: below 1 the
 * unlikely ones live on for a while, for a change of use shows itself only with time.
 */
function resample(swarm: Swarm, power: number): void {
  const { weights, logMean } = weightsOf(swarm);
  swarm.evidence += logMean;
  const { size, of, logWeight, next, normal } = swarm;
  const chances = weights.map((weight) => weight ** power);
  const sum = chances.reduce((all, each) => all + each, 0);
  const from = new Int32Array(size);
  let reached = (chances[0] ?? 0) / sum;
  const offset = next();
  for (let at = 0, member = 0; at < size; at += 1) {
    while (reached < (at + offset) / size && member < size - 1) {
      member += 1;
      reached += (chances[member] ?? 0) / sum;
    }
    from[at] = member;
  }
  for (const name of FIELDS) {
    const before = of[name].slice();
    for (let at = 0; at < size; at += 1) of[name][at] = before[from[at] ?? 0] ?? 0;
  }
  for (let at = 0; at < size; at += 1) {
    const member = from[at] ?? 0;
    const chance = (chances[member] ?? 0) / sum;
    logWeight[at] = Math.log((weights[member] ?? 0) / chance);
  }
  // Copies part a little, so that the swarm does not end as one member many times.
  for (let at = 0; at < size; at += 1) {
    of.run[at] = Math.min(30, (of.run[at] ?? 0) * Math.exp(0.003 * normal()));
    settle(swarm, at);
  }
}

/** Ready to be let run: every member of equal weight. */
export function evenOut(swarm: Swarm): void {
  resample(swarm, 1);
  const { size, of, next } = swarm;
  for (let at = 0; at < size; at += 1) {
    if (of.factor[at] !== 1 || next() > CHANGE.chance * (of.waited[at] ?? 0)) continue;
    of.factor[at] = Math.exp(usual(swarm));
    settle(swarm, at);
  }
}

/** One member's hours of the next day. */
export function step(swarm: Swarm, at: number, dayOfYear: number): number {
  advance(swarm, at, false);
  return drawn(swarm, at, dayOfYear);
}

export const kindNames: readonly string[] = [...spellKinds.map(({ name }) => name), 'its own mean'];
