// From paper: the sheet in hand is chosen by its letter, and entered row by row as it lies there.

import { useState } from 'react';
import { type PackSheet, sheetName, sheetsOf } from '../../pack/sheets.ts';
import type { Pack } from '../../pack/types.ts';
import type { JobState } from '../../record/types.ts';
import { Plain } from '../shared/controls.tsx';
import { JobSheet } from '../shared/job-sheet.tsx';
import { to } from '../shared/route.ts';
import { useWords } from '../shared/say.tsx';
import { EnterSheet } from './enter-sheet.tsx';

type PaperProps = { readonly job: JobState; readonly pack: Pack };

export function PaperScreen({ job, pack }: PaperProps) {
  const { paper: w, work } = useWords();
  const sheets = sheetsOf(pack);
  const [chosen, setChosen] = useState<string | null>(null);
  const first = sheets.find((sheet) => leftOf(job, sheet) > 0) ?? null;
  const now = sheets.find((sheet) => sheet.letter === chosen) ?? first;
  const others = sheets.filter((sheet) => sheet !== now);
  return (
    <JobSheet job={job} pack={pack} title={w.title}>
      {job.closed === null ? (
        <>
          <p>
            {w.intro} <b>{w.identification(pack.id.slice(0, 12))}</b>
          </p>
          {now === null ? (
            <p>
              {w.allEntered} <a href={to.job(job.id, 'open')}>{work.openTitle}</a>{' '}
              <a href={to.job(job.id, 'record')}>{work.toItsRecord}</a>
            </p>
          ) : (
            <EnterSheet
              key={now.letter}
              job={job}
              pack={pack}
              sheet={now}
              onEntered={() => setChosen(null)}
            />
          )}
          <Others job={job} sheets={others} onChoose={setChosen} />
        </>
      ) : (
        <p>
          {work.jobClosed} <a href={to.job(job.id, 'record')}>{work.toItsRecord}</a>
        </p>
      )}
    </JobSheet>
  );
}

const leftOf = (job: JobState, sheet: PackSheet): number =>
  sheet.steps.filter((step) => job.done[step.id] === undefined).length;

type OthersProps = {
  readonly job: JobState;
  readonly sheets: readonly PackSheet[];
  readonly onChoose: (letter: string) => void;
};

function Others({ job, sheets, onChoose }: OthersProps) {
  const { paper: w } = useWords();
  if (sheets.length === 0) return null;
  const choose = (letter: string) => {
    onChoose(letter);
    window.scrollTo(0, 0);
  };
  return (
    <section aria-labelledby="sheets-head">
      <h2 id="sheets-head">{w.otherSheets}</h2>
      <ul className="others">
        {sheets.map((sheet) => (
          <li key={sheet.letter} data-sheet={sheet.letter}>
            <Plain onPress={() => choose(sheet.letter)}>
              {w.sheet(sheet.letter, sheetName(sheet, w.phases, w.partOf))}:{' '}
              {leftOf(job, sheet) === 0 ? w.entered : w.toEnter(leftOf(job, sheet))}
            </Plain>
          </li>
        ))}
      </ul>
    </section>
  );
}
