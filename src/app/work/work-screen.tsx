// Work: one step drawn large, and under it the others that are ready. No numbers, no order but
// the one the machine demands.

import { useState } from 'react';
import type { Pack, Phase, Step } from '../../pack/types.ts';
import { nextSteps } from '../../record/next.ts';
import type { JobState } from '../../record/types.ts';
import { JobSheet } from '../shared/job-sheet.tsx';
import { useVessel } from '../shared/replica.tsx';
import { to } from '../shared/route.ts';
import { useAwake } from './awake.ts';
import { DoneToHere } from './done-to-here.tsx';
import { OtherSteps } from './other-steps.tsx';
import { StepSheet } from './step-sheet.tsx';
import { Stops } from './stops.tsx';
import { TakeBack } from './take-back.tsx';

export const PROOF_PHASES: readonly Phase[] = ['line-up', 'prove'];

type JobProps = { readonly job: JobState; readonly pack: Pack };

export function useReady({ job, pack }: JobProps): readonly Step[] {
  const { state } = useVessel();
  return nextSteps(state, job.id, pack);
}

export function WorkScreen({ job, pack }: JobProps) {
  useAwake(job.closed === null);
  const all = useReady({ job, pack });
  const ready = all.filter((step) => !PROOF_PHASES.includes(step.phase));
  const [chosen, setChosen] = useState<string | null>(null);
  const now = ready.find((step) => step.id === chosen) ?? ready[0];
  return (
    <JobSheet job={job} pack={pack} title="Work">
      {job.closed === null ? null : (
        <p>
          This job is closed. <a href={to.job(job.id, 'record')}>Go to its record</a>
        </p>
      )}
      {now === undefined ? (
        <NothingReady job={job} proofReady={all.length > 0} />
      ) : (
        <StepSheet
          key={now.id}
          job={job}
          pack={pack}
          step={now}
          ready={ready}
          onDone={() => setChosen(null)}
        />
      )}
      <TakeBack job={job} pack={pack} />
      <DoneToHere job={job} pack={pack} />
      <Stops job={job} pack={pack} />
      <OtherSteps steps={ready.filter((step) => step !== now)} onChoose={setChosen} />
      {now !== undefined && all.length > ready.length ? (
        <p>
          <a href={to.job(job.id, 'proof')}>Ready in the proof: {all.length - ready.length}</a>
        </p>
      ) : null}
    </JobSheet>
  );
}

function NothingReady({
  job,
  proofReady,
}: {
  readonly job: JobState;
  readonly proofReady: boolean;
}) {
  if (job.closed !== null) return null;
  return (
    <p className="sentence">
      {proofReady ? (
        <a className="main-control" href={to.job(job.id, 'proof')}>
          Boxed up. Go on to the proof
        </a>
      ) : (
        <a className="main-control" href={to.job(job.id, 'record')}>
          Nothing is left to do here. Go to the record
        </a>
      )}
    </p>
  );
}
