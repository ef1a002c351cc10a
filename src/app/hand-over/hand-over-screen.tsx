// Handing over the watch on a job: written by the record, then tapped at the machine by the relief.

import { useState } from 'react';
import type { Pack } from '../../pack/types.ts';
import { type HandOver, handOver } from '../../record/hand-over.ts';
import type { JobState } from '../../record/types.ts';
import { LooksSaid } from '../eyes/looks-said.tsx';
import { Plain } from '../shared/controls.tsx';
import { JobSheet } from '../shared/job-sheet.tsx';
import { Person, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { Speaking, useTold, useWords } from '../shared/say.tsx';
import { timeWords } from '../shared/words.ts';

type HandOverProps = { readonly job: JobState; readonly pack: Pack | null };

export function HandOverScreen({ job, pack }: HandOverProps) {
  const { state } = useVessel();
  const told = handOver(state, job.id, pack);
  const given = job.handedOver;
  const { handOver: w } = useWords();
  const tell = useTold(told.said);
  return (
    <JobSheet job={job} pack={pack} title={w.title}>
      {given === null ? null : (
        <p className="sentence" data-handed-over>
          {w.given(given.by, given.to, timeWords(given.at))}{' '}
          {told.notSeen.length === 0
            ? w.allSeen
            : w.someNotSeen(told.notSeen.length, told.open.length)}
        </p>
      )}
      <Give job={job} />
      <Speaking said={told.said}>
        <OpenThings job={job} told={told} />
        <Told id="temporary" rows={told.temporary} />
        <Told id="notTight" rows={told.notTight} />
        <Told id="findings" rows={told.findings} />
      </Speaking>
      <section aria-labelledby="isolation-head">
        <h2 id="isolation-head">{w.isolation}</h2>
        <p>{tell(told.isolation)}</p>
      </section>
      <LooksSaid job={job} />
      <Speaking said={told.said}>
        <Told id="next" rows={told.next} />
      </Speaking>
    </JobSheet>
  );
}

function Give({ job }: { readonly job: JobState }) {
  const { record } = useVessel();
  const { name } = useHolder();
  const { handOver: w } = useWords();
  const [to, setTo] = useState('');
  if (job.closed !== null) return null;
  const give = async () => {
    const stream = { kind: 'job', id: job.id } as const;
    if (await record({ stream, kind: 'handed-over', by: name, body: { to } })) setTo('');
  };
  return (
    <section className="form" aria-label={w.handItOver}>
      <Person label={w.who} value={to} onChange={setTo} />
      <Plain onPress={() => void give()} disabled={name === '' || to.trim() === '' || to === name}>
        {name === '' ? w.handItOver : w.handsItOver(name)}
      </Plain>
    </section>
  );
}

/** The relief taps each thing at the machine; what is not tapped says "not seen". */
function OpenThings({ job, told }: { readonly job: JobState; readonly told: HandOver }) {
  const { record } = useVessel();
  const { name } = useHolder();
  const { handOver: w } = useWords();
  const tell = useTold();
  const given = job.handedOver;
  const listed = new Set(given?.list.map((each) => each.thing));
  const see = (thing: string) => {
    const stream = { kind: 'job', id: job.id } as const;
    void record({ stream, kind: 'seen-at-machine', by: name, body: { thing } });
  };
  return (
    <section aria-labelledby="open-head">
      <h2 id="open-head">{w.open}</h2>
      {told.open.length === 0 ? <p>{w.nothingOpen}</p> : null}
      <ul className="entries">
        {told.open.map(({ thing, what, where, seenBy }) => (
          <li key={thing} data-seen={seenBy ?? ''} data-entry={thing}>
            <Eye seen={seenBy !== null} />
            <span className="with-act">
              <span>
                {tell(what)}
                <br />
                <span className="small">
                  {joined(
                    where === null ? null : tell(where),
                    given === null ? null : seenBy === null ? w.notSeen : w.seenBy(seenBy),
                  )}
                </span>
              </span>
              {seenBy === null && listed.has(thing) && job.closed === null ? (
                <Plain onPress={() => see(thing)} disabled={name === ''}>
                  {w.seen}
                </Plain>
              ) : null}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

const joined = (...parts: readonly (string | null)[]): string =>
  parts.filter((each) => each !== null).join(' · ');

/** An open ring is not seen; a ring with a stroke through it is. The word stands beside it. */
function Eye({ seen }: { readonly seen: boolean }) {
  return (
    <svg viewBox="0 0 20 28" width="20" height="28" aria-hidden="true">
      <circle cx="10" cy="14" r="7" fill="none" stroke="currentColor" strokeWidth="2" />
      {seen ? <path d="M3 21L17 7" strokeWidth="2.5" stroke="currentColor" /> : null}
    </svg>
  );
}

type ToldProps = {
  readonly id: 'temporary' | 'notTight' | 'findings' | 'next';
  readonly rows: readonly string[];
};

function Told({ id, rows }: ToldProps) {
  const { handOver: w } = useWords();
  const tell = useTold();
  if (rows.length === 0) return null;
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{w[id]}</h2>
      <ul className="ruled-list">
        {rows.map((row) => (
          <li key={row}>{tell(row)}</li>
        ))}
      </ul>
    </section>
  );
}
