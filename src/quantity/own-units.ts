// The units a person reads and keys in, beside the units in which something was issued or asked.

import { limits } from '../limits.ts';
import { convertText, knownUnit, type Unit, unitOf } from './units.ts';

/** What can be chosen, by dimension. Only figures in one of these are turned into another. */
export const OWN_UNITS = {
  pressure: ['bar', 'kPa', '[psi]'],
  temperature: ['Cel', '[degF]'],
  length: ['mm', '[in_i]'],
  torque: ['N.m', '[lbf_av].[ft_i]'],
  'volume flow': ['L/min', 'm3/h', '[gal_us]/min'],
} as const;

export type OwnDimension = keyof typeof OWN_UNITS;
/** A dimension that is not named stays as it was issued or asked. */
export type OwnUnits = Readonly<Partial<Record<OwnDimension, string>>>;

/** The person's unit for a figure in this one; null where it stays as it is. */
export function ownUnit(spelling: string, own: OwnUnits): Unit | null {
  const asked = unitOf(spelling);
  const choices = Object.entries(OWN_UNITS).find(([name]) => name === asked?.dimension);
  if (asked === undefined || choices === undefined) return null;
  const [dimension, codes] = choices;
  const chosen = own[dimension as OwnDimension];
  const known = (code: string) => codes.some((each) => each === code);
  if (chosen === undefined || !known(chosen) || !known(asked.code)) return null;
  return chosen === asked.code ? null : knownUnit(chosen);
}

/** What was keyed in another unit, in the one that was asked for. */
export function inAsked(typed: string, from: Unit, asked: string): number | null {
  const value = convertText(typed, from, knownUnit(asked));
  return value === undefined ? null : Number(value.toPrecision(limits.quantity.keptDigits));
}

/** An answer as it travels to the act: the figure alone, or with the unit it was keyed in. */
export const keyedIn = (typed: string, unit: Unit | null): string =>
  unit === null || typed === '' ? typed : `${typed} ${unit.code}`;

export const amountOf = (answer: string): string => answer.split(' ')[0] ?? '';

export type Keyed = { readonly value: number; readonly typed: string | null };

/** The figure in the unit asked, and what was typed where that was another. */
export function readKeyed(answer: string, asked: string): Keyed {
  const [typed = '', spelling] = answer.split(' ');
  const from = spelling === undefined ? undefined : unitOf(spelling);
  if (from === undefined) return { value: Number(typed), typed: null };
  return {
    value: inAsked(typed.replace(/\.$/, ''), from, asked) ?? Number.NaN,
    typed: `${typed} ${from.symbol}`,
  };
}

const FIGURE = /^(-?\d+(?:\.\d+)?)(?: to (-?\d+(?:\.\d+)?))? +(\S+)$/;

/**
 * An issued or recorded figure in the person's unit, to stand beside it and never in its place:
 * `48 N.m` → `≈ 35.4 lbf·ft`. Null where nothing is to be said or the text is no plain figure.
 */
export function besideIn(shown: string, own: OwnUnits): string | null {
  const match = FIGURE.exec(shown.trim().replace('−', '-'));
  if (match === null) return null;
  const [, low = '', high, spelling = ''] = match;
  const asked = unitOf(spelling);
  const to = ownUnit(spelling, own);
  if (asked === undefined || to === null) return null;
  const figures = [low, ...(high === undefined ? [] : [high])].map((text) =>
    rounded(text, asked, to),
  );
  return `≈ ${figures.join(' … ')} ${to.symbol}`;
}

/** No more digits than were stated, but never fewer than three: the issued figure is beside it. */
function rounded(text: string, from: Unit, to: Unit): string {
  const stated = text.replace(/^-?0*\.?0*|\./g, '').length;
  const value = convertText(text, from, to) ?? Number.NaN;
  return String(Number(value.toPrecision(Math.max(stated, limits.quantity.besideDigits))));
}
