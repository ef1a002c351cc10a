// Reads what a scanner gives of a GS1 code: an element string in either form, or a Digital Link.

import { limits } from '../limits.ts';
import { isDay } from '../quantity/day.ts';
import type { Problem } from '../quantity/types.ts';
import { ELEMENTS, type Element, GTIN_QUALIFIERS } from './tables/gs1-elements.ts';

export type Scanned = {
  readonly elements: readonly {
    readonly ai: string;
    readonly title: string;
    readonly value: string;
  }[];
  /** Fourteen digits, its check digit verified. */
  readonly gtin: string | null;
  readonly batch: string | null;
  readonly serial: string | null;
  readonly madeOn: string | null;
  readonly expiresOn: string | null;
  readonly count: number | null;
};

export type ReadScan =
  | { readonly ok: true; readonly scanned: Scanned }
  | { readonly ok: false; readonly problems: readonly Problem[] };

type Pair = readonly [ai: string, value: string];
type Split = readonly Pair[] | Problem;

const SEPARATOR = '\u001d';

/**
 * `year` is that of the reading: two digits of a year mean the one nearest to it, 49 years back to
 * 50 on. What stands before an element string as the mark of its symbol (`]C1`, `]d2`, `]Q3`) is
 * passed over.
 */
export function readGs1(text: string, year: number): ReadScan {
  const given = text.trim();
  if (given.length > limits.stores.codeLength) {
    const expected = `at most ${limits.stores.codeLength} letters`;
    return refused([fault('', given.length, expected, 'the code is too long')]);
  }
  const split = /^https?:\/\//i.test(given) ? ofLink(given) : ofString(given);
  if (!isSplit(split)) return refused([split]);
  const problems = [...split.flatMap((pair) => wrong(pair, year)), ...together(split)];
  return problems.length > 0 ? refused(problems) : { ok: true, scanned: scannedOf(split, year) };
}

const isSplit = (split: Split): split is readonly Pair[] => Array.isArray(split);
const refused = (problems: readonly Problem[]): ReadScan => ({ ok: false, problems });

const fault = (path: string, got: unknown, expected: string, why: string): Problem => ({
  path,
  got,
  expected,
  why,
});

const elementOf = (ai: string): Element | undefined => ELEMENTS.find((one) => one.ai === ai);

/** Modulo 10, weights 3 and 1 from the right, the last figure being the check digit. */
export function checkDigit(body: string): number {
  const sum = [...body].reverse().reduce((all, figure, at) => {
    return all + Number(figure) * (at % 2 === 0 ? 3 : 1);
  }, 0);
  return (10 - (sum % 10)) % 10;
}

export const isKey = (digits: string): boolean =>
  /^\d+$/.test(digits) && checkDigit(digits.slice(0, -1)) === Number(digits.at(-1));

function ofString(given: string): Split {
  const bare = given.replace(/^\](?:C1|d2|Q3|e0|J1)/, '');
  return bare.startsWith('(') ? ofBrackets(bare) : ofFigures(bare);
}

