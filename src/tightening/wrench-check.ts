// Whether a torque wrench may be used for a setting on a day: its range, its date, its cycles.

import { monthsOn } from '../quantity/day.ts';
import { formatNumber } from '../quantity/quantity.ts';
import type { Source } from '../quantity/types.ts';

export type Wrench = {
  readonly minNm?: number;
  readonly maxNm?: number;
  /** A fraction of the reading. */
  readonly tolerance?: number;
  /** Days as `2026-11-25`. */
  readonly calibratedOn?: string;
  readonly intervalMonths?: number;
  readonly intervalCycles?: number;
  readonly cyclesSince?: number;
  readonly droppedOn?: string;
};

export type WrenchCheck = {
  /** Null: what is given does not settle it; `needs` names what is missing. */
  readonly usable: boolean | null;
  /** Why it may not be used; empty when it may, or when nothing given speaks against it. */
  readonly reasons: readonly string[];
  readonly needs: readonly string[];
  readonly cautions: readonly string[];
};

export const USUAL_MONTHS = 12;
export const USUAL_CYCLES = 5_000;

/** The share of the maximum below which a setting is not well inside the range. */
export const LEAST_SHARE = 0.2;

export const RANGE_2003: Source = {
  kind: 'published',
  title: 'ISO 6789, hand torque tools',
  edition: '2003, as stated in public calibration texts',
  place: 'calibration range, 20 % to 100 % of the maximum',
};

export const RANGE_2017: Source = {
  kind: 'published',
  title: 'ISO 6789-1, hand torque tools',
  edition: '2017, as stated in a public calibration text',
  place: 'clause 5.1.3, from the lowest marked value for some classes',
};

/** Settings this near to an end of the range are at it: they come out of a division. */
const NEAR = 1e-9;

const nm = (value: number): string => `${formatNumber(value, 4)} N·m`;

export function checkWrench(
  wrench: Wrench | undefined,
  settingNm: number | null,
  on: string | undefined,
): WrenchCheck {
  if (wrench === undefined) return { usable: null, reasons: [], needs: ['wrench'], cautions: [] };
  const range = rangeOf(wrench, settingNm);
  const date = dateOf(wrench, on);
  const cycles = cyclesOf(wrench);
  const parts = [range, date, cycles];
  const reasons = parts.flatMap((part) => part.reasons);
  const needs = parts.flatMap((part) => part.needs);
  const usable = reasons.length > 0 ? false : needs.length > 0 ? null : true;
  return { usable, reasons, needs, cautions: parts.flatMap((part) => part.cautions) };
}

type Part = {
  readonly reasons: readonly string[];
  readonly needs: readonly string[];
  readonly cautions: readonly string[];
};

const fine: Part = { reasons: [], needs: [], cautions: [] };
const because = (...reasons: string[]): Part => ({ ...fine, reasons });
const missing = (...needs: string[]): Part => ({ ...fine, needs });

function rangeOf({ minNm, maxNm }: Wrench, settingNm: number | null): Part {
  const needs = [
    ...(settingNm === null ? ['setting'] : []),
    ...(minNm === undefined ? ['wrench/min'] : []),
    ...(maxNm === undefined ? ['wrench/max'] : []),
  ];
  if (settingNm === null) return missing(...needs);
  if (minNm !== undefined && settingNm < minNm * (1 - NEAR)) {
    return because(`setting ${nm(settingNm)} is below the wrench's least, ${nm(minNm)}`);
  }
  if (maxNm === undefined) return missing(...needs);
  if (settingNm > maxNm * (1 + NEAR)) {
    return because(`setting ${nm(settingNm)} is above the wrench's greatest, ${nm(maxNm)}`);
  }
  if (settingNm >= LEAST_SHARE * maxNm * (1 - NEAR)) return missing(...needs);
  const reason =
    `setting ${nm(settingNm)} is below 20 % of the wrench's greatest, ` +
    `${nm(LEAST_SHARE * maxNm)} (rule: ISO 6789:2003 calibration range)`;
  const other =
    'Public texts on ISO 6789 contradict each other: by the 2003 edition the range begins at ' +
    '20 % of the greatest, by 2017 (5.1.3) at the lowest mark for some classes. The stricter is ' +
    "used; the wrench's certificate says from where it was calibrated.";
  return { reasons: [reason], needs, cautions: minNm === undefined ? [] : [other] };
}

function dateOf(wrench: Wrench, on: string | undefined): Part {
  const { calibratedOn, droppedOn, intervalMonths = USUAL_MONTHS } = wrench;
  if (droppedOn !== undefined && (calibratedOn === undefined || droppedOn >= calibratedOn)) {
    return because(`dropped on ${droppedOn} and not calibrated since`);
  }
  const needs = [
    ...(calibratedOn === undefined ? ['wrench/calibratedOn'] : []),
    ...(on === undefined ? ['on'] : []),
  ];
  if (calibratedOn === undefined || on === undefined) return missing(...needs);
  const until = monthsOn(calibratedOn, intervalMonths);
  if (on <= until) return fine;
  return because(
    `out of date: calibrated on ${calibratedOn}, ` +
      `in date for ${intervalMonths} months until ${until}`,
  );
}

function cyclesOf({ cyclesSince, intervalCycles }: Wrench): Part {
  if (cyclesSince !== undefined) {
    const most = intervalCycles ?? USUAL_CYCLES;
    if (cyclesSince < most) return fine;
    return because(`calibration used up: ${cyclesSince} cycles since, ${most} are its interval`);
  }
  // Whoever states an interval in cycles counts them; else the date alone is kept, and said.
  if (intervalCycles !== undefined) return missing('wrench/cyclesSince');
  const caution =
    'Cycles since calibration not given: judged by the date alone ' +
    '(ISO 6789: 12 months or 5000 cycles, whichever comes first).';
  return { ...fine, cautions: [caution] };
}
