// Proof: line up, look, turn, start, run. What is owed, what was read, the verdict, follow-ups.

import { useState } from 'react';
import type { Pack } from '../../pack/types.ts';
import type { JobState } from '../../record/types.ts';
import { Hunts } from '../as-found/hunts.tsx';
import { Baseline } from '../before/baseline.tsx';
import { Plain } from '../shared/controls.tsx';
import { JobSheet } from '../shared/job-sheet.tsx';
import { readingWords } from '../shared/names.ts';
import { Person, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { to } from '../shared/route.ts';
import { useLanguage, useTold, useWords } from '../shared/say.tsx';
import { Beside } from '../shared/units.tsx';
import { unitSign } from '../shared/words.ts';
import { useAwake } from '../work/awake.ts';
import { OtherSteps } from '../work/other-steps.tsx';
import { Stops } from '../work/stops.tsx';
import { TakeBack } from '../work/take-back.tsx';
import { PROOF_PHASES, StepNow, useReady } from '../work/work-screen.tsx';

type JobProps = { readonly job: JobState; readonly pack: Pack };

export function ProofScreen({ job, pack }: JobProps) {
  useAwake(job.closed === null);
  const { proofSheet: w } = useWords();
  const all = useReady({ job, pack });
  const ready = all.filter((step) => PROOF_PHASES.includes(step.phase));
  const [chosen, setChosen] = useState<string | null>(null);
  const now = ready.find((step) => step.id === chosen) ?? ready[0];
  return (
    <JobSheet job={job} pack={pack} title={w.title} quietTitle>
      {now === undefined ? (
        <NothingToProve job={job} workReady={all.length > 0} />
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
      {now?.verb === 'second-look' ? null : <TakeBack job={job} pack={pack} />}
      <Stops job={job} pack={pack} />
      <OtherSteps steps={ready.filter((step) => step !== now)} onChoose={setChosen} />
      <Owed job={job} />
      <RunningTest job={job} pack={pack} />
      <Baseline job={job} />
      <Hunts job={job} />
      <FollowUps job={job} />
      <Prints job={job.id} pack={pack.id} />
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
  const { proofSheet: w } = useWords();
  if (workReady) {
    return (
      <p className="sentence">
        {w.comesLater} <a href={to.job(job.id, 'work')}>{w.stillReady}</a>.
      </p>
    );
  }
  return (
    <p className="sentence">
      <a className="main-control" href={to.job(job.id, 'record')}>
        {w.toRecord}
      </a>
    </p>
  );
}

function Owed({ job }: { readonly job: JobState }) {
  const { proofSheet: w } = useWords();
  const told = useTold();
  const proofs = job.entries.filter((entry) => entry.kind === 'proof');
  if (proofs.length === 0) return null;
  return (
    <section aria-labelledby="owed-head">
      <h2 id="owed-head">{w.proofs}</h2>
      <ul className="ruled-list">
        {proofs.map((entry) => (
          <li key={entry.thing}>
            {entry.open ? w.owed : w.done} · {told(entry.what.replace(/^Proof owed: /, ''))}
          </li>
        ))}
      </ul>
    </section>
  );
}

function RunningTest({ job, pack }: JobProps) {
  const w = useWords();
  const { proofSheet } = w;
  const told = useTold();
  return (
    <section aria-labelledby="running-head">
      <h2 id="running-head">{proofSheet.running}</h2>
      <p>
        {proofSheet.speeds(
          pack.speeds.length === 0 ? proofSheet.speedsNotStated : pack.speeds.join(', '),
        )}
        {pack.flowSeenAt === null ? '' : proofSheet.flowAt(pack.flowSeenAt)}
        {pack.rotation === null ? '' : proofSheet.turns(told(pack.rotation))}
      </p>
      {pack.limits.map((limit) => (
        <p key={limit.id}>
          {limit.name}: <b>{limit.shown ?? proofSheet.noLimit}</b>
          <Beside shown={limit.shown} /> ({told(limit.origin)})
        </p>
      ))}
      {job.readings.length === 0 ? null : (
        <ul className="ruled-list" aria-label={proofSheet.readings}>
          {job.readings.map((reading) => (
            <li key={`${reading.act} ${reading.name}`}>
              <b>
                {reading.value} {unitSign(reading.unit)}
              </b>
              <Beside shown={`${reading.value} ${reading.unit}`} /> {readingWords(reading, pack, w)}
            </li>
          ))}
        </ul>
      )}
      <p>
        {proofSheet.verdict} <b data-verdict>{told(job.verdict ?? proofSheet.noneYet)}</b>
      </p>
    </section>
  );
}

/** Blank to take along, or with what was said up to now. */
function Prints({ job, pack }: { readonly job: string; readonly pack: string }) {
  const { proofSheet: w } = useWords();
  const [language] = useLanguage();
  const sheets = [
    [`/api/packs/${encodeURIComponent(pack)}/proof/pdf`, w.printBlank],
    [`/api/jobs/${encodeURIComponent(job)}/proof/pdf`, w.printSaid],
  ] as const;
  return (
    <p className="acts-row">
      {sheets.map(([address, words]) => (
        <a
          key={address}
          className="plain"
          href={`${address}?language=${language}`}
          target="_blank"
          rel="noreferrer"
        >
          {words}
        </a>
      ))}
    </p>
  );
}

function FollowUps({ job }: { readonly job: JobState }) {
  const { proofSheet: w } = useWords();
  if (job.followUps.length === 0) return null;
  return (
    <section aria-labelledby="follow-head">
      <h2 id="follow-head">{w.followUps}</h2>
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
  const { proofSheet: w } = useWords();
  const told = useTold();
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
      {w.after(told(followUp.after), told(followUp.what))}{' '}
      {followUp.owner === null ? w.nobody : w.ownedBy(followUp.owner)}
      {followUp.owner === null ? (
        <>
          <Person label={w.whoSees(told(followUp.after))} value={owner} onChange={setOwner} />
          <Plain onPress={own} disabled={owner.trim() === '' || name === ''}>
            {w.ownIt}
          </Plain>
        </>
      ) : null}
    </li>
  );
}
