// Reads one YAML text into plain data, keeping the line of every path; finds keys given twice.

import {
  type Document,
  isAlias,
  isCollection,
  isMap,
  isPair,
  isScalar,
  isSeq,
  LineCounter,
  parseDocument,
  visit,
} from 'yaml';
import { limits } from '../limits.ts';
import { must, should } from './faults.ts';
import type { FileProblem } from './types.ts';

export type Raw =
  | null
  | boolean
  | number
  | string
  | readonly Raw[]
  | { readonly [key: string]: Raw };
export type RawMap = { readonly [key: string]: Raw };

/** A file's data, with the line on which each path stands. */
export type RawFile = {
  readonly file: string;
  readonly raw: Raw;
  readonly lines: ReadonlyMap<string, number>;
  readonly problems: readonly FileProblem[];
};

export const isRawMap = (raw: unknown): raw is RawMap =>
  typeof raw === 'object' && raw !== null && !Array.isArray(raw);

export const joined = (path: string, segment: string | number): string =>
  path === '' ? `${segment}` : `${path}/${segment}`;

/** Items of `differences` are known by their id, so that no path holds a place in that list. */
export const itemName = (path: string, item: unknown, at: number): string =>
  /(^|\/)differences$/.test(path) && isRawMap(item) && typeof item.id === 'string'
    ? item.id
    : `${at}`;

type Reading = {
  readonly file: string;
  readonly counter: LineCounter;
  readonly lines: Map<string, number>;
  readonly problems: FileProblem[];
  readonly resolve: (node: unknown) => unknown;
  nodes: number;
};

const SWITCH_WORD = /^(on|off|yes|no)$/i;

function lineOf(reading: Reading, node: unknown): number | undefined {
  const range = (node as { range?: readonly number[] | null } | null)?.range;
  return range?.[0] === undefined ? undefined : reading.counter.linePos(range[0]).line;
}

function scalar(reading: Reading, node: unknown, path: string): Raw {
  if (!isScalar(node)) return null;
  const { value, type } = node;
  if (typeof value === 'string' && type === 'PLAIN' && SWITCH_WORD.test(value)) {
    const line = lineOf(reading, node) ?? 1;
    reading.problems.push(
      should(
        { file: reading.file, line, path },
        {
          got: value,
          expected: `"${value}"`,
          why: `many programs read ${value} as true or false`,
          remedy: `write it in quotes: "${value}"`,
        },
      ),
    );
  }
  if (typeof value === 'bigint') return Number(value);
  const plain =
    typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean';
  return plain ? value : null;
}

function twice(reading: Reading, path: string, key: string, line: number): void {
  const first = reading.lines.get(path);
  reading.problems.push(
    must(
      'F2',
      { file: reading.file, line, path },
      {
        got: key,
        expected: 'each key once',
        why: `${key} stands on line ${first} already`,
        remedy: 'give one of them another id, or put the two together',
      },
    ),
  );
}

function plain(reading: Reading, given: unknown, path: string, depth: number): Raw {
  reading.nodes += 1;
  if (reading.nodes > limits.plant.nodes || depth > limits.plant.depth) {
    throw new RangeError(`${reading.file} is too large or too deep to read`);
  }
  const node = isAlias(given) ? reading.resolve(given) : given;
  if (isMap(node)) {
    const map: Record<string, Raw> = {};
    for (const pair of node.items) {
      if (!isPair(pair)) continue;
      const key = String(isScalar(pair.key) ? pair.key.value : pair.key);
      const at = joined(path, key);
      const line = lineOf(reading, pair.key) ?? reading.lines.get(path) ?? 1;
      // This one word would change what the data is instead of being a key in it.
      if (key === '__proto__') continue;
      if (Object.hasOwn(map, key)) {
        twice(reading, at, key, line);
        continue;
      }
      reading.lines.set(at, line);
      Object.defineProperty(map, key, {
        value: plain(reading, pair.value, at, depth + 1),
        enumerable: true,
        writable: true,
        configurable: true,
      });
    }
    return map;
  }
  if (isSeq(node)) return list(reading, node.items, path, depth);
  return scalar(reading, node, path);
}

function list(reading: Reading, items: readonly unknown[], path: string, depth: number): Raw {
  const differences = /(^|\/)differences$/.test(path);
  return items.map((item, at) => {
    const id = differences && isMap(item) ? item.get('id') : undefined;
    const name = typeof id === 'string' ? id : `${at}`;
    const here = joined(path, name);
    const line = lineOf(reading, item) ?? reading.lines.get(path) ?? 1;
    if (reading.lines.has(here)) twice(reading, here, name, idLine(reading, item) ?? line);
    else reading.lines.set(here, line);
    return plain(reading, item, here, depth + 1);
  });
}

function idLine(reading: Reading, item: unknown): number | undefined {
  if (!isMap(item)) return undefined;
  const pair = item.items.find((one) => isScalar(one.key) && one.key.value === 'id');
  return pair === undefined ? undefined : lineOf(reading, pair.key);
}

/** Where a quote or bracket was opened that swallowed the lines up to the error. */
function openedAt(document: Document.Parsed, counter: LineCounter, at: number): number | undefined {
  let opened: number | undefined;
  const failing = counter.linePos(at).line;
  visit(document, {
    Node(_, node) {
      const [start, end] = node.range ?? [];
      const quoted = isScalar(node) && /^QUOTE/.test(node.type ?? '');
      const flow = isCollection(node) && node.flow === true;
      if (start === undefined || end === undefined || !(quoted || flow) || start > at) return;
      const from = counter.linePos(start).line;
      const to = counter.linePos(end).line;
      if (opened === undefined && from < failing && to >= failing) opened = from;
    },
  });
  return opened;
}

/** Reads one file's text; what cannot be read at all comes back as null with its problem. */
export function readYaml(file: string, text: string): RawFile {
  const counter = new LineCounter();
  const document = parseDocument(text, {
    lineCounter: counter,
    version: '1.2',
    schema: 'core',
    uniqueKeys: false,
    prettyErrors: true,
  });
  const lines = new Map<string, number>([['', 1]]);
  const found = document.errors[0];
  if (found !== undefined) {
    const [first = ''] = found.message.split(' at line ');
    const line = openedAt(document, counter, found.pos[0]) ?? found.linePos?.[0].line ?? 1;
    const why = `${first.charAt(0).toLowerCase()}${first.slice(1)}`;
    const shown = text.split('\n')[line - 1]?.trim() ?? '';
    const problem = must(
      'F1',
      { file, line, path: '' },
      {
        got: shown,
        expected: 'YAML 1.2',
        why,
        remedy: 'look at the spaces before it, at its colon, quotes and brackets',
      },
    );
    return { file, raw: null, lines, problems: [problem] };
  }
  const problems: FileProblem[] = [];
  const resolve = (node: unknown) => (isAlias(node) ? node.resolve(document) : node);
  const reading: Reading = { file, counter, lines, problems, resolve, nodes: 0 };
  try {
    return { file, raw: plain(reading, document.contents, '', 0), lines, problems };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const expected = `at most ${limits.plant.nodes} entries, ${limits.plant.depth} deep`;
    const place = { file, line: 1, path: '' };
    return {
      file,
      raw: null,
      lines,
      problems: [must('F4', place, { got: file, expected, why: error.message })],
    };
  }
}
