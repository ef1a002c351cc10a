// What the forms of stripping share: saying an act of this job, and the end of a form.

import { type ReactNode, useState } from 'react';
import type { ActBody, JobState } from '../../record/types.ts';
import { Main } from '../shared/controls.tsx';
import { useKept } from '../shared/kept.ts';
import { useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useWords } from '../shared/say.tsx';
import { freshMark } from './mark.ts';

export type FormProps = { readonly job: JobState; readonly onEnd: () => void };

export type Spoken = { readonly kind: string; readonly body: ActBody };

export function useStripForm(job: JobState, onEnd: () => void) {
  const { record } = useVessel();
  const { name } = useHolder();
  const [fresh] = useState(freshMark);
  const [mark, keepMark] = useKept('mark', fresh);
  const [busy, setBusy] = useState(false);
  const say = async (first: Spoken, ...more: readonly Spoken[]) => {
    setBusy(true);
    keepMark(mark);
    const draft = ({ kind, body }: Spoken) => ({
      stream: { kind: 'job' as const, id: job.id },
      kind,
      by: name,
      body,
    });
    const kept = await record(draft(first), ...more.map(draft));
    setBusy(false);
    if (kept) {
      onEnd();
      window.scrollTo(0, 0);
    }
  };
  return { mark, say, busy, name };
}

type FormEndProps = {
  readonly lacks: readonly string[];
  readonly onEnd: () => void;
  readonly children: ReactNode;
};

export function FormEnd({ lacks, onEnd, children }: FormEndProps) {
  const { stripping: w } = useWords();
  return (
    <>
      {lacks.length === 0 ? null : <p className="lacks">{w.stillToSay(lacks.join('; '))}</p>}
      <div className="main-acts">
        {children}
        <Main onPress={onEnd}>{w.leaveIt}</Main>
      </div>
    </>
  );
}
