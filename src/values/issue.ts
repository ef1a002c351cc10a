// Issues of a value sheet: which is the newer, what one says exactly, and what another changed.

import type { SheetFile, ValueEntry } from './schema.ts';

export type IssueMark = { readonly issue: string; readonly date: string };

/** Numbers go by size, anything else by its letters. */
export function issueOrder(a: string, b: string): number {
  const gap = Number(a) - Number(b);
  if (Number.isFinite(gap) && gap !== 0) return gap;
  return a < b ? -1 : a > b ? 1 : 0;
}

/** The older first: by date, issues of one day by their number. */
export const byIssue = (a: IssueMark, b: IssueMark): number =>
  (a.date < b.date ? -1 : a.date > b.date ? 1 : 0) || issueOrder(a.issue, b.issue);

type Figures = Pick<ValueEntry, 'value' | 'min' | 'max' | 'unit'>;

/** A unit is added only where the figure stands without one. */
export const withUnit = (text: string, unit: string | undefined): string =>
  unit === undefined || /[^\d.eE+\-−\s]/.test(text) ? text : `${text} ${unit}`;

/** Exactly what was issued, never re-rounded or converted: `35.4 lbf.ft`, `1.1 bar to 2.2 bar`. */
export function issuedText({ value, min, max, unit }: Figures): string | null {
  if (value !== undefined) return withUnit(value, unit);
  if (min !== undefined && max !== undefined)
    return `${withUnit(min, unit)} to ${withUnit(max, unit)}`;
  if (min !== undefined) return `at least ${withUnit(min, unit)}`;
  if (max !== undefined) return `at most ${withUnit(max, unit)}`;
  return null;
}

/** The figures alone, as one text that two entries can be compared by. */
export const figuresOf = ({ value, min, max, unit }: Figures): string =>
  JSON.stringify([value, min, max, unit]);

/** A torque holds for one condition of the thread; without it nobody can use it as issued. */
export const isIncomplete = ({ kind, threadCondition }: ValueEntry): boolean =>
  kind === 'torque' && threadCondition === undefined;

/** What an issue changed of one value. A changed thread condition changes the value too. */
export type ValueChange = {
  readonly id: string;
  readonly name: string;
  readonly change: 'changed' | 'added' | 'withdrawn';
  readonly was: string | null;
  readonly is: string | null;
  readonly wasCondition: string | null;
  readonly isCondition: string | null;
  /** Null where nobody said why. */
  readonly why: string | null;
};

type Issued = Pick<SheetFile, 'values'> & Partial<Pick<SheetFile, 'why'>>;

const side = (entry: ValueEntry | undefined) => ({
  shown: entry === undefined ? null : issuedText(entry),
  condition: entry?.threadCondition ?? null,
});

/** Changes from one issue to another, in the order of the newer; the withdrawn stand last. */
export function compareIssues(older: Issued, newer: Issued): readonly ValueChange[] {
  const gone = Object.keys(older.values).filter((id) => !Object.hasOwn(newer.values, id));
  return [...Object.keys(newer.values), ...gone].flatMap((id): ValueChange[] => {
    const before = Object.hasOwn(older.values, id) ? older.values[id] : undefined;
    const after = Object.hasOwn(newer.values, id) ? newer.values[id] : undefined;
    const was = side(before);
    const is = side(after);
    if (was.shown === is.shown && was.condition === is.condition) return [];
    const change = before === undefined ? 'added' : after === undefined ? 'withdrawn' : 'changed';
    return [
      {
        id,
        name: (after ?? before)?.name ?? id,
        change,
        was: was.shown,
        is: is.shown,
        wasCondition: was.condition,
        isCondition: is.condition,
        why: whyOf(before, after) ?? newer.why ?? null,
      },
    ];
  });
}

/** The reason that stood there before explains an earlier change, not this one. */
const whyOf = (
  before: ValueEntry | undefined,
  after: ValueEntry | undefined,
): string | undefined => (after?.why === before?.why ? undefined : after?.why);
