// Checks data against a schema, tells every misfit at its place, leaves out only what misfits.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { type Fault, must, type Place } from './faults.ts';
import { originSchema } from './schema.ts';
import { didYouMean } from './suggest.ts';
import type { FileProblem } from './types.ts';
import { bare, keysOf, nothingTaken, type Schema, schemaAt, type Taken, takeOut } from './walk.ts';
import { isRawMap, itemName, joined, type Raw } from './yaml.ts';

type Issue = z.core.$ZodIssue;

export type Shaped<T> = {
  /** What fits; null when the file's own fields do not. */
  readonly value: T | null;
  readonly taken: Taken;
  readonly problems: readonly FileProblem[];
  /** Something was left out: what rests on all of it can't be judged. */
  readonly mended: boolean;
};

/** A zod path as text, with ids for the items of `differences`. */
export function pathText(raw: Raw, path: readonly PropertyKey[]): string {
  let text = '';
  let here: unknown = raw;
  for (const segment of path) {
    const list = Array.isArray(here);
    const next: unknown = list
      ? (here as unknown[])[Number(segment)]
      : isRawMap(here)
        ? here[String(segment)]
        : undefined;
    text = joined(text, list ? itemName(text, next, Number(segment)) : String(segment));
    here = next;
  }
  return text;
}

function valueAt(raw: Raw, path: readonly PropertyKey[]): Raw | undefined {
  let here: Raw | undefined = raw;
  for (const segment of path) {
    if (Array.isArray(here)) here = here[Number(segment)];
    else if (isRawMap(here)) here = here[String(segment)];
    else return undefined;
  }
  return here;
}

const KINDS: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'a map of fields',
  record: 'a map, each entry under its id',
  array: 'a list',
  tuple: 'a list of fixed length',
};

const kindOf = (raw: unknown): string =>
  raw === null ? 'nothing' : Array.isArray(raw) ? 'a list' : (KINDS[typeof raw] ?? typeof raw);

const unitAt = (schema: Schema | undefined): string | undefined => {
  const here = schema === undefined ? undefined : bare(schema);
  const meta = here instanceof z.ZodType ? here.meta() : undefined;
  if (meta?.figure === true) return 'and its unit';
  return typeof meta?.unit === 'string' ? meta.unit : undefined;
};

type Told = { fault: Fault; expected: string; why: string; remedy?: string | undefined };

function wrongType(issue: Issue, got: Raw | undefined, at: Schema | undefined): Told {
  const kind = issue.code === 'invalid_type' ? issue.expected : '';
  const expected = KINDS[kind] ?? kind;
  const unit = unitAt(at);
  const field = String(issue.path.at(-1) ?? 'this');
  if (got === undefined) {
    return { fault: 'F8', expected: `${field}: ${expected}`, why: `${field} is not there` };
  }
  if (got === null) {
    const why = 'nothing stands after the colon';
    return { fault: 'F8', expected, why, remedy: 'write it, or the word unknown where it may be' };
  }
  if (unit !== undefined && typeof got === 'number') {
    const why = 'its unit is missing';
    return {
      fault: 'F6',
      expected: 'a figure with its unit',
      why,
      remedy: `write ${got} ${unit}?`,
    };
  }
  if (kind === 'string' && typeof got === 'boolean') return switched(expected);
  const remedy =
    kind === 'string' && typeof got === 'number'
      ? `write it in quotes: "${got}"`
      : kind === 'boolean'
        ? 'write true or false'
        : undefined;
  return { fault: 'F4', expected, why: `it is ${kindOf(got)}`, remedy };
}

const switched = (expected: string): Told => ({
  fault: 'F5',
  expected,
  why: 'true and false are no words: on and off become that in many programs',
  remedy: 'write the word in quotes: "on" or "off"',
});

function wrongChoice(values: readonly unknown[], got: Raw | undefined, field: string): Told {
  const expected = values.join(', ');
  if (got === undefined) {
    return { fault: 'F8', expected: `${field}: ${expected}`, why: `${field} is not there` };
  }
  if (got === null) return { fault: 'F8', expected, why: 'nothing stands after the colon' };
  if (typeof got === 'boolean') return switched(expected);
  const names = values.map(String);
  return { fault: 'F4', expected, why: 'it is none of these', remedy: didYouMean(got, names) };
}

function tell(issue: Issue, got: Raw | undefined, at: Schema | undefined): Told {
  const field = String(issue.path.at(-1) ?? 'this');
  switch (issue.code) {
    case 'invalid_type':
      return wrongType(issue, got, at);
    case 'invalid_value':
      return wrongChoice(issue.values, got, field);
    case 'too_small': {
      if (issue.origin === 'string') return { fault: 'F8', expected: 'a text', why: 'it is empty' };
      if (issue.origin !== 'number' && issue.origin !== 'int') {
        return { fault: 'F8', expected: `at least ${issue.minimum}`, why: 'there are too few' };
      }
      const expected = `${issue.minimum} or more`;
      const why = `it is ${Number(got) < 0 ? 'below nought' : 'nought'}`;
      return { fault: 'F7', expected, why };
    }
    case 'too_big':
      return { fault: 'F4', expected: `at most ${issue.maximum}`, why: 'it is too large' };
    case 'invalid_format':
      return { fault: 'F4', expected: issue.message, why: 'it is not written so' };
    case 'invalid_key': {
      const inner = issue.issues[0];
      const choices = inner?.code === 'invalid_value' ? inner.values.map(String) : [];
      const expected = choices.length > 0 ? choices.join(', ') : 'a short word in a-z, 0-9 and -';
      const remedy = didYouMean(field, choices);
      return { fault: 'F4', expected, why: `${field} can't be an id here`, remedy };
    }
    case 'invalid_union':
      return { fault: 'F4', expected: choicesIn(issue), why: `it is ${kindOf(got ?? null)}` };
    case 'custom': {
      const { fault, expected, remedy } = issue.params ?? {};
      return {
        fault: fault === 'F7' ? 'F7' : fault === 'F20' ? 'F20' : 'F6',
        expected: String(expected),
        why: issue.message,
        remedy: typeof remedy === 'string' ? remedy : undefined,
      };
    }
    default:
      return { fault: 'F4', expected: issue.message, why: 'it does not fit' };
  }
}

