// Says where every field of a machine came from, and how two machines differ and why.

import { sameData } from './equal.ts';
import type { Machine, Origin, Plant } from './types.ts';

export type ExplainRow = {
  readonly path: string;
  readonly value: unknown;
  /** `position`: the machine's own file, outside its differences. */
  readonly from: 'type' | 'difference' | 'plant' | 'position' | 'sheet';
  /** The id of that type, difference, plant, machine or sheet. */
  readonly id: string;
  readonly why?: string;
  readonly origin?: Omit<Origin, 'path'>;
  readonly state?: 'unknown' | 'removed';
};

export type SideDifference = {
  readonly at: string;
  readonly a: unknown;
  readonly b: unknown;
  readonly why: string;
};

const SECTIONS = [
  'parts',
  'joints',
  'lines',
  'closures',
  'sensors',
  'isolations',
  'targets',
] as const;

const isMap = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export const covers = (at: string, path: string): boolean =>
  path === at || path.startsWith(`${at}/`);

/** Leaves are single fields and whole lists. */
function* leaves(value: unknown, path: string): Generator<readonly [string, unknown]> {
  if (!isMap(value) || Object.keys(value).length === 0) {
    yield [path, value];
    return;
  }
  for (const [key, inner] of Object.entries(value)) yield* leaves(inner, `${path}/${key}`);
}

/** A row for each field of the machine: what it is, and which file or difference gave it. */
export function explain(plant: Plant, machineId: string): ExplainRow[] {
  const machine = plant.machines[machineId];
  if (machine === undefined) return [];
  const origins = new Map(machine.origins.map(({ path, ...origin }) => [path, origin]));
  const given = (path: string): Pick<ExplainRow, 'from' | 'id' | 'why'> => {
    const by = machine.differences.findLast(({ at }) => covers(at, path));
    if (by !== undefined) return { from: 'difference', id: by.id, why: by.why };
    const [section = '', id = ''] = path.split('/');
    if (section === 'lines' || section === 'closures') {
      const own = plant.types[machine.type]?.[section] ?? {};
      if (!Object.hasOwn(own, id)) return { from: 'plant', id: plant.id };
    }
    return { from: 'type', id: machine.type };
  };
  const originOf = (path: string) => {
    const at = [...origins.keys()].find((one) => covers(one, path));
    const origin = at === undefined ? undefined : origins.get(at);
    return origin === undefined ? {} : { origin };
  };
  const rows: ExplainRow[] = (['name', 'type', 'otherSide', 'plate', 'position'] as const)
    .filter((field) => machine[field] !== undefined)
    .map((field) => ({ path: field, value: machine[field], from: 'position', id: machine.id }));
  for (const section of SECTIONS) {
    for (const [id, entry] of Object.entries(machine[section])) {
      for (const [path, value] of leaves(entry, `${section}/${id}`)) {
        rows.push({ path, value, ...given(path), ...originOf(path) });
      }
    }
  }
  for (const path of machine.unknown) {
    rows.push({ path, value: null, ...given(path), ...originOf(path), state: 'unknown' });
  }
  for (const { id, at, why, change } of machine.differences) {
    if (change !== 'remove') continue;
    rows.push({ path: at, value: null, from: 'difference', id, why, state: 'removed' });
  }
  for (const [id, { sheet, issue, date, value, min, max }] of Object.entries(machine.values)) {
    const shown = value ?? ([min, max].filter((one) => one !== undefined).join(' to ') || null);
    const why = `issue ${issue} of ${date}`;
    const row = { path: `values/${id}`, value: shown, from: 'sheet' as const, id: sheet, why };
    rows.push(shown === null ? { ...row, state: 'unknown' } : row);
  }
  return rows;
}

/** What differs between two machines, at the highest path where one lacks or changes something. */
export function differencesBetween(a: Machine, b: Machine): SideDifference[] {
  const found: Omit<SideDifference, 'why'>[] = [];
  const compare = (left: unknown, right: unknown, at: string) => {
    if (sameData(left, right)) return;
    if (!isMap(left) || !isMap(right)) {
      found.push({ at, a: left, b: right });
      return;
    }
    for (const key of new Set([...Object.keys(left), ...Object.keys(right)])) {
      compare(left[key], right[key], `${at}/${key}`);
    }
  };
  for (const section of [...SECTIONS, 'values'] as const) compare(a[section], b[section], section);
  return found.map((one) => ({ ...one, why: reasonFor(a, b, one.at) }));
}

function reasonFor(a: Machine, b: Machine, at: string): string {
  const reasons = new Set<string>();
  for (const difference of [...a.differences, ...b.differences]) {
    const touches = covers(difference.at, at) || covers(at, difference.at);
    if (touches) reasons.add(difference.why);
  }
  if (reasons.size > 0) return [...reasons].join('; ');
  const [section = '', id = ''] = at.split('/');
  if (section === 'values') {
    const sheets = new Set([a, b].flatMap(({ values }) => values[id]?.sheet ?? []));
    return `issued in ${[...sheets].join(' and ')}`;
  }
  return a.type === b.type ? 'not stated' : `${a.typeName} and ${b.typeName} are two types`;
}
