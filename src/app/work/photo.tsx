// A photograph of the thing the step speaks of, kept by the hash of its bytes.

import { useRef } from 'react';
import type { Step } from '../../pack/types.ts';
import { Main } from '../shared/controls.tsx';
import { useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useWords } from '../shared/say.tsx';

export function PhotoAct({ job, step }: { readonly job: string; readonly step: Step }) {
  const input = useRef<HTMLInputElement>(null);
  const { record, keepPhoto } = useVessel();
  const { name } = useHolder();
  const { work: w } = useWords();
  const keep = async (file: File) => {
    const kept = await keepPhoto(file);
    if (kept === null) return;
    await record({
      stream: { kind: 'job', id: job },
      kind: 'photo',
      by: name,
      body: { thing: step.thing, hash: kept.hash, type: kept.type },
    });
  };
  return (
    <>
      <Main onPress={() => input.current?.click()} disabled={name === ''}>
        {w.photo}
      </Main>
      <input
        ref={input}
        type="file"
        hidden
        aria-label={w.photo}
        accept="image/jpeg,image/png"
        capture="environment"
        onChange={(e) => {
          const file = e.target.files?.[0];
          if (file !== undefined) void keep(file);
          e.target.value = '';
        }}
      />
    </>
  );
}
