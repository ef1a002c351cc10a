// The bearing face under head or nut: what was given, else the hexagon head and the medium hole.

import type { Problem, Source } from '../quantity/types.ts';
import { entered } from './sheet.ts';
import {
  bearingFromMemory,
  bearingRows,
  headMemory,
  headSource,
  holeMemory,
  holeSource,
} from './tables/bearing.ts';
import type { Thread } from './thread.ts';

export type Bearing = {
  readonly outerMm: number | null;
  readonly holeMm: number | null;
  readonly meanMm: number | null;
  readonly outerSource: Source;
  readonly holeSource: Source;
  /** Either is a default that the input did not state. */
  readonly assumed: boolean;
  readonly problems: readonly Problem[];
};

function rowOf({ form, diameterMm }: Thread) {
  // A thread given by its figures has the head of its diameter, where that is a metric size.
  if (form === 'unified') return undefined;
  const read = bearingRows.find(([d]) => d === diameterMm);
  if (read !== undefined) return { row: read, head: headSource, hole: holeSource };
  const remembered = bearingFromMemory.find(([d]) => d === diameterMm);
  return remembered && { row: remembered, head: headMemory, hole: holeMemory };
}

export function bearingOf(thread: Thread, outer?: number, hole?: number): Bearing {
  const known = rowOf(thread);
  const outerMm = outer ?? known?.row[1] ?? null;
  const holeMm = hole ?? known?.row[2] ?? null;
  const problems: Problem[] = [];
  if (outerMm !== null && holeMm !== null && outerMm <= holeMm) {
    const path = outer === undefined ? 'hole' : 'bearingOuter';
    const got = outer ?? hole ?? null;
    const expected = outer === undefined ? `less than ${outerMm} mm` : `more than ${holeMm} mm`;
    problems.push({ path, got, expected, why: 'nothing would be left for the head to bear on' });
  }
  // A little less than the thread is let pass: figures in inches come rounded.
  if (hole !== undefined && hole < 0.98 * thread.diameterMm) {
    const expected = `at least ${thread.diameterMm} mm`;
    problems.push({ path: 'hole', got: hole, expected, why: 'the bolt does not pass through it' });
  }
  return {
    outerMm,
    holeMm,
    meanMm: outerMm === null || holeMm === null ? null : (outerMm + holeMm) / 2,
    outerSource: outer === undefined && known !== undefined ? known.head : entered,
    holeSource: hole === undefined && known !== undefined ? known.hole : entered,
    assumed: known !== undefined && (outer === undefined || hole === undefined),
    problems,
  };
}
