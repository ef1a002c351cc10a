// The rules of size, form and words that every file keeps; each names what it found and where.

import { limits } from '../limits.ts';
import { codeOf, isCode, isTable, lineAt, matches, type SourceFile } from './sources.ts';

export type Rule = (file: SourceFile) => readonly string[];

const sized = (file: SourceFile): boolean =>
  (isCode(file) || file.path.endsWith('.css')) && !isTable(file);

export const fileLength: Rule = (file) => {
  const lines = file.text.replace(/\n$/, '').split('\n').length;
  if (!sized(file) || lines <= limits.tidy.fileLines) return [];
  return [`${file.path}: ${lines} lines`];
};

export const lineLength: Rule = (file) => {
  if (!sized(file)) return [];
  const widths = file.text.split('\n').map((line) => [...line].length);
  return widths.flatMap((width, index) =>
    width > limits.tidy.columns ? [`${file.path}:${index + 1}: ${width} columns`] : [],
  );
};

type Open = { readonly sign: string; readonly at: number; readonly head: string };

const METHOD = /^\s*(?:(?:async|static|get|set|private|readonly)\s+)*\*?[\w#]+\s*(?:<.*>)?\(.*\)/s;
const CONTROL = /^\s*(?:if|for|while|switch|catch|with)\b/;

const isBody = (head: string): boolean =>
  /=>\s*$/.test(head) || /\bfunction\b/.test(head) || (METHOD.test(head) && !CONTROL.test(head));

// `describe(…, () => {` holds tests and is a heading, not a function with something to do.
const isHeading = (code: string, at: number): boolean =>
  /\bdescribe(?:\.\w+)?\([^\n]*=>\s*$/.test(code.slice(Math.max(0, at - 300), at));

/** Bodies of functions by counting brackets; `{` of an object or a type is no body. */
export function functionsOf(text: string): readonly { from: number; lines: number }[] {
  const code = codeOf(text);
  const found: { from: number; lines: number }[] = [];
  const stack: Open[] = [];
  let head = '';
  for (let at = 0; at < code.length; at += 1) {
    const sign = code[at] ?? '';
    if (sign === '(' || sign === '[' || sign === '{') {
      stack.push({ sign, at, head });
      head = '';
    } else if (sign === ')' || sign === ']' || sign === '}') {
      const open = stack.pop();
      if (open === undefined) continue;
      const block = open.sign === '{' && !/[:|&=(,<?[]\s*$/.test(open.head.replace(/=>\s*$/, ''));
      if (open.sign === '{' && isBody(open.head) && block && !isHeading(code, open.at)) {
        const from = lineAt(code, open.at);
        found.push({ from, lines: lineAt(code, at) - from + 1 });
      }
      head = block ? '' : `${open.head}${open.sign}${sign}`;
    } else head = sign === ';' ? '' : head + sign;
  }
  return found;
}

export const functionLength: Rule = (file) => {
  if (!isCode(file) || isTable(file)) return [];
  return functionsOf(file.text)
    .filter(({ lines }) => lines > limits.tidy.functionLines)
    .map(({ from, lines }) => `${file.path}:${from}: a function of ${lines} lines`);
};

/** The first words of a file say what it is for, in a sentence. */
export const opening: Rule = (file) => {
  if (!isCode(file) && !file.path.endsWith('.css')) return [];
  const lines = file.text.split('\n').filter((line, index) => index > 0 || !line.startsWith('#!'));
  const taken = file.text.startsWith('/*') || lines[0]?.startsWith('/*') ? 'block' : 'line';
  const comment =
    taken === 'block'
      ? lines
          .join('\n')
          .split('*/')[0]
          ?.replace(/^\/\*+/, '')
      : lines
          .slice(
            0,
            lines.findIndex((line) => !line.startsWith('//')),
          )
          .join(' ');
  const words = (comment ?? '').replace(/\/\/|^\s*\*/gm, ' ').trim();
  return /^[\p{L}`"'*].*\s.*\s.*[.!?]/su.test(words)
    ? []
    : [`${file.path}:1: does not open with a sentence that says what it is for`];
};

const forbidden: readonly (readonly [pattern: RegExp, what: string])[] = [
  // `any` may be the name of a value; these are the places of a type.
  [/[:<|&]\s*any\b(?!\s*[:(.])|\bas\s+any\b|\bany\[\]|,\s*any\s*>|\btype\b.*=\s*any\b/g, 'any'],
  [/^\s*enum\s+\w+|\bexport\s+(?:const\s+)?enum\b/gm, 'enum'],
  [/\.(?:skip|only|todo)\s*[(.]|\b(?:xit|xdescribe|fit|fdescribe)\s*\(/g, 'a test left out'],
];

export const forms: Rule = (file) => {
  if (!isCode(file)) return [];
  const code = codeOf(file.text);
  const found = forbidden.flatMap(([pattern, what]) => matches(file, code, pattern, what));
  const isConfig = /^[\w.]+\.config\.ts$/.test(file.path);
  const byDefault = isConfig ? [] : matches(file, code, /\bexport\s+default\b/g, 'default export');
  return [...found, ...byDefault];
};

export const leftovers: Rule = (file) => {
  if (!isCode(file) && !file.path.endsWith('.md')) return [];
  const pattern = /@ts-(?:ignore|expect-error|nocheck)|\b(?:TODO|FIXME|XXX|HACK)\b/g;
  return matches(file, file.text, pattern, 'left over');
};

const words = [
  'work orders?',
  'work requests?',
  'tickets?',
  'job cards?',
  'task cards?',
  'assets?',
  'equipment trees?',
  'functional locations?',
  'counters?(?!-)',
  'backlogs?',
  'dashboards?',
  'planners?',
  'checklist templates?',
  'workpacks?',
  'priority [123]',
  'created',
  'released',
  'in progress',
  'completed',
];

// Letters of a longer word on either side make another word: `counterbore` is one.
const UNWANTED = new RegExp(
  `(?<![\\w-])(?:${words.map((word) => word.replace(/ /g, '[\\s_-]*')).join('|')})(?![\\w])`,
  'gi',
);

/** Words that mean other things elsewhere: each stands here with the place and the reason. */
export type OtherSense = { readonly path: RegExp; readonly word: RegExp; readonly why: string };

export const wordsNotUsed =
  (otherSenses: readonly OtherSense[]): Rule =>
  (file) => {
    if (!/^(?:src|docs|demo|bench|e2e)\/|^[A-Z]+\.md$/.test(file.path)) return [];
    return matches(file, file.text, UNWANTED, 'a word not used here').filter(
      (found) => !otherSenses.some(({ path, word }) => path.test(file.path) && word.test(found)),
    );
  };

const FOLDERS = 'work|home|root|Users|tmp|usr|opt|var|etc|mnt|srv';
const ABSOLUTE = new RegExp(`(?<![\\w.)\\]}>~/-])/(?:${FOLDERS})/[\\w.-]+|\\b[A-Z]:\\\\\\w+`, 'g');
const HOST = /\bregistry\.[a-z0-9-]+\.[a-z]+|\b(?:pypi\.org|crates\.io|proxy\.golang\.org)/gi;

// A folder of that name may lie inside `src/`; from anywhere else it is a neighbour's.
const outside = ({ path }: SourceFile): RegExp =>
  /^src\/\w+\/[\w-]+\//.test(path) ? /\.\.\/shared\/(?:design|reference)\b/g : /\.\.\/shared\b/g;

/** The repository stands anywhere: no place on one computer, no neighbour, no package host. */
export const places: Rule = (file) => [
  ...matches(file, file.text.replace(/^#!.*/, ''), ABSOLUTE, 'an absolute path'),
  ...matches(file, file.text, outside(file), 'a path outside the repository'),
  ...matches(file, file.text, HOST, 'a package host'),
];