/** `(01)09521234543213(10)ABC123`. */
function ofBrackets(text: string): Split {
  const pairs: Pair[] = [];
  let rest = text;
  while (rest !== '') {
    const [all = '', ai = '', value = ''] = /^\((\d{2,4})\)([^(]*)/.exec(rest) ?? [];
    if (all === '') return fault('', rest, '(two to four figures) and its data', NO_CODE);
    pairs.push([ai, value]);
    rest = rest.slice(all.length);
  }
  return pairs;
}

const NO_CODE = 'this is no GS1 code';

/** `010952123454321310ABC123<FNC1>17261231`: what has no fixed length ends at a separator. */
function ofFigures(text: string): Split {
  const pairs: Pair[] = [];
  let rest = text.replace(new RegExp(`^${SEPARATOR}`), '');
  if (rest === '') return fault('', text, 'an element string', NO_CODE);
  while (rest !== '') {
    const found = ELEMENTS.find(({ ai }) => rest.startsWith(ai));
    if (found === undefined) {
      const known = ELEMENTS.map(({ ai }) => ai).join(', ');
      return fault('', rest.slice(0, 4), `an element that begins with ${known}`, NO_CODE);
    }
    const data = rest.slice(found.ai.length);
    const cut = data.indexOf(SEPARATOR);
    const end = found.fixed ? found.length : cut < 0 ? data.length : cut;
    pairs.push([found.ai, data.slice(0, end)]);
    rest = data.slice(end).replace(new RegExp(`^${SEPARATOR}`), '');
  }
  return pairs;
}

/** `https://id.gs1.org/01/09521234543213/10/ABC123?17=261231` at any host. */
function ofLink(given: string): Split {
  const [address = '', query = ''] = given.replace(/#.*$/, '').split('?', 2);
  const path = address
    .replace(/^https?:\/\/[^/]*/i, '')
    .split('/')
    .filter((part) => part !== '');
  const at = path.findIndex((part, index) => part === '01' && path[index + 1] !== undefined);
  if (at < 0) return fault('', given, 'a link with /01/ and a GTIN in it', 'it names no GTIN');
  const pairs: Pair[] = [];
  let rank = -1;
  for (let index = at; index < path.length; index += 2) {
    const ai = path[index] ?? '';
    const value = unescaped(path[index + 1] ?? '');
    const place = ai === '01' ? -1 : GTIN_QUALIFIERS.indexOf(ai);
    if (value === null || (index > at && place <= rank)) {
      const expected = `after the GTIN only ${GTIN_QUALIFIERS.join(', ')}, in this order`;
      return fault('', `/${ai}/${path[index + 1] ?? ''}`, expected, 'it may not stand here');
    }
    rank = place;
    // In a link a GTIN may be shorter; it is filled up with noughts on the left.
    pairs.push([ai, ai === '01' && /^\d{8,14}$/.test(value) ? value.padStart(14, '0') : value]);
  }
  for (const part of query.split(/[&;]/)) {
    const [ai = '', raw = ''] = part.split('=', 2);
    // Anything that is no element is the link's own affair.
    if (!/^\d{2,4}$/.test(ai)) continue;
    const value = unescaped(raw);
    if (value === null) return fault('', raw, 'text as a link writes it', 'it is cut off');
    pairs.push([ai, value]);
  }
  return pairs;
}

function unescaped(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
}

/** Letters that an element may hold: the 82 of the standard, no space. */
const LETTERS = /^[!"%&'()*+,\-./0-9:;<=>?A-Z_a-z]+$/;

function wrong([ai, value]: Pair, year: number): readonly Problem[] {
  const element = elementOf(ai);
  const path = `(${ai})`;
  if (element === undefined) {
    const known = ELEMENTS.map((one) => one.ai).join(', ');
    return [fault(path, value, `one of ${known}`, 'this element is not read here')];
  }
  const { digits, length, fixed, check, title } = element;
  const what = digits ? 'figures' : 'letters';
  const expected = fixed ? `${length} ${what}` : `1 to ${length} ${what}`;
  const long = fixed ? value.length !== length : value.length < 1 || value.length > length;
  if (long || !(digits ? /^\d+$/ : LETTERS).test(value)) {
    return [fault(path, value, expected, `this is no ${title}`)];
  }
  if (check === 'key' && !isKey(value)) {
    const right = `${value.slice(0, -1)}${checkDigit(value.slice(0, -1))}`;
    return [fault(path, value, right, 'its check digit is wrong: it was misread or mistyped')];
  }
  if (check === 'date' && dayOf(value, year) === null) {
    return [fault(path, value, 'year, month and day, as 261231', 'it is no day of the calendar')];
  }
  return [];
}

/** The same element twice with two values can't both be true. */
function together(pairs: readonly Pair[]): readonly Problem[] {
  return pairs.flatMap(([ai, value], at) => {
    const before = pairs.findIndex(([other]) => other === ai);
    const first = pairs[before]?.[1];
    if (before === at || first === value) return [];
    return [fault(`(${ai})`, value, String(first), 'it stands twice and differs')];
  });
}

/** Nearest century to the year of the reading; day 00 is the last of the month. */
export function dayOf(value: string, year: number): string | null {
  const [yy, mm, dd] = [value.slice(0, 2), value.slice(2, 4), value.slice(4, 6)];
  const base = Math.floor(year / 100) * 100 + Number(yy);
  const apart = Number(yy) - (year % 100);
  const full = apart > 50 ? base - 100 : apart < -49 ? base + 100 : base;
  if (dd !== '00') return isDay(`${full}-${mm}-${dd}`) ? `${full}-${mm}-${dd}` : null;
  const last = ['31', '30', '29', '28'].find((day) => isDay(`${full}-${mm}-${day}`));
  return last === undefined ? null : `${full}-${mm}-${last}`;
}

function scannedOf(pairs: readonly Pair[], year: number): Scanned {
  const of = (ai: string): string | null => pairs.find(([one]) => one === ai)?.[1] ?? null;
  const day = (ai: string): string | null => {
    const value = of(ai);
    return value === null ? null : dayOf(value, year);
  };
  const count = of('30') ?? of('37');
  return {
    elements: pairs.map(([ai, value]) => ({ ai, title: elementOf(ai)?.title ?? ai, value })),
    gtin: of('01') ?? of('02'),
    batch: of('10'),
    serial: of('21'),
    madeOn: day('11'),
    expiresOn: day('17'),
    count: count === null ? null : Number(count),
  };
}
