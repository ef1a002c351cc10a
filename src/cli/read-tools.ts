// Reads lists of tools and of stores from CSV files: the file's own faults, then each cell's.

import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { CsvError, parse } from 'csv-parse/sync';
import { limits } from '../limits.ts';
import { type Held, NOTHING_HELD } from '../pack/fastening-types.ts';
import { type ReadStores, readStores } from '../stores/read.ts';
import { type ReadTools, readTools, type ToolProblem, type ToolRows } from '../tools/read.ts';

/** A file that cannot be read at all, or a row that is not to be told from the next. */
export class NoList extends Error {}

export const readToolFile = (file: string): ReadTools =>
  readTools(rowsIn(file, limits.tools.fileBytes));

/** The rows of a list in CSV, with the lines of the file they stand on. */
export function rowsIn(file: string, mostBytes: number): ToolRows {
  let bytes: Buffer;
  try {
    bytes = readFileSync(file);
  } catch (error) {
    throw new NoList(`${file} cannot be read: ${error instanceof Error ? error.message : ''}`);
  }
  if (bytes.length > mostBytes) {
    throw new NoList(`${file} has ${bytes.length} bytes (at most ${mostBytes})`);
  }
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new NoList(`${file} is not written in UTF-8: save it as "CSV UTF-8"`);
  }
  return rowsOf(file, text);
}

type WithLine = { readonly record: readonly string[]; readonly info: { readonly lines: number } };

/** Comma, or the semicolon that spreadsheets write where the comma is the decimal sign. */
function rowsOf(file: string, text: string): ToolRows {
  const first = text.slice(0, text.search(/\r|\n|$/));
  const delimiter = first.includes(';') && !first.includes(',') ? ';' : ',';
  try {
    // Its types do not know that `info` puts the line beside each record.
    const read = parse(text, {
      bom: true,
      delimiter,
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
    }) as unknown as readonly WithLine[];
    const [head, ...rows] = read;
    if (head === undefined) throw new NoList(`${file} is empty: its first row names the columns`);
    return {
      head: head.record,
      rows: rows.map(({ record, info }) => ({ line: info.lines, cells: record })),
    };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw new NoList(`${file} is no CSV: ${error.message}`);
  }
}

type HeldIn = { readonly held: Held; readonly problems: readonly ToolProblem[] };

/**
 * What a plant folder says is held: its `tools.csv` and its `stores.csv`, where there are such;
 * `on` is the day of the work. The problems of a list name its file.
 */
export function heldIn(folder: string, on: string): HeldIn {
  const tools = join(folder, 'tools.csv');
  const stores = join(folder, 'stores.csv');
  const day = on.slice(0, 10);
  const none = { tools: [], problems: [] };
  const fromTools = existsSync(tools) ? readToolFile(tools) : none;
  const fromStores = existsSync(stores) ? readStoresFile(stores) : null;
  if (!existsSync(tools) && fromStores === null) return { held: NOTHING_HELD, problems: [] };
  return {
    held: {
      tools: fromTools.tools,
      on: day,
      ...(fromStores === null ? {} : { stores: { items: fromStores.items } }),
    },
    problems: [
      ...named('tools.csv', fromTools.problems),
      ...named('stores.csv', fromStores?.problems ?? []),
    ],
  };
}

export const readStoresFile = (file: string): ReadStores =>
  readStores(rowsIn(file, limits.stores.fileBytes));

const named = (file: string, problems: readonly ToolProblem[]): readonly ToolProblem[] =>
  problems.map((one) => ({ ...one, path: `${file} ${one.path}` }));
