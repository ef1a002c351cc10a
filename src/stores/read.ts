// Reads a list of stores from rows of cells, each fault told with row, column, what may stand.

import type { z } from 'zod';
import { limits } from '../limits.ts';
import type { Problem } from '../quantity/types.ts';
import { contradictions, itemSchema, type StoredItem } from './item.ts';
import { COLUMNS, type Column } from './tables/columns.ts';

/** Rows as the shell parsed them; `line` is that of the file, the head of the list being line 1. */
export type StoreRows = {
  readonly head: readonly string[];
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[];
};

export type StoreProblem = Problem & { readonly row: number; readonly column: string };

export type ReadStores = {
  /** Those without a fault of their own. */
  readonly items: readonly StoredItem[];
  readonly problems: readonly StoreProblem[];
};

const NEEDED: readonly string[] = ['kind', 'id', 'name', 'condition', 'origin', 'quantity'];

export function readStores({ head, rows }: StoreRows): ReadStores {
  const heads = head.map((text) => text.trim().toLowerCase());
  const problems = headProblems(heads);
  if (rows.length > limits.stores.rows) {
    const expected = `at most ${limits.stores.rows} rows`;
    problems.push(problem(1, '', rows.length, expected, 'the list is too long'));
  }
  if (problems.length > 0) return { items: [], problems };
  const items: StoredItem[] = [];
  const seen = new Map<string, number>();
  for (const { line, cells } of rows) {
    if (cells.every((cell) => cell.trim() === '')) continue;
    const read = readRow(heads, cells, line);
    problems.push(...read.problems);
    if (read.item === null) continue;
    const before = seen.get(read.item.id);
    if (before !== undefined) {
      const why = `row ${before} has this id already`;
      problems.push(problem(line, 'id', read.item.id, 'an id of its own', why));
      continue;
    }
    seen.set(read.item.id, line);
    items.push(read.item);
  }
  return { items, problems };
}

const problem = (
  row: number,
  column: string,
  got: unknown,
  expected: string,
  why: string,
): StoreProblem => {
  const path = column === '' ? `row ${row}` : `row ${row}/${column}`;
  return { path, row, column, got, expected, why };
};

function headProblems(heads: readonly string[]): StoreProblem[] {
  const known = COLUMNS.map(({ head }) => head);
  const found = heads.flatMap((head, at) => {
    if (head === '') return [problem(1, head, '', 'a head for each column', 'a column has none')];
    if (!known.includes(head)) {
      return [problem(1, head, head, `one of ${known.join(', ')}`, 'there is no such column')];
    }
    if (heads.indexOf(head) === at) return [];
    return [problem(1, head, head, 'each column once', 'the column stands twice')];
  });
  const missing = NEEDED.filter((head) => !heads.includes(head));
  return [
    ...found,
    ...missing.map((head) => problem(1, head, null, head, 'this column is needed and missing')),
  ];
}

type ReadRow = { readonly item: StoredItem | null; readonly problems: readonly StoreProblem[] };

function readRow(heads: readonly string[], cells: readonly string[], line: number): ReadRow {
  const extra = cells.slice(heads.length).find((cell) => cell.trim() !== '');
  if (extra !== undefined) {
    const why = 'this row has more cells than the list has columns';
    return { item: null, problems: [problem(line, '', extra, `${heads.length} cells`, why)] };
  }
  const raw: Record<string, unknown> = {};
  const problems: StoreProblem[] = [];
  for (const column of COLUMNS) {
    const cell = (cells[heads.indexOf(column.head)] ?? '').trim();
    if (cell === '') continue;
    const value = cellValue(column, cell);
    if (value === null) {
      problems.push(problem(line, column.head, cell, 'a number', 'it is not a number'));
    } else raw[column.field] = value;
  }
  if (problems.length > 0) return { item: null, problems };
  const read = itemSchema.safeParse(raw);
  if (!read.success) {
    return { item: null, problems: read.error.issues.map((one) => issueProblem(one, raw, line)) };
  }
  const wrong = contradictions(read.data).map(({ field, got, expected, why }) =>
    problem(line, headOf(field), got, expected, why),
  );
  return { item: wrong.length === 0 ? read.data : null, problems: wrong };
}

const PLAIN = /^[+-]?(?:\d+\.?\d*|\.\d+)$/;

function cellValue({ as }: Column, cell: string): string | number | readonly string[] | null {
  if (as === 'number') return PLAIN.test(cell) ? Number(cell) : null;
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
  if (given === null) return problem(line, head, null, expected, `this row needs its "${head}"`);
  const at = issue.path[1];
  const got = Array.isArray(given) && typeof at === 'number' ? given[at] : given;
  const own = issue.code === 'custom' || issue.code === 'invalid_format';
  const why = own ? issue.message : 'it may not stand here';
  return problem(line, head, got, expected, why);
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
