// Values superseded since a pack was made: told with was, is and why, and looked at by name.

import { useState } from 'react';
import type { Pack } from '../../pack/types.ts';
import { lookBody, lookStep, unlooked } from '../../record/superseded.ts';
import type { JobState, Superseded } from '../../record/types.ts';
import { Main, Plain } from '../shared/controls.tsx';
import { useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useTold, useWords } from '../shared/say.tsx';
import { SideAct } from '../work/side-acts.tsx';

/** The figure in force first, then what it was, by whose word, and why it changed. */
type WordsProps = {
  readonly row: Superseded;
  /** The name of its joint, where it does not stand above. */
  readonly at?: string | undefined;
};

export function SupersededWords({ row, at }: WordsProps) {
  const { values: w } = useWords();
  const told = useTold();
  const condition = row.condition === null ? w.noCondition : w.threads(row.condition);
  return (
    <span className="value" data-superseded={row.value}>
      <b>{row.is ?? w.withdrawn}</b> {at === undefined ? '' : `${at}: `}
      {told(row.name)}
      <br />
      {w.wasIn(row.was, row.wasIssue)}
      {row.why === null ? '' : ` · ${row.why}`}
      <br />
      <span className="small">
        {w.from(row.issue, row.date, row.authority)}
        {row.is === null || !row.thing.startsWith('joint/') ? '' : ` · ${condition}`}
        {row.wasCondition === row.condition || row.wasCondition === null
          ? ''
          : ` · ${w.wasIn(row.wasCondition, row.wasIssue)}`}
      </span>
    </span>
  );
}

type RowProps = {
  readonly job: JobState;
  readonly row: Superseded;
  readonly large?: boolean;
  readonly at?: string | undefined;
};

/** One value at its joint: who stands there says that they looked, or goes on without by name. */
export function LookAt({ job, row, large = false, at }: RowProps) {
  const { record } = useVessel();
  const { name } = useHolder();
  const { values: w, work, sideActs } = useWords();
  const [anyway, setAnyway] = useState(false);
  const step = { id: lookStep(row.thing), thing: row.thing };
  const look = () => {
    const stream = { kind: 'job', id: job.id } as const;
    return void record({ stream, kind: 'value-looked-at', by: name, body: lookBody(row) });
  };
  const Control = large ? Main : Plain;
  return (
    <div className="value-look">
      <p className="step-value">
        <SupersededWords row={row} at={at} />
      </p>
      {row.reached === null ? null : <p>{w.alreadyTight}</p>}
      {row.is === null ? <p>{w.askForOne}</p> : null}
      {anyway ? (
        <SideAct side="used-anyway" job={job.id} step={step} onEnd={() => setAnyway(false)} />
      ) : (
        <>
          {name === '' ? <p>{sideActs.sayFirst}</p> : null}
          {row.is === null ? null : (
            <Control onPress={look} disabled={name === ''}>
              {w.looked(row.is)}
            </Control>
          )}{' '}
          <Plain onPress={() => setAnyway(true)}>{work.useAnyway}</Plain>
        </>
      )}
    </div>
  );
}

type HereProps = { readonly job: JobState; readonly pack: Pack; readonly but?: string };

const jointName = (pack: Pick<Pack, 'facts'>, thing: string): string | undefined =>
  pack.facts.joints[thing.slice(thing.indexOf('/') + 1)]?.name;

/** At every joint of the job but the one in hand: what still waits for somebody to look. */
export function SupersededHere({ job, pack, but }: HereProps) {
  const { values: w } = useWords();
  const rows = job.closed === null ? unlooked(job).filter((r) => r.thing !== but) : [];
  if (rows.length === 0) return null;
  return (
    <details className="list">
      <summary>
        {rows.length} · {w.superseded}
      </summary>
      {rows.map((row) => (
        <LookAt
          key={`${row.thing} ${row.value}`}
          job={job}
          row={row}
          at={jointName(pack, row.thing)}
        />
      ))}
    </details>
  );
}

/** On the record of a job: what it held, or was made by, that an issue has replaced. */
type RecordProps = { readonly job: JobState; readonly pack: Pick<Pack, 'facts'> };

export function SupersededOnRecord({ job, pack }: RecordProps) {
  const { values: w } = useWords();
  const rows =
    job.closed === null
      ? job.superseded
      : job.superseded.filter((r) => r.reached !== null || r.looked !== null);
  if (rows.length === 0) return null;
  return (
    <section aria-labelledby="superseded-head">
      <h2 id="superseded-head">{job.closed === null ? w.superseded : w.usedSince}</h2>
      <ul className="ruled-list">
        {rows.map((row) => (
          <li key={`${row.thing} ${row.value}`}>
            <SupersededWords row={row} at={jointName(pack, row.thing)} />
            <LookedBy row={row} asked={job.closed === null} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** After the closing nobody is asked any more. */
function LookedBy({ row, asked }: { readonly row: Superseded; readonly asked: boolean }) {
  const { values: w } = useWords();
  const { looked } = row;
  if (looked !== null) return <p>{looked.anyway ? w.goneOn(looked.by) : w.lookedBy(looked.by)}</p>;
  return asked && row.thing.startsWith('joint/') ? <p>{w.notLooked}</p> : null;
}
