// Values superseded since a pack was made, in lines of text beneath a job.

import { supersededWords, unlooked } from '../record/superseded.ts';
import type { JobState } from '../record/types.ts';

/** What was superseded, with what to say of it; nothing where all was looked at. */
export const supersededLines = (job: JobState): readonly string[] => {
  const rows = job.closed === null ? unlooked(job) : [];
  if (rows.length === 0) return [];
  return [
    'Values superseded since the pack was made:',
    ...rows.flatMap((r) => [
      `  - ${r.thing}: ${supersededWords(r)}`,
      ...(r.reached === null ? [] : ['    the joint was made tight by the value before']),
      r.is === null
        ? `    say: use-anyway JOB "value-looked-at ${r.thing}", or amend with another pack`
        : `    say: value-looked-at JOB ${r.thing}`,
    ]),
  ];
};

/** Of a closed job: what its joints were made by and what has replaced it since. */
export const usedLines = (job: JobState): readonly string[] => {
  const rows = job.closed === null ? [] : job.superseded.filter((r) => r.reached !== null);
  if (rows.length === 0) return [];
  return [
    'Values used here, superseded since:',
    ...rows.map((r) => `  - ${r.thing}: ${supersededWords(r)}`),
  ];
};
