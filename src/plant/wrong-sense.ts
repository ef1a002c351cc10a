// For tests: puts one fault, F11 to F20, into a right plant by its text, knowing its place.

import type { Fault } from './faults.ts';
import { type Entry, type Numbers, pick, withLines, withoutLine, withValue } from './text-scan.ts';
import { at, type Base, below, changed, choose, type Maker, touched, wrong } from './wrong-text.ts';

type Scanned = Base['types'][number];

const stayingParts = (scanned: Scanned): string[] =>
  scanned.entries
    .filter(({ path, value }) => /^parts\/[^/]+\/stays$/.test(path) && value === 'true')
    .map(({ path }) => path.split('/')[1] ?? '');

const demand = (part: string, as: string): string[] => [
  '        clear:',
  `          - part: ${part}`,
  `            as: ${as}`,
];

const newPart = (id: string, clear: readonly string[], more: readonly string[] = []): string[] => [
  `  ${id}:`,
  `    name: The ${id}`,
  ...more,
  '    ways:',
  '      knock:',
  '        gives: "off"',
  '        joints: []',
  ...clear,
];

/** Parts with one way, its joints on a line of their own, nothing to clear, sitting on nothing. */
function simpleWays(base: Base, scanned: Scanned) {
  return scanned.entries.filter(({ path, block }) => {
    const match = /^parts\/([^/]+)\/ways\/([^/]+)\/joints$/.exec(path);
    if (match === null || !block) return false;
    const part = `parts/${match[1]}`;
    const way = `${part}/ways/${match[2]}`;
    return (
      below(scanned, `${part}/ways`).length === 1 &&
      at(scanned, `${way}/clear`) === undefined &&
      at(scanned, `${part}/on`) === undefined &&
      at(scanned, `${part}/stays`) === undefined &&
      !touched(base, part)
    );
  });
}

const stuck: Maker = (base, numbers) => {
  const scanned = pick(base.types, numbers);
  const header = scanned === undefined ? undefined : at(scanned, 'parts');
  if (scanned === undefined || header === undefined) return null;
  const stays = pick(stayingParts(scanned), numbers);
  if (stays === undefined) return null;
  if (numbers() < 0.4) {
    const text = withLines(scanned.text, header.line, newPart('wedge', demand(stays, '"off"')));
    const place = { line: header.line + 3, path: 'parts/wedge/ways' };
    return wrong(base, 'F11', scanned.file, text, place);
  }
  const joints = pick(simpleWays(base, scanned), numbers);
  if (joints === undefined) return null;
  const line = `${' '.repeat(joints.keyStart)}clear: [{ part: ${stays}, as: aside }]`;
  const text = withLines(scanned.text, joints.line, [line]);
  const path = joints.path.split('/').slice(0, 3).join('/');
  const ways = at(scanned, path);
  return ways === undefined
    ? null
    : wrong(base, 'F11', scanned.file, text, { line: ways.line, path });
};

const circle: Maker = (base, numbers) => {
  const scanned = pick(base.types, numbers);
  const header = scanned === undefined ? undefined : at(scanned, 'parts');
  if (scanned === undefined || header === undefined) return null;
  const { file, text } = scanned;
  const kind = Math.floor(numbers() * 3);
  if (kind === 0) {
    const lines = ['ring-a', 'ring-b'].flatMap((id, n) => [
      `  ${id}:`,
      `    name: The ${id}`,
      `    on: ${n === 0 ? 'ring-b' : 'ring-a'}`,
    ]);
    const place = { line: header.line + 6, path: 'parts/ring-b/on' };
    return wrong(base, 'F12', file, withLines(text, header.line, lines), place);
  }
  if (kind === 1) {
    const size = 2 + Math.floor(numbers() * 3);
    const ids = Array.from({ length: size }, (_, n) => `ring-${n}`);
    const lines = ids.flatMap((id, n) => newPart(id, demand(`ring-${(n + 1) % size}`, '"off"')));
    const place = {
      line: header.line + 9 * size - 1,
      path: `parts/ring-${size - 1}/ways/knock/clear/0`,
    };
    return wrong(base, 'F12', file, withLines(text, header.line, lines), place);
  }
  const joints = pick(simpleWays(base, scanned), numbers);
  const part = joints?.path.split('/')[1];
  if (joints === undefined || part === undefined) return null;
  const line = `${' '.repeat(joints.keyStart)}clear: [{ part: wedge, as: aside }]`;
  const lines = newPart('wedge', demand(part, 'aside'));
  const both = withLines(withLines(text, joints.line, [line]), header.line, lines);
  const path = joints.path.replace(/joints$/, 'clear/0');
  return wrong(base, 'F12', file, both, { line: joints.line + 1 + lines.length, path });
};

