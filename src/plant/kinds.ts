// Tells which of the four kinds of plant file a text is, and reads it as that.

import type { z } from 'zod';
import { must, type Place } from './faults.ts';
import { placeIn } from './resolve.ts';
import { machineFileSchema, plantFileSchema, sheetFileSchema, typeFileSchema } from './schema.ts';
import { type Shaped, shape } from './shape.ts';
import { nearest } from './suggest.ts';
import type { FileProblem } from './types.ts';
import { keysOf } from './walk.ts';
import { isRawMap, type RawFile, type RawMap } from './yaml.ts';

export const FILE_KINDS = ['plant', 'type', 'machine', 'sheet'] as const;
export type FileKind = (typeof FILE_KINDS)[number];

export const fileSchemas = {
  plant: plantFileSchema,
  type: typeFileSchema,
  machine: machineFileSchema,
  sheet: sheetFileSchema,
} as const;

/** The kind whose fields fit best; a machine names its type too, so one key does not decide. */
export function kindOf(raw: RawMap): FileKind | null {
  const keys = Object.keys(raw);
  const scores = FILE_KINDS.map((kind) => {
    const known = keysOf(fileSchemas[kind]);
    const own = Object.hasOwn(raw, kind) ? (kind === 'type' ? 1.5 : 3) : 0;
    return { kind, score: own + keys.filter((key) => known.includes(key)).length };
  }).sort((a, b) => b.score - a.score);
  const [best] = scores;
  if (best === undefined || best.score < 2) return null;
  const named = FILE_KINDS.some((kind) => Object.hasOwn(raw, kind));
  const nearly = keys.some((key) => nearest(key, FILE_KINDS).length > 0);
  return named || nearly || best.score >= 4 ? best.kind : null;
}

export type Doc<T> = {
  readonly file: RawFile;
  readonly raw: RawMap;
  readonly data: Shaped<T>;
  readonly at: (path: string) => Place;
};

export function readAs<S extends z.ZodType>(
  file: RawFile,
  raw: RawMap,
  schema: S,
): Doc<z.infer<S>> {
  const data = shape(raw, schema, (taken) => (path) => placeIn(file, path, taken.wrapped));
  return { file, raw, data, at: (path) => placeIn(file, path, data.taken.wrapped) };
}

export type Docs = {
  readonly plants: Doc<z.infer<typeof plantFileSchema>>[];
  readonly types: Doc<z.infer<typeof typeFileSchema>>[];
  readonly machines: Doc<z.infer<typeof machineFileSchema>>[];
  readonly sheets: Doc<z.infer<typeof sheetFileSchema>>[];
  readonly problems: FileProblem[];
  /** Files that could not be read at all: what they hold can't be missed elsewhere. */
  readonly unread: string[];
};

export function sortOut(files: readonly RawFile[]): Docs {
  const docs: Docs = { plants: [], types: [], machines: [], sheets: [], problems: [], unread: [] };
  for (const file of files) {
    const { raw } = file;
    docs.problems.push(...file.problems);
    if (raw === null && file.problems.some(({ level }) => level === 'must')) {
      docs.unread.push(file.file);
      continue;
    }
    const kind = isRawMap(raw) ? kindOf(raw) : null;
    if (!isRawMap(raw) || kind === null) {
      docs.unread.push(file.file);
      docs.problems.push(
        must('F8', placeIn(file, '', new Set()), {
          got: isRawMap(raw) ? Object.keys(raw).join(', ') : raw,
          expected: `a map with one of the keys ${FILE_KINDS.join(', ')}`,
          why: 'the file does not say what it describes',
        }),
      );
      continue;
    }
    if (kind === 'plant') docs.plants.push(readAs(file, raw, plantFileSchema));
    else if (kind === 'type') docs.types.push(readAs(file, raw, typeFileSchema));
    else if (kind === 'machine') docs.machines.push(readAs(file, raw, machineFileSchema));
    else docs.sheets.push(readAs(file, raw, sheetFileSchema));
  }
  for (const list of [docs.plants, docs.types, docs.machines, docs.sheets]) {
    docs.problems.push(...list.flatMap(({ data }) => data.problems));
  }
  return docs;
}
