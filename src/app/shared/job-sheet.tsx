// The sheet of one job: its tally stands above everything, its other sheets are one tap away.

import type { ReactNode } from 'react';
import { tallyDrawing } from '../../drawing/tally.ts';
import type { Pack } from '../../pack/types.ts';
import type { JobState } from '../../record/types.ts';
import { Drawn } from './drawn.tsx';
import { to } from './route.ts';
import { useMaking, useWords } from './say.tsx';
import { Sheet } from './sheet.tsx';
import { tallyWidth } from './width.ts';
import { stageWords } from './words.ts';

const SHEETS = [
  ['work', 'work'],
  ['open', 'open'],
  ['proof', 'proof'],
  ['hand-over', 'handOver'],
  ['record', 'record'],
] as const;

const STRIP_SHEETS = [
  ['work', 'strip'],
  ['box-up', 'boxUp'],
  ['open', 'open'],
  ['hand-over', 'handOver'],
  ['record', 'record'],
] as const;

type JobSheetProps = {
  readonly job: JobState;
  /** Null where the machine is stripped without one. */
  readonly pack: Pack | null;
  readonly title: string;
  /** True where the drawn step says it already. */
  readonly quietTitle?: boolean;
  readonly children: ReactNode;
};

export function JobSheet({ job, pack, title, quietTitle = false, children }: JobSheetProps) {
  const w = useWords();
  const { jobSheet } = w;
  const making = useMaking();
  const head = (
    <section aria-label={jobSheet.thisJob} className="job-head">
      <p className="job-title">
        {job.title} · <span data-stage>{stageWords(job, w)}</span>
      </p>
      <a href={to.job(job.id, 'open')} className="tally" data-open={job.openCount}>
        <Drawn drawing={making(() => tallyDrawing(job.entries, { width: tallyWidth() }))} />
      </a>
    </section>
  );
  return (
    <Sheet
      title={title}
      quietTitle={quietTitle}
      head={head}
      block={[
        [w.sheet.job, job.title],
        [jobSheet.machine, pack?.machine.name ?? job.strip?.machineName ?? job.machine],
        [jobSheet.hands, job.hands.join(', ')],
        [jobSheet.verifies, job.competent ?? jobSheet.nobodyNamed],
      ]}
    >
      {children}
      <nav aria-label={jobSheet.sheetsOfJob} className="job-nav">
        {(job.strip === null ? SHEETS : STRIP_SHEETS).map(([part, name]) => (
          <a key={part} href={to.job(job.id, part)}>
            {jobSheet[name]}
          </a>
        ))}
        {pack === null ? null : <a href={to.pack(pack.id)}>{jobSheet.pack}</a>}
      </nav>
    </Sheet>
  );
}
