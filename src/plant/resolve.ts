// Applies a position's differences to its type, and knows for every path which file it came from.

import { z } from 'zod';
import { type Fault, must, type Place } from './faults.ts';
import { type Difference, typeFileSchema } from './schema.ts';
import { didYouMean } from './suggest.ts';
import type { FileProblem } from './types.ts';
import { bare, isWrapped, schemaAt, type Taken } from './walk.ts';
import { isRawMap, joined, type Raw, type RawFile, type RawMap } from './yaml.ts';

/** Where a difference took hold: what it gave, or what it took away. */
export type Laid = { readonly at: string; readonly id: string; readonly removed: boolean };

export type Resolved = {
  readonly raw: RawMap;
  readonly laid: readonly Laid[];
  readonly problems: readonly FileProblem[];
};

/** The place of a path of the file's own data, `value` of an origin included. */
export function placeIn(file: RawFile, path: string, wrapped: ReadonlySet<string>): Place {
  return lined(file, rawPath('', '', path, wrapped));
}

function rawPath(start: string, from: string, path: string, wrapped: ReadonlySet<string>): string {
  const rest = path.slice(from === '' ? 0 : from.length + 1);
  let plain = from;
  let raw = start;
  const segments = rest === '' ? [] : rest.split('/');
  for (const segment of segments) {
    if (wrapped.has(plain)) raw = joined(raw, 'value');
    plain = joined(plain, segment);
    raw = joined(raw, segment);
  }
  return wrapped.has(plain) ? joined(raw, 'value') : raw;
}

/** The line of a path, or of the nearest thing above it that is there. */
function lined(file: RawFile, path: string): Place {
  let at = path;
  while (at !== '' && !file.lines.has(at)) {
    const cut = at.lastIndexOf('/');
    at = cut < 0 ? '' : at.slice(0, cut);
  }
  return { file: file.file, line: file.lines.get(at) ?? 1, path };
}

const covers = (at: string, path: string): boolean => path === at || path.startsWith(`${at}/`);

/** Which difference, if any, a path of the resolved machine rests on. */
export const laidAt = (laid: readonly Laid[], path: string): Laid | undefined =>
  laid.findLast(({ at }) => covers(at, path));

/** Places for a resolved machine: its type's file, or its own where a difference took hold. */
export function placing(typeFile: RawFile, machineFile: RawFile, laid: readonly Laid[]) {
  return (taken: Taken) =>
    (path: string): Place => {
      const by = laidAt(laid, path);
      if (by === undefined) return placeIn(typeFile, path, taken.wrapped);
      const start = `differences/${by.id}`;
      if (by.removed) return lined(machineFile, `${start}/at`);
      return lined(machineFile, rawPath(`${start}/to`, by.at, path, taken.wrapped));
    };
}

type Step = { readonly raw: RawMap; readonly problem?: Misfit };
type Misfit = {
  readonly got: unknown;
  readonly expected: string;
  readonly why: string;
  readonly remedy?: string | undefined;
};

const misfit = (raw: RawMap, problem: Misfit): Step => ({ raw, problem });

/** Entries of a map by id are added and removed; the fields of one entry may always be set. */
function isEntry(path: readonly string[]): boolean {
  const parent = schemaAt(typeFileSchema, path.slice(0, -1));
  return parent !== undefined && bare(parent) instanceof z.ZodRecord;
}

function change(raw: RawMap, difference: Difference, path: readonly string[], done: number): Step {
  const key = path[done];
  if (key === undefined) return { raw };
  const inner = raw[key];
  const there = Object.hasOwn(raw, key) && inner !== undefined;
  const upTo = path.slice(0, done).join('/') || 'the type';
  if (done < path.length - 1) {
    const deeper = isWrapped(inner) && path[done + 1] !== 'value' ? inner.value : inner;
    if (!isRawMap(deeper)) {
      const known = Object.keys(raw);
      if (there && Array.isArray(deeper)) {
        const expected = `${path.slice(0, done + 1).join('/')}, set as a whole`;
        return misfit(raw, { got: difference.at, expected, why: 'a list is not changed in part' });
      }
      const expected = `one of ${upTo}: ${known.join(', ')}`;
      const remedy = didYouMean(key, known);
      return misfit(raw, { got: difference.at, expected, why: `${key} is not there`, remedy });
    }
    const step = change(deeper, difference, path, done + 1);
    const put: Raw = deeper === inner ? step.raw : { ...(inner as RawMap), value: step.raw };
    return { ...step, raw: { ...raw, [key]: put } };
  }
  return last(raw, difference, path, key, there);
}

function last(
  raw: RawMap,
  difference: Difference,
  path: readonly string[],
  key: string,
  there: boolean,
): Step {
  const { at, to } = difference;
  const known = Object.keys(raw);
  const gone = { got: at, expected: `one of: ${known.join(', ')}`, why: `${key} is not there` };
  if (difference.change === 'remove') {
    if (!there) return misfit(raw, { ...gone, remedy: didYouMean(key, known) });
    const { [key]: _, ...others } = raw;
    return { raw: others };
  }
  if (difference.change === 'add' && there) {
    const why = `${key} is there already`;
    return misfit(raw, { got: at, expected: 'a path with nothing at it', why, remedy: 'use set' });
  }
  if (difference.change === 'set' && !there && isEntry(path)) {
    return misfit(raw, { ...gone, remedy: didYouMean(key, known) ?? 'use add' });
  }
  return { raw: { ...raw, [key]: to as Raw } };
}

/** Lays the differences over the type's data, in their order; one that does not fit is left out. */
export function resolve(
  type: RawMap,
  differences: readonly Difference[],
  machineFile: RawFile,
): Resolved {
  const problems: FileProblem[] = [];
  const laid: Laid[] = [];
  let raw = type;
  for (const difference of differences) {
    const { id, at } = difference;
    const start = `differences/${id}`;
    const tell = (fault: Fault, field: string, told: Misfit) =>
      problems.push(must(fault, lined(machineFile, `${start}/${field}`), told));
    if (difference.change !== 'remove' && difference.to === undefined) {
      const why = `nothing says what to ${difference.change}`;
      tell('F8', 'to', { got: null, expected: 'to: what shall stand there', why });
      continue;
    }
    const path = at.split('/');
    if (path.length < 2) {
      const expected = 'a path such as joints/pump-mounting/accesses/from-outboard/clear';
      tell('F18', 'at', { got: at, expected, why: 'it names no part, joint or the like' });
      continue;
    }
    const step = change(raw, difference, path, 0);
    if (step.problem !== undefined) {
      tell('F18', 'at', step.problem);
      continue;
    }
    raw = step.raw;
    laid.push({ at, id, removed: difference.change === 'remove' });
  }
  return { raw, laid, problems };
}
