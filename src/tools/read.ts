// Reads a list of tools from rows of cells, each fault told with row, column, what may stand.

import type { z } from 'zod';
import { limits } from '../limits.ts';
import type { Problem } from '../quantity/types.ts';
import { unitOf } from '../quantity/units.ts';
import { belongsTo, COLUMNS, type Column } from './tables/columns.ts';
import { contradictions, TOOL_KINDS, type Tool, type ToolKind, toolSchema } from './tool.ts';

/** Rows as the shell parsed them; `line` is that of the file, the head of the list being line 1. */
export type ToolRows = {
  readonly head: readonly string[];
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[];
};

export type ToolProblem = Problem & { readonly row: number; readonly column: string };

export type ReadTools = {
  /** Those without a fault of their own. */
  readonly tools: readonly Tool[];
  readonly problems: readonly ToolProblem[];
};

export function readTools({ head, rows }: ToolRows): ReadTools {
  const heads = head.map((text) => text.trim().toLowerCase());
  const problems = headProblems(heads);
  if (rows.length > limits.tools.rows) {
    const expected = `at most ${limits.tools.rows} rows`;
    problems.push(problem(1, '', rows.length, expected, 'the list is too long'));
  }
  if (problems.length > 0) return { tools: [], problems };
  const tools: Tool[] = [];
  const seen = new Map<string, number>();
  for (const { line, cells } of rows) {
    if (cells.every((cell) => cell.trim() === '')) continue;
    const read = readRow(heads, cells, line);
    problems.push(...read.problems);
    if (read.tool === null) continue;
    const before = seen.get(read.tool.id);
    if (before !== undefined) {
      const why = `row ${before} has this id already`;
      problems.push(problem(line, 'id', read.tool.id, 'an id of its own', why));
      continue;
    }
    seen.set(read.tool.id, line);
    tools.push(read.tool);
  }
  return { tools, problems };
}

const problem = (
  row: number,
  column: string,
  got: unknown,
  expected: string,
  why: string,
): ToolProblem => {
  const path = column === '' ? `row ${row}` : `row ${row}/${column}`;
  return { path, row, column, got, expected, why };
};

function headProblems(heads: readonly string[]): ToolProblem[] {
  const known = COLUMNS.map(({ head }) => head);
  const found = heads.flatMap((head, at) => {
    if (head === '') return [problem(1, head, '', 'a head for each column', 'a column has none')];
    if (!known.includes(head)) {
      return [problem(1, head, head, `one of ${known.join(', ')}`, 'there is no such column')];
    }
    if (heads.indexOf(head) === at) return [];
    return [problem(1, head, head, 'each column once', 'the column stands twice')];
  });
  const needed = ['kind', 'id', 'name'].filter((head) => !heads.includes(head));
  return [
    ...found,
    ...needed.map((head) => problem(1, head, null, head, 'this column is needed and missing')),
  ];
}

type ReadRow = { readonly tool: Tool | null; readonly problems: readonly ToolProblem[] };

