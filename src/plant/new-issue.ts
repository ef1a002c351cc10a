// A new issue of a value sheet: judged against the whole plant before it is taken, and written.

import { type Document, isMap, parseDocument } from 'yaml';
import { byIssue, compareIssues, issueOrder, type ValueChange } from '../values/issue.ts';
import { must } from './faults.ts';
import { readPlant } from './read.ts';
import type { SheetFile, ValueEntry } from './schema.ts';
import { nearest } from './suggest.ts';
import type { FileProblem, Plant, PlantText } from './types.ts';
import { isRawMap, readYaml } from './yaml.ts';

type Issue = Plant['sheets'][number];

export type Judged = {
  readonly problems: readonly FileProblem[];
  /** Null while there is a *must*. */
  readonly issue: Issue | null;
  /** The issue in force now; null for a sheet nobody has yet. */
  readonly inForce: Issue | null;
  readonly changes: readonly ValueChange[];
};

export const newestIssue = (plant: Plant, sheet: string): Issue | null =>
  plant.sheets
    .filter((one) => one.sheet === sheet)
    .toSorted(byIssue)
    .at(-1) ?? null;

/** Reads the plant as it would be with the new issue; nothing of it is kept. */
export function judgeIssue(files: PlantText, candidate: PlantText[number]): Judged {
  const none = { issue: null, inForce: null, changes: [] };
  const before = readPlant(files);
  if (before.plant === null) return { ...none, problems: musts(before.problems) };
  const said = headOf(candidate);
  const inForce = said === null ? null : newestIssue(before.plant, said.sheet);
  const wrong =
    said === null
      ? []
      : inForce === null
        ? strange(before.plant, said, candidate)
        : old(inForce, said, candidate);
  if (wrong.length > 0) return { ...none, inForce, problems: wrong };
  const after = readPlant([...files, candidate]);
  const issue = after.plant?.sheets.find(({ file }) => file === candidate.file) ?? null;
  if (issue === null) return { ...none, problems: musts(after.problems) };
  const problems = after.problems.filter(({ file }) => file === candidate.file);
  const changes = compareIssues(inForce ?? { values: {} }, issue);
  return { problems, issue, inForce, changes };
}

const musts = (problems: readonly FileProblem[]) => problems.filter((p) => p.level === 'must');

const placeIn = ({ file, text }: PlantText[number], path: string) => ({
  file,
  line: readYaml(file, text).lines.get(path) ?? 1,
  path,
});

type Head = Pick<SheetFile, 'sheet' | 'issue' | 'date'>;

/** What the text says of itself; null where it cannot be told, which reading then tells. */
function headOf({ file, text }: PlantText[number]): Head | null {
  const { raw } = readYaml(file, text);
  if (!isRawMap(raw)) return null;
  const { sheet, issue, date } = raw;
  const words = typeof sheet === 'string' && typeof issue === 'string' && typeof date === 'string';
  return words ? { sheet, issue, date } : null;
}

/** An issue follows the one in force in number and in date; neither goes back. */
function old(inForce: Issue, issue: Head, candidate: PlantText[number]): FileProblem[] {
  const since = `issue ${inForce.issue} of ${inForce.date} is in force (${inForce.file})`;
  const problems: FileProblem[] = [];
  if (issueOrder(issue.issue, inForce.issue) <= 0)
    problems.push(
      must('F20', placeIn(candidate, 'issue'), {
        got: issue.issue,
        expected: `an issue after ${inForce.issue}`,
        why: since,
      }),
    );
  if (issue.date < inForce.date)
    problems.push(
      must('F20', placeIn(candidate, 'date'), {
        got: issue.date,
        expected: `${inForce.date} or later`,
        why: since,
      }),
    );
  return problems;
}

/** A sheet nobody has is new, unless its name is nearly that of one there is. */
function strange(plant: Plant, issue: Head, candidate: PlantText[number]): FileProblem[] {
  const names = [...new Set(plant.sheets.map(({ sheet }) => sheet))];
  const [near] = nearest(issue.sheet, names);
  if (near === undefined) return [];
  const told = { got: issue.sheet, expected: `one of: ${names.join(', ')}` };
  const why = `there is no sheet ${issue.sheet}`;
  return [
    must('F9', placeIn(candidate, 'sheet'), { ...told, why, remedy: `did you mean ${near}?` }),
  ];
}

/** The file of the new issue stands beside the one before and is named after it. */
export const fileOfIssue = (inForce: Issue | null, { sheet, issue }: SheetFile): string => {
  const before = inForce?.file ?? `values/${sheet}.yaml`;
  const stem = before.replace(/(-issue-[^/]*)?\.ya?ml$/, '');
  return `${stem}-issue-${issue.toLowerCase().replace(/[^a-z0-9]+/g, '-')}.yaml`;
};

const HEAD = ['name', 'for', 'issue', 'date', 'authority', 'why', 'confirm'] as const;
const FIGURES = ['value', 'min', 'max', 'unit'] as const;
const FIELDS = ['name', 'kind', ...FIGURES, 'scope', 'threadCondition', 'joint', 'why'] as const;

/** The text of the issue before with what is new: its comments and its order stay. */
export function textOfIssue(before: string | null, sheet: SheetFile): string {
  const doc = parseDocument(before ?? `sheet: ${sheet.sheet}\n`);
  for (const field of HEAD) setOrDrop(doc, [field], quoted(doc, field, sheet[field]));
  // Somebody confirmed the issue before; this one nobody has yet.
  doc.delete('confirmed');
  if (!isMap(doc.get('values'))) doc.set('values', doc.createNode({}));
  const had = keysOf(doc, ['values']);
  for (const id of had) if (!Object.hasOwn(sheet.values, id)) doc.deleteIn(['values', id]);
  for (const [id, entry] of Object.entries(sheet.values)) {
    if (had.includes(id)) setValue(doc, id, entry);
    else doc.setIn(['values', id], doc.createNode(entry));
  }
  return doc.toString({ lineWidth: 100 });
}

const keysOf = (doc: Document, path: readonly string[]): string[] => {
  const map = doc.getIn(path);
  return isMap(map) ? map.items.map(({ key }) => String(key)) : [];
};

const setOrDrop = (doc: Document, path: readonly string[], value: unknown): void => {
  if (value === undefined) doc.deleteIn(path);
  else if (doc.getIn(path) !== value) doc.setIn(path, value);
};

/** An issue is text, though it be a number. */
function quoted(doc: Document, field: string, value: string | undefined): unknown {
  if (field !== 'issue' || value === undefined) return value;
  const node = doc.createNode(value) as { type?: string };
  node.type = 'QUOTE_DOUBLE';
  return node;
}

/** What is the same stays as it was written; a changed figure takes its old reason with it. */
function setValue(doc: Document, id: string, entry: ValueEntry): void {
  const at = (field: string) => ['values', id, field];
  const held = (field: string) => doc.getIn(at(field));
  const changed = [...FIGURES, 'threadCondition' as const].some(
    (field) => (held(field) ?? undefined) !== entry[field],
  );
  const { supersedes } = entry;
  if (changed) {
    doc.deleteIn(at('supersedes'));
    if (entry.why === undefined) doc.deleteIn(at('why'));
  }
  for (const field of FIELDS) {
    if (field === 'why' && entry.why === undefined) continue;
    setOrDrop(doc, at(field), entry[field]);
  }
  if (supersedes !== undefined) doc.setIn(at('supersedes'), doc.createNode(supersedes));
}
