// Proof: line up, look, turn, start, run. What is owed, what was read, the verdict, follow-ups.

import { useState } from 'react';
import type { Pack } from '../../pack/types.ts';
import type { JobState } from '../../record/types.ts';
import { Plain } from '../shared/controls.tsx';
import { JobSheet } from '../shared/job-sheet.tsx';
import { readingWords } from '../shared/names.ts';
import { Person, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { to } from '../shared/route.ts';
import { useAwake } from '../work/awake.ts';
import { OtherSteps } from '../work/other-steps.tsx';
import { StepSheet } from '../work/step-sheet.tsx';
import { Stops } from '../work/stops.tsx';
import { TakeBack } from '../work/take-back.tsx';
import { PROOF_PHASES, useReady } from '../work/work-screen.tsx';

type JobProps = { readonly job: JobState; readonly pack: Pack };

export function ProofScreen({ job, pack }: JobProps) {
  useAwake(job.closed === null);
  const all = useReady({ job, pack });
  const ready = all.filter((step) => PROOF_PHASES.includes(step.phase));
  const [chosen, setChosen] = useState<string | null>(null);
  const now = ready.find((step) => step.id === chosen) ?? ready[0];
  return (
    <JobSheet job={job} pack={pack} title="Proof">
      {now === undefined ? (
        <NothingToProve job={job} workReady={all.length > 0} />
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
      <Stops job={job} pack={pack} />
      <OtherSteps steps={ready.filter((step) => step !== now)} onChoose={setChosen} />
      <Owed job={job} />
      <RunningTest job={job} pack={pack} />
      <FollowUps job={job} />
    </JobSheet>
  );
}

function NothingToProve({
  job,
  workReady,
}: {
  readonly job: JobState;
  readonly workReady: boolean;
}) {
  if (workReady) {
    return (
      <p className="sentence">
        The proof comes when it is boxed up.{' '}
        <a href={to.job(job.id, 'work')}>There is work still ready</a>.
      </p>
    );
  }
  return (
    <p className="sentence">
      <a className="main-control" href={to.job(job.id, 'record')}>
        Go to the record
      </a>
    </p>
  );
}

function Owed({ job }: { readonly job: JobState }) {
  const proofs = job.entries.filter((entry) => entry.kind === 'proof');
  if (proofs.length === 0) return null;
  return (
    <section aria-labelledby="owed-head">
      <h2 id="owed-head">Proofs</h2>
      <ul className="ruled-list">
        {proofs.map((entry) => (
          <li key={entry.thing}>
            {entry.open ? 'owed' : 'done'} · {entry.what.replace(/^Proof owed: /, '')}
          </li>
        ))}
      </ul>
    </section>
  );
}

function RunningTest({ job, pack }: JobProps) {
  return (
    <section aria-labelledby="running-head">
      <h2 id="running-head">Running test</h2>
      <p>
        Speeds:{' '}
        {pack.speeds.length === 0 ? 'not stated, see the procedure' : pack.speeds.join(', ')}.
        {pack.flowSeenAt === null ? '' : ` Flow is seen at ${pack.flowSeenAt}.`}
        {pack.rotation === null ? '' : ` Turns ${pack.rotation}.`}
      </p>
      {pack.limits.map((limit) => (
        <p key={limit.id}>
          {limit.name}: <b>{limit.shown ?? 'NO LIMIT STATED'}</b> ({limit.origin})
        </p>
      ))}
      {job.readings.length === 0 ? null : (
        <ul className="ruled-list" aria-label="Readings">
          {job.readings.map((reading) => (
            <li key={`${reading.act} ${reading.name}`}>
              <b>
                {reading.value} {reading.unit}
              </b>{' '}
              {readingWords(reading, pack)}
            </li>
          ))}
        </ul>
      )}
      <p>
        Verdict: <b data-verdict>{job.verdict ?? 'none yet'}</b>
      </p>
    </section>
  );
}

function FollowUps({ job }: { readonly job: JobState }) {
  if (job.followUps.length === 0) return null;
  return (
    <section aria-labelledby="follow-head">
      <h2 id="follow-head">Follow-ups</h2>
      <ul className="ruled-list">
        {job.followUps.map((each) => (
          <FollowUp key={each.id} job={job} followUp={each} />
        ))}
      </ul>
    </section>
  );
}

function FollowUp({
  job,
  followUp,
}: {
  readonly job: JobState;
  readonly followUp: JobState['followUps'][number];
}) {
  const { record } = useVessel();
  const { name } = useHolder();
  const [owner, setOwner] = useState('');
  const own = () =>
    void record({
      stream: { kind: 'job', id: job.id },
      kind: 'follow-up-owned',
      by: name,
      body: { followUp: followUp.id, owner },
    });
  return (
    <li>
      After {followUp.after}: {followUp.what}.{' '}
      {followUp.owner === null ? 'Nobody owns it.' : `Owned by ${followUp.owner}.`}
      {followUp.owner === null ? (
        <>
          <Person
            label={`Who sees to it after ${followUp.after}`}
            value={owner}
            onChange={setOwner}
          />
          <Plain onPress={own} disabled={owner.trim() === '' || name === ''}>
            Owned by this person
          </Plain>
        </>
      ) : null}
    </li>
  );
}
