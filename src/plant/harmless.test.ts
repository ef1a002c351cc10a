// A hundred harmless changes of a plant: accepted, and equal where only the looks change.

import { expect, test } from 'vitest';
import { fixture } from './fixture.ts';
import { readPlant } from './read.ts';
import {
  type Entry,
  type Numbers,
  numbersFrom,
  pick,
  scan,
  withLines,
  withValue,
} from './text-scan.ts';
import type { PlantText } from './types.ts';

const SEED = 20_261_125;
const EACH = 10;

type Change = (text: string, numbers: Numbers) => string;

const some = (text: string, numbers: Numbers, fits: (entry: Entry) => boolean): Entry => {
  const found = pick(scan(text).filter(fits), numbers);
  if (found === undefined) throw new Error('nothing in the fixture fits this change');
  return found;
};

const scalar = ({ block, value, keyStart, path }: Entry): boolean =>
  block && keyStart > 1 && /^[A-Za-z0-9][A-Za-z0-9 .-]*$/.test(value) && !path.includes('diff');

/** Blocks of lines that belong to each top-level key, in their order. */
function sections(text: string): string[] {
  return text.split(/\n(?=[a-z])/);
}

const parentOf = ({ path }: Entry): string => path.slice(0, path.lastIndexOf('/'));

/** Two fields of one entry on neighbouring lines change places. */
function swapped(text: string, numbers: Numbers): string {
  const entries = scan(text).filter(scalar);
  const first = pick(
    entries.filter((one) =>
      entries.some((two) => two.line === one.line + 1 && parentOf(two) === parentOf(one)),
    ),
    numbers,
  );
  const lines = text.split('\n');
  if (first === undefined) return text;
  const [a = '', b = ''] = lines.slice(first.line - 1, first.line + 1);
  // The key after a dash opens the item, so it stays where it is.
  if (a.trimStart().startsWith('- ')) return text;
  return [...lines.slice(0, first.line - 1), b, a, ...lines.slice(first.line + 1)].join('\n');
}

/** What changes how a file looks and nothing of what it says. */
const looks: Readonly<Record<string, Change>> = {
  'a comment on a line of its own': (text, numbers) =>
    withLines(text, 1 + Math.floor(numbers() * text.split('\n').length), ['   # looked at: on']),
  'a comment after a value': (text, numbers) => {
    const entry = some(text, numbers, scalar);
    return withValue(text, entry, `${entry.value}   # by hand`);
  },
  'a value in quotes': (text, numbers) => {
    const words = some(text, numbers, (one) => scalar(one) && /^[A-Za-z]/.test(one.value));
    return withValue(text, words, `'${words.value}'`);
  },
  'sections in another order': (text, numbers) =>
    sections(text.trimEnd())
      .map((section) => ({ section, at: numbers() }))
      .sort((a, b) => a.at - b.at)
      .map(({ section }) => section)
      .join('\n'),
  'fields in another order': swapped,
  'lines ended as on another system': (text) => text.replaceAll('\n', '\r\n'),
  'more spaces before each line': (text, numbers) => {
    const times = 2 + Math.floor(numbers() * 3);
    const wide = text.replace(/^ +/gm, (lead) => lead.repeat(times));
    return wide.replace(/^( *)- /gm, (_, lead) => `${lead}-${' '.repeat(2 * times - 1)}`);
  },
};

/** What says something else, and nothing wrong. */
const says: Readonly<Record<string, Change>> = {
  'a field that says where it came from': (text, numbers) => {
    const entry = some(text, numbers, ({ path }) =>
      /\/(mass|thread|place|tool|undoMinutes|pressure|normal|line)$/.test(path),
    );
    const from = pick(['drawing', 'measured', 'seen once', 'assumed'], numbers);
    return withValue(text, entry, `{ value: ${entry.value}, from: ${from}, on: 2026-02-03 }`);
  },
  'a field that is unknown': (text, numbers) => {
    const entry = some(
      text,
      numbers,
      ({ path }) =>
        /\/(mass|thread|place|tool|undoMinutes|tightening|accesses|seals|hazards)$/.test(path) ||
        /^parts\/(guard|suction-pipe|stay)\/ways$/.test(path),
    );
    if (entry.value !== '') return withValue(text, entry, 'unknown');
    const lines = text.split('\n');
    const rest = lines.slice(entry.line);
    const deeper = rest.findIndex((line) => line.search(/\S/) <= entry.keyStart);
    const head = lines.slice(0, entry.line - 1);
    const tail = rest.slice(deeper);
    return [...head, `${' '.repeat(entry.keyStart)}${entry.key}: unknown`, ...tail].join('\n');
  },
  'another name': (text, numbers) => {
    const entry = some(text, numbers, ({ path }) => /^(parts|joints)\/[^/]+\/name$/.test(path));
    return withValue(text, entry, `${entry.value}, as painted on it – № 7`);
  },
};

const typeFile = 'types/pump-set.yaml';
const before = readPlant(fixture());

/** Changes of the whole file reach some of the others too; a field is changed in the type. */
function changedBy(change: Change, seed: number, all: boolean): PlantText {
  const numbers = numbersFrom(seed);
  return fixture().map(({ file, text }) => ({
    file,
    text: file === typeFile || (all && numbers() < 0.5) ? change(text, numbers) : text,
  }));
}

const WHOLE = /^(sections|lines|more spaces|a comment on)/;

test('the changes make a hundred', () => {
  expect((Object.keys(looks).length + Object.keys(says).length) * EACH).toBe(100);
});

test.each(Object.entries(looks))(`%s is accepted and equal, from seed ${SEED}`, (name, change) => {
  for (let n = 0; n < EACH; n++) {
    const { plant, problems } = readPlant(changedBy(change, SEED + n, WHOLE.test(name)));
    expect(problems, `seed ${SEED + n}`).toEqual([]);
    expect(plant?.issue.hash, `seed ${SEED + n}`).toBe(before.plant?.issue.hash);
  }
});

test.each(Object.entries(says))(`%s is accepted, from seed ${SEED}`, (_, change) => {
  for (let n = 0; n < EACH; n++) {
    const { plant, problems } = readPlant(changedBy(change, SEED + n, false));
    const must = problems.filter(({ level }) => level === 'must');
    expect(must, `seed ${SEED + n}`).toEqual([]);
    expect(plant?.issue.hash, `seed ${SEED + n}`).not.toBe(before.plant?.issue.hash);
  }
});
