// Carries the standard uncertainty of what was put in to what comes out: linear, by differences.

import type { Quantity } from './types.ts';

type Path = readonly PropertyKey[];
type Found = { readonly path: Path; readonly quantity: Quantity };

const isObject = (value: unknown): value is Record<PropertyKey, unknown> =>
  typeof value === 'object' && value !== null;

const isQuantity = (value: unknown): value is Quantity =>
  isObject(value) && typeof value.value === 'number' && typeof value.unit === 'string';

const isFigure = (value: unknown): value is Quantity =>
  isQuantity(value) && Number.isFinite(value.value);

// A working holds figures of its own, which stand for the best values alone.
function quantitiesIn(value: unknown, path: Path = []): readonly Found[] {
  if (isQuantity(value)) return [{ path, quantity: value }];
  if (!isObject(value)) return [];
  return Object.entries(value).flatMap(([key, part]) =>
    key === 'working' ? [] : quantitiesIn(part, [...path, key]),
  );
}

function replaced(value: unknown, path: Path, by: unknown): unknown {
  const [first, ...rest] = path;
  if (first === undefined) return by;
  if (Array.isArray(value)) {
    return value.map((part, at) => (String(at) === first ? replaced(part, rest, by) : part));
  }
  return isObject(value) ? { ...value, [first]: replaced(value[first], rest, by) } : value;
}

const valueAt = (value: unknown, path: Path): unknown =>
  path.reduce<unknown>((at, key) => (isObject(at) ? at[key] : undefined), value);

/**
 * Solves, and gives each quantity of the answer its `u`: half the change between one standard
 * uncertainty below and above, put together as independent (GUM, first order).
 */
export function carry<I, R>(input: I, solve: (input: I) => R): R {
  const uncertain = quantitiesIn(input).filter(({ quantity }) => (quantity.u ?? 0) > 0);
  const best = solve(input);
  if (uncertain.length === 0) return best;
  const ends = uncertain.map(({ path, quantity }) => {
    const at = (sign: number) => {
      const { u = 0, unit, value } = quantity;
      return solve(replaced(input, path, { unit, value: value + sign * u }) as I);
    };
    return [at(-1), at(1)] as const;
  });
  let answer: unknown = best;
  for (const { path, quantity } of quantitiesIn(best)) {
    let sum = 0;
    for (const [low, high] of ends) {
      const below = valueAt(low, path);
      const above = valueAt(high, path);
      const from = isFigure(below) ? below.value : quantity.value;
      const to = isFigure(above) ? above.value : quantity.value;
      // Where one end has no answer, the whole step to the other counts.
      const both = isFigure(below) && isFigure(above);
      sum += ((to - from) / (both ? 2 : 1)) ** 2;
    }
    if (sum > 0) answer = replaced(answer, path, { ...quantity, u: Math.sqrt(sum) });
  }
  return answer as R;
}
