// The record of a job: verdict, as found, deviations, findings, acts in order, and its closing.

import type { Pack, PackFacts } from '../../pack/types.ts';
import { stripFacts } from '../../record/strip.ts';
import type { JobState } from '../../record/types.ts';
import { actSaid, actsOf, actWords } from '../shared/act-words.ts';
import { JobSheet } from '../shared/job-sheet.tsx';
import { nameOf, readingWords } from '../shared/names.ts';
import { KeptPhoto } from '../shared/offline-lines.tsx';
import { useVessel } from '../shared/replica.tsx';
import { timeWords } from '../shared/words.ts';
import { DraftFiles } from '../strip/draft-files.tsx';
import { CloseJob } from './close-job.tsx';
import { Findings } from './findings.tsx';

type ScreenProps = { readonly job: JobState; readonly pack: Pack | null };
type JobProps = { readonly job: JobState; readonly pack: { readonly facts: PackFacts } };

export function RecordScreen({ job, pack }: ScreenProps) {
  const named = pack ?? { facts: stripFacts(job.strip ?? { seen: [] }) };
  return (
    <JobSheet job={job} pack={pack} title="Record">
      <p className="sentence">
        Verdict: <b data-verdict>{job.verdict ?? 'none yet'}</b>
      </p>
      {job.closed === null ? null : (
        <p data-closed>
          Closed by {job.closed.by}, {timeWords(job.closed.at)}. Head{' '}
          <code className="hash">{job.closed.act}</code>
        </p>
      )}
      <AsFound job={job} pack={named} />
      <Deviations job={job} pack={named} />
      <Findings job={job} pack={named} />
      <Items job={job} pack={named} />
      <CloseJob job={job} />
      <DraftFiles job={job} />
      <Acts job={job} pack={pack} />
      {pack === null ? null : <Printed job={job.id} />}
    </JobSheet>
  );
}

function Printed({ job }: { readonly job: string }) {
  return (
    <p className="acts-row">
      <a
        className="plain"
        href={`/api/jobs/${encodeURIComponent(job)}/pdf`}
        target="_blank"
        rel="noreferrer"
      >
        Printed record (PDF)
      </a>
    </p>
  );
}

function AsFound({ job, pack }: JobProps) {
  if (job.readings.length === 0) return null;
  return (
    <section aria-labelledby="found-head">
      <h2 id="found-head">As found and as left</h2>
      <ul className="ruled-list">
        {job.readings.map((reading) => (
          <li key={`${reading.act} ${reading.name}`}>
            <b>
              {reading.value} {reading.unit}
            </b>{' '}
            {readingWords(reading, pack)}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Deviations({ job, pack }: JobProps) {
  return (
    <section aria-labelledby="deviations-head">
      <h2 id="deviations-head">Deviations</h2>
      {job.deviations.length === 0 ? <p>None.</p> : null}
      <ul className="ruled-list">
        {job.deviations.map((each) => (
          <li key={`${each.act} ${each.thing}`}>
            {nameOf(each.thing, pack)}: {each.reason}. Limited by: {each.limits}. By {each.by}.
          </li>
        ))}
      </ul>
    </section>
  );
}

function Items({ job, pack }: JobProps) {
  if (job.items.length === 0) return null;
  return (
    <section aria-labelledby="items-head">
      <h2 id="items-head">Out and in</h2>
      <ul className="ruled-list">
        {job.items.map((item) => (
          <li key={`${item.act} ${item.way}`}>
            {item.way}: {pack.facts.items[item.part]?.name ?? item.part}, serial{' '}
            {item.serial === '' ? 'not read' : item.serial}
            {item.hours === null ? '' : `, at ${item.hours} h`}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Acts({ job, pack }: ScreenProps) {
  const { replica, state } = useVessel();
  const acts = actsOf(replica.acts, job.id);
  const gone = new Set(acts.filter((act) => act.kind === 'corrected').map((act) => act.body.of));
  return (
    <details className="list">
      <summary>{acts.length} · said, in order</summary>
      <ol className="acts" data-acts={acts.length}>
        {acts.map((act) => (
          <li key={act.hash}>
            {timeWords(act.at)} <b>{act.by}</b>
            {act.proved ? '' : ' (name not proved)'}: {actWords(act, pack === null ? [] : [pack])}
            {actSaid(act) === '' ? '' : ` · ${actSaid(act)}`}
            {gone.has(act.hash) ? ' · taken back' : ''}
            {act.kind === 'photo' ? (
              <KeptPhoto hash={String(act.body.hash)} alt="taken at this step" />
            ) : null}
          </li>
        ))}
      </ol>
      <p className="small">
        {state.heads.length === 1 ? 'Head' : `${state.heads.length} heads`} of the log:{' '}
        <code className="hash">{state.heads.join(' ')}</code>
      </p>
    </details>
  );
}
