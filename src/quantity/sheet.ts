// The rows of a working as they are made: what was put in, and each figure with its sum.

import type { Quantity, Source, WorkingRow } from './types.ts';

export type Sheet = {
  readonly rows: readonly WorkingRow[];
  /** A figure that was put in or taken from a table. */
  readonly take: (symbol: string, text: string, value: number, unit: string, from: Source) => void;
  /** A figure worked out from the rows before it. */
  readonly work: (
    symbol: string,
    text: string,
    expression: string,
    value: number,
    unit: string,
    from: Source,
  ) => void;
};

export function newSheet(): Sheet {
  const rows: WorkingRow[] = [];
  const work: Sheet['work'] = (symbol, text, expression, value, unit, source) => {
    rows.push({ symbol, text, expression, value, unit, source });
  };
  const take: Sheet['take'] = (symbol, text, value, unit, source) =>
    work(symbol, text, String(value), value, unit, source);
  return { rows, take, work };
}

export const entered: Source = { kind: 'entered', by: 'the input' };

export const quantity = (value: number, unit: string): Quantity => ({ value, unit });

/** What was put in comes out as it was typed. */
export const echoed = (value: number, unit: string, from: Quantity | undefined): Quantity =>
  from?.given === undefined ? { value, unit } : { value, unit, given: from.given };

/** Says of each output that is null what the input lacks for it. */
export const missing = (
  outputs: Readonly<Record<string, unknown>>,
  needs: Readonly<Record<string, readonly string[]>>,
): readonly { readonly output: string; readonly needs: readonly string[] }[] =>
  Object.entries(outputs).flatMap(([output, value]) =>
    value === null ? [{ output, needs: needs[output] ?? [] }] : [],
  );
