// The page of the log: the watch, the open jobs, the sailings, and hours since last done.

import { tallyDrawing } from '../../drawing/tally.ts';
import type { JobState } from '../../record/types.ts';
import { Drawn } from '../shared/drawn.tsx';
import { useVessel } from '../shared/replica.tsx';
import { to } from '../shared/route.ts';
import { Sheet } from '../shared/sheet.tsx';
import { tallyWidth } from '../shared/width.ts';
import { dayWords, stageWords, timeWords } from '../shared/words.ts';
import { Hours } from './hours.tsx';
import { Sailings } from './sailings.tsx';
import { Watch } from './watch.tsx';

export function Log() {
  const { replica, state } = useVessel();
  const jobs = Object.values(state.jobs);
  const open = jobs.filter((job) => job.closed === null);
  const closed = jobs.filter((job) => job.closed !== null);
  return (
    <Sheet title={`Log of ${replica.vessel.name}`}>
      <div className="ruled">
        <Watch />
        <section aria-labelledby="jobs-head">
          <h2 id="jobs-head">Open jobs</h2>
          {open.length === 0 ? <p className="line">None.</p> : null}
          {open.map((job) => (
            <JobLine key={job.id} job={job} />
          ))}
          <p className="line">
            <a className="begin" href={to.begin()}>
              Begin a job
            </a>
          </p>
        </section>
        <Sailings />
        <Hours />
        {closed.length === 0 ? null : (
          <section aria-labelledby="closed-head">
            <h2 id="closed-head">Closed jobs</h2>
            {closed.map((job) => (
              <p className="line" key={job.id}>
                <a href={to.job(job.id, 'record')}>{job.title}</a>, {stageWords(job)}
              </p>
            ))}
          </section>
        )}
        {state.waiting.length + state.unknown.length === 0 ? null : (
          <p className="line">
            {state.waiting.length} entries wait for one that has not arrived.
            <br />
            {state.unknown.length} are of a kind not known here. All are kept.
          </p>
        )}
      </div>
    </Sheet>
  );
}

/** The log's own margin line stands left of everything ruled. */
const MARGIN = 13;

function JobLine({ job }: { readonly job: JobState }) {
  return (
    <div className="job-line">
      <p className="line">
        <a href={to.job(job.id, job.stage === 'Record' ? 'record' : 'work')}>
          {job.title}, {dayWords(timeWords(job.startedAt))}
        </a>
      </p>
      <p className="line">
        {stageWords(job)} · {job.hands.join(', ')}
      </p>
      {job.entries.length === 0 ? null : <JobTally job={job} />}
    </div>
  );
}

function JobTally({ job }: { readonly job: JobState }) {
  return <Drawn drawing={tallyDrawing(job.entries, { width: tallyWidth() - MARGIN })} />;
}
