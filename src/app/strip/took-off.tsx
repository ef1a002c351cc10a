// Took off: what, a picture, its fasteners and their bag, its seals, and whether it holds liquid.

import { useState } from 'react';
import { newThing } from '../../record/strip.ts';
import type { ActBody, JobState } from '../../record/types.ts';
import { Choice, Field, Main } from '../shared/controls.tsx';
import { useWords } from '../shared/say.tsx';
import { FormEnd, type FormProps, useStripForm } from './form.tsx';
import { HowMany, whole } from './how-many.tsx';
import { PhotoPick } from './photo-pick.tsx';
import { IsolationStop } from './stops.tsx';

const FASTENERS = ['none', 'bolt', 'stud and nut', 'nut', 'cap screw', 'hose clip', 'union nut'];
const WET = ['yes', 'no', 'do not know'];
const OFF = 'off';
const LOOSE = 'loosened';

export function TookOff({ job, onEnd }: FormProps) {
  const { mark, say, busy, name } = useStripForm(job, onEnd);
  const bags = (job.strip?.seen ?? []).flatMap((s) => (s.bag === null ? [] : [s.bag]));
  const next = String(Math.max(0, ...bags) + 1);
  const { tookOff: w, stripping, work } = useWords();
  const [what, setWhat] = useState('');
  const [photo, setPhoto] = useState('');
  const [how, setHow] = useState(OFF);
  const [kind, setKind] = useState('');
  const [count, setCount] = useState('');
  const [bag, setBag] = useState('');
  const [seals, setSeals] = useState('');
  const [left, setLeft] = useState('');
  const [wet, setWet] = useState('');
  const fastened = kind !== '' && kind !== 'none';
  const lacks = [
    ...(name === '' ? [work.whoHolds] : []),
    ...(what.trim() === '' ? [w.whatLack] : []),
    ...(kind === '' ? [w.heldLack] : []),
    ...(fastened && (whole(count) ?? 0) === 0 ? [w.howManyLack] : []),
    ...(wet === '' ? [w.wetLack] : []),
  ];
  const body = (): ActBody => ({
    thing: newThing(job, how === OFF ? 'part' : 'joint', what.trim(), mark),
    what: what.trim(),
    wet,
    ...(fastened ? { fasteners: [{ count: Number(count), what: kind }] } : {}),
    ...said('seals', seals),
    ...said('sealsLeft', left),
    ...said('bag', bag),
    ...(photo === '' ? {} : { photo }),
  });
  return (
    <section className="form" aria-label={w.head}>
      <h2>{w.head}</h2>
      <Field label={w.what} value={what} onChange={setWhat} list={Object.values(w.usual)} />
      <PhotoPick hash={photo} onKept={setPhoto} />
      <Choice label={w.wet} value={wet} onChange={setWet} choices={WET} />
      {wet === '' || wet === 'no' ? null : <IsolationStop job={job} />}
      <Choice
        label={w.itIs}
        value={how}
        onChange={setHow}
        choices={[OFF, LOOSE]}
        say={(choice) => (choice === OFF ? w.off : w.loosened)}
      />
      <Choice label={w.held} value={kind} onChange={setKind} choices={FASTENERS} />
      {fastened ? (
        <>
          <HowMany label={w.howMany} value={count} onChange={setCount} usual={[1, 2, 3, 4, 6, 8]} />
          <HowMany label={w.bag} value={bag} onChange={setBag} usual={[Number(next)]} />
        </>
      ) : null}
      <HowMany label={w.sealsOut} value={seals} onChange={setSeals} usual={[0, 1, 2]} />
      <HowMany label={w.sealsIn} value={left} onChange={setLeft} usual={[0, 1]} />
      <FormEnd lacks={lacks} onEnd={onEnd}>
        <Main
          onPress={() => void say({ kind: 'took-off', body: body() })}
          disabled={busy || lacks.length > 0}
        >
          {stripping.keepIt}
        </Main>
      </FormEnd>
    </section>
  );
}

export const said = (field: string, text: string): ActBody => {
  const value = whole(text);
  return value === null ? {} : { [field]: value };
};

/** Numbers of tags count from 1 within the job. */
export const nextTag = (job: JobState): number =>
  1 +
  Math.max(
    0,
    ...job.entries.flatMap((e) => (e.kind === 'tag' ? [Number(e.thing.split('/')[1])] : [])),
  );
