// A photograph of the thing the step speaks of, kept by the hash of its bytes.

import type { Step } from '../../pack/types.ts';
import { Main } from '../shared/controls.tsx';
import { useHolder } from '../shared/person.tsx';
import { usePhoto } from '../shared/photo-input.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useWords } from '../shared/say.tsx';

export function PhotoAct({ job, step }: { readonly job: string; readonly step: Step }) {
  const { record } = useVessel();
  const { name } = useHolder();
  const { work: w } = useWords();
  const { open, input } = usePhoto(w.photo, ({ hash, type }) => {
    const body = { thing: step.thing, hash, type };
    void record({ stream: { kind: 'job', id: job }, kind: 'photo', by: name, body });
  });
  return (
    <>
      <Main onPress={open} disabled={name === ''}>
        {w.photo}
      </Main>
      {input}
    </>
  );
}
