// The twenty faults for which a plant file is refused, each by its plain name (`docs/plant.md`).

import type { FileProblem } from './types.ts';

export const FAULTS = {
  F1: 'the text is not YAML',
  F2: 'the same key or id twice',
  F3: 'a field nobody knows',
  F4: 'the wrong kind of value',
  F5: 'true or false where a word is wanted',
  F6: 'a figure without its unit, or with the wrong one',
  F7: 'a figure that must be above nought',
  F8: 'something needed is missing',
  F9: 'a name that nothing has',
  F10: 'a value that is no longer in force',
  F11: 'a part that no way can free',
  F12: 'a circle',
  F13: 'a way off that leaves a joint',
  F14: 'a gasket that no joint uses',
  F15: 'a bolt that bottoms',
  F16: 'a part not drawn clear of its studs',
  F17: 'holes that do not agree with the fasteners',
  F18: 'a difference that does not fit its type',
  F19: 'a target or an isolation that cannot be carried out',
  F20: 'two that cannot both be right',
} as const;

export type Fault = keyof typeof FAULTS;

/** What stands where: the file, the line in it, and the path inside that file. */
export type Place = { readonly file: string; readonly line: number; readonly path: string };

type Rest = {
  readonly got: unknown;
  readonly expected: string;
  readonly why: string;
  readonly remedy?: string | undefined;
};

function problem(level: FileProblem['level'], place: Place, rest: Rest): FileProblem {
  const { got, expected, why, remedy } = rest;
  const base = { level, ...place, got: got === undefined ? null : got, expected, why };
  return remedy === undefined ? base : { ...base, remedy };
}

export const must = (fault: Fault, place: Place, rest: Rest): FileProblem => ({
  ...problem('must', place, rest),
  fault,
});
export const should = (place: Place, rest: Rest): FileProblem => problem('should', place, rest);
export const note = (place: Place, rest: Rest): FileProblem => problem('note', place, rest);

/** The same problem of a type is met once for each of its machines; it is told once. */
export function toldOnce(problems: readonly FileProblem[]): FileProblem[] {
  const seen = new Set<string>();
  return problems.filter(({ file, line, path, level, fault, why, expected }) => {
    const key = JSON.stringify([file, line, path, level, fault ?? why, expected]);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

const RANK = { must: 0, should: 1, note: 2 } as const;

export const inReadingOrder = (problems: readonly FileProblem[]): FileProblem[] =>
  [...problems].sort(
    (a, b) =>
      RANK[a.level] - RANK[b.level] ||
      (a.file < b.file ? -1 : a.file > b.file ? 1 : 0) ||
      a.line - b.line ||
      (a.path < b.path ? -1 : a.path > b.path ? 1 : 0),
  );
