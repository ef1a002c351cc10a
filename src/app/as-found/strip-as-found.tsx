// As found, on a machine nobody has written down: of the component once it is off.

import { asFoundThing, failedChoices } from '../../record/as-found.ts';
import { Main } from '../shared/controls.tsx';
import { useWords } from '../shared/say.tsx';
import { type FormProps, useStripForm } from '../strip/form.tsx';
import { AsFoundForm } from './as-found-form.tsx';

export function StripAsFound({ job, onEnd }: FormProps) {
  const w = useWords();
  const { say, busy, name } = useStripForm(job, onEnd);
  const thing = asFoundThing(job);
  const what = job.strip?.seen.find((each) => each.thing === thing)?.what;
  if (thing === null) return null;
  return (
    <section className="form" aria-label={w.asFound.title}>
      <h2>{w.asFound.title}</h2>
      <p className="sentence">{what ?? job.strip?.component}</p>
      {name === '' ? <p className="lacks">{w.asFound.whoHolds}</p> : null}
      <AsFoundForm
        job={job}
        failed={failedChoices(job)}
        disabled={busy || name === ''}
        onSay={(body) => void say({ kind: 'as-found', body: { thing, ...body } })}
      />
      <div className="main-acts">
        <Main onPress={onEnd}>{w.asFound.leaveIt}</Main>
      </div>
    </section>
  );
}
