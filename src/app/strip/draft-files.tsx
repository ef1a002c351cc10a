// The draft plant file of a machine that was stripped: shown, and saved one text each.

import { draftPlant } from '../../record/draft.ts';
import type { JobState } from '../../record/types.ts';
import { Plain } from '../shared/controls.tsx';
import { useVessel } from '../shared/replica.tsx';

export function DraftFiles({ job }: { readonly job: JobState }) {
  const { state } = useVessel();
  const files = draftPlant(state, job.id);
  if (files.length === 0) return null;
  return (
    <section aria-labelledby="draft-head" data-drafts={files.length}>
      <h2 id="draft-head">Draft description of this machine</h2>
      <p>
        Written from what was seen on this job. Every field says seen once, by whom and when, or
        assumed: look it through and put it right before anyone relies on it.
      </p>
      {files.map(({ file, text }) => (
        <details key={file} className="list">
          <summary>{file}</summary>
          <pre className="wrapped">{text}</pre>
        </details>
      ))}
      <p className="acts-row">
        {files.map(({ file, text }) => (
          <Plain key={file} onPress={() => save(file, text)}>
            Save {file}
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