function readRow(heads: readonly string[], cells: readonly string[], line: number): ReadRow {
  const cellOf = (column: Column): string => (cells[heads.indexOf(column.head)] ?? '').trim();
  const extra = cells.slice(heads.length).find((cell) => cell.trim() !== '');
  if (extra !== undefined) {
    const why = 'this row has more cells than the list has columns';
    return { tool: null, problems: [problem(line, '', extra, `${heads.length} cells`, why)] };
  }
  const kind = TOOL_KINDS.find((one) => one === cells[heads.indexOf('kind')]?.trim());
  if (kind === undefined) {
    const got = cells[heads.indexOf('kind')] ?? '';
    const expected = `one of ${TOOL_KINDS.join(', ')}`;
    return { tool: null, problems: [problem(line, 'kind', got, expected, 'it is no kind known')] };
  }
  const filled = COLUMNS.filter((column) => cellOf(column) !== '');
  const strange = filled.filter((column) => !belongsTo(column, kind));
  const problems = strange.map((column) => {
    const why = `a ${kind} has no "${column.head}"`;
    return problem(line, column.head, cellOf(column), 'an empty cell', why);
  });
  const raw: Record<string, unknown> = {};
  for (const column of filled) {
    if (!belongsTo(column, kind)) continue;
    const value = cellValue(column, cellOf(column));
    if (value === undefined) {
      const expected = column.as === 'number' ? 'a number' : 'yes or no';
      const why = `it is not ${expected}`;
      problems.push(problem(line, column.head, cellOf(column), expected, why));
    } else raw[column.field] = value;
  }
  const unit = typeof raw.unit === 'string' ? raw.unit : 'N.m';
  const read = toolSchema.safeParse(kind === 'wrench' ? wrenchFields(raw, unit) : raw);
  if (!read.success) {
    problems.push(...read.error.issues.flatMap((issue) => issueProblem(issue, raw, kind, line)));
    return { tool: null, problems };
  }
  for (const { field, got, expected, why } of contradictions(read.data)) {
    problems.push(problem(line, headOf(field, kind), got, expected, why));
  }
  return { tool: problems.length === 0 ? read.data : null, problems };
}

const PLAIN = /^[+-]?(?:\d+\.?\d*|\.\d+)$/;

function cellValue({ as }: Column, cell: string): string | number | boolean | undefined {
  if (as === 'yes or no') {
    return /^(?:yes|true|x)$/i.test(cell) ? true : /^(?:no|false)$/i.test(cell) ? false : undefined;
  }
  if (as === 'number') return PLAIN.test(cell) ? Number(cell) : undefined;
  return as === 'figure' && PLAIN.test(cell) ? Number(cell) : cell;
}

/** A wrench's range stands in the unit of its scale, which may be given once, beside it. */
function wrenchFields(raw: Readonly<Record<string, unknown>>, unit: string) {
  const { unit: scaleUnit, min, max, ...rest } = raw;
  const known = unitOf(unit);
  // Of a wrong unit the unit alone is told, not each figure that stands in it.
  const sign = known?.dimension === 'torque' ? known.symbol : 'N·m';
  const inUnit = (value: unknown) => (typeof value === 'number' ? `${value} ${sign}` : value);
  return {
    ...rest,
    ...(min === undefined ? {} : { min: inUnit(min) }),
    ...(max === undefined ? {} : { max: inUnit(max) }),
    ...(scaleUnit === undefined ? {} : { scaleUnit }),
  };
}

function headOf(field: string, kind: ToolKind): string {
  const own = field === 'scaleUnit' ? 'unit' : field;
  const column = COLUMNS.find((one) => one.field === own && belongsTo(one, kind));
  return column?.head ?? own;
}

function issueProblem(
  issue: z.core.$ZodIssue,
  raw: Readonly<Record<string, unknown>>,
  kind: ToolKind,
  line: number,
): ToolProblem[] {
  const field = String(issue.path[0] ?? '');
  const head = headOf(field, kind);
  const got = raw[field === 'scaleUnit' ? 'unit' : field] ?? null;
  if (got === null) {
    const says = COLUMNS.find((one) => one.head === head)?.says ?? '';
    const why = `a ${kind} needs its "${head}"`;
    return [problem(line, head, null, says === '' ? head : `${head} (${says})`, why)];
  }
  const params = issue.code === 'custom' ? issue.params : undefined;
  const expected = typeof params?.expected === 'string' ? params.expected : expectedOf(issue, head);
  return [problem(line, head, got, expected, lowerFirst(issue.message))];
}

const lowerFirst = (text: string): string => text.slice(0, 1).toLowerCase() + text.slice(1);

function expectedOf(issue: z.core.$ZodIssue, head: string): string {
  if (issue.code === 'too_small') return `at least ${issue.minimum}`;
  if (issue.code === 'too_big') return `at most ${issue.maximum}`;
  if (issue.code === 'invalid_type')
    return issue.expected === 'int' ? 'a whole number' : issue.expected;
  return COLUMNS.find((one) => one.head === head)?.says ?? 'a value that can be';
}
