// What was read before the stop and what was found, in the lines of `job next` and `job open`.

import { baselineAt, positionWords } from '../record/before.ts';
import type { JobState } from '../record/types.ts';

/** What a step of the proof or of giving back is looked at beside: `job next` says it with it. */
export function besideLines(
  job: JobState,
  step: {
    readonly thing: string;
    readonly verb: string;
    readonly asks: readonly { name: string; label: string }[];
  },
): readonly string[] {
  if (step.verb === 'restored') {
    const found = job.foundPositions.find((each) => each.thing === step.thing);
    return found === undefined ? [] : [`    found: ${positionWords(found)} (${found.by})`];
  }
  if (step.thing !== 'proof/running') return [];
  return step.asks.flatMap((ask) =>
    baselineAt(job, ask.name).map(
      (r) => `    ${ask.label}, before the job: ${`${r.value} ${r.unit}`.trim()} at ${r.at}`,
    ),
  );
}

/** Beside the open list: what was read and found, where anything was. */
export function foundLines(job: JobState): readonly string[] {
  const { readings, cannotRun } = job.baseline;
  return [
    ...cannotRun.map((c) =>
      c.of === 'before'
        ? `Before the job it could not run (${c.by}).`
        : `Before the job the other side was not running (${c.by}).`,
    ),
    ...readings.map(
      (r) =>
        `Before the job${r.of === 'before' ? '' : ', other side'}: ${r.label} ` +
        `${`${r.value} ${r.unit}`.trim()} at ${r.at}`,
    ),
    ...job.foundPositions.map((p) => `Found: ${p.thing} ${positionWords(p)} (${p.by})`),
    ...job.asFound.map(
      (f) =>
        `As found: ${f.thing} ${f.grade}; failed: ${f.failed}; ` +
        `${f.hours === null ? 'hours not read' : `at ${f.hours} h`}; pieces missing: ${f.missing}`,
    ),
  ];
}

/** The command that makes a row of the box-up list good: what is only said has its own. */
export const sayOf = (row: { readonly kind: string; readonly thing: string }): string =>
  row.kind === 'as-found' || row.kind === 'accounted'
    ? `${row.kind} JOB${row.kind === 'accounted' ? ` ${row.thing}` : ''}`
    : `put-back JOB ${row.thing}`;
