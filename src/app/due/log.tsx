// The page of the log: the watch, the open jobs, the sailings, and hours since last done.

import { tallyDrawing } from '../../drawing/tally.ts';
import type { JobState } from '../../record/types.ts';
import { Drawn } from '../shared/drawn.tsx';
import { useVessel } from '../shared/replica.tsx';
import { to } from '../shared/route.ts';
import { Speaking, useMaking, useWords } from '../shared/say.tsx';
import { Sheet } from '../shared/sheet.tsx';
import { tallyWidth } from '../shared/width.ts';
import { dayWords, stageWords, timeWords } from '../shared/words.ts';
import { HoldingLine } from '../values/holding.tsx';
import { FollowUpsLeft } from './follow-ups.tsx';
import { Hours } from './hours.tsx';
import { Sailings } from './sailings.tsx';
import { Watch } from './watch.tsx';

export function Log() {
  const { replica, state } = useVessel();
  const w = useWords();
  const jobs = Object.values(state.jobs);
  const open = jobs.filter((job) => job.closed === null);
  const closed = jobs.filter((job) => job.closed !== null);
  return (
    <Sheet title={w.log.title(replica.vessel.name)}>
      <Speaking said={state.said}>
        <div className="ruled">
          <Watch />
          <section aria-labelledby="jobs-head">
            <h2 id="jobs-head">{w.log.openJobs}</h2>
            {open.length === 0 ? <p className="line">{w.log.none}</p> : null}
            {open.map((job) => (
              <JobLine key={job.id} job={job} />
            ))}
            <HoldingLine />
            <p className="line">
              <a className="begin" href={to.begin()}>
                {w.log.begin}
              </a>
            </p>
          </section>
          <FollowUpsLeft />
          <Sailings />
          <Hours />
          <p className="line">
            <a href={to.setup()}>{w.sheet.setUp}</a>
          </p>
          {closed.length === 0 ? null : (
            <section aria-labelledby="closed-head">
              <h2 id="closed-head">{w.log.closedJobs}</h2>
              {closed.map((job) => (
                <p className="line" key={job.id}>
                  <a href={to.job(job.id, 'record')}>{job.title}</a>, {stageWords(job, w)}
                </p>
              ))}
            </section>
          )}
          {state.waiting.length + state.unknown.length === 0 ? null : (
            <p className="line">
              {w.log.waiting(state.waiting.length)}
              <br />
              {w.log.unknown(state.unknown.length)}
            </p>
          )}
        </div>
      </Speaking>
    </Sheet>
  );
}

/** The log's own margin line stands left of everything ruled. */
const MARGIN = 13;

function JobLine({ job }: { readonly job: JobState }) {
  const w = useWords();
  return (
    <div className="job-line">
      <p className="line">
        <a href={to.job(job.id, job.stage === 'Record' ? 'record' : 'work')}>
          {job.title}, {dayWords(timeWords(job.startedAt), w)}
        </a>
      </p>
      <p className="line">
        {stageWords(job, w)} · {job.hands.join(', ')}
      </p>
      {job.entries.length === 0 ? null : <JobTally job={job} />}
    </div>
  );
}

function JobTally({ job }: { readonly job: JobState }) {
  const width = tallyWidth() - MARGIN;
  return <Drawn drawing={useMaking()(() => tallyDrawing(job.entries, { width }))} />;
}
