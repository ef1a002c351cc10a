// Counts the cycles of a torque wrench up from its uses on the record.

import type { HeldWrench, Tool } from './tool.ts';

/** One use on the record: which wrench, when, how often it let go. */
export type WrenchUse = { readonly tool: string; readonly at: string; readonly times: number };

/**
 * Cycles since calibration: what the list says, and the uses since that count; without a count
 * the uses since calibration. A use on the very day counts: too many is the safe side. Null where
 * neither day is known.
 */
export function cyclesSince(wrench: HeldWrench, uses: readonly WrenchUse[]): number | null {
  const from = wrench.countedOn ?? wrench.calibratedOn;
  if (from === undefined) return null;
  const since = uses.filter(({ tool, at }) => tool === wrench.id && at.slice(0, 10) >= from);
  return since.reduce((sum, { times }) => sum + times, wrench.cyclesSince ?? 0);
}

/** The tools with their cycles as of all uses given; `on` is the day of this count. */
export function withCycles(
  tools: readonly Tool[],
  uses: readonly WrenchUse[],
  on: string,
): readonly Tool[] {
  return tools.map((tool) => {
    if (tool.kind !== 'wrench') return tool;
    const counted = cyclesSince(tool, uses);
    return counted === null ? tool : { ...tool, cyclesSince: counted, countedOn: on };
  });
}
