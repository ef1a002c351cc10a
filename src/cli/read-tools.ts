// Reads a list of tools from a CSV file: the file's own faults, then each cell's.

import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { CsvError, parse } from 'csv-parse/sync';
import { limits } from '../limits.ts';
import { type Held, NOTHING_HELD } from '../pack/fastening-types.ts';
import { type ReadTools, readTools, type ToolProblem, type ToolRows } from '../tools/read.ts';

/** A file that cannot be read at all, or a row that is not to be told from the next. */
export class NoList extends Error {}

export function readToolFile(file: string): ReadTools {
  let bytes: Buffer;
  try {
    bytes = readFileSync(file);
  } catch (error) {
    throw new NoList(`${file} cannot be read: ${error instanceof Error ? error.message : ''}`);
  }
  if (bytes.length > limits.tools.fileBytes) {
    throw new NoList(`${file} has ${bytes.length} bytes (at most ${limits.tools.fileBytes})`);
  }
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new NoList(`${file} is not written in UTF-8: save it as "CSV UTF-8"`);
  }
  return readTools(rowsOf(file, text));
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

/** The tools of a plant folder: its `tools.csv`, if there is one; `on` is the day of the work. */
export function heldIn(folder: string, on: string): HeldIn {
  const file = join(folder, 'tools.csv');
  if (!existsSync(file)) return { held: NOTHING_HELD, problems: [] };
  const { tools, problems } = readToolFile(file);
  return { held: { tools, on: on.slice(0, 10) }, problems };
}
