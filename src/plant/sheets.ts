// Issued values: whether each figure can be read, and which ones are in force for a machine.

import { readQuantity } from '../quantity/quantity.ts';
import { byIssue, figuresOf, issuedText, withUnit } from '../values/issue.ts';
import { type Fault, must, type Place, should } from './faults.ts';
import type { SheetFile, ValueEntry } from './schema.ts';
import { didYouMean } from './suggest.ts';
import type { FileProblem, IssuedValue } from './types.ts';

export type Sheet = {
  readonly sheet: SheetFile;
  readonly at: (path: string) => Place;
  /** Ids that stand in the file though their entries misfit. */
  readonly known?: readonly string[];
};

export type InForce = {
  readonly values: Readonly<Record<string, IssuedValue>>;
  /** Ids that stood in an earlier issue only, with advice. */
  readonly withdrawn: ReadonlyMap<string, string>;
  readonly problems: readonly FileProblem[];
};

/** The unit whose kind a value's figures must have; null where any unit or a text may stand. */
const UNIT_OF: Readonly<Record<ValueEntry['kind'], string | null>> = {
  torque: 'N.m',
  clearance: 'mm',
  limit: null,
  interval: 'h',
  speed: '1/min',
  time: 'min',
  direction: null,
};

const CALENDAR = /^\d+(\.\d+)? (week|month|year)s?$/;
const FIELDS = ['value', 'min', 'max'] as const;

function figureProblem(
  entry: ValueEntry,
  field: (typeof FIELDS)[number],
): { fault: Fault; got: string; expected: string; why: string } | null {
  const text = entry[field];
  const unit = UNIT_OF[entry.kind];
  if (text === undefined || unit === null) return null;
  if ((entry.kind === 'interval' || entry.kind === 'time') && CALENDAR.test(text)) return null;
  const read = readQuantity(withUnit(text, entry.unit), unit, '');
  if (!read.ok) {
    const [first] = read.problems;
    const told = { expected: first?.expected ?? unit, why: first?.why ?? 'it is no figure' };
    return { fault: 'F6', got: text, ...told };
  }
  const { value } = read.quantity;
  const lowest = entry.kind === 'clearance' ? value >= 0 : value > 0;
  if (lowest) return null;
  const why = `it is ${value < 0 ? 'below nought' : 'nought'}`;
  return { fault: 'F7', got: text, expected: `a ${entry.kind} above nought`, why };
}

/** Misfits inside one sheet, whichever machine it is for. */
export function sheetProblems({ sheet, at }: Sheet): FileProblem[] {
  return Object.entries(sheet.values).flatMap(([id, entry]) => {
    const problems: FileProblem[] = [];
    for (const field of FIELDS) {
      const wrong = figureProblem(entry, field);
      if (wrong === null) continue;
      const { fault, ...told } = wrong;
      problems.push(must(fault, at(`values/${id}/${field}`), told));
    }
    const crossed = crossedProblem(entry, at(`values/${id}/min`));
    if (problems.length === 0 && crossed !== null) problems.push(crossed);
    if (entry.kind === 'torque' && entry.threadCondition === undefined) {
      problems.push(
        should(at(`values/${id}`), {
          got: null,
          expected: 'threadCondition: dry, oiled, anti-seize …',
          why: 'a torque holds for one condition of the thread only',
        }),
      );
    }
    return problems;
  });
}

/** One issue gives a joint, or a kind of fastener of it, one torque: not two. */
export function jointTwiceProblems({ sheet, at }: Sheet): FileProblem[] {
  const torques = Object.entries(sheet.values).filter(([, { kind }]) => kind === 'torque');
  return torques.flatMap(([id, { joint }], n): FileProblem[] => {
    if (joint === undefined) return [];
    const other = torques.slice(0, n).find(([, one]) => meetAt(one.joint, joint));
    if (other === undefined) return [];
    const why = `${other[0]} is for ${other[1].joint} too; which of them holds?`;
    const expected = `one value for ${joint} in issue ${sheet.issue}`;
    return [must('F20', at(`values/${id}/joint`), { got: joint, expected, why })];
  });
}

