// A new issue of a value sheet from rows of cells, each fault told at its row and column.

import { limits } from '../limits.ts';
import type { Problem } from '../quantity/types.ts';
import { byIssue } from './issue.ts';
import { SCOPES, type SheetFile, sheetFileSchema, type ValueEntry, valueSchema } from './schema.ts';

/** Rows as the shell parsed them; `line` is that of the file, the head of the list being line 1. */
export type IssueRows = {
  readonly head: readonly string[];
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[];
};

export type RowProblem = Problem & { readonly row: number; readonly column: string };

/** What the list says once for the whole issue, unless every row says it in a column. */
export type IssueHead = Partial<
  Pick<SheetFile, 'sheet' | 'name' | 'for' | 'issue' | 'date' | 'authority' | 'why' | 'confirm'>
>;

export type ReadIssue = {
  readonly sheet: SheetFile | null;
  readonly problems: readonly RowProblem[];
  /** The line of the file on which a path of the sheet stands. */
  readonly lineOf: (path: string) => number;
};

/** Column heads, in the words of whoever keeps the list, and the fields they are. */
const VALUE_COLUMNS = {
  id: 'id',
  name: 'name',
  kind: 'kind',
  value: 'value',
  min: 'min',
  max: 'max',
  unit: 'unit',
  scope: 'scope',
  'thread condition': 'threadCondition',
  joint: 'joint',
  why: 'why',
} as const;
const HEAD_COLUMNS = ['sheet', 'issue', 'date', 'authority'] as const;

export const COLUMNS: readonly string[] = [...Object.keys(VALUE_COLUMNS), ...HEAD_COLUMNS];

type Cells = Readonly<Record<string, string>>;
type Row = { readonly line: number; readonly cells: Cells };

export function readIssue(
  { head, rows }: IssueRows,
  given: IssueHead,
  known: readonly SheetFile[],
): ReadIssue {
  const heads = head.map((text) => text.trim().toLowerCase());
  const problems = headProblems(heads, rows.length);
  if (problems.length > 0) return { sheet: null, problems, lineOf: () => 1 };
  const filled = rows
    .map(({ line, cells }): Row => ({ line, cells: named(heads, cells) }))
    .filter(({ cells }) => Object.keys(cells).length > 0);
  const first = headOf(filled, given, problems);
  const before = known
    .filter(({ sheet }) => sheet === first.sheet)
    .toSorted(byIssue)
    .at(-1);
  const lines = new Map<string, number>();
  const values: Record<string, ValueEntry> = {};
  for (const row of filled) addValue(row, { before, heads, values, lines, problems });
  const sheet = wholeSheet({ ...(before === undefined ? {} : carried(before)), ...first }, values);
  problems.push(...sheet.problems);
  return {
    sheet: problems.length > 0 ? null : sheet.value,
    problems: problems.toSorted((a, b) => a.row - b.row),
    lineOf: (path) => lines.get(path) ?? lines.get(path.split('/').slice(0, 2).join('/')) ?? 1,
  };
}

const told = (row: number, column: string, rest: Omit<Problem, 'path'>): RowProblem => ({
  path: column === '' ? `row ${row}` : `row ${row}/${column}`,
  row,
  column,
  ...rest,
});

function headProblems(heads: readonly string[], rows: number): RowProblem[] {
  const problems = heads
    .filter((head) => head !== '' && !COLUMNS.includes(head))
    .map((got) =>
      told(1, got, { got, expected: `one of: ${COLUMNS.join(', ')}`, why: 'no such column' }),
    );
  const twice = heads.find((head, i) => head !== '' && heads.indexOf(head) !== i);
  if (twice !== undefined)
    problems.push(
      told(1, twice, { got: twice, expected: 'one such column', why: 'it is there twice' }),
    );
  if (!heads.includes('id'))
    problems.push(told(1, 'id', { got: null, expected: 'a column id', why: 'it is not there' }));
  if (rows > limits.values.rows) {
    const expected = `at most ${limits.values.rows} rows`;
    problems.push(told(1, '', { got: rows, expected, why: 'the list is too long' }));
  }
  return problems;
}

