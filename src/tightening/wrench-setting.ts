// What to set a torque wrench to, with the adapter really used, and whether it may be used.

import { limits } from '../limits.ts';
import { isDay } from '../quantity/day.ts';
import { formatNumber } from '../quantity/quantity.ts';
import type { Problem, Quantity, Working } from '../quantity/types.ts';
import { adapterDoesNothing, factorSpread, type Lever, leverFactor, leverMm } from './lever.ts';
import { checkWrench, type Wrench } from './wrench-check.ts';
import type { WrenchSettingInput } from './wrench-input.ts';
import { settingWorking } from './wrench-working.ts';

export type WrenchSetting = {
  readonly setting: Quantity | null;
  /** At the bolt: with the torque that turns the nut, where it is added. */
  readonly torque: Quantity | null;
  /** Setting over torque at the bolt. */
  readonly factor: Quantity | null;
  /** From the drive square to the middle of the hand. */
  readonly gripPoint: Quantity | null;
  readonly usable: boolean | null;
  readonly reasons: readonly string[];
  readonly working: Working;
  readonly cautions: readonly string[];
  readonly notWorkedOut: readonly {
    readonly output: string;
    readonly needs: readonly string[];
  }[];
};

export type WrenchSettingAnswer =
  | { readonly ok: true; readonly result: WrenchSetting }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** The factor, or what is missing for it; `lever` where all of it is known and it matters. */
export type Factor =
  | { readonly value: number; readonly spread: number; readonly lever: Lever | null }
  | { readonly needs: readonly string[] };

export function wrenchSetting(input: WrenchSettingInput): WrenchSettingAnswer {
  const problems = [...wrongFigures(input), ...wrongDays(input)];
  if (problems.length > 0) return { ok: false, problems };
  const factor = factorOf(input);
  const [torque, setting] = bothEnds(input, factor);
  const wrench = wrenchOf(input);
  const check = checkWrench(wrench, setting?.value ?? null, input.on);
  const gripPoint = input.wrenchLength ?? null;
  const known = 'value' in factor;
  const bare = input.adapterLength === undefined && input.adapterAngle === undefined;
  const nothing = torque === null && setting === null && gripPoint === null;
  if (nothing && check.usable === null && (!known || bare)) {
    const why = 'nothing can be worked out: neither a torque nor a setting is given';
    return { ok: false, problems: [{ path: '', got: null, expected: 'torque or setting', why }] };
  }
  const result: WrenchSetting = {
    setting,
    torque,
    factor: known ? withSpread(factor.value, '1', factor.value * factor.spread) : null,
    gripPoint,
    usable: check.usable,
    reasons: check.reasons,
    working: settingWorking(input, factor, { torque, setting }, wrench),
    cautions: [...cautionsOf(input, factor, torque), ...check.cautions],
    notWorkedOut: notWorkedOut(input, factor, check.usable === null ? check.needs : []),
  };
  return { ok: true, result };
}

function factorOf({ wrenchLength, adapterLength, adapterAngle }: WrenchSettingInput): Factor {
  const none = adapterLength === undefined && adapterAngle === undefined;
  if (none || adapterLength?.value === 0) return { value: 1, spread: 0, lever: null };
  const square = adapterAngle?.value === 90 && !adapterAngle.u;
  if (square && (adapterLength === undefined || wrenchLength === undefined)) {
    return { value: 1, spread: 0, lever: null };
  }
  if (!wrenchLength || !adapterLength || !adapterAngle) {
    const needs = [
      ...(wrenchLength === undefined ? ['wrenchLength'] : []),
      ...(adapterLength === undefined ? ['adapterLength'] : []),
      ...(adapterAngle === undefined ? ['adapterAngle'] : []),
    ];
    return { needs };
  }
  const lever = {
    wrenchMm: wrenchLength.value,
    adapterMm: adapterLength.value,
    angleDeg: adapterAngle.value,
  };
  const spread = factorSpread(lever, {
    wrenchMm: wrenchLength.u ?? 0,
    adapterMm: adapterLength.u ?? 0,
    angleDeg: adapterAngle.u ?? 0,
  });
  return { value: leverFactor(lever), spread, lever };
}

