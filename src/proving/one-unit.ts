// Figures that may come in any unit, brought to the one the first of them was given in.

import { readQuantity } from '../quantity/quantity.ts';
import type { Problem } from '../quantity/types.ts';
import { convertSpan, knownUnit, type Unit, unitOf } from '../quantity/units.ts';
import type { AnyFigure } from './decide-model.ts';

export type Given = {
  readonly path: string;
  readonly figure: AnyFigure;
  /** A spread converts without the offset of a temperature. */
  readonly span: boolean;
};

export type OneUnit =
  | { readonly ok: false; readonly problems: readonly Problem[] }
  | {
      readonly ok: true;
      readonly unit: string;
      readonly values: Readonly<Record<string, number>>;
      readonly spreads: Readonly<Record<string, number>>;
    };

const spelled = (figure: AnyFigure): string | undefined => {
  if (typeof figure === 'object') return figure.unit;
  if (typeof figure === 'number') return undefined;
  return /^\s*[-+−]?[\d.]+(?:[eE][-+]?\d+)?\s*(.*)$/s.exec(figure)?.[1]?.trim() || undefined;
};

export function inOneUnit(given: readonly Given[]): OneUnit {
  const problems: Problem[] = [];
  const values: Record<string, number> = {};
  const spreads: Record<string, number> = {};
  const named = given.find(({ figure }) => unitOf(spelled(figure) ?? '?') !== undefined);
  const common = knownUnit((named && spelled(named.figure)) ?? '1');
  for (const { path, figure, span } of given) {
    const own = spelled(figure);
    const unit: Unit = (own === undefined ? undefined : unitOf(own)) ?? common;
    const raw =
      typeof figure === 'object'
        ? { ...figure, unit: figure.unit ?? common.code }
        : typeof figure === 'string' && own === undefined
          ? Number(figure)
          : figure;
    // A spread is read in its own unit, and turned without any offset.
    const read = readQuantity(raw, span ? unit.code : common.code, path);
    if (!read.ok) problems.push(...read.problems);
    else if (span && unit.dimension !== common.dimension) {
      const why = `${unit.symbol} is a unit of ${unit.dimension}`;
      problems.push({ path, got: figure, expected: `a unit of ${common.dimension}`, why });
    } else {
      const { value, u } = read.quantity;
      values[path] = span ? convertSpan(value, unit.code, common.code) : value;
      if (u !== undefined) spreads[path] = u;
    }
  }
  return problems.length > 0
    ? { ok: false, problems }
    : { ok: true, unit: common.code, values, spreads };
}
