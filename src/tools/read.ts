// Reads a list of tools from rows of cells, each fault told with row, column, what may stand.

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
import { unitOf } from '../quantity/units.ts';
import { belongsTo, COLUMNS, type Column } from './tables/columns.ts';
import { contradictions, TOOL_KINDS, type Tool, type ToolKind, toolSchema } from './tool.ts';

export type ToolRows = ListRows;
export type ToolProblem = RowProblem;

export type ReadTools = {
  /** Those without a fault of their own. */
  readonly tools: readonly Tool[];
  readonly problems: readonly ToolProblem[];
};

export function readTools(list: ToolRows): ReadTools {
  const kind = {
    columns: COLUMNS,
    needed: ['kind', 'id', 'name'],
    most: limits.tools.rows,
    readRow,
  };
  const { all, problems } = readList(list, kind);
  return { tools: all, problems };
}

function readRow(heads: readonly string[], cells: readonly string[], line: number): RowRead<Tool> {
  const cellOf = (column: Column): string => (cells[heads.indexOf(column.head)] ?? '').trim();
  const kind = TOOL_KINDS.find((one) => one === cells[heads.indexOf('kind')]?.trim());
  if (kind === undefined) {
    const got = cells[heads.indexOf('kind')] ?? '';
    const expected = `one of ${TOOL_KINDS.join(', ')}`;
    return {
      one: null,
      problems: [rowProblem(line, 'kind', got, expected, 'it is no kind known')],
    };
  }
  const filled = COLUMNS.filter((column) => cellOf(column) !== '');
  const strange = filled.filter((column) => !belongsTo(column, kind));
  const problems = strange.map((column) => {
    const why = `a ${kind} has no "${column.head}"`;
    return rowProblem(line, column.head, cellOf(column), 'an empty cell', why);
  });
  const raw: Record<string, unknown> = {};
  for (const column of filled) {
    if (!belongsTo(column, kind)) continue;
    const value = cellValue(column, cellOf(column));
    if (value === undefined) {
      const expected = column.as === 'number' ? 'a number' : 'yes or no';
      const why = `it is not ${expected}`;
      problems.push(rowProblem(line, column.head, cellOf(column), expected, why));
    } else raw[column.field] = value;
  }
  const unit = typeof raw.unit === 'string' ? raw.unit : 'N.m';
  const read = toolSchema.safeParse(kind === 'wrench' ? wrenchFields(raw, unit) : raw);
  if (!read.success) {
    problems.push(...read.error.issues.flatMap((issue) => issueProblem(issue, raw, kind, line)));
    return { one: null, problems };
  }
  for (const { field, got, expected, why } of contradictions(read.data)) {
    problems.push(rowProblem(line, headOf(field, kind), got, expected, why));
  }
  return { one: problems.length === 0 ? read.data : null, problems };
}

function cellValue({ as }: Column, cell: string): string | number | boolean | undefined {
  if (as === 'yes or no') {
    return /^(?:yes|true|x)$/i.test(cell) ? true : /^(?:no|false)$/i.test(cell) ? false : undefined;
  }
  if (as === 'number') return isPlainNumber(cell) ? Number(cell) : undefined;
  return as === 'figure' && isPlainNumber(cell) ? Number(cell) : cell;
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
    return [rowProblem(line, head, null, says === '' ? head : `${head} (${says})`, why)];
  }
  const params = issue.code === 'custom' ? issue.params : undefined;
  const expected = typeof params?.expected === 'string' ? params.expected : expectedOf(issue, head);
  return [rowProblem(line, head, got, expected, lowerFirst(issue.message))];
}

const lowerFirst = (text: string): string => text.slice(0, 1).toLowerCase() + text.slice(1);

function expectedOf(issue: z.core.$ZodIssue, head: string): string {
  if (issue.code === 'too_small') return `at least ${issue.minimum}`;
  if (issue.code === 'too_big') return `at most ${issue.maximum}`;
  if (issue.code === 'invalid_type')
    return issue.expected === 'int' ? 'a whole number' : issue.expected;
  return COLUMNS.find((one) => one.head === head)?.says ?? 'a value that can be';
}
