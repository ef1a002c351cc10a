// The record of a job: verdict, as found, deviations, findings, acts in order, and its closing.

import type { Pack, PackFacts } from '../../pack/types.ts';
import { SERIAL_NOT_GIVEN } from '../../record/job.ts';
import { stripFacts } from '../../record/strip.ts';
import { after } from '../../record/things.ts';
import type { Act, JobState } from '../../record/types.ts';
import { FoundList } from '../as-found/found-list.tsx';
import { Hunts } from '../as-found/hunts.tsx';
import { Baseline, PositionsFound } from '../before/baseline.tsx';
import { FollowUpsLeft } from '../due/follow-ups.tsx';
import { LooksSaid } from '../eyes/looks-said.tsx';
import { actSaid, actsOf, actWords } from '../shared/act-words.ts';
import { JobSheet } from '../shared/job-sheet.tsx';
import { nameOf, readingWords } from '../shared/names.ts';
import { KeptPhoto } from '../shared/offline-lines.tsx';
import { useVessel } from '../shared/replica.tsx';
import { type Speaks, useSpeaks, useTold, useWords } from '../shared/say.tsx';
import { Beside } from '../shared/units.tsx';
import { timeWords, unitSign } from '../shared/words.ts';
import { DraftFiles } from '../strip/draft-files.tsx';
import { HowTight } from '../tight/how-tight.tsx';
import { SupersededOnRecord } from '../values/superseded.tsx';
import { CloseJob } from './close-job.tsx';
import { Findings } from './findings.tsx';

type ScreenProps = { readonly job: JobState; readonly pack: Pack | null };
type JobProps = { readonly job: JobState; readonly pack: { readonly facts: PackFacts } };

export function RecordScreen({ job, pack }: ScreenProps) {
  const { recordSheet: w, proofSheet } = useWords();
  const told = useTold();
  const named = pack ?? { facts: stripFacts(job.strip ?? { seen: [], component: '' }) };
  return (
    <JobSheet job={job} pack={pack} title={w.title}>
      <p className="sentence">
        {proofSheet.verdict} <b data-verdict>{told(job.verdict ?? proofSheet.noneYet)}</b>
      </p>
      {job.closed === null ? null : (
        <p data-closed>
          {w.closedBy(job.closed.by, timeWords(job.closed.at))}{' '}
          <code className="hash">{job.closed.act}</code>
        </p>
      )}
      <Baseline job={job} />
      <PositionsFound job={job} nameOf={(thing) => closureName(named, thing)} />
      <FoundList job={job} nameOf={(thing) => foundName(named, thing)} />
      <AsFound job={job} pack={named} />
      <LooksSaid job={job} />
      <HowTight job={job} pack={pack} />
      <Deviations job={job} pack={named} />
      <Findings job={job} pack={named} />
      <SupersededOnRecord job={job} pack={named} />
      <Items job={job} pack={named} />
      <Hunts job={job} />
      <CloseJob job={job} />
      {job.closed === null ? null : <FollowUpsLeft job={job.id} />}
      <DraftFiles job={job} />
      <Acts job={job} pack={pack} />
      {pack === null ? null : <Printed job={job.id} />}
    </JobSheet>
  );
}

const closureName = ({ facts }: JobProps['pack'], thing: string): string =>
  facts.closures[after(thing)]?.name ?? after(thing);

const foundName = ({ facts }: JobProps['pack'], thing: string): string => {
  const id = after(thing);
  const own = facts.asFound?.target === id ? facts.asFound.name : undefined;
  return own ?? facts.parts[id]?.name ?? facts.items[id]?.name ?? id;
};

function Printed({ job }: { readonly job: string }) {
  const { recordSheet: w } = useWords();
  return (
    <p className="acts-row">
      <a
        className="plain"
        href={`/api/jobs/${encodeURIComponent(job)}/pdf`}
        target="_blank"
        rel="noreferrer"
      >
        {w.printed}
      </a>
    </p>
  );
}

function AsFound({ job, pack }: JobProps) {
  const w = useWords();
  if (job.readings.length === 0) return null;
  return (
    <section aria-labelledby="found-head">
      <h2 id="found-head">{w.recordSheet.asFound}</h2>
      <ul className="ruled-list">
        {job.readings.map((reading) => (
          <li key={`${reading.act} ${reading.name}`}>
            <b>
              {reading.value} {unitSign(reading.unit)}
            </b>
            <Beside shown={`${reading.value} ${reading.unit}`} /> {readingWords(reading, pack, w)}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Deviations({ job, pack }: JobProps) {
  const words = useWords();
  const { recordSheet: w } = words;
  return (
    <section aria-labelledby="deviations-head">
      <h2 id="deviations-head">{w.deviations}</h2>
      {job.deviations.length === 0 ? <p>{w.none}</p> : null}
      <ul className="ruled-list">
        {job.deviations.map((each) => (
          <li key={`${each.act} ${each.thing}`}>
            {w.deviation(nameOf(each.thing, pack, words), each.reason, each.limits, each.by)}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Items({ job, pack }: JobProps) {
  const { recordSheet: w } = useWords();
  const told = useTold();
  if (job.items.length === 0) return null;
  return (
    <section aria-labelledby="items-head">
      <h2 id="items-head">{w.outAndIn}</h2>
      <ul className="ruled-list">
        {job.items.map((item) => (
          <li key={`${item.act} ${item.way}`}>
            {w.item(
              told(item.way),
              pack.facts.items[item.part]?.name ?? item.part,
              item.serial === SERIAL_NOT_GIVEN ? w.notRead : item.serial,
            )}
            {item.hours === null ? '' : w.atHours(String(item.hours))}
          </li>
        ))}
      </ul>
    </section>
  );
}

const saidWith = (act: Act, speaks: Speaks): string => {
  const said = actSaid(act, speaks);
  return said === '' ? '' : ` · ${said}`;
};

function Acts({ job, pack }: ScreenProps) {
  const { replica, state } = useVessel();
  const speaks = useSpeaks();
  const { recordSheet: w } = speaks.words;
  const acts = actsOf(replica.acts, job.id);
  const gone = new Set(acts.filter((act) => act.kind === 'corrected').map((act) => act.body.of));
  return (
    <details className="list">
      <summary>{w.said(acts.length)}</summary>
      <ol className="acts" data-acts={acts.length}>
        {acts.map((act) => (
          <li key={act.hash}>
            {timeWords(act.at)} <b>{act.by}</b>
            {act.proved ? '' : w.notProved}: {actWords(act, pack === null ? [] : [pack], speaks)}
            {saidWith(act, speaks)}
            {gone.has(act.hash) ? w.takenBack : ''}
            {act.kind === 'photo' ? (
              <KeptPhoto hash={String(act.body.hash)} alt={w.takenAt} />
            ) : null}
          </li>
        ))}
      </ol>
      <p className="small">
        {state.heads.length === 1 ? w.head : w.heads(state.heads.length)}{' '}
        <code className="hash">{state.heads.join(' ')}</code>
      </p>
    </details>
  );
}
