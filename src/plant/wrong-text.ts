// For tests: puts one fault, F1 to F10, into a right plant by its text, knowing its place.

import type { Fault } from './faults.ts';
import {
  type Entry,
  misspelt,
  type Numbers,
  pick,
  scan,
  withKey,
  withLines,
  withoutLine,
  withValue,
} from './text-scan.ts';
import type { PlantText } from './types.ts';

export type Wrong = {
  readonly files: PlantText;
  readonly fault: Fault;
  readonly file: string;
  readonly line: number;
  readonly path: string;
};

type Scanned = { readonly file: string; readonly text: string; readonly entries: readonly Entry[] };

export type Base = {
  readonly files: PlantText;
  readonly all: readonly Scanned[];
  readonly types: readonly Scanned[];
  readonly machines: readonly Scanned[];
  readonly sheets: readonly Scanned[];
  readonly plants: readonly Scanned[];
};

export type Maker = (base: Base, numbers: Numbers) => Wrong | null;

export function baseOf(files: PlantText): Base {
  const all = files.map(({ file, text }) => ({ file, text, entries: scan(text) }));
  const having = (key: string, not?: string) =>
    all.filter(
      ({ entries }) =>
        entries.some(({ path }) => path === key) && !entries.some(({ path }) => path === not),
    );
  return {
    files,
    all,
    types: having('type', 'machine'),
    machines: having('machine'),
    sheets: having('sheet'),
    plants: having('plant'),
  };
}

export const changed = (base: Base, file: string, text: string): PlantText =>
  base.files.some((one) => one.file === file)
    ? base.files.map((one) => (one.file === file ? { file, text } : one))
    : [...base.files, { file, text }];

/** A difference speaks of this path, or of something above or below it. */
export const touched = (base: Base, path: string): boolean =>
  base.machines.some(({ entries }) =>
    entries.some(
      ({ key, value }) =>
        key === 'at' && (`${path}/`.startsWith(`${value}/`) || value.startsWith(`${path}/`)),
    ),
  );

type Chosen = { readonly scanned: Scanned; readonly entry: Entry };

export function choose(
  base: Base,
  among: readonly Scanned[],
  numbers: Numbers,
  fits: (entry: Entry, scanned: Scanned) => boolean,
): Chosen | null {
  const scanned = pick(among, numbers);
  if (scanned === undefined) return null;
  const entries = scanned.entries.filter(
    (entry) => fits(entry, scanned) && !touched(base, entry.path),
  );
  const entry = pick(entries, numbers);
  return entry === undefined ? null : { scanned, entry };
}

export const below = (scanned: Scanned, path: string): Entry[] =>
  scanned.entries.filter((entry) => entry.path.slice(0, entry.path.lastIndexOf('/')) === path);

export const at = (scanned: Scanned, path: string): Entry | undefined =>
  scanned.entries.find((entry) => entry.path === path);

export function wrong(
  base: Base,
  fault: Fault,
  file: string,
  text: string,
  place: { readonly line: number; readonly path: string },
): Wrong {
  const { line, path } = place;
  return { files: changed(base, file, text), fault, file, line, path };
}

const isPlain = (value: string): boolean => /^[A-Za-z][A-Za-z -]*$/.test(value);

const notYaml: Maker = (base, numbers) => {
  const chosen = choose(
    base,
    base.all,
    numbers,
    ({ block, value, keyStart, path }) =>
      block && isPlain(value) && keyStart > 1 && !path.includes('differences'),
  );
  if (chosen === null) return null;
  const { scanned, entry } = chosen;
  const broken = pick(
    [`"${entry.value}`, `[${entry.value}`, `${entry.value}: more`, `@${entry.value}`, '{ a: 1'],
    numbers,
  );
  const text = withValue(scanned.text, entry, broken ?? '@');
  return wrong(base, 'F1', scanned.file, text, { line: entry.line, path: '' });
};

const keyTwice: Maker = (base, numbers) => {
  if (numbers() < 0.5) {
    const chosen = choose(
      base,
      base.all,
      numbers,
      ({ block, value, keyStart }) => block && isPlain(value) && keyStart > 1,
    );
    if (chosen === null) return null;
    const { scanned, entry } = chosen;
    const again = `${' '.repeat(entry.keyStart)}${entry.key}: ${entry.value} again`;
    const text = withLines(scanned.text, entry.line, [again]);
    return wrong(base, 'F2', scanned.file, text, { line: entry.line + 1, path: entry.path });
  }
  const chosen = choose(base, base.types, numbers, ({ path }) =>
    /^(parts|joints)\/[^/]+$/.test(path),
  );
  if (chosen === null) return null;
  const { scanned, entry } = chosen;
  const header = at(scanned, entry.path.split('/')[0] ?? '');
  if (header === undefined) return null;
  const text = withLines(scanned.text, header.line, [`  ${entry.key}: { name: Again }`]);
  // The one written second is told: that is the one which stood there before.
  return wrong(base, 'F2', scanned.file, text, { line: entry.line + 1, path: entry.path });
};

