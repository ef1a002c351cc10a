// `due`: when an interval of running hours will be reached, with its spread, and what is wrong with
// the readings.

import { limits } from '../limits.ts';
import { entered, missing, newSheet } from '../quantity/sheet.ts';
import type { Problem, Source } from '../quantity/types.ts';
import { type Checked, checkReadings } from './faults.ts';
import { type Forecast, forecast, type Known, meanRate, quantile } from './forecast.ts';
import { DAY_MS } from './instant.ts';
import { type LastDone, lastDoneOf } from './last-done.ts';
import type { DueInput, DueOutput } from './model.ts';

const computed: Source = { kind: 'computed', by: 'due' };

/** The same input gives the same answer. */
const SEED = 20_261_125;

type Answer =
  | { readonly ok: true; readonly result: DueOutput }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export function due(input: DueInput): Answer {
  const problems = dueProblems(input);
  if (problems.length > 0) return { ok: false, problems };
  const onMs = onOf(input);
  const inside = input.readings.filter(({ at }) => onMs === null || at.ms <= onMs);
  const checked = checkReadings(
    input.readings.map(({ at, hours }) => ({ ms: at.ms, hours: hours?.value ?? null })),
    input.exchanges.map(({ at, oldLast, newFirst }) => ({
      ms: at.ms,
      oldLast: oldLast?.value ?? null,
      newFirst: newFirst?.value ?? null,
    })),
  );
  const history = recent(checked.history.filter(({ ms }) => onMs === null || ms <= onMs));
  const done = lastDoneOf(input, history, onMs);
  if (done.kind === 'wrong') return { ok: false, problems: [done.problem] };
  const later = input.readings.length - inside.length;
  return { ok: true, result: answerOf(input, { checked, history, onMs, done, later }) };
}

/** A day takes in the readings of that day. */
function onOf({ on, readings }: DueInput): number | null {
  if (on === undefined) return null;
  return readings.reduce((ms, { at }) => (at.ms <= on.endMs ? Math.max(ms, at.ms) : ms), on.ms);
}

function recent(history: readonly Known[]): readonly Known[] {
  const last = history.at(-1)?.ms ?? 0;
  const from = last - limits.hours.historyDays * DAY_MS;
  return history.filter(({ ms }) => ms >= from);
}

function dueProblems(input: DueInput): Problem[] {
  const problems: Problem[] = [];
  const say = (path: string, got: unknown, expected: string, why: string) =>
    problems.push({ path, got, expected, why });
  const { lastDoneAt, lastDoneOn, on } = input;
  if (lastDoneAt !== undefined && lastDoneOn !== undefined) {
    const why = 'when it was last done is given twice, and the two may disagree';
    say('lastDoneOn', lastDoneOn.given, 'lastDoneAt or lastDoneOn', why);
  }
  if (on !== undefined && lastDoneOn !== undefined && lastDoneOn.ms > on.endMs) {
    say('lastDoneOn', lastDoneOn.given, `at most ${on.given}`, 'it lies after the day of asking');
  }
  if (on !== undefined && input.readings.every(({ at }) => at.ms > on.endMs)) {
    say('on', on.given, 'the day of a reading or later', 'every reading lies after it');
  }
  input.exchanges.forEach(({ at }, index) => {
    const twin = input.exchanges.findIndex((other) => other.at.ms === at.ms);
    if (twin === index) return;
    say(`exchanges/${index}/at`, at.given, 'another instant', `exchange ${twin} is at the same`);
  });
  const plan = input.voyagePlan ?? [];
  plan.forEach(({ from, to }, index) => {
    const path = `voyagePlan/${index}`;
    if (to.endMs < from.ms) {
      say(`${path}/to`, to.given, `${from.given} or later`, 'it ends before it begins');
    }
    const other = plan.findIndex(
      (each, at) => at < index && each.from.ms <= to.endMs && from.ms <= each.to.endMs,
    );
    if (other < 0) return;
    say(path, from.given, 'dates of their own', `its dates run into those of voyagePlan/${other}`);
  });
  return problems;
}

type Facts = {
  readonly checked: Checked;
  readonly history: readonly Known[];
  readonly onMs: number | null;
  readonly done: Exclude<LastDone, { readonly kind: 'wrong' }>;
  readonly later: number;
};

