// How often and how long: the frequency used, the class of duration, the recovery it asks for.

import { entered, type Sheet } from '../quantity/sheet.ts';
import type { LiftInput } from './model.ts';
import {
  DURATIONS,
  type DurationClass,
  durationRules,
  durationSource,
  frequencySource,
  frequencyTable,
  LEAST_FREQUENCY,
  limitsSource,
  MOST_FREQUENCY,
  spellSource,
} from './tables/niosh.ts';

export type Timing = {
  readonly perMinute: number | null;
  readonly duration: DurationClass | null;
  readonly recoveryMin: number | null;
  readonly cautions: readonly string[];
};

/** A sum of decimals may miss a whole class by its last digit. */
const slightly = 1e-9;

/** The class that the work alone would be in, were there recovery enough. */
export const classOfWork = (hours: number): DurationClass =>
  DURATIONS.find((name) => hours <= durationRules[name].mostH + slightly) ?? 'long';

/** What is not rested enough counts as the next longer class. */
export function classOf(hours: number, recoveryH: number | null): DurationClass {
  const first = DURATIONS.indexOf(classOfWork(hours));
  if (recoveryH === null) return DURATIONS[first] ?? 'long';
  return (
    DURATIONS.slice(first).find(
      (name) => recoveryH + slightly >= durationRules[name].recovery * hours,
    ) ?? 'long'
  );
}

export function timingOf(input: LiftInput, sheet: Sheet): Timing {
  const cautions: string[] = [];
  const perMinute = frequencyOf(input, sheet, cautions);
  const hours = input.duration?.value;
  if (hours === undefined) return { perMinute, duration: null, recoveryMin: null, cautions };
  const alone = classOfWork(hours);
  const duration = classOf(hours, input.recovery?.value ?? null);
  const { recovery } = durationRules[alone];
  const recoveryMin = hours * 60 * recovery;
  sheet.take('t', 'hours of lifting', hours, 'h', entered);
  sheet.work('t_r', 'recovery', `t * 60 * ${recovery}`, recoveryMin, 'min', durationSource);
  if (input.recovery === undefined) {
    cautions.push('Recovery is not given: taken as enough for the class of duration.');
  } else if (duration !== alone) {
    cautions.push(
      `The recovery is less than the class ${alone} asks for: it counts as ${duration}.`,
    );
  }
  if (alone === 'long') {
    cautions.push('For long duration the manual asks for no recovery beyond the usual breaks.');
  }
  return { perMinute, duration, recoveryMin, cautions };
}

function frequencyOf({ frequency, spell }: LiftInput, sheet: Sheet, cautions: string[]) {
  const used = (given: number, name: string): number => {
    const perMinute = Math.max(LEAST_FREQUENCY, given);
    if (given < LEAST_FREQUENCY) cautions.push('Less than 0.2 lifts a minute counts as 0.2.');
    const expression = `max(${LEAST_FREQUENCY}, ${name})`;
    sheet.work('F', 'frequency used', expression, perMinute, '1/min', limitsSource);
    return perMinute;
  };
  if (frequency !== undefined) {
    sheet.take('F_g', 'lifts a minute', frequency.value, '1/min', entered);
    return used(frequency.value, 'F_g');
  }
  if (spell === undefined) return null;
  const rate = spell.perMinute.value;
  sheet.take('F_s', 'lifts a minute within the spell', rate, '1/min', entered);
  if (rate > MOST_FREQUENCY) {
    cautions.push('Above 15 lifts a minute a spell is not spread over its 15 minutes.');
    return used(rate, 'F_s');
  }
  sheet.take('t_s', 'minutes of each 15', spell.minutes.value, 'min', entered);
  const spread = (rate * spell.minutes.value) / 15;
  sheet.work('F_g', 'spread over 15 minutes', 'F_s * t_s/15', spread, '1/min', spellSource);
  return used(spread, 'F_g');
}

/** Table 5, straight between its rows; nought above the greatest frequency it has. */
export function frequencyMultiplier(
  perMinute: number,
  duration: DurationClass,
  high: boolean,
): { readonly value: number; readonly expression: string } {
  const column = high ? 2 : 1;
  const rows = frequencyTable[duration].filter((row) => row[column] > 0);
  const next = rows.findIndex((row) => row[0] >= perMinute);
  const to = rows[next];
  if (to === undefined) return { value: 0, expression: '0' };
  const from = rows[next - 1] ?? to;
  const [f0, m0, f1, m1] = [from[0], from[column], to[0], to[column]];
  if (f1 === perMinute || f0 === f1) return { value: m1, expression: String(m1) };
  return {
    value: m0 + ((m1 - m0) * (perMinute - f0)) / (f1 - f0),
    expression: `${m0} + (${m1} - ${m0})*(F - ${f0})/(${f1} - ${f0})`,
  };
}

export { frequencySource };
