// Walks the schema beside the data: what may stand at a path, and taking out `unknown` and origins.

import { z } from 'zod';
import { originSchema } from './schema.ts';
import type { Origin } from './types.ts';
import { isRawMap, itemName, joined, type Raw } from './yaml.ts';

export type Schema = z.core.$ZodType;

export const bare = (schema: Schema): Schema =>
  schema instanceof z.ZodOptional ? bare(schema.unwrap()) : schema;

/** What the schema wants below `schema` at one segment; undefined when nothing may stand there. */
export function below(schema: Schema, segment: string): Schema | undefined {
  const here = bare(schema);
  if (here instanceof z.ZodObject) {
    return Object.hasOwn(here.shape, segment) ? here.shape[segment] : undefined;
  }
  if (here instanceof z.ZodRecord) return here.valueType;
  if (here instanceof z.ZodArray) return here.element;
  if (here instanceof z.ZodTuple) return here.def.items[Number(segment)];
  return undefined;
}

export function schemaAt(schema: Schema, path: readonly PropertyKey[]): Schema | undefined {
  let here: Schema | undefined = schema;
  for (const segment of path) {
    if (here === undefined) return undefined;
    here = below(here, String(segment));
  }
  return here;
}

export const keysOf = (schema: Schema | undefined): readonly string[] => {
  const here = schema === undefined ? undefined : bare(schema);
  return here instanceof z.ZodObject ? Object.keys(here.shape) : [];
};

export const isUnknown = (raw: unknown): boolean => raw === 'unknown';

/** `{value, from, by?, on?}`: a field that says where it came from. */
export const isWrapped = (raw: unknown): raw is { readonly value: Raw; readonly from: Raw } =>
  isRawMap(raw) && Object.hasOwn(raw, 'value') && Object.hasOwn(raw, 'from');

/** What taking out left beside the data. Paths are those of the data after it. */
export type Taken = {
  readonly origins: Origin[];
  readonly unknown: string[];
  /** Paths whose value stood one step deeper, under `value`. */
  readonly wrapped: Set<string>;
  /** Misfits of what says where a field came from; `at` is that field. */
  readonly issues: { readonly issue: z.core.$ZodIssue; readonly at: string }[];
};

export const nothingTaken = (): Taken => ({
  origins: [],
  unknown: [],
  wrapped: new Set(),
  issues: [],
});

function takeOrigin(raw: Raw, path: string, zodPath: PropertyKey[], taken: Taken): void {
  const read = originSchema.safeParse(raw);
  if (!read.success) {
    for (const issue of read.error.issues) {
      taken.issues.push({ issue: { ...issue, path: [...zodPath, ...issue.path] }, at: path });
    }
    return;
  }
  const { from, by, on } = read.data;
  const who = { ...(by === undefined ? {} : { by }), ...(on === undefined ? {} : { on }) };
  taken.origins.push({ path, from, ...who });
}

/** Takes `unknown` and origins out of every optional field; the rest stays as it is. */
export function takeOut(
  raw: Raw,
  schema: Schema,
  taken: Taken,
  path = '',
  zodPath: PropertyKey[] = [],
): Raw {
  const here = bare(schema);
  if (Array.isArray(raw)) {
    return raw.map((item, at) => {
      const inner = below(here, `${at}`);
      if (inner === undefined) return item;
      return takeOut(item, inner, taken, joined(path, itemName(path, item, at)), [...zodPath, at]);
    });
  }
  if (!isRawMap(raw)) return raw;
  const out: Record<string, Raw> = {};
  for (const [key, value] of Object.entries(raw)) {
    const inner = below(here, key);
    const at = joined(path, key);
    const zodAt = [...zodPath, key];
    // What a difference puts in place is read later, as a field of its type.
    if (inner === undefined || bare(inner) instanceof z.ZodUnknown) {
      out[key] = value;
      continue;
    }
    let plain = value;
    if (inner instanceof z.ZodOptional && isWrapped(plain)) {
      takeOrigin(plain, at, zodAt, taken);
      taken.wrapped.add(at);
      plain = plain.value;
    }
    if (inner instanceof z.ZodOptional && isUnknown(plain)) taken.unknown.push(at);
    else out[key] = takeOut(plain, inner, taken, at, zodAt);
  }
  return out;
}
