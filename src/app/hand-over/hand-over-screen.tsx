// Handing over the watch on a job: written by the record, then tapped at the machine by the relief.

import { useState } from 'react';
import type { Pack } from '../../pack/types.ts';
import { type HandOver, handOver } from '../../record/hand-over.ts';
import type { JobState } from '../../record/types.ts';
import { Plain } from '../shared/controls.tsx';
import { JobSheet } from '../shared/job-sheet.tsx';
import { Person, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { timeWords } from '../shared/words.ts';

type HandOverProps = { readonly job: JobState; readonly pack: Pack | null };

export function HandOverScreen({ job, pack }: HandOverProps) {
  const { state } = useVessel();
  const told = handOver(state, job.id, pack);
  const given = job.handedOver;
  return (
    <JobSheet job={job} pack={pack} title="Handing over the watch">
      {given === null ? null : (
        <p className="sentence" data-handed-over>
          {given.by} to {given.to}, {timeWords(given.at)}.{' '}
          {told.notSeen.length === 0
            ? 'All of it seen at the machine.'
            : `${told.notSeen.length} of ${told.open.length} not seen.`}
        </p>
      )}
      <Give job={job} />
      <OpenThings job={job} told={told} />
      <Told head="Put in for the time being" rows={told.temporary} />
      <Told head="Bolts not tightened" rows={told.notTight} />
      <Told head="Wants a decision" rows={told.findings} />
      <section aria-labelledby="isolation-head">
        <h2 id="isolation-head">Isolation</h2>
        <p>{told.isolation}</p>
      </section>
      <Told head="What is next" rows={told.next} />
    </JobSheet>
  );
}

function Give({ job }: { readonly job: JobState }) {
  const { record } = useVessel();
  const { name } = useHolder();
  const [to, setTo] = useState('');
  if (job.closed !== null) return null;
  const give = async () => {
    const stream = { kind: 'job', id: job.id } as const;
    if (await record({ stream, kind: 'handed-over', by: name, body: { to } })) setTo('');
  };
  return (
    <section className="form" aria-label="Hand it over">
      <Person label="Who takes the watch" value={to} onChange={setTo} />
      <Plain onPress={() => void give()} disabled={name === '' || to.trim() === '' || to === name}>
        {name === '' ? 'Hand it over' : `${name} hands it over`}
      </Plain>
    </section>
  );
}

/** The relief taps each thing at the machine; what is not tapped says "not seen". */
function OpenThings({ job, told }: { readonly job: JobState; readonly told: HandOver }) {
  const { record } = useVessel();
  const { name } = useHolder();
  const given = job.handedOver;
  const listed = new Set(given?.list.map((each) => each.thing));
  const see = (thing: string) => {
    const stream = { kind: 'job', id: job.id } as const;
    void record({ stream, kind: 'seen-at-machine', by: name, body: { thing } });
  };
  return (
    <section aria-labelledby="open-head">
      <h2 id="open-head">Open, and where</h2>
      {told.open.length === 0 ? <p>Nothing is open.</p> : null}
      <ul className="entries">
        {told.open.map(({ thing, what, where, seenBy }) => (
          <li key={thing} data-seen={seenBy ?? ''} data-entry={thing}>
            <Eye seen={seenBy !== null} />
            <span className="with-act">
              <span>
                {what}
                <br />
                <span className="small">
                  {where === null ? '' : `${where} · `}
                  {given === null ? '' : seenBy === null ? 'not seen' : `seen by ${seenBy}`}
                </span>
              </span>
              {seenBy === null && listed.has(thing) && job.closed === null ? (
                <Plain onPress={() => see(thing)} disabled={name === ''}>
                  Seen
                </Plain>
              ) : null}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** An open ring is not seen; a ring with a stroke through it is. The word stands beside it. */
function Eye({ seen }: { readonly seen: boolean }) {
  return (
    <svg viewBox="0 0 20 28" width="20" height="28" aria-hidden="true">
      <circle cx="10" cy="14" r="7" fill="none" stroke="currentColor" strokeWidth="2" />
      {seen ? <path d="M3 21L17 7" strokeWidth="2.5" stroke="currentColor" /> : null}
    </svg>
  );
}

function Told({ head, rows }: { readonly head: string; readonly rows: readonly string[] }) {
  if (rows.length === 0) return null;
  const id = `${head.toLowerCase().replaceAll(/[^a-z]+/g, '-')}-head`;
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{head}</h2>
      <ul className="ruled-list">
        {rows.map((row) => (
          <li key={row}>{row}</li>
        ))}
      </ul>
    </section>
  );
}
