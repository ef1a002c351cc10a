// Reads the repository's own text for the tests that watch over it: files, code without comments.

import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export type SourceFile = { readonly path: string; readonly text: string };

const root = fileURLToPath(new URL('../../', import.meta.url));

const TEXT = /\.(?:ts|tsx|mjs|js|json|jsonl|md|css|html|ya?ml|txt|svg|typ|csv)$/;
const TEXT_WITHOUT_ENDING = /^(?:NOTICE|LICENSE|\.npmrc|\.gitignore|\.ci\/run|bin\/boxup)$/;
const isText = (path: string): boolean => TEXT.test(path) || TEXT_WITHOUT_ENDING.test(path);

const NOT_OURS = new Set(['node_modules', 'dist', '.git', '.boxup']);

// Without git, or where git will not read a folder of another owner, every file counts as held.
function walk(folder: string): string[] {
  return readdirSync(`${root}${folder}`, { withFileTypes: true }).flatMap((entry) => {
    if (NOT_OURS.has(entry.name)) return [];
    const path = `${folder}${entry.name}`;
    return entry.isDirectory() ? walk(`${path}/`) : [path];
  });
}

function listed(): readonly string[] {
  const args = ['ls-files', '-z', '--cached', '--others', '--exclude-standard'];
  const git = spawnSync('git', args, { cwd: root, encoding: 'utf8', maxBuffer: 64_000_000 });
  return git.status === 0 ? git.stdout.split('\0') : walk('');
}

/** Every text file that git holds or would hold, path from the root, in order. */
export function repositoryFiles(): readonly SourceFile[] {
  return [...new Set(listed())]
    .filter((path) => isText(path) && existsSync(`${root}${path}`))
    .sort()
    .map((path) => ({ path, text: readFileSync(`${root}${path}`, 'utf8') }));
}

export const isCode = ({ path }: SourceFile): boolean =>
  /^(src|bench|e2e|bin)\/.*\.(ts|tsx|mjs)$|^[^/]+\.ts$/.test(path);

/** An acceptance suite is a test that several implementations share. */
export const isTest = ({ path }: SourceFile): boolean =>
  /\.test\.tsx?$|\/acceptance\.ts$/.test(path);

export const isTable = ({ path }: SourceFile): boolean =>
  /\/(tables|generated)\/|\.generated\.ts$/.test(path);

const blank = (text: string): string => text.replace(/[^\n]/g, ' ');

const BEFORE_REGEX = /(?:^|[(,=:[!&|?{};+\-*%~^>]|\b(?:return|case|typeof|in|of|do|else))\s*$/;

type Scan = { readonly text: string; at: number; out: string; readonly keepStrings: boolean };

/**
 * The code alone, every sign at its place: comments become blanks, and so does what stands inside
 * quotes unless `keepStrings`. Code inside `${…}` stays.
 */
export function codeOf(text: string, keepStrings = false): string {
  const scan: Scan = { text, at: 0, out: '', keepStrings };
  code(scan, false);
  return scan.out;
}

function copy(scan: Scan, length: number, hidden: boolean): void {
  const piece = scan.text.slice(scan.at, scan.at + length);
  scan.out += hidden ? blank(piece) : piece;
  scan.at += length;
}

/** Copies code up to the end, or up to the brace that closes a `${`. */
function code(scan: Scan, insideTemplate: boolean): void {
  let depth = 0;
  while (scan.at < scan.text.length) {
    const rest = scan.text.slice(scan.at, scan.at + 2);
    const char = rest[0] ?? '';
    if (rest === '//') copy(scan, lengthTo(scan, '\n'), true);
    else if (rest === '/*') copy(scan, lengthTo(scan, '*/', 2), true);
    else if (char === '`') template(scan);
    else if (char === "'" || char === '"') quoted(scan, char);
    else if (char === '/' && regexLength(scan) > 0) copy(scan, regexLength(scan), true);
    else {
      if (insideTemplate && char === '}' && depth === 0) return;
      if (char === '{') depth += 1;
      if (char === '}') depth -= 1;
      copy(scan, 1, false);
    }
  }
}

function lengthTo(scan: Scan, end: string, more = 0): number {
  const found = scan.text.indexOf(end, scan.at + more);
  return (found < 0 ? scan.text.length : found + more) - scan.at;
}

// Text in a page may hold a lone apostrophe: a quote that its line does not close is no quote.
function quoted(scan: Scan, quote: string): void {
  const match = new RegExp(`${quote}(?:[^${quote}\\\\\\n]|\\\\.)*${quote}`, 'y');
  match.lastIndex = scan.at;
  const found = match.exec(scan.text)?.[0];
  if (found === undefined) copy(scan, 1, true);
  else copy(scan, found.length, !scan.keepStrings);
}

function regexLength(scan: Scan): number {
  const before = scan.out.slice(-40);
  if (!BEFORE_REGEX.test(before)) return 0;
  const match = /\/(?![*/>])(?:[^/\\[\n]|\\.|\[(?:[^\]\\\n]|\\.)*\])+\/[a-z]*/y;
  match.lastIndex = scan.at;
  return match.exec(scan.text)?.[0].length ?? 0;
}

function template(scan: Scan): void {
  copy(scan, 1, !scan.keepStrings);
  while (scan.at < scan.text.length) {
    if (scan.text[scan.at] === '`') break;
    if (scan.text[scan.at] === '\\') copy(scan, 2, !scan.keepStrings);
    else if (scan.text.startsWith('${', scan.at)) {
      copy(scan, 2, true);
      code(scan, true);
      copy(scan, 1, true);
    } else copy(scan, 1, !scan.keepStrings);
  }
  copy(scan, 1, !scan.keepStrings);
}

export const lineAt = (text: string, index: number): number =>
  text.slice(0, index).split('\n').length;

/** `path:line: what` for every match of a pattern, so that a person can go there. */
export function matches(file: SourceFile, text: string, pattern: RegExp, what: string): string[] {
  return [...text.matchAll(pattern)].map(
    (match) => `${file.path}:${lineAt(text, match.index)}: ${what} ("${match[0].trim()}")`,
  );
}