const items = (value: string): string[] =>
  value
    .slice(1, -1)
    .split(',')
    .map((item) => item.trim())
    .filter((item) => item !== '');

function ridesOn(scanned: Scanned, id: string, carrier: string): boolean {
  let here: string | undefined = id;
  for (let n = 0; n < 20 && here !== undefined; n++) {
    if (here === carrier) return true;
    here = at(scanned, `parts/${here}/on`)?.value;
  }
  return false;
}

const leftOut: Maker = (base, numbers) => {
  const chosen = choose(base, base.types, numbers, ({ path, value }, scanned) => {
    const gives = at(scanned, path.replace(/joints$/, 'gives'))?.value;
    return (
      /^parts\/[^/]+\/ways\/[^/]+\/joints$/.test(path) &&
      /^\[.*\]$/.test(value) &&
      gives === '"off"'
    );
  });
  if (chosen === null) return null;
  const { scanned, entry } = chosen;
  const part = entry.path.split('/')[1] ?? '';
  const held = items(entry.value).filter((joint) => {
    const between = items(at(scanned, `joints/${joint}/between`)?.value ?? '[]');
    const apart = between.some((other) => !ridesOn(scanned, other, part));
    return between.includes(part) && apart && !touched(base, `joints/${joint}/between`);
  });
  const gone = pick(held, numbers);
  if (gone === undefined || touched(base, `parts/${part}`)) return null;
  const rest = items(entry.value).filter((joint) => joint !== gone);
  const text = withValue(scanned.text, entry, `[${rest.join(', ')}]`);
  return wrong(base, 'F13', scanned.file, text, entry);
};

const unusedGasket: Maker = (base, numbers) => {
  const scanned = pick(base.types, numbers);
  const header = scanned === undefined ? undefined : at(scanned, 'joints');
  if (scanned === undefined || header === undefined) return null;
  const seal = `seal-${Math.floor(numbers() * 50)}`;
  const kind = pick(['gasket', 'ring', 'shaft seal'], numbers);
  const block = ['  lost:', '    name: Lost joint', '    seals:', `      ${seal}:`];
  const lines = [...block, `        kind: ${kind}`, '        count: 1'];
  const text = withLines(scanned.text, header.line, lines);
  const place = { line: header.line + 4, path: `joints/lost/seals/${seal}` };
  return wrong(base, 'F14', scanned.file, text, place);
};

/** Puts fields beside an entry, after it on its line or on lines below. */
function beside(text: string, entry: Entry, fields: readonly string[]): string {
  if (!entry.block) return withValue(text, entry, [entry.value, ...fields].join(', '));
  const indent = ' '.repeat(entry.keyStart);
  return withLines(
    text,
    entry.line,
    fields.map((field) => `${indent}${field}`),
  );
}

const bottoms: Maker = (base, numbers) => {
  const chosen = choose(base, base.types, numbers, ({ path, value }, scanned) => {
    const start = path.slice(0, path.lastIndexOf('/'));
    const has = (field: string) => at(scanned, `${start}/${field}`) !== undefined;
    const isBolt = /\/fasteners\/[^/]+\/kind$/.test(path) && /^(bolt|cap screw)$/.test(value);
    return isBolt && !has('grip') && !has('holeDepth');
  });
  if (chosen === null) return null;
  const { scanned, entry } = chosen;
  const path = entry.path.replace(/kind$/, 'length');
  const length = at(scanned, path);
  const fields = ['grip: 1 mm', 'holeDepth: 2 mm'];
  const all = length === undefined ? ['length: 31 mm', ...fields] : fields;
  const text = beside(scanned.text, entry, all);
  const moved = entry.block ? fields.length : 0;
  const own = entry.block ? entry.line + 1 : entry.line;
  const line = length === undefined ? own : length.line + (length.line > entry.line ? moved : 0);
  return wrong(base, 'F15', scanned.file, text, { line, path });
};