const withSpread = (value: number, unit: string, u: number): Quantity => ({
  value,
  unit,
  ...(u > 0 ? { u } : {}),
});

/** Torque at the bolt and setting, each null where it is not settled. */
function bothEnds(
  input: WrenchSettingInput,
  factor: Factor,
): readonly [Quantity | null, Quantity | null] {
  const { torque, setting } = input;
  const known = 'value' in factor ? factor : null;
  if (torque !== undefined) {
    const more = input.includesRunDown ? undefined : input.runDown;
    const whole = more === undefined ? torque : sum(torque, more);
    if (known === null) return [whole, null];
    if (known.value === 1 && known.spread === 0) return [whole, whole];
    return [whole, times(whole, known.value, known.spread)];
  }
  if (setting === undefined) return [null, null];
  if (known === null) return [null, setting];
  if (known.value === 1 && known.spread === 0) return [setting, setting];
  return [times(setting, 1 / known.value, known.spread), setting];
}

function sum(torque: Quantity, more: Quantity): Quantity {
  if (more.value === 0 && !more.u) return torque;
  const u = Math.hypot(torque.u ?? 0, more.u ?? 0);
  return withSpread(torque.value + more.value, 'N.m', u);
}

function times(given: Quantity, factor: number, spread: number): Quantity {
  const value = given.value * factor;
  return withSpread(value, 'N.m', Math.hypot((given.u ?? 0) * factor, value * spread));
}

function wrenchOf({ wrench }: WrenchSettingInput): Wrench | undefined {
  if (wrench === undefined) return undefined;
  const { min, max, tolerance, ...rest } = wrench;
  return {
    ...(min === undefined ? {} : { minNm: min.value }),
    ...(max === undefined ? {} : { maxNm: max.value }),
    ...(tolerance === undefined ? {} : { tolerance: tolerance.value }),
    ...(rest.calibratedOn === undefined ? {} : { calibratedOn: rest.calibratedOn }),
    ...(rest.intervalMonths === undefined ? {} : { intervalMonths: rest.intervalMonths }),
    ...(rest.intervalCycles === undefined ? {} : { intervalCycles: rest.intervalCycles }),
    ...(rest.cyclesSince === undefined ? {} : { cyclesSince: rest.cyclesSince }),
  };
}

function wrongFigures(input: WrenchSettingInput): Problem[] {
  const { torque, setting, runDown, wrench } = input;
  const problems: Problem[] = [];
  const wrong = (path: string, got: unknown, expected: string, why: string): void => {
    problems.push({ path, got, expected, why });
  };
  if (torque !== undefined && setting !== undefined) {
    const why = 'torque and setting are both given: the one is worked out from the other';
    wrong('setting', setting.given ?? setting.value, 'torque or setting, not both', why);
  }
  const { min, max } = wrench ?? {};
  if (min !== undefined && max !== undefined && min.value > max.value) {
    const why = "the wrench's least is above its greatest";
    wrong('wrench/min', min.given ?? min.value, `at most ${formatNumber(max.value, 6)} N·m`, why);
  }
  if (input.includesRunDown && torque && runDown && runDown.value >= torque.value) {
    const why =
      'the nut alone takes as much to turn as the whole value: nothing is left to tighten';
    const expected = `less than ${formatNumber(torque.value, 6)} N·m`;
    wrong('runDown', runDown.given ?? runDown.value, expected, why);
  }
  const factor = factorOf(input);
  const lever = 'value' in factor ? factor.lever : null;
  if (lever !== null && leverMm(lever) < lever.wrenchMm / limits.bolting.leverFactor) {
    const why =
      'pointing back so far the adapter puts the bolt at or behind the hand: nothing can be set';
    const least = formatNumber(lever.wrenchMm / limits.bolting.leverFactor, 4);
    wrong(
      'adapterLength',
      input.adapterLength?.given ?? lever.adapterMm,
      `wrenchLength + adapterLength × cos(adapterAngle) of at least ${least} mm`,
      why,
    );
  }
  const longest = limits.bolting.adapterShare * (input.wrenchLength?.value ?? Number.MAX_VALUE);
  if ((input.adapterLength?.value ?? 0) > longest) {
    const why = 'an adapter more than twice as long as its wrench is a slip of a length or a unit';
    const got = input.adapterLength?.given ?? input.adapterLength?.value;
    wrong('adapterLength', got, `at most ${formatNumber(longest, 4)} mm`, why);
  }
  return problems;
}