type Union = Extract<Issue, { code: 'invalid_union' }>;

/** Of a choice of shapes, the misfits of the one that was most nearly written. */
function likeliest(issue: Union): Issue[] {
  const inside = issue.errors.filter((issues) => issues.every(isInside));
  const [best] = inside.toSorted((a, b) => a.length - b.length);
  return (best ?? []).map((one) => ({ ...one, path: [...issue.path, ...one.path] }));
}

const isInside = (issue: Issue): boolean =>
  issue.path.length > 0 || issue.code === 'unrecognized_keys';

/** What each shape of a choice would be, in words. */
const choicesIn = (issue: Union): string =>
  issue.errors
    .flatMap(([first]) => {
      if (first?.code === 'invalid_type') return KINDS[first.expected] ?? first.expected;
      return first?.code === 'invalid_value' ? first.values.map(String) : [];
    })
    .join(' or ');

type PlaceOf = (path: string) => Place;

function problemsOf(issue: Issue, schema: Schema, raw: Raw, placeOf: PlaceOf): FileProblem[] {
  const ofOrigin = schema === originSchema;
  const at = ofOrigin ? schemaAt(schema, issue.path.slice(-1)) : schemaAt(schema, issue.path);
  if (issue.code === 'unrecognized_keys') {
    const known = keysOf(ofOrigin ? schema : at);
    return issue.keys.map((key) =>
      must('F3', placeOf(pathText(raw, [...issue.path, key])), {
        got: key,
        expected: known.length === 0 ? 'no such field' : `one of: ${known.join(', ')}`,
        why: `no field ${key} is known here`,
        remedy: didYouMean(key, known),
      }),
    );
  }
  if (issue.code === 'invalid_union') {
    const inner = likeliest(issue);
    if (inner.length > 0) return inner.flatMap((one) => problemsOf(one, schema, raw, placeOf));
  }
  const got = valueAt(raw, issue.path);
  const isKey = issue.code === 'invalid_key';
  const { fault, ...told } = tell(issue, got, at);
  const text = pathText(raw, issue.path);
  return [must(fault, placeOf(text), { got: isKey ? String(issue.path.at(-1)) : got, ...told })];
}

/** A copy without what stands at `path`; a list goes as a whole, its items lean on another. */
function without(raw: Raw, path: readonly PropertyKey[]): Raw {
  const [first, ...rest] = path;
  if (first === undefined || !isRawMap(raw)) return raw;
  const key = String(first);
  const inner = raw[key];
  const { [key]: _, ...others } = raw;
  if (rest.length === 0 || !isRawMap(inner)) return others;
  return { ...raw, [key]: without(inner, rest) };
}

function mend(raw: Raw, issues: readonly Issue[]): Raw {
  let mended = raw;
  for (const issue of issues) {
    if (issue.code === 'unrecognized_keys') {
      for (const key of issue.keys) mended = without(mended, [...issue.path, key]);
      continue;
    }
    const missing = valueAt(mended, issue.path) === undefined;
    mended = without(mended, missing ? issue.path.slice(0, -1) : issue.path);
  }
  return mended;
}

/** Fits `raw` to `schema`; every misfit becomes a problem, what fits is kept. */
export function shape<S extends z.ZodType>(
  raw: Raw,
  schema: S,
  placing: (taken: Taken) => PlaceOf,
): Shaped<z.infer<S>> {
  const taken = nothingTaken();
  const plain = takeOut(raw, schema, taken);
  const placeOf = placing(taken);
  const first = schema.safeParse(plain);
  const ofOrigins = taken.issues.flatMap(({ issue, at }) => {
    const wrapped = new Set(taken.wrapped);
    wrapped.delete(at);
    return problemsOf(issue, originSchema, raw, placing({ ...taken, wrapped }));
  });
  const ofData = first.success
    ? []
    : first.error.issues.flatMap((issue) => problemsOf(issue, schema, plain, placeOf));
  const problems = [...ofOrigins, ...ofData];
  const done = { taken, problems, mended: problems.length > 0 };
  if (first.success) return { value: first.data, ...done };
  let issues: readonly Issue[] = first.error.issues;
  let rest = plain;
  for (let round = 0; round < limits.plant.mendingRounds; round++) {
    const before = rest;
    rest = mend(rest, issues);
    if (rest === before || !isRawMap(rest)) break;
    const again = schema.safeParse(rest);
    if (again.success) return { value: again.data, ...done };
    issues = again.error.issues;
  }
  return { value: null, ...done };
}
