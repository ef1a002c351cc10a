// The log's line on superseded values: how many open jobs hold one, and which.

import { holdingSuperseded } from '../../record/values-used.ts';
import { useVessel } from '../shared/replica.tsx';
import { to } from '../shared/route.ts';
import { useWords } from '../shared/say.tsx';

export function HoldingLine() {
  const { state } = useVessel();
  const { values: w } = useWords();
  const jobs = holdingSuperseded(state);
  if (jobs.length === 0) return null;
  return (
    <p className="line" data-holding={jobs.length}>
      <b>{w.holding(jobs.length)}</b>:{' '}
      {jobs.map((job, i) => (
        <span key={job.id}>
          {i === 0 ? '' : ', '}
          <a href={to.job(job.id, 'work')}>{job.title}</a>
        </span>
      ))}
    </p>
  );
}