function wrongDays({ on, wrench }: WrenchSettingInput): Problem[] {
  const calibratedOn = wrench?.calibratedOn;
  const days = { on, 'wrench/calibratedOn': calibratedOn };
  const problems = Object.entries(days).flatMap(([path, got]) =>
    got === undefined || isDay(got)
      ? []
      : [{ path, got, expected: 'a day as 2026-11-25', why: 'it is no day of the calendar' }],
  );
  if (problems.length > 0 || on === undefined || calibratedOn === undefined) return problems;
  if (calibratedOn <= on) return [];
  const path = 'wrench/calibratedOn';
  const why = 'the wrench is calibrated after the day it is used on';
  return [{ path, got: calibratedOn, expected: `${on} or before`, why }];
}

function cautionsOf(input: WrenchSettingInput, factor: Factor, torque: Quantity | null): string[] {
  const cautions: string[] = [];
  const lever = 'value' in factor ? factor.lever : null;
  if (lever !== null && !adapterDoesNothing(lever)) {
    cautions.push(
      `Grip the wrench at its marked point, ${formatNumber(lever.wrenchMm, 4)} mm from the drive ` +
        'square: with an adapter at this angle a hand elsewhere gives another torque.',
    );
    if (lever.adapterMm > lever.wrenchMm) {
      cautions.push('The adapter is longer than the wrench: check both lengths and the unit.');
    }
  } else if (lever !== null) {
    cautions.push(
      'At a right angle the setting is the torque; keep the adapter square to the wrench.',
    );
  }
  const running = input.runDown?.value ?? 0;
  if (input.setting !== undefined && torque !== null && running > 0) {
    const left = torque.value - running;
    cautions.push(
      left > 0
        ? `Of the torque at the bolt ${formatNumber(running, 4)} N·m only turn the nut; ` +
            `${formatNumber(left, 4)} N·m tighten it.`
        : 'The whole torque goes into turning the nut: nothing is left to tighten it.',
    );
  }
  return cautions;
}

function notWorkedOut(
  { torque, setting, wrenchLength }: WrenchSettingInput,
  factor: Factor,
  forUse: readonly string[],
): { output: string; needs: readonly string[] }[] {
  const lengths = 'needs' in factor ? factor.needs : [];
  const neither = torque === undefined && setting === undefined;
  const asked = (output: string, needs: readonly string[]) =>
    needs.length === 0 ? [] : [{ output, needs }];
  const settingNeeds = neither ? ['torque'] : torque === undefined ? [] : lengths;
  const torqueNeeds = neither ? ['setting'] : setting === undefined ? [] : lengths;
  const use = forUse.flatMap((need) => (need === 'setting' ? settingNeeds : [need]));
  return [
    ...asked('setting', neither ? [...settingNeeds, ...lengths] : settingNeeds),
    ...asked('torque', neither ? [...torqueNeeds, ...lengths] : torqueNeeds),
    ...asked('factor', lengths),
    ...asked('gripPoint', wrenchLength === undefined ? ['wrenchLength'] : []),
    ...asked('usable', use),
  ];
}
