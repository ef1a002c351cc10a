// Lists that come from spreadsheets: rows of cells read one by one, each fault with row and column.

import type { Problem } from './types.ts';

/** Rows as the shell parsed them; `line` is that of the file, the head of the list being line 1. */
export type ListRows = {
  readonly head: readonly string[];
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[];
};

export type RowProblem = Problem & { readonly row: number; readonly column: string };

/** One row read: null where it has a fault of its own. */
export type RowRead<T> = { readonly one: T | null; readonly problems: readonly RowProblem[] };

export type ListKind<T> = {
  readonly columns: readonly { readonly head: string }[];
  readonly needed: readonly string[];
  readonly most: number;
  readonly readRow: (
    heads: readonly string[],
    cells: readonly string[],
    line: number,
  ) => RowRead<T>;
};

export type ListRead<T> = {
  /** Those without a fault of their own. */
  readonly all: readonly T[];
  readonly problems: readonly RowProblem[];
};

export const rowProblem = (
  row: number,
  column: string,
  got: unknown,
  expected: string,
  why: string,
): RowProblem => {
  const path = column === '' ? `row ${row}` : `row ${row}/${column}`;
  return { path, row, column, got, expected, why };
};

/** A number as a cell may hold it: no unit, no comma, no power of ten. */
export const isPlainNumber = (cell: string): boolean => /^[+-]?(?:\d+\.?\d*|\.\d+)$/.test(cell);

/** Every fault of the list at once; an id stands in it once. */
export function readList<T extends { readonly id: string }>(
  { head, rows }: ListRows,
  { columns, needed, most, readRow }: ListKind<T>,
): ListRead<T> {
  const heads = head.map((text) => text.trim().toLowerCase());
  const problems = headProblems(heads, columns, needed);
  if (rows.length > most) {
    const expected = `at most ${most} rows`;
    problems.push(rowProblem(1, '', rows.length, expected, 'the list is too long'));
  }
  if (problems.length > 0) return { all: [], problems };
  const all: T[] = [];
  const seen = new Map<string, number>();
  for (const { line, cells } of rows) {
    if (cells.every((cell) => cell.trim() === '')) continue;
    const { one, problems: wrong } = extraCell(heads, cells, line) ?? readRow(heads, cells, line);
    problems.push(...wrong);
    if (one === null) continue;
    const before = seen.get(one.id);
    if (before !== undefined) {
      const why = `row ${before} has this id already`;
      problems.push(rowProblem(line, 'id', one.id, 'an id of its own', why));
      continue;
    }
    seen.set(one.id, line);
    all.push(one);
  }
  return { all, problems };
}

function extraCell(heads: readonly string[], cells: readonly string[], line: number) {
  const extra = cells.slice(heads.length).find((cell) => cell.trim() !== '');
  if (extra === undefined) return null;
  const why = 'this row has more cells than the list has columns';
  return { one: null, problems: [rowProblem(line, '', extra, `${heads.length} cells`, why)] };
}

function headProblems(
  heads: readonly string[],
  columns: readonly { readonly head: string }[],
  needed: readonly string[],
): RowProblem[] {
  const known = columns.map(({ head }) => head);
  const found = heads.flatMap((head, at) => {
    if (head === '')
      return [rowProblem(1, head, '', 'a head for each column', 'a column has none')];
    if (!known.includes(head)) {
      return [rowProblem(1, head, head, `one of ${known.join(', ')}`, 'there is no such column')];
    }
    if (heads.indexOf(head) === at) return [];
    return [rowProblem(1, head, head, 'each column once', 'the column stands twice')];
  });
  const missing = needed.filter((head) => !heads.includes(head));
  return [
    ...found,
    ...missing.map((head) => rowProblem(1, head, null, head, 'this column is needed and missing')),
  ];
}
