// Pieces missing: said where they were found, or gone on without by name. Nothing else ends it.

import { useState } from 'react';
import type { ActBody, Entry, JobState } from '../../record/types.ts';
import { Field, Plain } from '../shared/controls.tsx';
import { useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useWords } from '../shared/say.tsx';
import { HowMany, whole } from '../strip/how-many.tsx';

export function Hunts({ job }: { readonly job: JobState }) {
  const open = job.entries.filter((entry) => entry.kind === 'missing' && entry.open);
  if (open.length === 0 || job.closed !== null) return null;
  return open.map((entry) => <Hunt key={entry.thing} job={job} entry={entry} />);
}

type HuntProps = { readonly job: JobState; readonly entry: Entry };

export function Hunt({ job, entry }: HuntProps) {
  const w = useWords();
  const { record } = useVessel();
  const { name } = useHolder();
  const [way, setWay] = useState<'found' | 'without' | null>(null);
  const [where, setWhere] = useState('');
  const [left, setLeft] = useState('0');
  const [reason, setReason] = useState('');
  const [limits, setLimits] = useState('');
  const body: ActBody =
    way === 'found'
      ? { thing: entry.thing, left: whole(left) ?? 0, where: where.trim() }
      : { thing: entry.thing, reason: reason.trim(), limits: limits.trim() };
  const said = way === 'found' ? where.trim() !== '' : reason.trim() !== '' && limits.trim() !== '';
  const say = async () => {
    const stream = { kind: 'job', id: job.id } as const;
    if (await record({ stream, kind: 'accounted', by: name, body })) setWay(null);
  };
  return (
    <section className="form" aria-label={w.hunt.head} data-hunt={entry.thing}>
      <h2>{w.hunt.head}</h2>
      <p>{entry.what}</p>
      <p className="small">{w.hunt.hint}</p>
      {way === null ? (
        <p className="acts-row">
          <Plain onPress={() => setWay('found')}>{w.hunt.found}</Plain>{' '}
          <Plain onPress={() => setWay('without')}>{w.hunt.goOn}</Plain>
        </p>
      ) : way === 'found' ? (
        <>
          <p className="quick">
            {Object.values(w.hunt.places).map((place) => (
              <Plain key={place} onPress={() => setWhere(place)}>
                {place}
              </Plain>
            ))}
          </p>
          <Field label={w.hunt.where} value={where} onChange={setWhere} />
          <HowMany label={w.hunt.left} value={left} onChange={setLeft} usual={[0, 1, 2]} />
        </>
      ) : (
        <>
          <p>{w.hunt.byName(name)}</p>
          <Field label={w.hunt.reason} value={reason} onChange={setReason} lines={2} />
          <Field label={w.hunt.limits} value={limits} onChange={setLimits} lines={2} />
        </>
      )}
      {way === null ? null : (
        <p className="acts-row">
          <Plain onPress={() => void say()} disabled={!said || name === ''}>
            {w.hunt.recordIt}
          </Plain>{' '}
          <Plain onPress={() => setWay(null)}>{w.hunt.leaveIt}</Plain>
        </p>
      )}
    </section>
  );
}
