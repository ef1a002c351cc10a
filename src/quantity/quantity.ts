// Reads what people type as a figure, keeps what they typed, and prints figures with few digits.

import { limits } from '../limits.ts';
import type { Problem, Quantity } from './types.ts';
import { convertSpan, convertText, knownUnit, type Unit, unitOf, unitsLike } from './units.ts';

export type ReadQuantity =
  | { readonly ok: true; readonly quantity: Quantity }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const AMOUNT = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?)(?![\d.,])\s*(.*)$/s;

const wrong = (problem: Problem): ReadQuantity => ({ ok: false, problems: [problem] });

function exampleOf(unit: Unit): string {
  const others = unitsLike(unit).map(({ symbol, code }) => symbol || code);
  return `a number in ${unit.symbol || unit.code}, or one with a unit of: ${others.join(', ')}`;
}

function fromText(given: string, wanted: Unit, path: string): ReadQuantity {
  const expected = exampleOf(wanted);
  const problem = (why: string, remedy?: string): ReadQuantity =>
    wrong({ path, got: given, expected, why, ...(remedy === undefined ? {} : { remedy }) });
  if (given.length > limits.quantity.textLength) return problem('it is too long for a figure');
  const match = AMOUNT.exec(given.trim().replace(/^−/, '-'));
  if (match === null) {
    return /^[+-]?\d+,\d/.test(given.trim())
      ? problem('a comma can mean two things in a number', 'write the decimals after a full stop')
      : problem('it does not begin with a number');
  }
  const [, amount = '', spelling = ''] = match;
  // A text without a unit is a slip, save for a plain ratio: the unit would have to be guessed.
  if (spelling === '' && wanted.code !== '1') return problem('its unit is missing');
  const unit = spelling === '' ? wanted : unitOf(spelling);
  if (unit === undefined) return problem(`"${spelling}" is no unit known here`);
  if (unit.dimension !== wanted.dimension) {
    return problem(`${unit.symbol || unit.code} is a unit of ${unit.dimension}`);
  }
  const value = convertText(amount, unit, wanted);
  if (value === undefined || !Number.isFinite(value)) return problem('it is no finite number');
  return { ok: true, quantity: { value, unit: wanted.code, given } };
}

function fromNumber(value: number, wanted: Unit, path: string): ReadQuantity {
  if (Number.isFinite(value)) return { ok: true, quantity: { value, unit: wanted.code } };
  const why = 'it is no finite number';
  return wrong({ path, got: String(value), expected: exampleOf(wanted), why });
}

const FIELDS = new Set(['value', 'unit', 'u', 'expanded', 'k', 'given']);

function fieldProblem(body: Readonly<Record<string, unknown>>, path: string): Problem | undefined {
  const expected = '{value, unit}, with u, or with expanded and k, where its uncertainty is known';
  for (const [name, got] of Object.entries(body)) {
    const at = `${path}/${name}`;
    if (!FIELDS.has(name)) return { path: at, got, expected, why: 'this field is not known here' };
    const isText = name === 'unit' || name === 'given';
    if (typeof got !== (isText ? 'string' : 'number')) {
      return { path: at, got, expected, why: `it is not a ${isText ? 'text' : 'number'}` };
    }
  }
  if (body.unit === undefined || body.value === undefined) {
    return { path, got: body, expected, why: 'value and unit are both needed' };
  }
  if ((body.expanded === undefined) !== (body.k === undefined)) {
    return { path, got: body, expected, why: 'expanded and k belong together' };
  }
  if (body.u !== undefined && body.expanded !== undefined) {
    return { path, got: body, expected, why: 'the uncertainty is given twice' };
  }
  return undefined;
}

function standardOf(body: Readonly<Record<string, unknown>>): number | undefined {
  if (typeof body.u === 'number') return body.u;
  if (typeof body.expanded !== 'number' || typeof body.k !== 'number') return undefined;
  return body.k > 0 ? body.expanded / body.k : Number.NaN;
}

function fromFields(
  body: Readonly<Record<string, unknown>>,
  wanted: Unit,
  path: string,
): ReadQuantity {
  const bad = fieldProblem(body, path);
  if (bad !== undefined) return wrong(bad);
  const read = fromText(`${String(body.value)} ${String(body.unit)}`, wanted, path);
  const u = standardOf(body);
  if (!read.ok || u === undefined) return withGiven(read, body.given);
  if (!Number.isFinite(u) || u < 0) {
    const expected = 'an uncertainty of nought or more, and k above nought';
    return wrong({ path, got: body, expected, why: 'no spread can be below nought' });
  }
  const span = convertSpan(u, String(body.unit), wanted.code);
  return withGiven({ ok: true, quantity: { ...read.quantity, u: span } }, body.given);
}

const withGiven = (read: ReadQuantity, given: unknown): ReadQuantity =>
  read.ok && typeof given === 'string' ? { ok: true, quantity: { ...read.quantity, given } } : read;

/**
 * Reads a figure as it may stand in a file or a form: `"48 N.m"`, a bare number in `unit`, or
 * `{value, unit, u}`. The value comes back in `unit`, with what was typed beside it.
 */
export function readQuantity(input: unknown, unit: string, path: string): ReadQuantity {
  const wanted = knownUnit(unit);
  if (typeof input === 'string') return fromText(input, wanted, path);
  if (typeof input === 'number') return fromNumber(input, wanted, path);
  if (typeof input === 'object' && input !== null && !Array.isArray(input)) {
    return fromFields({ ...input }, wanted, path);
  }
  const why = 'it is neither a number nor a text with a unit';
  return wrong({ path, got: input ?? null, expected: exampleOf(wanted), why });
}

/** A number with few digits, never in powers of ten where a person would write it out. */
export function formatNumber(value: number, digits = 3): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} can't be shown as a figure`);
  if (value === 0) return '0';
  const size = Math.abs(value);
  if (size >= 1e9 || size < 1e-6) return value.toExponential(digits - 1);
  // Whole places are never rounded away: 1450 rpm with three digits stays 1450.
  const wholeDigits = Math.max(Math.floor(Math.log10(size)) + 1, 1);
  if (wholeDigits >= digits) return String(Math.round(value));
  const rounded = Number(value.toPrecision(digits));
  const places = Math.max(0, digits - 1 - Math.floor(Math.log10(size)));
  return String(Number(rounded.toFixed(Math.min(places, 12))));
}

/** A figure for the eye: what was typed comes first, since that is what the paper says. */
export function formatQuantity(quantity: Quantity, digits = 3): string {
  const { symbol } = knownUnit(quantity.unit);
  const sign = symbol === '' ? '' : symbol === '°' ? symbol : ` ${symbol}`;
  const value = formatNumber(quantity.value, digits);
  const spread = quantity.u ? ` ± ${formatNumber(2 * quantity.u, 2)}` : '';
  const shown = `${value}${spread}${sign}${spread === '' ? '' : ' (k = 2)'}`;
  const typed = quantity.given === undefined ? undefined : typedAs(quantity.given);
  if (typed === undefined || spread !== '') return shown;
  return typed.unit === knownUnit(quantity.unit) ? typed.text : `${typed.text} (${shown})`;
}

function typedAs(given: string): { text: string; unit: Unit } | undefined {
  const match = AMOUNT.exec(given.trim().replace(/^−/, '-'));
  const unit = unitOf(match?.[2] ?? '');
  if (match === null || unit === undefined) return undefined;
  const gap = unit.symbol === '' || unit.symbol === '°' ? '' : ' ';
  return { text: `${match[1]}${gap}${unit.symbol}`, unit };
}