/** `pump-feet` is all its fasteners; `pump-feet:studs` only those. */
const meetAt = (a: string | undefined, b: string): boolean => {
  const [jointA, partA] = a?.split(':') ?? [];
  const [jointB, partB] = b.split(':');
  return jointA === jointB && (partA === undefined || partB === undefined || partA === partB);
};

function crossedProblem(entry: ValueEntry, place: Place): FileProblem | null {
  const unit = UNIT_OF[entry.kind];
  if (unit === null || entry.min === undefined || entry.max === undefined) return null;
  const min = readQuantity(withUnit(entry.min, entry.unit), unit, '');
  const max = readQuantity(withUnit(entry.max, entry.unit), unit, '');
  if (!min.ok || !max.ok || min.quantity.value <= max.quantity.value) return null;
  const why = `min ${entry.min} is above max ${entry.max}`;
  return must('F20', place, { got: entry.min, expected: `at most ${entry.max}`, why });
}

const bySheet = (a: Sheet, b: Sheet): number => byIssue(a.sheet, b.sheet);

function grouped(sheets: readonly Sheet[]): Map<string, Sheet[]> {
  const groups = new Map<string, Sheet[]>();
  for (const one of sheets) {
    groups.set(one.sheet.sheet, [...(groups.get(one.sheet.sheet) ?? []), one]);
  }
  for (const [id, group] of groups) groups.set(id, [...group].sort(bySheet));
  return groups;
}

/** The same sheet and issue twice: the same figures may stand twice, different ones may not. */
export function clashProblems(sheets: readonly Sheet[]): FileProblem[] {
  const problems: FileProblem[] = [];
  for (const group of grouped(sheets).values()) {
    for (const [n, later] of group.entries()) {
      const first = group.slice(0, n).find(({ sheet }) => sheet.issue === later.sheet.issue);
      if (first === undefined) continue;
      for (const [id, entry] of Object.entries(later.sheet.values)) {
        const other = first.sheet.values[id];
        if (other === undefined || figuresOf(other) === figuresOf(entry)) continue;
        const { file, line } = first.at(`values/${id}`);
        problems.push(
          must('F20', later.at(`values/${id}`), {
            got: entry.value ?? figuresOf(entry),
            expected: `${other.value ?? figuresOf(other)}, as in ${file}:${line}`,
            why: `issue ${later.sheet.issue} of ${later.sheet.sheet} gives ${id} in two ways`,
            remedy: 'give the newer one the next issue',
          }),
        );
      }
    }
  }
  return problems;
}

/** A value in force that names a joint which no machine of its sheet has. */
export function forJointProblems(
  sheets: readonly Sheet[],
  jointsOf: (ids: string) => ReadonlySet<string> | null,
): FileProblem[] {
  const newest = [...grouped(sheets).values()].flatMap((group) => group.at(-1) ?? []);
  return newest.flatMap(({ sheet, at }) => {
    const known = jointsOf(sheet.for);
    if (known === null) return [];
    return Object.entries(sheet.values).flatMap(([id, { joint }]): FileProblem[] => {
      if (joint === undefined || known.has(joint)) return [];
      const place = at(`values/${id}/joint`);
      const expected = `the id of a joint of ${sheet.for}, or joint:fastener`;
      const why = `there is no joint ${joint} on ${sheet.for}`;
      return [must('F9', place, { got: joint, expected, why, remedy: didYouMean(joint, known) })];
    });
  });
}

/** Sheets are for a machine, a type or the whole plant. */
export function forProblems(sheets: readonly Sheet[], known: ReadonlySet<string>): FileProblem[] {
  return sheets
    .filter(({ sheet }) => !known.has(sheet.for))
    .map(({ sheet, at }) =>
      must('F9', at('for'), {
        got: sheet.for,
        expected: 'the id of a machine, a type or the plant',
        why: `there is no machine or type ${sheet.for}`,
        remedy: didYouMean(sheet.for, known),
      }),
    );
}

