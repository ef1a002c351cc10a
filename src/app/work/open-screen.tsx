// The open list of a job: its tally drawn, and every entry with its place.

import type { Pack } from '../../pack/types.ts';
import type { Entry, JobState } from '../../record/types.ts';
import { JobSheet } from '../shared/job-sheet.tsx';
import { type Tell, useTold, useWords } from '../shared/say.tsx';

export function OpenScreen({ job, pack }: { readonly job: JobState; readonly pack: Pack | null }) {
  const { work: w } = useWords();
  const open = job.entries.filter((entry) => entry.open);
  const good = job.entries.filter((entry) => !entry.open);
  return (
    <JobSheet job={job} pack={pack} title={w.openTitle}>
      {open.length === 0 ? <p className="sentence">{w.nothingIsOpen}</p> : <Lines entries={open} />}
      {good.length === 0 ? null : (
        <section aria-labelledby="good-head">
          <h2 id="good-head">{w.madeGoodHead}</h2>
          <Lines entries={good} />
        </section>
      )}
    </JobSheet>
  );
}

/** State is a shape and a word: a heavy bar and "open", or a struck hairline and "made good". */
function Lines({ entries }: { readonly entries: readonly Entry[] }) {
  const { work: w } = useWords();
  const told = useTold();
  return (
    <ul className="entries">
      {entries.map((entry) => (
        <li key={entry.thing} data-entry={entry.thing} data-open={entry.open}>
          <svg viewBox="0 0 12 28" width="12" height="28" aria-hidden="true" className="bar">
            <path d="M6 2v24" strokeWidth={entry.open ? 3 : 1} stroke="currentColor" />
            {entry.open ? null : <path d="M1 10l10 8" strokeWidth="1.5" stroke="currentColor" />}
          </svg>
          <span>
            {told(entry.what)}
            <br />
            <span className="small">
              {entry.open ? w.open : w.madeGood} · {told(entry.kind)}
              {entry.place === null ? '' : ` · ${told(entry.place)}`}
              {tallyWords(entry, told)}
            </span>
          </span>
        </li>
      ))}
    </ul>
  );
}

function tallyWords(entry: Entry, told: Tell): string {
  const rounds = Object.entries(entry.tally ?? {}).filter(([, holes]) => holes.length > 0);
  return rounds.map(([round, holes]) => ` · ${told(round)}: ${holes.join(', ')}`).join('');
}
