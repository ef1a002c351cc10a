// A tool's results taken in at the step of its joint: the whole file, or nothing of it.

import { useRef, useState } from 'react';
import { takeResults } from '../../exchange/tightening-acts.ts';
import { limits } from '../../limits.ts';
import type { Pack } from '../../pack/types.ts';
import { sha256Hex } from '../../quantity/sha.ts';
import type { JobState } from '../../record/types.ts';
import { Plain } from '../shared/controls.tsx';
import { useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useTold, useWords } from '../shared/say.tsx';

type Props = { readonly job: JobState; readonly pack: Pack };
type Told = { readonly taken: number } | { readonly problems: readonly string[] };

export function ResultsIn({ job, pack }: Props) {
  const input = useRef<HTMLInputElement>(null);
  const { record } = useVessel();
  const { name } = useHolder();
  const { tight: w } = useWords();
  const told = useTold();
  const [result, setResult] = useState<Told | null>(null);
  const take = async (file: File) => {
    const read = await contentOf(file);
    if (typeof read === 'string') return setResult({ problems: [read] });
    const taken = takeResults(job, pack, read, name);
    if (!taken.ok)
      return setResult({ problems: taken.problems.map((p) => `${p.path}: ${told(p.why)}`) });
    const [first, ...more] = taken.drafts;
    const kept = first !== undefined && (await record(first, ...more));
    setResult(kept ? { taken: taken.drafts.length } : null);
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

/** The bytes' hash and what they say, or why they can't be read. */
async function contentOf(file: File) {
  if (file.size > limits.server.jsonBytes) return `${file.size} > ${limits.server.jsonBytes} bytes`;
  const bytes = new Uint8Array(await file.arrayBuffer());
  try {
    const raw: unknown = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
    return { hash: sha256Hex(bytes), raw };
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}
