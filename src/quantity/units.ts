// The units people type, each with its exact factor, its UCUM code and the sign printed for it.

import {
  add,
  divide,
  multiply,
  type Rational,
  rationalOf,
  subtract,
  toNumber,
} from './rational.ts';
import { type UnitRow, unitRows } from './tables/units.ts';

export type Unit = {
  /** UCUM code, used in files and in JSON. */
  readonly code: string;
  /** What is printed and shown. */
  readonly symbol: string;
  /** Units convert inside one dimension only: a torque is no energy, though both are J. */
  readonly dimension: string;
  readonly factor: Rational;
  readonly offset: Rational;
  readonly spellings: readonly string[];
};

function exact(text: string): Rational {
  const parts = text.split(/([*/])/);
  let value = rationalOf(parts[0] ?? '');
  for (let i = 1; i < parts.length && value !== undefined; i += 2) {
    const next = rationalOf(parts[i + 1] ?? '');
    if (next === undefined) break;
    value = parts[i] === '*' ? multiply(value, next) : divide(value, next);
  }
  if (value === undefined) throw new Error(`unit factor "${text}" is no exact number`);
  return value;
}

function unitFrom(dimension: string, [code, symbol, factor, spellings, offset]: UnitRow): Unit {
  return {
    code,
    symbol,
    dimension,
    factor: exact(factor),
    offset: exact(offset ?? '0'),
    spellings,
  };
}

export const units: readonly Unit[] = Object.entries(unitRows).flatMap(([dimension, rows]) =>
  rows.map((row) => unitFrom(dimension, row)),
);

const SAME: Readonly<Record<string, string>> = {
  '²': '2',
  '³': '3',
  '·': '.',
  '⋅': '.',
  '×': '.',
  '*': '.',
  '−': '-',
  µ: 'u',
  μ: 'u',
  '℃': '°C',
  '℉': '°F',
  '\u00a0': ' ',
  '\u202f': ' ',
};

/** One way of writing for all the ways a keyboard offers: `N·m`, `N m` and `N.m` are the same. */
export function plainSpelling(text: string): string {
  const plain = [...text.trim()].map((char) => SAME[char] ?? char).join('');
  return plain.replace(/\s*\/\s*/g, '/').replace(/\s*\.\s*|\s+/g, '.');
}

const byName = new Map<string, Unit>();
for (const unit of units) {
  for (const name of [unit.code, unit.symbol, ...unit.spellings]) {
    const plain = plainSpelling(name);
    const other = byName.get(plain);
    if (other !== undefined && other !== unit) {
      throw new Error(`"${name}" would mean ${other.code} and ${unit.code}`);
    }
    byName.set(plain, unit);
  }
}

/** The unit that a spelling means; capital letters matter (MPa, mPa). */
export const unitOf = (spelling: string): Unit | undefined => byName.get(plainSpelling(spelling));

export function knownUnit(code: string): Unit {
  const unit = unitOf(code);
  if (unit === undefined) throw new Error(`unit "${code}" is not in the table`);
  return unit;
}

export const unitsLike = (unit: Unit): readonly Unit[] =>
  units.filter((other) => other.dimension === unit.dimension);

function exactly(value: Rational, from: Unit, to: Unit): Rational {
  if (from.dimension !== to.dimension) {
    throw new Error(`${from.code} (${from.dimension}) is no ${to.dimension} (${to.code})`);
  }
  return divide(subtract(multiply(add(value, from.offset), from.factor), zeroOf(to)), to.factor);
}

const zeroOf = (unit: Unit): Rational => multiply(unit.offset, unit.factor);

/** Converts the decimal that is written, not the binary that is stored: 68 °F is 20 °C. */
export function convertText(decimal: string, from: Unit, to: Unit): number | undefined {
  const value = rationalOf(decimal);
  return value === undefined ? undefined : toNumber(exactly(value, from, to));
}

/** Converts a finite number between two units of one dimension, named by code or spelling. */
export function convert(value: number, from: string, to: string): number {
  const converted = convertText(String(value), knownUnit(from), knownUnit(to));
  if (converted === undefined) throw new RangeError(`${value} is no finite number`);
  return converted;
}

/** Converts a difference or an uncertainty: offsets play no part. */
export function convertSpan(value: number, from: string, to: string): number {
  const [a, b] = [knownUnit(from), knownUnit(to)];
  const span = rationalOf(String(value));
  if (a.dimension !== b.dimension || span === undefined) {
    throw new Error(`a span of ${value} ${from} can't be given in ${to}`);
  }
  return toNumber(divide(multiply(span, a.factor), b.factor));
}