function answerOf(input: DueInput, facts: Facts): DueOutput {
  const { checked, history, onMs, done } = facts;
  const interval = input.interval?.value ?? null;
  const last = history.at(-1);
  const rate = meanRate(history);
  const planned = (input.voyagePlan ?? []).length > 0;
  const can = last !== undefined && (rate !== null || planned);
  const sheet = newSheet();
  let found: Forecast | null = null;
  let hoursLeft: number | null = null;
  let dueOn: DueOutput['dueOn'] = null;
  if (onMs !== null && interval !== null && last !== undefined && done.kind === 'known' && can) {
    const dueHours = done.hours + interval;
    const after = done.after ?? null;
    found = forecast({
      history,
      onMs,
      left: after === null ? dueHours - last.hours : interval,
      fromMs: after ?? last.ms,
      leastToOn: Math.max(0, (after === null ? done.hours : 0) - last.hours),
      horizonDays: input.horizon.value,
      resolution: checked.resolution,
      seed: SEED,
      members: limits.hours.members,
      runs: limits.hours.members,
      planned: plannedOf(input),
    });
    const share = after === null ? 1 : (onMs - after) / Math.max(1, onMs - last.ms);
    const since = found.hoursToOn * share;
    hoursLeft = (after === null ? dueHours - last.hours : interval) - since;
    dueOn = daysOf(found, onMs, history, after === null ? dueHours : null);
    rowsOf(sheet, { done, interval, last, after, since, hoursLeft });
  }
  if (rate !== null) rateRows(sheet, history, rate);
  if (found !== null) forecastRows(sheet, found);
  const needs = needsOf(input, facts, can);
  const u = found === null ? 0 : Math.hypot(found.hoursToOnSd, checked.resolution / Math.sqrt(12));
  const outputs = { dueOn, hoursLeft, ratePerDay: rate };
  return {
    dueOn,
    hoursLeft: hoursLeft === null ? null : { value: round(hoursLeft), unit: 'h', u: round(u) },
    ratePerDay: rate === null ? null : { value: round(rate), unit: 'h/d' },
    kinds:
      found === null
        ? []
        : [...found.kinds].map(([kind, share]) => ({ kind, share: round(share) })),
    faults: checked.faults.map(({ kind, reading, ms, why }) => ({
      kind,
      reading,
      at: new Date(ms).toISOString(),
      why,
    })),
    working: [...sheet.rows] as DueOutput['working'],
    cautions: cautionsOf(input, facts, dueOn, hoursLeft),
    notWorkedOut: missing(outputs, { dueOn: needs, hoursLeft: needs, ratePerDay: TWO }).map(
      ({ output, needs: lacking }) => ({ output, needs: [...lacking] }),
    ),
  };
}

const TWO = ['readings: two in a row on one meter, a day or more apart'];
const round = (value: number): number => Math.round(value * 1e6) / 1e6 || 0;

function needsOf(input: DueInput, { done, history }: Facts, can: boolean): string[] {
  return [
    ...(input.interval === undefined ? ['interval'] : []),
    ...(input.on === undefined ? ['on'] : []),
    ...(done.kind === 'unknown' ? done.needs : []),
    ...(history.length > 0 && !can ? TWO : []),
    ...(history.length === 0 ? ['readings: one that can be used'] : []),
  ];
}

function plannedOf({ voyagePlan = [] }: DueInput): (ms: number) => number | null {
  return (ms) => {
    const middle = ms + DAY_MS / 2;
    const one = voyagePlan.find(({ from, to }) => from.ms <= middle && middle <= to.endMs);
    return one?.hoursPerDay.value ?? null;
  };
}

/** Instants; what is overdue was due when the history passed it. */
function daysOf(
  found: Forecast,
  onMs: number,
  history: readonly Known[],
  dueHours: number | null,
): NonNullable<DueOutput['dueOn']> {
  const passed = dueHours === null ? null : passedAt(history, dueHours);
  const at = (share: number): string | null => {
    if (passed !== null) return instant(passed);
    const days = quantile(found.days, share);
    return Number.isFinite(days) ? instant(onMs + days * DAY_MS) : null;
  };
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}

/** To the minute: nothing here is known better. */
const instant = (ms: number): string =>
  `${new Date(Math.round(ms / 60_000) * 60_000).toISOString().slice(0, 16)}:00Z`;

