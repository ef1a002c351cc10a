// Reads a list of stores from rows of cells, each fault told with row, column, what may stand.

import type { z } from 'zod';
import { limits } from '../limits.ts';
import {
  isPlainNumber,
  type ListRows,
  type RowProblem,
  type RowRead,
  readList,
  rowProblem,
} from '../quantity/rows.ts';
import { contradictions, itemSchema, type StoredItem } from './item.ts';
import { COLUMNS, type Column } from './tables/columns.ts';

export type StoreRows = ListRows;
export type StoreProblem = RowProblem;

export type ReadStores = {
  /** Those without a fault of their own. */
  readonly items: readonly StoredItem[];
  readonly problems: readonly StoreProblem[];
};

const NEEDED: readonly string[] = ['kind', 'id', 'name', 'condition', 'origin', 'quantity'];

export function readStores(list: StoreRows): ReadStores {
  const kind = { columns: COLUMNS, needed: NEEDED, most: limits.stores.rows, readRow };
  const { all, problems } = readList(list, kind);
  return { items: all, problems };
}

function readRow(
  heads: readonly string[],
  cells: readonly string[],
  line: number,
): RowRead<StoredItem> {
  const raw: Record<string, unknown> = {};
  const problems: StoreProblem[] = [];
  for (const column of COLUMNS) {
    const cell = (cells[heads.indexOf(column.head)] ?? '').trim();
    if (cell === '') continue;
    const value = cellValue(column, cell);
    if (value === null) {
      problems.push(rowProblem(line, column.head, cell, 'a number', 'it is not a number'));
    } else raw[column.field] = value;
  }
  if (problems.length > 0) return { one: null, problems };
  const read = itemSchema.safeParse(raw);
  if (!read.success) {
    return { one: null, problems: read.error.issues.map((one) => issueProblem(one, raw, line)) };
  }
  const wrong = contradictions(read.data).map(({ field, got, expected, why }) =>
    rowProblem(line, headOf(field), got, expected, why),
  );
  return { one: wrong.length === 0 ? read.data : null, problems: wrong };
}

function cellValue({ as }: Column, cell: string): string | number | readonly string[] | null {
  if (as === 'number') return isPlainNumber(cell) ? Number(cell) : null;
  if (as === 'text') return cell;
  return cell
    .split(';')
    .map((one) => one.trim())
    .filter((one) => one !== '');
}

const headOf = (field: string): string =>
  COLUMNS.find((column) => column.field === field)?.head ?? field;

function issueProblem(
  issue: z.core.$ZodIssue,
  raw: Readonly<Record<string, unknown>>,
  line: number,
): StoreProblem {
  const field = String(issue.path[0] ?? '');
  const head = headOf(field);
  const given = raw[field] ?? null;
  const says = COLUMNS.find((column) => column.field === field)?.says ?? '';
  const expected = expectedOf(issue) ?? `${head} (${says})`;
  if (given === null) return rowProblem(line, head, null, expected, `this row needs its "${head}"`);
  const at = issue.path[1];
  const got = Array.isArray(given) && typeof at === 'number' ? given[at] : given;
  const own = issue.code === 'custom' || issue.code === 'invalid_format';
  const why = own ? issue.message : 'it may not stand here';
  return rowProblem(line, head, got, expected, why);
}

function expectedOf(issue: z.core.$ZodIssue): string | null {
  switch (issue.code) {
    case 'invalid_value':
      return `one of ${issue.values.join(', ')}`;
    case 'too_big':
      return `at most ${issue.maximum}`;
    case 'too_small':
      return `at least ${issue.minimum}`;
    case 'custom':
      return typeof issue.params?.expected === 'string' ? issue.params.expected : null;
    default:
      return null;
  }
}
