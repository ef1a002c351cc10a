// Put in: a blank, a tie, a rag or a lock, so that it is taken away again.

import { useState } from 'react';
import { newThing } from '../../record/strip.ts';
import { Choice, Field, Main } from '../shared/controls.tsx';
import { FormEnd, type FormProps, useStripForm } from './form.tsx';
import { PhotoPick } from './photo-pick.tsx';

const KINDS = ['blank', 'tie', 'rag', 'lock'];

export function PutIn({ job, onEnd }: FormProps) {
  const { mark, say, busy, name } = useStripForm(job, onEnd);
  const [kind, setKind] = useState('');
  const [where, setWhere] = useState('');
  const [photo, setPhoto] = useState('');
  const seen = (job.strip?.seen ?? []).filter((each) => each.did !== 'tagged');
  const lacks = [
    ...(name === '' ? ['who is holding this phone'] : []),
    ...(kind === '' ? ['what'] : []),
    ...(where.trim() === '' ? ['where'] : []),
  ];
  const keep = () =>
    void say({
      kind: 'put-in',
      body: {
        thing: newThing(job, 'temp', `${kind} ${where.trim()}`, mark),
        what: kind,
        kind,
        where: where.trim(),
        ...(photo === '' ? {} : { photo }),
      },
    });
  return (
    <section className="form" aria-label="Put in">
      <h2>Put in</h2>
      <Choice label="What" value={kind} onChange={setKind} choices={KINDS} />
      <Field
        label="Where"
        value={where}
        onChange={setWhere}
        list={[...new Set(seen.map((each) => each.what))]}
      />
      <PhotoPick hash={photo} onKept={setPhoto} />
      <FormEnd lacks={lacks} onEnd={onEnd}>
        <Main onPress={keep} disabled={busy || lacks.length > 0}>
          Keep it
        </Main>
      </FormEnd>
    </section>
  );
}
