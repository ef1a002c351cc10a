// Put in: a blank, a tie, a rag or a lock, so that it is taken away again.

import { useState } from 'react';
import { newThing } from '../../record/strip.ts';
import { Choice, Field, Main } from '../shared/controls.tsx';
import { useWords } from '../shared/say.tsx';
import { FormEnd, type FormProps, useStripForm } from './form.tsx';
import { PhotoPick } from './photo-pick.tsx';

const KINDS = ['blank', 'tie', 'rag', 'lock'];

export function PutIn({ job, onEnd }: FormProps) {
  const { mark, say, busy, name } = useStripForm(job, onEnd);
  const { putIn: w, stripping, work } = useWords();
  const [kind, setKind] = useState('');
  const [where, setWhere] = useState('');
  const [photo, setPhoto] = useState('');
  const seen = (job.strip?.seen ?? []).filter((each) => each.did !== 'tagged');
  const lacks = [
    ...(name === '' ? [work.whoHolds] : []),
    ...(kind === '' ? [w.whatLack] : []),
    ...(where.trim() === '' ? [w.whereLack] : []),
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
    <section className="form" aria-label={w.head}>
      <h2>{w.head}</h2>
      <Choice label={w.what} value={kind} onChange={setKind} choices={KINDS} />
      <Field
        label={w.where}
        value={where}
        onChange={setWhere}
        list={[...new Set(seen.map((each) => each.what))]}
      />
      <PhotoPick hash={photo} onKept={setPhoto} />
      <FormEnd lacks={lacks} onEnd={onEnd}>
        <Main onPress={keep} disabled={busy || lacks.length > 0}>
          {stripping.keepIt}
        </Main>
      </FormEnd>
    </section>
  );
}
