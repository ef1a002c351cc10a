// Re-evaluates the expressions of a working, so that no figure can drift from the sum shown for it.

import { limits } from '../limits.ts';
import { normalBelow, studentAbove } from './distribution.ts';
import type { Problem, Working } from './types.ts';

type Token = { readonly kind: 'number' | 'name' | 'sign'; readonly text: string };
type Cursor = { readonly tokens: readonly Token[]; at: number; depth: number };
export type Symbols = ReadonlyMap<string, number>;

const TOKEN =
  /\s*(?:((?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)|([\p{L}_][\p{L}\p{N}_']*)|([-+*/^(),]))/uy;

const functions: Readonly<Record<string, (...args: number[]) => number>> = {
  sqrt: Math.sqrt,
  abs: Math.abs,
  exp: Math.exp,
  ln: Math.log,
  min: Math.min,
  max: Math.max,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  Φ: normalBelow,
  Φt: (t = 0, degrees = 0) => studentAbove(-t, degrees),
};

const takesMore: ReadonlySet<string> = new Set(['min', 'max', 'Φt']);

const constants: Readonly<Record<string, number>> = { pi: Math.PI, π: Math.PI };

function tokensOf(expression: string): Token[] {
  if (expression.length > limits.quantity.expressionLength) {
    throw new Error(`an expression of ${expression.length} signs is too long`);
  }
  const text = expression.replace(/[·×]/g, '*').replace(/−/g, '-').trim();
  const tokens: Token[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.length) {
    const from = TOKEN.lastIndex;
    const match = TOKEN.exec(text);
    if (match === null) throw new Error(`"${text.slice(from)}" can't be read as arithmetic`);
    const [, number, name, sign] = match;
    if (number !== undefined) tokens.push({ kind: 'number', text: number });
    else if (name !== undefined) tokens.push({ kind: 'name', text: name });
    else tokens.push({ kind: 'sign', text: sign ?? '' });
  }
  return tokens;
}

/** Evaluates `+ - * / ^ ( )`, numbers, symbols and a few functions; angles are in radians. */
export function evaluate(expression: string, symbols: Symbols = new Map()): number {
  const cursor: Cursor = { tokens: tokensOf(expression), at: 0, depth: 0 };
  const value = sum(cursor, symbols);
  const left = cursor.tokens[cursor.at];
  if (left !== undefined) throw new Error(`"${left.text}" is left over in "${expression}"`);
  return value;
}

function takes(cursor: Cursor, ...signs: string[]): string | undefined {
  const token = cursor.tokens[cursor.at];
  if (token?.kind !== 'sign' || !signs.includes(token.text)) return undefined;
  cursor.at += 1;
  return token.text;
}

function needs(cursor: Cursor, sign: string): void {
  if (takes(cursor, sign) !== undefined) return;
  throw new Error(`expected "${sign}", got "${cursor.tokens[cursor.at]?.text ?? 'the end'}"`);
}

function sum(cursor: Cursor, symbols: Symbols): number {
  cursor.depth += 1;
  if (cursor.depth > limits.quantity.expressionDepth) throw new Error('nested too deeply');
  let value = product(cursor, symbols);
  for (let sign = takes(cursor, '+', '-'); sign !== undefined; sign = takes(cursor, '+', '-')) {
    const next = product(cursor, symbols);
    value = sign === '+' ? value + next : value - next;
  }
  cursor.depth -= 1;
  return value;
}

function product(cursor: Cursor, symbols: Symbols): number {
  let value = signed(cursor, symbols);
  for (let sign = takes(cursor, '*', '/'); sign !== undefined; sign = takes(cursor, '*', '/')) {
    const next = signed(cursor, symbols);
    value = sign === '*' ? value * next : value / next;
  }
  return value;
}

// As on paper, -2^2 is -4, 2^-1 is 0.5 and 2^3^2 is 2^9.
function signed(cursor: Cursor, symbols: Symbols): number {
  let factor = 1;
  for (let sign = takes(cursor, '+', '-'); sign !== undefined; sign = takes(cursor, '+', '-')) {
    if (sign === '-') factor = -factor;
  }
  return factor * power(cursor, symbols);
}

function power(cursor: Cursor, symbols: Symbols): number {
  const base = atom(cursor, symbols);
  if (takes(cursor, '^') === undefined) return base;
  cursor.depth += 1;
  if (cursor.depth > limits.quantity.expressionDepth) throw new Error('nested too deeply');
  const value = base ** signed(cursor, symbols);
  cursor.depth -= 1;
  return value;
}

function atom(cursor: Cursor, symbols: Symbols): number {
  if (takes(cursor, '(') !== undefined) {
    const value = sum(cursor, symbols);
    needs(cursor, ')');
    return value;
  }
  const token = cursor.tokens[cursor.at];
  if (token === undefined || token.kind === 'sign') {
    throw new Error(`expected a figure, got "${token?.text ?? 'the end'}"`);
  }
  cursor.at += 1;
  if (token.kind === 'number') return Number(token.text);
  return takes(cursor, '(') === undefined
    ? symbolValue(token.text, symbols)
    : call(token.text, cursor, symbols);
}

function symbolValue(name: string, symbols: Symbols): number {
  const value = symbols.get(name) ?? (Object.hasOwn(constants, name) ? constants[name] : undefined);
  if (value === undefined) throw new Error(`symbol "${name}" has no value yet`);
  return value;
}

function call(name: string, cursor: Cursor, symbols: Symbols): number {
  const args = [sum(cursor, symbols)];
  while (takes(cursor, ',') !== undefined) args.push(sum(cursor, symbols));
  needs(cursor, ')');
  const run = Object.hasOwn(functions, name) ? functions[name] : undefined;
  if (run === undefined) throw new Error(`function "${name}" is not known`);
  if (args.length > 1 && !takesMore.has(name)) {
    throw new Error(`"${name}" takes one figure, got ${args.length}`);
  }
  return run(...args);
}

/** Works a working out again, row by row; what does not come out is a problem. */
export function recheckWorking(working: Working, tolerance = 1e-9): readonly Problem[] {
  const symbols = new Map<string, number>();
  const problems: Problem[] = [];
  working.forEach((row, index) => {
    const path = `working/${index}/${row.symbol}`;
    try {
      const value = evaluate(row.expression, symbols);
      const near = Math.abs(value - row.value) <= tolerance * Math.max(Math.abs(row.value), 1e-300);
      if (!near) {
        const why = `"${row.expression}" does not come out`;
        problems.push({ path, got: row.value, expected: String(value), why });
      }
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      problems.push({ path, got: row.expression, expected: 'arithmetic on earlier rows', why });
    }
    symbols.set(row.symbol, row.value);
  });
  return problems;
}
