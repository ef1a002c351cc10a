// Folds acts and packs to the state of a vessel: pure, the same for any order of the acts.

import { limits } from '../limits.ts';
import { hashOf } from '../quantity/sha.ts';
import { heard } from '../words/heard.ts';
import { foldJob } from './job.ts';
import { order } from './order.ts';
import { effective } from './said.ts';
import { isStart } from './strip.ts';
import { issuesOf } from './superseded.ts';
import type { Folding, JobState, State } from './types.ts';
import { foldMachines, foldVessel } from './vessel.ts';

/** Acts may come in any order, any number of times, and with some missing: those wait. */
export function fold({ acts, packs }: Folding): State {
  if (acts.length > limits.record.actsInState)
    throw new Error(`${acts.length} acts are more than ${limits.record.actsInState}`);
  const vessel = acts[0]?.vessel ?? '';
  const foreign = acts.find((act) => act.vessel !== vessel);
  if (foreign !== undefined)
    throw new Error(`act ${foreign.hash} is of ${foreign.vessel}, not of ${vessel}`);
  const ordered = order(acts);
  const { acts: rows, unknown } = effective(ordered);
  const byId = new Map(packs.map((pack) => [pack.id, pack]));
  const jobIds = new Set(
    rows.filter(({ act }) => isStart(act.kind)).map(({ act }) => act.stream.id),
  );
  const issues = issuesOf(rows);
  const jobs = [...jobIds].sort().flatMap((id): readonly JobState[] => {
    const own = rows.filter(({ act }) => act.stream.kind === 'job' && act.stream.id === id);
    const job = heard(() => foldJob(id, own, byId, ordered.isAncestor, issues));
    return job.value === null ? [] : [{ ...job.value, said: job.said }];
  });
  const { value: machines, said } = heard(() => foldMachines(rows, jobs));
  return {
    vessel,
    said,
    heads: ordered.heads,
    jobs: Object.fromEntries(jobs.map((job) => [job.id, job])),
    ...foldVessel(rows),
    machines,
    issued: issues.issued,
    waiting: ordered.waiting,
    unknown,
  };
}

/** The same on every device that holds the same acts and packs. */
export const stateHash = (state: State): string => hashOf(state);