const OPTIONAL = new RegExp(
  '^(mass|hazards|place|tool|thread|grip|holes|length|tightening|undoMinutes|makeMinutes|minutes' +
    '|people|support|note|secure|carriedBy|doNotDisturb|looks|rotation|followUps)$',
);

const unknownField: Maker = (base, numbers) => {
  const chosen = choose(
    base,
    base.types,
    numbers,
    ({ key, keyStart, path }) => keyStart > 0 && OPTIONAL.test(key) && path.split('/').length > 2,
  );
  if (chosen === null) return null;
  const { scanned, entry } = chosen;
  const name = misspelt(entry.key, numbers);
  const path = `${entry.path.slice(0, -entry.key.length)}${name}`;
  const text = withKey(scanned.text, entry, name);
  return wrong(base, 'F3', scanned.file, text, { line: entry.line, path });
};

const wrongKind: Maker = (base, numbers) => {
  const swaps: readonly [RegExp, (value: string) => string][] = [
    [/^(kind|gives|medium|handed)$/, (value) => `${value.replace(/"/g, '')}x`],
    [/^count$/, () => 'four'],
    [/^joints$/, () => 'all'],
    [/^(tool|place|support|carriedBy)$/, () => '42'],
  ];
  const [field, change] = pick(swaps, numbers) ?? [/^$/, String];
  const chosen = choose(
    base,
    base.types,
    numbers,
    ({ key, value, path }) => field.test(key) && value !== '' && path.split('/').length > 2,
  );
  if (chosen === null) return null;
  const { scanned, entry } = chosen;
  const text = withValue(scanned.text, entry, change(entry.value));
  return wrong(base, 'F4', scanned.file, text, entry);
};

const switched: Maker = (base, numbers) => {
  const chosen = choose(
    base,
    base.types,
    numbers,
    ({ key, value, path }) =>
      /^(kind|gives|as|normal|position|name|tool|place)$/.test(key) &&
      value !== '' &&
      path.split('/').length > 2,
  );
  if (chosen === null) return null;
  const { scanned, entry } = chosen;
  const text = withValue(scanned.text, entry, numbers() < 0.5 ? 'true' : 'false');
  return wrong(base, 'F5', scanned.file, text, entry);
};

const FIGURE = /^(\d+(?:\.\d+)?) (mm|kg|bar|Cel|h|rpm|N\.m)$/;
const MEASURE = new RegExp(
  '^(mass|length|grip|holeDepth|projection|drawOff|engagement|acrossFlats|thickness|pressure' +
    '|temperature|after)$',
);

const figureIn = (base: Base, numbers: Numbers, also: (key: string) => boolean) =>
  numbers() < 0.75
    ? choose(
        base,
        base.types,
        numbers,
        ({ key, value }) => FIGURE.test(value) && MEASURE.test(key) && also(key),
      )
    : choose(
        base,
        base.sheets,
        numbers,
        ({ path, value }) => /^values\/[^/]+\/value$/.test(path) && / N\.m$/.test(value),
      );

const noUnit: Maker = (base, numbers) => {
  const chosen = figureIn(base, numbers, () => true);
  const [, amount = '', unit = ''] = FIGURE.exec(chosen?.entry.value ?? '') ?? [];
  if (chosen === null || amount === '') return null;
  const other = unit === 'mm' ? 'kg' : 'mm';
  const value = pick([amount, `${amount} ${other}`, `${amount} zz`, `"${amount}"`], numbers) ?? '';
  const text = withValue(chosen.scanned.text, chosen.entry, value);
  return wrong(base, 'F6', chosen.scanned.file, text, chosen.entry);
};

