// Stripping a machine nobody has written down: three large buttons, and what stands open.

import { useState } from 'react';
import { asFoundThing } from '../../record/as-found.ts';
import { isStopped } from '../../record/before.ts';
import type { Entry, JobState } from '../../record/types.ts';
import { Hunts } from '../as-found/hunts.tsx';
import { StripAsFound } from '../as-found/strip-as-found.tsx';
import { StripBefore } from '../before/strip-before.tsx';
import { LookLink } from '../eyes/look-link.tsx';
import { Main } from '../shared/controls.tsx';
import { JobSheet } from '../shared/job-sheet.tsx';
import { KeptPhoto } from '../shared/offline-lines.tsx';
import { to } from '../shared/route.ts';
import { useTold, useWords } from '../shared/say.tsx';
import { BoltFound } from '../tight/bolt-found.tsx';
import { useAwake } from '../work/awake.ts';
import { TakeBack } from '../work/take-back.tsx';
import { PutIn } from './put-in.tsx';
import { Shut } from './shut.tsx';
import { IsolationStop, ProveIsolation } from './stops.tsx';
import { TookOff } from './took-off.tsx';

const FORMS = {
  tookOff: TookOff,
  shutForm: Shut,
  putIn: PutIn,
  before: StripBefore,
  asFound: StripAsFound,
} as const;
const NAMES = ['tookOff', 'shutForm', 'putIn'] as const;

export function StripScreen({ job }: { readonly job: JobState }) {
  useAwake(job.closed === null);
  const w = useWords();
  const [form, setForm] = useState<keyof typeof FORMS | null>(null);
  const Form = form === null ? null : FORMS[form];
  const open = job.entries.filter((entry) => entry.open);
  return (
    <JobSheet job={job} pack={null} title={w.stripping.title} quietTitle>
      {job.closed === null ? null : (
        <p>
          {w.work.jobClosed} <a href={to.job(job.id, 'record')}>{w.work.toItsRecord}</a>
        </p>
      )}
      {Form !== null ? (
        <Form job={job} onEnd={() => setForm(null)} />
      ) : job.closed === null ? (
        <div className="strip-acts">
          {NAMES.map((name) => (
            <Main key={name} onPress={() => setForm(name)}>
              {w[name].head}
            </Main>
          ))}
          {isStopped(job) ? null : <Main onPress={() => setForm('before')}>{w.before.button}</Main>}
          {asFoundThing(job) === null || job.asFound.length > 0 ? null : (
            <Main onPress={() => setForm('asFound')}>{w.asFound.button}</Main>
          )}
        </div>
      ) : null}
      {Form === null && job.closed === null ? (
        <>
          <TakeBack job={job} pack={null} />
          <LastBolts job={job} open={open} />
          <Hunts job={job} />
          <IsolationStop job={job} />
          <ProveIsolation job={job} />
          <LookLink job={job} />
          {open.length === 0 ? null : (
            <p>
              <a className="plain" href={to.job(job.id, 'box-up')}>
                {w.stripping.boxUpLink(open.length)}
              </a>
            </p>
          )}
        </>
      ) : null}
      <Standing job={job} open={open.toReversed()} />
    </JobSheet>
  );
}

/** A bolt says no while its joint is being undone: the last one that was. */
function LastBolts({ job, open }: { readonly job: JobState; readonly open: readonly Entry[] }) {
  const told = useTold();
  const last = open.findLast((entry) => entry.kind === 'joint');
  if (last === undefined) return null;
  return (
    <section>
      <p className="small">{told(last.what)}</p>
      <BoltFound key={last.thing} job={job.id} thing={last.thing} />
    </section>
  );
}

function Standing({ job, open }: { readonly job: JobState; readonly open: readonly Entry[] }) {
  const { stripping: w } = useWords();
  const told = useTold();
  if (open.length === 0) return null;
  return (
    <section aria-labelledby="standing-head">
      <h2 id="standing-head">{w.openLast}</h2>
      <ul className="ruled-list">
        {open.map((entry) => (
          <li key={entry.thing} data-entry={entry.thing} data-open="true">
            {told(entry.what)}
            <span className="small">{entry.place === null ? '' : ` · ${told(entry.place)}`}</span>
            <Pictures hashes={picturesOf(job, entry.thing)} what={told(entry.what)} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Pictures told with the thing itself: its seals and joint point to the same one, shown once. */
function picturesOf(job: JobState, thing: string): readonly string[] {
  const seen = job.strip?.seen.find((each) => each.thing === thing)?.photos ?? [];
  const own = job.photos.filter((photo) => photo.thing === thing).map((photo) => photo.hash);
  return [...new Set([...seen, ...own])];
}

type PicturesProps = { readonly hashes: readonly string[]; readonly what: string };

export function Pictures({ hashes, what }: PicturesProps) {
  const { stripping: w } = useWords();
  if (hashes.length === 0) return null;
  return (
    <div className="seen-photo">
      {hashes.map((hash) => (
        <KeptPhoto key={hash} hash={hash} alt={w.whenFound(what)} />
      ))}
    </div>
  );
}
