// Figures at the border of a calculation: how they are taken in, and the shapes that go out.

import { z } from 'zod';
import { readQuantity } from './quantity.ts';
import type { Quantity } from './types.ts';
import { knownUnit } from './units.ts';

type Bounds = {
  /** Least and greatest that is taken, in the field's unit. */
  readonly min?: number;
  readonly max?: number;
  /** Least that is no longer taken: 0 for what must be more than nought. */
  readonly above?: number;
  /** Greatest that is no longer taken. */
  readonly below?: number;
  readonly says?: string;
};

/** The unit stands in the published schema, so that a form can offer those it converts to. */
const typed = (unit: string) =>
  z
    .union([
      z.number().describe(`in ${unit}`),
      z.string().describe('a figure with its unit'),
      z.strictObject({
        value: z.number(),
        unit: z.string(),
        u: z.number().min(0).optional().describe('standard uncertainty, in the same unit'),
        expanded: z.number().min(0).optional(),
        k: z.number().positive().optional(),
        given: z.string().optional(),
      }),
    ])
    .meta({ unit });

function outside(value: number, bounds: Bounds): string | null {
  const { min, max, above, below } = bounds;
  if (min !== undefined && value < min) return `at least ${min}`;
  if (above !== undefined && value <= above) return `more than ${above}`;
  if (max !== undefined && value > max) return `at most ${max}`;
  if (below !== undefined && value >= below) return `less than ${below}`;
  return null;
}

/**
 * A quantity in: a bare number in `unit` (UCUM), a text with a unit, or `{value, unit}` with `u`,
 * or `expanded` and `k`. It comes out in `unit`, `given` as it was typed.
 */
export function figure(unit: string, bounds: Bounds = {}) {
  return typed(unit).transform((given, context): Quantity => {
    const read = readQuantity(given, unit, '');
    const refuse = (message: string, params: Readonly<Record<string, unknown>>) => {
      context.addIssue({ code: 'custom', message, input: given, params });
      return z.NEVER;
    };
    if (!read.ok) {
      const [first] = read.problems;
      return refuse(first?.why ?? 'it is no figure', {
        expected: first?.expected,
        ...(first?.remedy === undefined ? {} : { remedy: first.remedy }),
      });
    }
    const bound = outside(read.quantity.value, bounds);
    if (bound === null) return read.quantity;
    const sign = knownUnit(unit).symbol;
    const why = bounds.says ?? 'that is outside what this field takes';
    return refuse(why, { expected: `${bound}${sign === '' ? '' : ` ${sign}`}` });
  });
}

/** A quantity out, in one unit; `null` where `nullable()` says the input does not settle it. */
export const figureOut = (unit: string) =>
  z.strictObject({
    value: z.number(),
    unit: z.literal(unit),
    u: z.number().min(0).optional(),
    given: z.string().optional(),
  });

export const sourceOut = z.looseObject({ kind: z.string() });

export const workingOut = z.array(
  z.strictObject({
    symbol: z.string(),
    text: z.string(),
    expression: z.string(),
    value: z.number(),
    unit: z.string(),
    source: sourceOut,
  }),
);

/** Every result carries these. */
export const commonOut = {
  working: workingOut,
  cautions: z.array(z.string()),
  notWorkedOut: z.array(z.strictObject({ output: z.string(), needs: z.array(z.string()) })),
};
