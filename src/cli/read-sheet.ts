// Reads a new issue from a CSV or YAML file, and writes one durably beside the issue before.

import { closeSync, fsyncSync, openSync, readFileSync, renameSync, writeSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { CsvError, parse } from 'csv-parse/sync';
import { limits } from '../limits.ts';
import { type Judged, judgeIssue, newestIssue, textOfIssue } from '../plant/new-issue.ts';
import type { FileProblem, Plant, PlantText } from '../plant/types.ts';
import { type IssueHead, type IssueRows, readIssue } from '../values/rows.ts';
import { BadInput } from './job-session.ts';

/** The new issue as text for the plant folder, judged; its problems point into the file given. */
export type TakenIn = Judged & { readonly text: string };

const CANDIDATE = 'the new issue';

export function takeIn(file: string, head: IssueHead, files: PlantText, plant: Plant): TakenIn {
  const text = textOf(file);
  const shown = basename(file);
  if (!/\.csv$/i.test(file)) {
    const judged = judgeIssue(files, { file: CANDIDATE, text });
    return { ...judged, text, problems: judged.problems.map((p) => shownIn(p, shown, null)) };
  }
  const read = readIssue(rowsOf(file, text), head, plant.sheets);
  if (read.sheet === null) {
    const problems = read.problems.map(({ row, ...problem }) => ({
      level: 'must' as const,
      file: shown,
      line: row,
      ...problem,
    }));
    return { issue: null, inForce: null, changes: [], problems, text: '' };
  }
  const before = newestIssue(plant, read.sheet.sheet);
  const old = files.find((one) => one.file === before?.file)?.text ?? null;
  const made = textOfIssue(old, read.sheet);
  const judged = judgeIssue(files, { file: CANDIDATE, text: made });
  const problems = judged.problems.map((p) => shownIn(p, shown, read.lineOf));
  return { ...judged, text: made, problems };
}

/** A problem of the candidate stands in the file a person gave, at the row that says it. */
const shownIn = (
  problem: FileProblem,
  file: string,
  lineOf: ((path: string) => number) | null,
): FileProblem =>
  problem.file === CANDIDATE
    ? { ...problem, file, line: lineOf === null ? problem.line : lineOf(problem.path) }
    : problem;

export function textOf(file: string): string {
  let bytes: Buffer;
  try {
    bytes = readFileSync(file);
  } catch (error) {
    throw new BadInput(`${file} cannot be read: ${error instanceof Error ? error.message : ''}`);
  }
  const most = limits.values.sheetBytes;
  if (bytes.length > most)
    throw new BadInput(`${file} has ${bytes.length} bytes (at most ${most})`);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new BadInput(`${file} is not written in UTF-8: save it as "CSV UTF-8"`);
  }
}

type WithLine = { readonly record: readonly string[]; readonly info: { readonly lines: number } };

/** Comma, or the semicolon that spreadsheets write where the comma is the decimal sign. */
function rowsOf(file: string, text: string): IssueRows {
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
    if (head === undefined) throw new BadInput(`${file} is empty: its first row names the columns`);
    return {
      head: head.record,
      rows: rows.map(({ record, info }) => ({ line: info.lines, cells: record })),
    };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw new BadInput(`${file} is no CSV: ${error.message}`);
  }
}

/** Written, synced and then named: half an issue is never in force. A file there is never lost. */
export function writeDurably(file: string, text: string): void {
  const aside = `${file}.new`;
  const open = openSync(aside, 'w');
  try {
    writeSync(open, text);
    fsyncSync(open);
  } finally {
    closeSync(open);
  }
  renameSync(aside, file);
  const folder = openSync(dirname(file), 'r');
  try {
    fsyncSync(folder);
  } finally {
    closeSync(folder);
  }
}
