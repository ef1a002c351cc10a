// The floors of the house: who may import whom, and what the core must not do.

import { posix } from 'node:path';
import { codeOf, isTest, matches, type SourceFile } from './sources.ts';

/** Imports go to lower floors only; `limits.ts` lies under all of them. */
export const floors: Readonly<Record<string, number>> = {
  limits: -1,
  quantity: 0,
  words: 1,
  media: 1,
  values: 1,
  tools: 1,
  stores: 1,
  hours: 1,
  plant: 2,
  tightening: 3,
  sealing: 3,
  lifting: 3,
  isolation: 3,
  removal: 3,
  proving: 3,
  life: 3,
  crew: 3,
  together: 4,
  calc: 5,
  pack: 5,
  record: 6,
  drawing: 7,
  archive: 8,
  exchange: 8,
  paper: 8,
  server: 9,
  app: 9,
  cli: 9,
};

const TOP_OF_CORE = 7;

/** The packages a room of the core may use; the shell may use any dependency. */
const corePackages: Readonly<Record<string, readonly string[]>> = {
  quantity: ['zod', '@noble/hashes', 'canonicalize'],
  plant: ['zod', 'yaml'],
};
const everyCoreRoom: readonly string[] = ['zod'];

/** `serve` is a command, so the commands may start the server; nothing else crosses a floor. */
const sameFloor: ReadonlySet<string> = new Set(['cli>server']);

export function roomOf(path: string): string | undefined {
  return /^src\/(?:(\w[\w-]*)\/|(\w+)\.ts$)/.exec(path)?.slice(1).find(Boolean);
}

export function importsOf(text: string): readonly string[] {
  const code = codeOf(text, true);
  const pattern =
    /\b(?:import|export)\b[^'";]*?\bfrom\s*['"]([^'"]+)['"]|\bimport\s*\(?\s*['"]([^'"]+)['"]/g;
  return [...code.matchAll(pattern)].map((match) => match[1] ?? match[2] ?? '');
}

const packageOf = (specifier: string): string =>
  specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');

function relativeProblem(file: SourceFile, room: string, specifier: string): string | undefined {
  const target = posix.join(posix.dirname(file.path), specifier.replace(/\?.*$/, ''));
  if (!target.startsWith('src/')) {
    return room === 'cli' && target === 'package.json' ? undefined : `leaves src/ for ${target}`;
  }
  const other = roomOf(target);
  if (other === room) return undefined;
  const [from, to] = [floors[room], floors[other ?? '']];
  if (other === undefined || to === undefined) return `imports ${target}, which is no room`;
  if (from === undefined) return `the room ${room} is not in the table`;
  if (sameFloor.has(`${room}>${other}`)) return undefined;
  if (room === 'app' && to > TOP_OF_CORE) return `the app must not import ${other}`;
  return to < from ? undefined : `${room} (floor ${from}) imports ${other} (floor ${to})`;
}

function packageProblem(room: string, name: string, dependencies: readonly string[]) {
  if (name.startsWith('node:')) {
    const free = (floors[room] ?? 0) > TOP_OF_CORE && room !== 'app';
    return free ? undefined : `${room} imports ${name}`;
  }
  const wanted = packageOf(name);
  if (!dependencies.includes(wanted)) return `${wanted} is not in "dependencies"`;
  if ((floors[room] ?? 0) > TOP_OF_CORE) return undefined;
  const allowed = [...everyCoreRoom, ...(corePackages[room] ?? [])];
  return allowed.includes(wanted) ? undefined : `${room} must not use the package ${wanted}`;
}

/** What is wrong with the imports of one file; tests may import what they need. */
export function importProblems(file: SourceFile, dependencies: readonly string[]): string[] {
  const room = roomOf(file.path);
  if (room === undefined || room === 'testing' || isTest(file)) return [];
  if (floors[room] === undefined) return [`${file.path}: "${room}" is no room of the table`];
  return importsOf(file.text).flatMap((specifier) => {
    const problem = specifier.startsWith('.')
      ? relativeProblem(file, room, specifier)
      : packageProblem(room, specifier, dependencies);
    return problem === undefined ? [] : [`${file.path}: ${problem}`];
  });
}

const impure: readonly (readonly [pattern: RegExp, what: string])[] = [
  [/\bDate\.now\b|\bnew Date\s*\(\s*\)|\bnew Date\b(?!\s*\()|(?<!new )\bDate\s*\(/g, 'a clock'],
  [/\bperformance\b|\bset(?:Timeout|Interval|Immediate)\b|\bTemporal\.Now\b/g, 'a clock'],
  [/\bMath\.random\b|\bcrypto\b|\brandomUUID\b/g, 'randomness'],
  [/\b(?:Shared)?Worker\b|\bpostMessage\b/g, 'a worker'],
  [/\bfetch\s*\(|\bXMLHttpRequest\b|\bWebSocket\b|\bEventSource\b/g, 'a network'],
  [/\b(?:window|navigator|localStorage|sessionStorage|indexedDB)\b/g, 'a browser'],
  [/\bdocument\s*\.\s*(?:createElement|querySelector|getElementById|body|head)\b/g, 'a browser'],
  [/\bHTML\w*Element\b|\bSVG\w*Element\b/g, 'a browser'],
  [/\bprocess\s*\.|\bBuffer\b|\brequire\s*\(|\bglobalThis\b|\b__dirname\b/g, 'Node'],
  [/\bconsole\s*\./g, 'a console'],
  [/\bIntl\b|\.toLocale\w*\(|\.localeCompare\(/g, 'a locale'],
];

/** Clock, chance, worker, network, browser, Node or locale in a file that must have none. */
export function purityProblems(file: SourceFile): string[] {
  const floor = floors[roomOf(file.path) ?? ''];
  if (floor === undefined || floor > TOP_OF_CORE || isTest(file)) return [];
  const code = codeOf(file.text);
  return impure.flatMap(([pattern, what]) => matches(file, code, pattern, what));
}