function passedAt(history: readonly Known[], dueHours: number): number | null {
  if (dueHours > (history.at(-1)?.hours ?? Number.NEGATIVE_INFINITY)) return null;
  for (let at = history.length - 1; at > 0; at -= 1) {
    const [before, after] = [history[at - 1], history[at]];
    if (before === undefined || after === undefined || before.hours > dueHours) continue;
    const share = (dueHours - before.hours) / Math.max(1e-9, after.hours - before.hours);
    return before.ms + Math.min(1, share) * (after.ms - before.ms);
  }
  return history[0]?.ms ?? null;
}

type Rows = {
  readonly done: { readonly hours: number };
  readonly interval: number;
  readonly last: Known;
  readonly after: number | null;
  readonly since: number;
  readonly hoursLeft: number;
};

type Sheet = ReturnType<typeof newSheet>;

function rowsOf(sheet: Sheet, { done, interval, last, after, since, hoursLeft }: Rows): void {
  const day = new Date(last.ms).toISOString().slice(0, 10);
  sheet.take('I', 'interval', interval, 'h', entered);
  sheet.take(
    'e',
    'hours expected to have run since, up to the day of asking',
    since,
    'h',
    computed,
  );
  if (after !== null) {
    sheet.work('L', 'hours left on the day of asking', 'I - e', hoursLeft, 'h', computed);
    return;
  }
  sheet.take('h1', `last reading that stood the check, ${day}`, last.hours, 'h', entered);
  sheet.take('h0', 'hours when it was last done, on the same meter', done.hours, 'h', entered);
  sheet.work('L', 'hours left on the day of asking', 'h0 + I - h1 - e', hoursLeft, 'h', computed);
}

function rateRows(sheet: Sheet, history: readonly Known[], rate: number): void {
  let [hours, days] = [0, 0];
  history.forEach((each, at) => {
    const before = history[at - 1];
    if (before === undefined || !each.joined) return;
    hours += each.hours - before.hours;
    days += (each.ms - before.ms) / DAY_MS;
  });
  sheet.take('H', 'hours run between the readings that stood the check', hours, 'h', entered);
  sheet.take('D', 'days between them', days, 'd', entered);
  sheet.work('r', 'mean hours a day', 'H / D', rate, 'h/d', computed);
}

function forecastRows(sheet: Sheet, found: Forecast): void {
  for (const [symbol, share] of [
    ['t10', 0.1],
    ['t50', 0.5],
    ['t90', 0.9],
  ] as const) {
    const days = quantile(found.days, share);
    if (!Number.isFinite(days)) continue;
    const text = `days from the day of asking by which ${share * 100} of 100 runs have reached it`;
    sheet.take(symbol, text, days, 'd', computed);
  }
}

const OLD_DAYS = 31;

function cautionsOf(
  input: DueInput,
  { checked, history, onMs, later }: Facts,
  dueOn: DueOutput['dueOn'],
  hoursLeft: number | null,
): string[] {
  const said: string[] = [];
  const last = history.at(-1);
  if (hoursLeft !== null && hoursLeft < 0) {
    said.push(
      'Overdue by running hours: to go on, or to do it now, is a decision with a name, a reason ' +
        'and a limit.',
    );
  }
  if (dueOn !== null) {
    said.push(
      'Hours are forecast from how the machine was used; an interval issued in months or years ' +
        'may end first.',
    );
  }
  if (last !== undefined && onMs !== null && onMs - last.ms > OLD_DAYS * DAY_MS) {
    said.push(`The last reading is ${Math.round((onMs - last.ms) / DAY_MS)} days old: read again.`);
  }
  if (later > 0)
    said.push(`${later} of the readings lie after the day of asking and are left out.`);
  if (checked.faults.some(({ kind }) => kind === 'restart')) {
    said.push('A meter restarted: hours across it count only once a person gives the exchange.');
  }
  if (checked.faults.length > 0) {
    said.push('Readings with a fault are left out, never put right: see `faults`.');
  }
  if (input.exchanges.some(({ oldLast, newFirst }) => oldLast !== undefined && !newFirst)) {
    said.push('A new meter with no first figure given is taken to begin at 0 h.');
  }
  if ((input.voyagePlan ?? []).length > 0) {
    said.push(
      'Planned days are taken as planned and add no spread: a plan that slips is not in it.',
    );
  }
  if (history.length > 0 && history.length < FEW) {
    said.push(
      `Only ${history.length} readings can be used: the spread is that of the kinds of use.`,
    );
  }
  return said;
}

const FEW = 6;
