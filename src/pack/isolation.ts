// The closures of one job as a named person listed them; nothing here is worked out from lines.

import { LIQUIDS } from '../plant/schema.ts';
import type { Machine } from '../plant/types.ts';
import type { PackRequest } from './types.ts';

export type Isolation = {
  readonly stated: boolean;
  readonly by: string | null;
  readonly on: string | null;
  readonly closures: readonly { readonly closure: string; readonly position: string }[];
  readonly drains: readonly string[];
  readonly proveAt: string | null;
  readonly vents: readonly string[];
  readonly prime: string | null;
  /** Tag numbers from 1, one for each place a closure can be moved from. */
  readonly tags: readonly {
    readonly n: number;
    readonly closure: string;
    readonly station: string;
  }[];
};

export const isolationOf = (machine: Machine, request: PackRequest, key: string): Isolation => {
  const listed = request.closures ?? machine.isolations[key];
  if (listed === undefined)
    return {
      stated: false,
      by: null,
      on: null,
      closures: [],
      drains: [],
      proveAt: null,
      vents: [],
      prime: null,
      tags: [],
    };
  const tags = listed.closures
    .flatMap(({ closure }) => {
      const stations = machine.closures[closure]?.stations ?? [];
      return (stations.length > 0 ? stations : ['at the closure']).map((station) => ({
        closure,
        station,
      }));
    })
    .map((tag, i) => ({ n: i + 1, ...tag }));
  const drains = [...(listed.drains ?? [])];
  const proveAt = listed.proveAt ?? null;
  if (proveAt !== null && !drains.includes(proveAt)) drains.unshift(proveAt);
  return {
    stated: true,
    by: listed.by,
    on: listed.on,
    closures: listed.closures,
    drains,
    proveAt,
    vents: listed.vents ?? [],
    prime: listed.prime ?? null,
    tags,
  };
};

/** When a closure is given back: water for the test, turning for the hand turn, then start. */
export const givenBackFor = (machine: Machine, closureId: string): 'water' | 'turn' | 'start' => {
  if (isWaterSide(machine, closureId)) return 'water';
  return machine.closures[closureId]?.kind === 'turning gear' ? 'turn' : 'start';
};

/** Whether a closure keeps a liquid back. */
export const isWaterSide = (machine: Machine, closureId: string): boolean => {
  const closure = machine.closures[closureId];
  if (closure === undefined) return false;
  if (closure.kind === 'sea valve') return true;
  const medium = closure.line === undefined ? undefined : machine.lines[closure.line]?.medium;
  return medium !== undefined && LIQUIDS.includes(medium);
};
