// The hours at which something was last done, on the scale of the meter now fitted.

import type { Problem } from '../quantity/types.ts';
import type { Known } from './forecast.ts';
import { DAY_MS } from './instant.ts';
import type { DueInput } from './model.ts';

export type LastDone =
  | {
      readonly kind: 'known';
      readonly hours: number;
      /** It was done at this instant, after the last reading: hours count from there. */
      readonly after?: number;
    }
  | { readonly kind: 'unknown'; readonly needs: readonly string[] }
  | { readonly kind: 'wrong'; readonly problem: Problem };

export function lastDoneOf(
  input: DueInput,
  history: readonly Known[],
  onMs: number | null,
): LastDone {
  const last = history.at(-1);
  if (input.lastDoneAt === undefined && input.lastDoneOn === undefined) {
    return { kind: 'unknown', needs: ['lastDoneAt or lastDoneOn'] };
  }
  if (last === undefined) return { kind: 'unknown', needs: [] };
  if (input.lastDoneOn !== undefined) return doneOn(input.lastDoneOn, history, last);
  return doneAt(input, input.lastDoneAt?.value ?? 0, last, onMs);
}

/** Between two readings hours run evenly; after the last they count from that instant. */
function doneOn(
  on: NonNullable<DueInput['lastDoneOn']>,
  history: readonly Known[],
  last: Known,
): LastDone {
  if (on.ms >= last.ms) return { kind: 'known', hours: last.hours, after: on.ms };
  if (on.endMs >= last.ms) return { kind: 'known', hours: last.hours };
  const at = history.findIndex(({ ms }) => ms >= on.ms);
  const [before, after] = [history[at - 1], history[at]];
  if (after === undefined || (before === undefined && after.ms !== on.ms)) {
    return { kind: 'unknown', needs: ['lastDoneAt: no reading is as old as lastDoneOn'] };
  }
  // What the meters ran from there on must be known all the way.
  const broken = history.slice(at + 1).some(({ joined }) => !joined);
  const inside = before !== undefined && after.ms !== on.ms && !after.joined;
  if (broken || inside) return { kind: 'unknown', needs: [EXCHANGE] };
  if (before === undefined || after.ms === on.ms) return { kind: 'known', hours: after.hours };
  const share = (on.ms - before.ms) / (after.ms - before.ms);
  return { kind: 'known', hours: before.hours + share * (after.hours - before.hours) };
}

const EXCHANGE = 'exchanges: oldLast and newFirst where the meter restarted or was exchanged';

/**
 * A figure above what the meter now shows was read on one before it, or after the last reading.
 * Exchanges are gone back through until it can have been shown.
 */
function doneAt(input: DueInput, given: number, last: Known, onMs: number | null): LastDone {
  const days = Math.max(0, ((onMs ?? last.ms) - last.ms) / DAY_MS);
  const most = last.hours + 24 * days + 1;
  if (given <= most) return { kind: 'known', hours: given };
  const before = [...input.exchanges]
    .filter(({ at }) => at.ms <= last.ms)
    .sort((a, b) => b.at.ms - a.at.ms);
  let hours = given;
  for (const { oldLast, newFirst } of before) {
    if (oldLast === undefined) return { kind: 'unknown', needs: [EXCHANGE] };
    hours -= oldLast.value - (newFirst?.value ?? 0);
    if (hours <= most) return { kind: 'known', hours };
  }
  const restarted = input.readings.some(({ hours: shown }) => (shown?.value ?? 0) >= given);
  if (restarted) return { kind: 'unknown', needs: [EXCHANGE] };
  const expected = `at most ${Math.round(most)} h`;
  const why = 'no reading and no exchange shows that the meter stood there by the day of asking';
  return { kind: 'wrong', problem: { path: 'lastDoneAt', got: given, expected, why } };
}