const named = (heads: readonly string[], cells: readonly string[]): Cells =>
  Object.fromEntries(
    heads.flatMap((head, i) => {
      const text = cells[i]?.trim() ?? '';
      return head === '' || text === '' ? [] : [[head, text]];
    }),
  );

/** What every row says of the whole issue must be one thing. */
function headOf(rows: readonly Row[], given: IssueHead, problems: RowProblem[]): IssueHead {
  const found: Record<string, string> = {};
  for (const column of HEAD_COLUMNS) {
    const said = given[column];
    if (said !== undefined) found[column] = said;
    for (const { line, cells } of rows) {
      const got = cells[column];
      const before = found[column];
      if (got === undefined) continue;
      if (before === undefined) found[column] = got;
      else if (before !== got)
        problems.push(
          told(line, column, { got, expected: before, why: `one issue has one ${column}` }),
        );
    }
  }
  return { ...given, ...found };
}

/** What a sheet keeps from issue to issue; a confirmation was of the issue before. */
const carried = ({ sheet, name, for: whose, authority, confirm }: SheetFile): IssueHead => ({
  sheet,
  name,
  for: whose,
  authority,
  ...(confirm === undefined ? {} : { confirm }),
});

type Adding = {
  readonly before: SheetFile | undefined;
  readonly heads: readonly string[];
  readonly values: Record<string, ValueEntry>;
  readonly lines: Map<string, number>;
  readonly problems: RowProblem[];
};

function addValue({ line, cells }: Row, a: Adding): void {
  const { id } = cells;
  if (id === undefined) {
    a.problems.push(told(line, 'id', { got: null, expected: 'an id', why: 'the row has none' }));
    return;
  }
  const first = a.lines.get(`values/${id}`);
  if (first !== undefined) {
    const why = `row ${first} gives ${id} already`;
    a.problems.push(told(line, 'id', { got: id, expected: 'one row for a value', why }));
    return;
  }
  a.lines.set(`values/${id}`, line);
  for (const [column, field] of Object.entries(VALUE_COLUMNS))
    if (cells[column] !== undefined) a.lines.set(`values/${id}/${field}`, line);
  const parsed = valueSchema.safeParse(entryOf(cells, a.before?.values[id]));
  if (parsed.success) a.values[id] = parsed.data;
  else
    for (const issue of parsed.error.issues) {
      const field = String(issue.path[0] ?? 'id');
      const column = Object.entries(VALUE_COLUMNS).find(([, f]) => f === field)?.[0] ?? field;
      const expected = allowedIn(issue) ?? issue.message;
      const why = cells[column] === undefined ? `${column} is not given` : 'it is not written so';
      a.problems.push(told(line, column, { got: cells[column] ?? null, expected, why }));
    }
}

const allowedIn = (issue: { readonly code?: string | undefined }): string | null =>
  'values' in issue && Array.isArray(issue.values) ? issue.values.join(', ') : null;

/**
 * What a value is stays as it was where the list does not say; what it measures never does: figure,
 * unit and thread condition are this issue's own, or not there.
 */
function entryOf(cells: Cells, before: ValueEntry | undefined): Record<string, string> {
  const own = Object.entries(VALUE_COLUMNS).flatMap(([column, field]) =>
    field === 'id' || cells[column] === undefined ? [] : [[field, cells[column]]],
  );
  const { name, kind, scope, joint } = before ?? {};
  const kept = Object.entries({ name, kind, scope, joint }).filter(([, v]) => v !== undefined);
  const all: Record<string, string> = Object.fromEntries([...kept, ...own]);
  if (all.scope === 'table') all.scope = SCOPES[1];
  return all;
}

function wholeSheet(head: IssueHead, values: Record<string, ValueEntry>) {
  const parsed = sheetFileSchema.safeParse({ ...head, values });
  if (parsed.success) return { value: parsed.data, problems: [] };
  const problems = parsed.error.issues.map((issue) => {
    const column = String(issue.path[0] ?? 'sheet');
    const got = head[column as keyof IssueHead] ?? null;
    const why = got === null ? 'it is not given' : 'it is not written so';
    return told(1, column, { got, expected: issue.message, why });
  });
  return { value: null, problems };
}
