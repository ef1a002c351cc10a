// For tests: finds where things stand in a plant file by its text alone, without the parser.

export type Entry = {
  readonly path: string;
  /** From 1. */
  readonly line: number;
  readonly key: string;
  readonly value: string;
  /** Columns of the value in its line, and of the key (-1 for an item of a list). */
  readonly start: number;
  readonly end: number;
  readonly keyStart: number;
  /** Written on lines of its own, not inside brackets. */
  readonly block: boolean;
};

export type Numbers = () => number;

/** Numbers from 0 to 1 from a printed seed (mulberry32). */
export function numbersFrom(seed: number): Numbers {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

export function pick<T>(list: readonly T[], numbers: Numbers): T | undefined {
  return list[Math.floor(numbers() * list.length)];
}

const QUOTE = /["']/;

/** The text up to a comment, quotes respected. */
function uncommented(line: string): string {
  let quote = '';
  for (let at = 0; at < line.length; at++) {
    const sign = line[at] ?? '';
    if (quote !== '') {
      if (sign === quote) quote = '';
    } else if (QUOTE.test(sign) && /[\s[{,:-]/.test(line[at - 1] ?? ' ')) quote = sign;
    else if (sign === '#' && /\s/.test(line[at - 1] ?? ' ')) return line.slice(0, at);
  }
  return line;
}

function depthOf(text: string): number {
  let quote = '';
  let depth = 0;
  for (let at = 0; at < text.length; at++) {
    const sign = text[at] ?? '';
    if (quote !== '') {
      if (sign === quote) quote = '';
    } else if (QUOTE.test(sign) && /[\s[{,:]/.test(text[at - 1] ?? ' ')) quote = sign;
    else if ('[{'.includes(sign)) depth += 1;
    else if (']}'.includes(sign)) depth -= 1;
  }
  return depth;
}

/** Splits what stands inside one pair of brackets at its commas. */
function pieces(text: string, from: number): { text: string; at: number }[] {
  const found: { text: string; at: number }[] = [];
  let start = 0;
  for (let at = 0; at <= text.length; at++) {
    const whole = depthOf(text.slice(start, at)) === 0 && quotesEven(text.slice(start, at));
    if (at !== text.length && !(text[at] === ',' && whole)) continue;
    const raw = text.slice(start, at);
    const lead = raw.length - raw.trimStart().length;
    if (raw.trim() !== '') found.push({ text: raw.trim(), at: from + start + lead });
    start = at + 1;
  }
  return found;
}

const quotesEven = (text: string): boolean => (text.match(/"/g) ?? []).length % 2 === 0;

function inBrackets(value: string, path: string, line: number, start: number): Entry[] {
  const open = value[0];
  if (open !== '{' && open !== '[') return [];
  return pieces(value.slice(1, -1), start + 1).flatMap((piece, at) => {
    const match = open === '{' ? /^([A-Za-z0-9_-]+):\s*(.*)$/s.exec(piece.text) : null;
    const key = match?.[1] ?? `${at}`;
    const inner = match === null ? piece.text : (match[2] ?? '');
    const from = piece.at + piece.text.length - inner.length;
    const here = `${path}/${key}`;
    const end = from + inner.length;
    const keyStart = match === null ? -1 : piece.at;
    const entry = { path: here, line, key, value: inner, start: from, end, keyStart, block: false };
    return [entry, ...inBrackets(inner, here, line, from)];
  });
}

type Level = { readonly indent: number; readonly path: string; items: number };

/** Every key and list item of a plant file whose brackets close on the line they open on. */
export function scan(text: string): Entry[] {
  const entries: Entry[] = [];
  const levels: Level[] = [{ indent: -1, path: '', items: 0 }];
  let open = 0;
  const lines = text.split('\n');
  for (const [n, full] of lines.entries()) {
    const line = uncommented(full).trimEnd();
    if (line.trim() === '') continue;
    const inside = open > 0;
    open += depthOf(line);
    if (inside) continue;
    let indent = line.length - line.trimStart().length;
    let rest = line.trimStart();
    const add = (key: string, value: string, keyStart: number, path: string) => {
      const start = line.length - value.length;
      const end = line.length;
      entries.push({ path, line: n + 1, key, value, start, end, keyStart, block: true });
      if (depthOf(value) === 0) entries.push(...inBrackets(value, path, n + 1, start));
    };
    if (rest.startsWith('- ')) {
      const parent = climb(levels, indent);
      rest = rest.slice(2);
      const id = /^id: (\S+)$/.exec(rest)?.[1];
      const name =
        id !== undefined && /(^|\/)differences$/.test(parent.path) ? id : `${parent.items}`;
      parent.items += 1;
      const path = parent.path === '' ? name : `${parent.path}/${name}`;
      add(name, rest, -1, path);
      levels.push({ indent: indent + 1, path, items: 0 });
      indent += 2;
    }
    const match = /^([A-Za-z0-9_-]+):(?:\s+(.*))?$/.exec(rest);
    if (match === null) continue;
    const parent = climb(levels, indent);
    const key = match[1] ?? '';
    const path = parent.path === '' ? key : `${parent.path}/${key}`;
    add(key, match[2] ?? '', indent, path);
    levels.push({ indent, path, items: 0 });
  }
  return entries;
}

function climb(levels: Level[], indent: number): Level {
  while (levels.length > 1 && (levels.at(-1)?.indent ?? -1) >= indent) levels.pop();
  return levels.at(-1) ?? { indent: -1, path: '', items: 0 };
}

const edited = (text: string, line: number, change: (line: string) => readonly string[]): string =>
  text
    .split('\n')
    .flatMap((one, at) => (at === line - 1 ? change(one) : [one]))
    .join('\n');

export const withValue = (text: string, { line, start, end }: Entry, value: string): string =>
  edited(text, line, (one) => [one.slice(0, start) + value + one.slice(end)]);

export const withKey = (text: string, { line, keyStart, key }: Entry, name: string): string =>
  edited(text, line, (one) => [one.slice(0, keyStart) + name + one.slice(keyStart + key.length)]);

export const withLines = (text: string, after: number, lines: readonly string[]): string =>
  edited(text, after, (one) => [one, ...lines]);

export const withoutLine = (text: string, line: number): string => edited(text, line, () => []);

/** A name with one letter wrong. */
export function misspelt(name: string, numbers: Numbers): string {
  const at = 1 + Math.floor(numbers() * Math.max(1, name.length - 1));
  const kind = Math.floor(numbers() * 3);
  if (kind === 0) return `${name.slice(0, at)}q${name.slice(at)}`;
  if (kind === 1 && name.length > 3) return `${name.slice(0, at)}${name.slice(at + 1)}q`;
  return `${name.slice(0, at)}${name[at] ?? 'z'}z${name.slice(at + 1)}`;
}