/** The values in force for whom `ids` name, the least particular first (plant, type, machine). */
export function valuesFor(sheets: readonly Sheet[], ids: readonly string[]): InForce {
  const problems: FileProblem[] = [];
  const values: Record<string, IssuedValue> = {};
  const from = new Map<string, Sheet>();
  const groups = [...grouped(sheets.filter(({ sheet }) => ids.includes(sheet.for))).values()];
  const newest = groups.flatMap((group) => group.at(-1) ?? []);
  const rank = ({ sheet }: Sheet) => ids.indexOf(sheet.for);
  newest.sort((a, b) => bySheet(a, b) || rank(a) - rank(b));
  for (const one of newest) {
    const { sheet, at } = one;
    for (const [id, entry] of Object.entries(sheet.values)) {
      const before = from.get(id);
      const old = before?.sheet.values[id];
      if (before !== undefined && old !== undefined && figuresOf(old) !== figuresOf(entry)) {
        const got = `${sheet.sheet}, issue ${sheet.issue}`;
        const expected = 'one sheet for a value';
        const why = `${before.sheet.sheet} gives ${id} too; the newer one is used`;
        const clash = before.sheet.date === sheet.date && before.sheet.for === sheet.for;
        const told = { got, expected, why };
        const place = at(`values/${id}`);
        problems.push(
          clash
            ? must('F20', place, { ...told, why: `${before.sheet.sheet} of the same day differs` })
            : should(place, told),
        );
      }
      const former = groups.find((group) => group.includes(one))?.at(-2)?.sheet;
      values[id] = issuedValue(id, sheet, former);
      from.set(id, one);
    }
  }
  return { values, withdrawn: withdrawnFrom(groups, values), problems };
}

/** What the issue before said is told beside it, where it said something else. */
function issuedValue(id: string, sheet: SheetFile, former: SheetFile | undefined): IssuedValue {
  const { issue, date, authority, confirm, confirmed } = sheet;
  const entry = sheet.values[id];
  if (entry === undefined) throw new Error(`no ${id} in ${sheet.sheet}, which was asked for it`);
  const before = former?.values[id];
  const was = before === undefined ? null : issuedText(before);
  const changed = was !== null && was !== issuedText(entry) && former !== undefined;
  const told = entry.supersedes === undefined && changed;
  const why = entry.why ?? (changed ? sheet.why : undefined);
  return {
    ...entry,
    ...(told ? { supersedes: { issue: former.issue, value: was } } : {}),
    ...(why === undefined ? {} : { why }),
    id,
    sheet: sheet.sheet,
    issue,
    date,
    authority,
    ...(confirm === undefined ? {} : { confirm }),
    ...(confirmed === undefined ? {} : { confirmed }),
  };
}

function withdrawnFrom(
  groups: readonly (readonly Sheet[])[],
  values: Readonly<Record<string, IssuedValue>>,
): Map<string, string> {
  const withdrawn = new Map<string, string>();
  for (const group of groups) {
    const now = group.at(-1);
    for (const { sheet } of group.slice(0, -1)) {
      for (const id of Object.keys(sheet.values)) {
        // An entry that misfits is there all the same: its own fault is told, once.
        if (now === undefined || now.known?.includes(id) === true) continue;
        if (Object.hasOwn(values, id)) continue;
        const since = `issue ${now.sheet.issue} of ${now.sheet.sheet} (${now.sheet.date})`;
        withdrawn.set(id, `${since} no longer has it; look there for what replaces it`);
      }
    }
  }
  for (const { id, supersedes } of Object.values(values)) {
    if (supersedes === undefined || supersedes.value === id) continue;
    // Mostly the earlier figure stands here; where it is an id, that id is out of force.
    const isId = groups.some((group) =>
      group.some(({ sheet }) => Object.hasOwn(sheet.values, supersedes.value)),
    );
    if (isId) withdrawn.set(supersedes.value, `use ${id}, which supersedes it`);
  }
  return withdrawn;
}