const notClear: Maker = (base, numbers) => {
  const chosen = choose(base, base.types, numbers, ({ path, value }, scanned) => {
    const start = path.slice(0, path.lastIndexOf('/'));
    const drawn = at(scanned, `${start}/drawOff`) !== undefined;
    const out = at(scanned, `${start}/projection`) !== undefined;
    return /\/fasteners\/[^/]+\/kind$/.test(path) && value === 'stud and nut' && drawn === out;
  });
  if (chosen === null) return null;
  const { scanned, entry } = chosen;
  const path = entry.path.replace(/kind$/, 'drawOff');
  const drawOff = at(scanned, path);
  const short = `${(1 + numbers() * 3).toFixed(1)} mm`;
  if (drawOff !== undefined) {
    return wrong(base, 'F16', scanned.file, withValue(scanned.text, drawOff, short), drawOff);
  }
  const text = beside(scanned.text, entry, [`drawOff: ${short}`, 'projection: 44 mm']);
  return wrong(base, 'F16', scanned.file, text, { line: entry.line + (entry.block ? 1 : 0), path });
};

const holes: Maker = (base, numbers) => {
  const chosen = choose(
    base,
    base.types,
    numbers,
    ({ key, value }) => key === 'holes' && /^\[.*\]$/.test(value) && items(value).length > 1,
  );
  if (chosen === null) return null;
  const { scanned, entry } = chosen;
  const list = items(entry.value);
  if (numbers() < 0.5) {
    const text = withValue(scanned.text, entry, `[${list.slice(0, -1).join(', ')}]`);
    return wrong(base, 'F17', scanned.file, text, entry);
  }
  const n = 1 + Math.floor(numbers() * (list.length - 1));
  const twice = list.map((hole, m) => (m === n ? (list[m - 1] ?? hole) : hole));
  const text = withValue(scanned.text, entry, `[${twice.join(', ')}]`);
  return wrong(base, 'F17', scanned.file, text, { line: entry.line, path: `${entry.path}/${n}` });
};

const misfits: Maker = (base, numbers) => {
  const scanned = pick(base.machines, numbers);
  const type = base.types.find(
    (one) => at(one, 'type')?.value === (scanned && at(scanned, 'type')?.value),
  );
  if (scanned === undefined || type === undefined) return null;
  const joint = pick(below(type, 'joints'), numbers)?.path;
  const part = pick(below(type, 'parts'), numbers)?.path;
  if (joint === undefined || part === undefined || touched(base, part)) return null;
  const tries = [
    ['add', part, 'to: { name: Again }'],
    ['remove', `${part}x`, null],
    ['set', `${joint}x/undoMinutes`, 'to: 3'],
    ['set', `${part}x`, 'to: { name: Another }'],
    ['remove', `${joint}/undoMinutez`, null],
    ['set', 'parts', 'to: {}'],
  ] as const;
  const [change, path, to] = pick(tries, numbers) ?? tries[0];
  const item = [
    '  - id: wrong-one',
    '    why: the wall',
    `    change: ${change}`,
    `    at: ${path}`,
  ];
  const lines = to === null ? item : [...item, `    ${to}`];
  const header = at(scanned, 'differences');
  const total = scanned.text.trimEnd().split('\n').length;
  const after = header?.line ?? total;
  const all = header === undefined ? ['differences:', ...lines] : lines;
  const text = withLines(scanned.text, after, all);
  const line = after + all.indexOf(`    at: ${path}`) + 1;
  return wrong(base, 'F18', scanned.file, text, { line, path: 'differences/wrong-one/at' });
};

