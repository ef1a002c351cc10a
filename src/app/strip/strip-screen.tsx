// Stripping a machine nobody has written down: three large buttons, and what stands open.

import { useState } from 'react';
import type { Entry, JobState } from '../../record/types.ts';
import { Main } from '../shared/controls.tsx';
import { JobSheet } from '../shared/job-sheet.tsx';
import { KeptPhoto } from '../shared/offline-lines.tsx';
import { to } from '../shared/route.ts';
import { useAwake } from '../work/awake.ts';
import { TakeBack } from '../work/take-back.tsx';
import { PutIn } from './put-in.tsx';
import { Shut } from './shut.tsx';
import { IsolationStop, ProveIsolation } from './stops.tsx';
import { TookOff } from './took-off.tsx';

const FORMS = { 'Took off': TookOff, 'Shut or unplugged': Shut, 'Put in': PutIn } as const;
const NAMES = ['Took off', 'Shut or unplugged', 'Put in'] as const;

export function StripScreen({ job }: { readonly job: JobState }) {
  useAwake(job.closed === null);
  const [form, setForm] = useState<(typeof NAMES)[number] | null>(null);
  const Form = form === null ? null : FORMS[form];
  const open = job.entries.filter((entry) => entry.open);
  return (
    <JobSheet job={job} pack={null} title="Strip">
      {job.closed === null ? null : (
        <p>
          This job is closed. <a href={to.job(job.id, 'record')}>Go to its record</a>
        </p>
      )}
      {Form !== null ? (
        <Form job={job} onEnd={() => setForm(null)} />
      ) : job.closed === null ? (
        <div className="strip-acts">
          {NAMES.map((name) => (
            <Main key={name} onPress={() => setForm(name)}>
              {name}
            </Main>
          ))}
        </div>
      ) : null}
      {Form === null && job.closed === null ? (
        <>
          <TakeBack job={job} pack={null} />
          <IsolationStop job={job} />
          <ProveIsolation job={job} />
          {open.length === 0 ? null : (
            <p>
              <a className="plain" href={to.job(job.id, 'box-up')}>
                Box up: {open.length} to make good
              </a>
            </p>
          )}
        </>
      ) : null}
      <Standing job={job} open={open.toReversed()} />
    </JobSheet>
  );
}

function Standing({ job, open }: { readonly job: JobState; readonly open: readonly Entry[] }) {
  if (open.length === 0) return null;
  return (
    <section aria-labelledby="standing-head">
      <h2 id="standing-head">Open, the last first</h2>
      <ul className="ruled-list">
        {open.map((entry) => (
          <li key={entry.thing} data-entry={entry.thing} data-open="true">
            {entry.what}
            <span className="small">{entry.place === null ? '' : ` · ${entry.place}`}</span>
            <Pictures hashes={picturesOf(job, entry.thing)} what={entry.what} />
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
  if (hashes.length === 0) return null;
  return (
    <div className="seen-photo">
      {hashes.map((hash) => (
        <KeptPhoto key={hash} hash={hash} alt={`when it was found: ${what}`} />
      ))}
    </div>
  );
}
