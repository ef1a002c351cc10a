// The border of every calculation: fields that are ignored, a wrong input as a list of problems.

import type { z } from 'zod';
import type { Problem } from '../quantity/types.ts';

/** Fields that may stand beside any object of the input and say nothing to the calculation. */
export const IGNORED = ['id', 'source', 'how_obtained', 'title', 'note', 'meta'] as const;

/** Besides, at the top of a plain form. */
export const IGNORED_IN_PLAIN = [
  'n',
  'optimum',
  'sequence',
  'answer',
  'kind',
  'plant',
  'convention',
  'nhpp',
  'work',
  'sources',
] as const;

export type Checked<T> =
  | { readonly ok: true; readonly input: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Parses after taking out the ignored fields that the schema itself does not know. */
export function check<T>(schema: z.ZodType<T>, raw: unknown, plain: boolean): Checked<T> {
  const first = schema.safeParse(raw);
  if (first.success) return { ok: true, input: first.data };
  const copy: unknown = structuredClone(raw);
  for (const issue of first.error.issues.flatMap(withInner)) {
    if (issue.code !== 'unrecognized_keys') continue;
    const at = valueAt(copy, issue.path);
    if (!isObject(at)) continue;
    for (const key of issue.keys) {
      if (isIgnored(key, plain && issue.path.length === 0)) delete at[key];
    }
  }
  const second = schema.safeParse(copy);
  if (second.success) return { ok: true, input: second.data };
  return { ok: false, problems: second.error.issues.flatMap((issue) => problemsOf(issue, copy)) };
}

// What a union found wrong with each of its forms stands inside it.
function withInner(issue: z.core.$ZodIssue): readonly z.core.$ZodIssue[] {
  if (issue.code !== 'invalid_union') return [issue];
  const inner = issue.errors.flat().map((one) => ({ ...one, path: [...issue.path, ...one.path] }));
  return [issue, ...inner.flatMap(withInner)];
}

const isIgnored = (key: string, inPlain: boolean): boolean =>
  IGNORED.some((one) => one === key) || (inPlain && IGNORED_IN_PLAIN.some((one) => one === key));

const isObject = (value: unknown): value is Record<PropertyKey, unknown> =>
  typeof value === 'object' && value !== null;

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((at, key) => (isObject(at) ? at[key] : undefined), value);
}

const pathOf = (path: readonly PropertyKey[]): string => path.map(String).join('/');

function problemsOf(issue: z.core.$ZodIssue, raw: unknown): Problem[] {
  const path = pathOf(issue.path);
  const got = valueAt(raw, issue.path) ?? null;
  if (issue.code === 'invalid_union') {
    // Where only one form is of the kind that was given, its own problems say more.
    const ofItsKind = issue.errors.filter((errors) => !errors.some(isOfAnotherKind));
    const [only, ...more] = ofItsKind;
    if (only !== undefined && more.length === 0) {
      return only.flatMap((one) => problemsOf({ ...one, path: [...issue.path, ...one.path] }, raw));
    }
  }
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({
      path: [path, key].filter(Boolean).join('/'),
      got: (isObject(got) ? got[key] : null) ?? null,
      expected: 'no such field',
      why: `the field ${key} is not known here`,
      remedy: 'leave it out, or see `--schema` for the fields there are',
    }));
  }
  if (valueAt(raw, issue.path) === undefined) {
    const expected = expectedOf(issue);
    return [{ path, got, expected, why: 'this field is needed and missing' }];
  }
  const remedy = issue.code === 'custom' ? issue.params?.remedy : undefined;
  const problem = { path, got, expected: expectedOf(issue), why: lowerFirst(issue.message) };
  return [typeof remedy === 'string' ? { ...problem, remedy } : problem];
}

const isOfAnotherKind = ({ code, path }: z.core.$ZodIssue): boolean =>
  path.length === 0 && (code === 'invalid_type' || code === 'invalid_value');

const lowerFirst = (text: string): string => text.slice(0, 1).toLowerCase() + text.slice(1);

function expectedOf(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.expected;
    case 'invalid_value':
      return `one of ${issue.values.map(String).join(', ')}`;
    case 'too_small':
      return `at least ${issue.minimum}`;
    case 'too_big':
      return `at most ${issue.maximum}`;
    case 'invalid_union':
      return [...new Set(issue.errors.flat().map(expectedOf))].join(', or ') || 'another form';
    case 'custom':
      if (typeof issue.params?.expected === 'string') return issue.params.expected;
      return 'a value that can be';
    default:
      return 'a value that can be';
  }
}