const cannotBe: Maker = (base, numbers) => {
  const kind = Math.floor(numbers() * 3);
  if (kind === 0) {
    const chosen = choose(base, base.types, numbers, ({ path }) =>
      /^targets\/[^/]+\/does\/[^/]+\/take\/\d+\/part$/.test(path),
    );
    const stays = chosen === null ? undefined : pick(stayingParts(chosen.scanned), numbers);
    if (chosen === null || stays === undefined) return null;
    const path = chosen.entry.path.replace(/\/part$/, '');
    const text = withValue(chosen.scanned.text, chosen.entry, stays);
    return wrong(base, 'F19', chosen.scanned.file, text, { line: chosen.entry.line, path });
  }
  if (kind === 1) {
    const chosen = choose(base, base.types, numbers, ({ path }) =>
      /^isolations\/[^/]+\/(drains|vents)\/\d+$/.test(path),
    );
    const valve = chosen?.scanned.entries.find(
      ({ path, value }) => /^closures\/[^/]+\/kind$/.test(path) && /^(breaker|valve)$/.test(value),
    );
    if (chosen === null || valve === undefined) return null;
    const text = withValue(chosen.scanned.text, chosen.entry, valve.path.split('/')[1] ?? '');
    return wrong(base, 'F19', chosen.scanned.file, text, chosen.entry);
  }
  const chosen = choose(base, base.types, numbers, ({ path, block, value }, scanned) => {
    const id = /^closures\/([^/]+)\/normal$/.exec(path)?.[1];
    return id !== undefined && block && value !== '' && usesOf(scanned, id).length === 1;
  });
  const id = chosen?.entry.path.split('/')[1] ?? '';
  const use = chosen === null ? undefined : usesOf(chosen.scanned, id)[0];
  if (chosen === null || use === undefined) return null;
  const text = withoutLine(chosen.scanned.text, chosen.entry.line);
  const line = use.line - (use.line > chosen.entry.line ? 1 : 0);
  return wrong(base, 'F19', chosen.scanned.file, text, { line, path: use.path });
};

const usesOf = (scanned: Scanned, closure: string): Entry[] =>
  scanned.entries.filter(
    ({ path, value }) =>
      /^isolations\/[^/]+\/closures\/\d+\/closure$/.test(path) && value === closure,
  );

function sameSheetTwice(base: Base, numbers: Numbers) {
  const chosen = choose(
    base,
    base.sheets,
    numbers,
    ({ path, value }) => /^values\/[^/]+\/value$/.test(path) && / N\.m$/.test(value),
  );
  if (chosen === null) return null;
  const { scanned, entry } = chosen;
  const path = entry.path.replace(/\/value$/, '');
  const line = at(scanned, path)?.line ?? 0;
  const text = withValue(scanned.text, entry, '17.25 N.m');
  return wrong(base, 'F20', 'zz/again.yaml', text, { line, path });
}

const cannotBoth: Maker = (base, numbers) => {
  if (numbers() < 0.25) return sameSheetTwice(base, numbers);
  const inOrder = [...base.machines].sort((a, b) => (a.file < b.file ? -1 : 1));
  const field = pick(['name', 'plate', 'otherSide'], numbers) ?? 'name';
  const a = inOrder[Math.floor(numbers() * inOrder.length)];
  const others = inOrder.filter((one) => one !== a && at(one, field) !== undefined);
  const b = pick(others, numbers);
  const ofA = a === undefined ? undefined : at(a, field);
  const ofB = b === undefined ? undefined : at(b, field);
  if (a === undefined || b === undefined || ofA === undefined || ofB === undefined) return null;
  if (field === 'otherSide') {
    if (at(b, 'machine')?.value !== ofA.value) return null;
    const files = changed(base, b.file, withoutLine(b.text, ofB.line));
    return { files, fault: 'F20', file: a.file, line: ofA.line, path: field };
  }
  const [first, second] = inOrder.indexOf(a) < inOrder.indexOf(b) ? [a, b] : [b, a];
  const from = at(first, field);
  const to = at(second, field);
  if (from === undefined || to === undefined) return null;
  return wrong(base, 'F20', second.file, withValue(second.text, to, from.value), to);
};

export const LATE: Readonly<Partial<Record<Fault, Maker>>> = {
  F11: stuck,
  F12: circle,
  F13: leftOut,
  F14: unusedGasket,
  F15: bottoms,
  F16: notClear,
  F17: holes,
  F18: misfits,
  F19: cannotBe,
  F20: cannotBoth,
};