const notAbove: Maker = (base, numbers) => {
  const signed = /^(pressure|temperature|projection|drawOff)$/;
  const bare = numbers() < 0.4;
  const chosen = bare
    ? choose(
        base,
        base.types,
        numbers,
        ({ key, value }) => /^(count|people)$/.test(key) && /^\d+$/.test(value),
      )
    : figureIn(base, numbers, (key) => !signed.test(key));
  if (chosen === null) return null;
  const [, amount = '', unit = ''] = FIGURE.exec(chosen.entry.value) ?? [];
  const value = bare
    ? pick(['0', '-1', '-12'], numbers)
    : pick([`0 ${unit}`, `-${amount} ${unit}`], numbers);
  const text = withValue(chosen.scanned.text, chosen.entry, value ?? '0');
  return wrong(base, 'F7', chosen.scanned.file, text, chosen.entry);
};

const missing: Maker = (base, numbers) => {
  const chosen = choose(base, [...base.types, ...base.sheets], numbers, (entry, scanned) => {
    const parent = entry.path.slice(0, entry.path.lastIndexOf('/'));
    const wanted =
      /^(parts|joints|closures|lines|values)\/[^/]+\/name$/.test(entry.path) ||
      /\/(seals|fasteners|loose)\/[^/]+\/(count|kind)$/.test(entry.path) ||
      /^(authority|date|issue)$/.test(entry.path);
    return wanted && entry.block && (parent === entry.path || below(scanned, parent).length > 1);
  });
  if (chosen === null) return null;
  const { scanned, entry } = chosen;
  const parent = at(scanned, entry.path.slice(0, Math.max(0, entry.path.lastIndexOf('/'))));
  const text = withoutLine(scanned.text, entry.line);
  return wrong(base, 'F8', scanned.file, text, { line: parent?.line ?? 1, path: entry.path });
};

const REFERENCE = new RegExp(
  [
    '^parts/[^/]+/(on|line)$',
    '^parts/[^/]+/ways/[^/]+/joints/\\d+$',
    '/clear/\\d+/part$',
    '^joints/[^/]+/between/\\d+$',
    '^joints/[^/]+/fasteners/[^/]+/tightening$',
    '^joints/[^/]+/settings/[^/]+/value$',
    '^(closures|sensors)/[^/]+/(line|joint)$',
    '^isolations/[^/]+/(closures/\\d+/closure|drains/\\d+|vents/\\d+|proveAt)$',
    '^targets/[^/]+/does/[^/]+/(renews/\\d+|interval|isolation|take/\\d+/part)$',
    '^targets/[^/]+/(limits|alarms)/\\d+$',
  ].join('|'),
);

const unknownName: Maker = (base, numbers) => {
  const where = numbers();
  const chosen =
    where < 0.8
      ? choose(base, base.types, numbers, ({ path }) => REFERENCE.test(path))
      : where < 0.9
        ? choose(base, base.machines, numbers, ({ path }) => /^(type|otherSide)$/.test(path))
        : choose(base, base.sheets, numbers, ({ path }) => path === 'for');
  if (chosen === null || chosen.entry.value === '') return null;
  const { scanned, entry } = chosen;
  const text = withValue(scanned.text, entry, misspelt(entry.value, numbers));
  return wrong(base, 'F9', scanned.file, text, entry);
};

const withdrawn: Maker = (base, numbers) => {
  const chosen = choose(base, base.types, numbers, ({ key }) => key === 'tightening');
  const type = chosen === null ? undefined : at(chosen.scanned, 'type')?.value;
  const sheet = base.sheets.find((one) => at(one, 'for')?.value === type);
  const id = sheet === undefined ? undefined : at(sheet, 'sheet')?.value;
  if (chosen === null || id === undefined) return null;
  const { scanned, entry } = chosen;
  const old = `old-figure-${Math.floor(numbers() * 100)}`;
  const lines = [
    `sheet: ${id}`,
    'name: An earlier issue',
    `for: ${type}`,
    'issue: "0"',
    'date: 2001-01-01',
    'authority: the office',
    'values:',
    `  ${old}: { name: Old, kind: torque, value: 9 N.m, threadCondition: dry }`,
    '',
  ];
  const made = wrong(base, 'F10', scanned.file, withValue(scanned.text, entry, old), entry);
  return {
    ...made,
    files: [...made.files, { file: 'values/earlier.yaml', text: lines.join('\n') }],
  };
};

export const EARLY: Readonly<Partial<Record<Fault, Maker>>> = {
  F1: notYaml,
  F2: keyTwice,
  F3: unknownField,
  F4: wrongKind,
  F5: switched,
  F6: noUnit,
  F7: notAbove,
  F8: missing,
  F9: unknownName,
  F10: withdrawn,
};
