// What fields of an input say of one another, checked beside whatever is wrong with each of them.

import type { z } from 'zod';

export type Rule = {
  readonly path: readonly (string | number)[];
  readonly why: string;
  readonly expected: string;
  /** Whether it is broken; what is missing or wrong by itself breaks no rule. */
  readonly broken: (value: unknown) => boolean;
};

/** What stands at a path of an input that may be wrong anywhere. */
export const at = (value: unknown, ...path: readonly (string | number)[]): unknown =>
  path.reduce<unknown>(
    (inner, key) =>
      typeof inner === 'object' && inner !== null
        ? (inner as Readonly<Record<string | number, unknown>>)[key]
        : undefined,
    value,
  );

/** The number of a quantity, or of the least or the greatest of two; undefined where it is none. */
export function numberAt(value: unknown, path: string, end: 'least' | 'greatest' = 'least') {
  const found = at(value, ...path.split('/'));
  const one = Array.isArray(found) ? found[end === 'least' ? 0 : 1] : found;
  const number = at(one, 'value');
  return typeof number === 'number' ? number : undefined;
}

/** Broken where both are known and the test fails. */
export const both = (
  a: number | undefined,
  b: number | undefined,
  broken: (a: number, b: number) => boolean,
): boolean => a !== undefined && b !== undefined && broken(a, b);

/** All rules are looked at, also where fields are wrong, so that everything comes at once. */
export const withRules = <T extends z.ZodType>(schema: T, rules: readonly Rule[]): T =>
  rules.reduce(
    (made, { path, why, expected, broken }) =>
      made.refine((value) => !broken(value), {
        when: () => true,
        error: why,
        path: [...path],
        params: { expected },
      }),
    schema,
  );
