// The draft plant file of a machine that was stripped: shown, and saved one text each.

import { draftPlant } from '../../record/draft.ts';
import type { JobState } from '../../record/types.ts';
import { Plain } from '../shared/controls.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useWords } from '../shared/say.tsx';

export function DraftFiles({ job }: { readonly job: JobState }) {
  const { state } = useVessel();
  const { drafts: w } = useWords();
  const files = draftPlant(state, job.id);
  if (files.length === 0) return null;
  return (
    <section aria-labelledby="draft-head" data-drafts={files.length}>
      <h2 id="draft-head">{w.head}</h2>
      <p>{w.written}</p>
      {files.map(({ file, text }) => (
        <details key={file} className="list">
          <summary>{file}</summary>
          <pre className="wrapped">{text}</pre>
        </details>
      ))}
      <p className="acts-row">
        {files.map(({ file, text }) => (
          <Plain key={file} onPress={() => save(file, text)}>
            {w.save(file)}
          </Plain>
        ))}
      </p>
    </section>
  );
}

function save(file: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: 'text/yaml' }));
  const link = document.createElement('a');
  link.href = url;
  // A saved name holds no folder; which folder it belongs to stands on the screen.
  link.download = file.split('/').at(-1) ?? file;
  link.click();
  URL.revokeObjectURL(url);
}
