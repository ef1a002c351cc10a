// Closing: refused by the core with its list while anything is open, or closed with a deviation.

import { useState } from 'react';
import type { JobState } from '../../record/types.ts';
import { wasDone } from '../../record/vessel.ts';
import { Field, Plain } from '../shared/controls.tsx';
import { Person, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useTold, useWords } from '../shared/say.tsx';

export function CloseJob({ job }: { readonly job: JobState }) {
  const { record } = useVessel();
  const holder = useHolder();
  const { closing: w } = useWords();
  const told = useTold();
  const [by, setBy] = useState(holder.name);
  const [deviating, setDeviating] = useState(false);
  const [reason, setReason] = useState('');
  const [limits, setLimits] = useState('');
  if (job.closed !== null) return null;
  const entries = job.entries.filter((entry) => entry.open);
  const idle = entries.length === 0 && !wasDone(job);
  const open = idle ? [{ thing: 'job', what: w.notDone }] : entries;
  const close = (deviations: readonly { thing: string; reason: string; limits: string }[]) =>
    void record({
      stream: { kind: 'job', id: job.id },
      kind: 'closed',
      by,
      body: { deviations: deviations.map((each) => ({ ...each })), owner: by },
    });
  const stated = reason.trim() !== '' && limits.trim() !== '';
  return (
    <section aria-labelledby="close-head" className="form">
      <h2 id="close-head">{w.head}</h2>
      <Person label={w.by} value={by} onChange={setBy} />
      <Plain onPress={() => close([])} disabled={by.trim() === ''}>
        {w.head}
      </Plain>
      {open.length === 0 ? null : deviating ? (
        <>
          <p>{w.stayOpen(open.length, by === '' ? w.name : by)}</p>
          <ul>
            {open.map((entry) => (
              <li key={entry.thing}>{told(entry.what)}</li>
            ))}
          </ul>
          <Field label={w.reason} value={reason} onChange={setReason} lines={2} />
          <Field label={w.limits} value={limits} onChange={setLimits} lines={2} />
          <Plain
            onPress={() => close(open.map(({ thing }) => ({ thing, reason, limits })))}
            disabled={!stated || by.trim() === ''}
          >
            {w.closeWith(open.length)}
          </Plain>
        </>
      ) : (
        <Plain onPress={() => setDeviating(true)}>{w.withDeviation}</Plain>
      )}
    </section>
  );
}
