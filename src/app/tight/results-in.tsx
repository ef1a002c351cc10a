// A tool's results taken in at the step of its joint: the whole file, or nothing of it.

import { useRef, useState } from 'react';
import type { JobState } from '../../record/types.ts';
import { postResults } from '../shared/api.ts';
import { Plain } from '../shared/controls.tsx';
import { sync } from '../shared/offline.ts';
import { useHolder } from '../shared/person.tsx';
import { useTold, useWords } from '../shared/say.tsx';

type Told = { readonly taken: number } | { readonly problems: readonly string[] };

/** The server reads it: what this phone still keeps to itself is sent to it first. */
export function ResultsIn({ job }: { readonly job: JobState }) {
  const input = useRef<HTMLInputElement>(null);
  const { name } = useHolder();
  const { tight: w } = useWords();
  const told = useTold();
  const [result, setResult] = useState<Told | null>(null);
  const take = async (file: File) => {
    await sync();
    const answer = await postResults(job.id, name, file);
    await sync();
    setResult(
      answer.ok
        ? { taken: answer.value.acts.length }
        : { problems: answer.problems.map((p) => `${p.path}: ${told(p.why)}`) },
    );
  };
  return (
    <section data-results-in>
      <Plain onPress={() => input.current?.click()} disabled={name === ''}>
        {w.fileIn}
      </Plain>
      <input
        ref={input}
        type="file"
        hidden
        aria-label={w.fileIn}
        accept="application/json,.json"
        onChange={(e) => {
          const file = e.target.files?.[0];
          if (file !== undefined) void take(file);
          e.target.value = '';
        }}
      />
      <div role="status">
        {result !== null && 'taken' in result ? <p>{w.fileTaken(result.taken)}</p> : null}
        {result !== null && 'problems' in result ? (
          <>
            <p>{w.fileBad}</p>
            <ul>
              {result.problems.map((each) => (
                <li key={each}>{each}</li>
              ))}
            </ul>
          </>
        ) : null}
      </div>
    </section>
  );
}
