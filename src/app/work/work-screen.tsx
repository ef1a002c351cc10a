// Work: one step drawn large, and under it the others that are ready. No numbers, no order but
// the one the machine demands.

import { useState } from 'react';
import { beforeOf } from '../../pack/before.ts';
import type { Pack, Phase, Step } from '../../pack/types.ts';
import { nextSteps } from '../../record/next.ts';
import type { JobState } from '../../record/types.ts';
import { AsFoundSheet } from '../as-found/as-found-sheet.tsx';
import { Hunts } from '../as-found/hunts.tsx';
import { BeforeSheet } from '../before/before-sheet.tsx';
import { LookSheet } from '../eyes/look-sheet.tsx';
import { JobSheet } from '../shared/job-sheet.tsx';
import { useVessel } from '../shared/replica.tsx';
import { to } from '../shared/route.ts';
import { useWords } from '../shared/say.tsx';
import { usePackInForce } from '../values/pack-in-force.ts';
import { StepInForce } from '../values/step-in-force.tsx';
import { SupersededHere } from '../values/superseded.tsx';
import { useAwake } from './awake.ts';
import { DoneToHere } from './done-to-here.tsx';
import { OtherSteps } from './other-steps.tsx';
import type { StepSheetProps } from './step-sheet.tsx';
import { Stops } from './stops.tsx';
import { TakeBack } from './take-back.tsx';

export const PROOF_PHASES: readonly Phase[] = ['line-up', 'prove'];

type JobProps = { readonly job: JobState; readonly pack: Pack };

export function useReady({ job, pack }: JobProps): readonly Step[] {
  const { state } = useVessel();
  return nextSteps(state, job.id, pack);
}

export function WorkScreen({ job, pack: kept }: JobProps) {
  const pack = usePackInForce(job, kept);
  useAwake(job.closed === null);
  const { work: w } = useWords();
  const all = useReady({ job, pack });
  const ready = all.filter((step) => !PROOF_PHASES.includes(step.phase));
  const [chosen, setChosen] = useState<string | null>(null);
  const now = ready.find((step) => step.id === chosen) ?? ready[0];
  // Nothing beside a blank list may tell what somebody said before.
  const looks = now?.verb === 'second-look';
  return (
    <JobSheet job={job} pack={pack} title={w.title} quietTitle>
      {job.closed === null ? null : (
        <p>
          {w.jobClosed} <a href={to.job(job.id, 'record')}>{w.toItsRecord}</a>
        </p>
      )}
      {now === undefined ? (
        <NothingReady job={job} />
      ) : (
        <StepNow
          key={now.id}
          job={job}
          pack={pack}
          step={now}
          ready={ready}
          onDone={() => setChosen(null)}
        />
      )}
      <Hunts job={job} />
      <SupersededHere job={job} pack={pack} {...(now === undefined ? {} : { but: now.thing })} />
      {looks ? null : <TakeBack job={job} pack={pack} />}
      {looks ? null : <DoneToHere job={job} pack={pack} />}
      <PaperLink job={job} />
      <TightLink job={job} />
      <Stops job={job} pack={pack} />
      <OtherSteps steps={ready.filter((step) => step !== now)} onChoose={setChosen} />
      {now !== undefined && all.length > ready.length ? (
        <p>
          <a href={to.job(job.id, 'proof')}>{w.readyInProof(all.length - ready.length)}</a>
        </p>
      ) : null}
    </JobSheet>
  );
}

/** Each sort of step in its own sheet; a step is keyed, so that answers never reach another. */
export function StepNow(props: StepSheetProps) {
  if (beforeOf(props.step.thing) !== null) return <BeforeSheet {...props} />;
  if (props.step.verb === 'as-found') return <AsFoundSheet {...props} />;
  const look = props.job.looks.find((each) => each.step === props.step.id);
  if (look !== undefined)
    return <LookSheet job={props.job} look={look} text={props.step.text} onDone={props.onDone} />;
  return <StepInForce {...props} />;
}

function PaperLink({ job }: { readonly job: JobState }) {
  const { paper } = useWords();
  if (job.closed !== null) return null;
  return (
    <p>
      <a className="plain" href={to.job(job.id, 'paper')}>
        {paper.link}
      </a>
    </p>
  );
}

/** Once a joint is made up: before that there is nothing to be checked. */
function TightLink({ job }: { readonly job: JobState }) {
  const { tight } = useWords();
  const made = job.entries.some((entry) => entry.kind === 'joint' && !entry.open);
  if (job.closed !== null || !made) return null;
  return (
    <p>
      <a className="plain" href={to.job(job.id, 'tight')}>
        {tight.link}
      </a>
    </p>
  );
}

function NothingReady({ job }: { readonly job: JobState }) {
  const { work: w } = useWords();
  if (job.closed !== null) return null;
  return (
    <p className="sentence">
      <a className="main-control" href={to.job(job.id, 'record')}>
        {w.nothingLeft}
      </a>
    </p>
  );
}
