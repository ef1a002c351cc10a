// The sheet of one job: its tally stands above everything, its other sheets are one tap away.

import type { ReactNode } from 'react';
import { tallyDrawing } from '../../drawing/tally.ts';
import type { Pack } from '../../pack/types.ts';
import type { JobState } from '../../record/types.ts';
import { Drawn } from './drawn.tsx';
import { to } from './route.ts';
import { Sheet } from './sheet.tsx';
import { tallyWidth } from './width.ts';
import { stageWords } from './words.ts';

const SHEETS = [
  ['work', 'Work'],
  ['open', 'Open list'],
  ['proof', 'Proof'],
  ['hand-over', 'Hand over'],
  ['record', 'Record'],
] as const;

const STRIP_SHEETS = [
  ['work', 'Strip'],
  ['box-up', 'Box up'],
  ['open', 'Open list'],
  ['hand-over', 'Hand over'],
  ['record', 'Record'],
] as const;

type JobSheetProps = {
  readonly job: JobState;
  /** Null where the machine is stripped without one. */
  readonly pack: Pack | null;
  readonly title: string;
  readonly children: ReactNode;
};

export function JobSheet({ job, pack, title, children }: JobSheetProps) {
  const head = (
    <section aria-label="This job" className="job-head">
      <p className="job-title">
        {job.title} · <span data-stage>{stageWords(job)}</span>
      </p>
      <a href={to.job(job.id, 'open')} className="tally" data-open={job.openCount}>
        <Drawn drawing={tallyDrawing(job.entries, { width: tallyWidth() })} />
      </a>
    </section>
  );
  return (
    <Sheet
      title={title}
      quietTitle={['Work', 'Proof', 'Strip', 'Box up'].includes(title)}
      head={head}
      block={[
        ['Job', job.title],
        ['Machine', pack?.machine.name ?? job.strip?.machineName ?? job.machine],
        ['Hands', job.hands.join(', ')],
        ['Verifies', job.competent ?? 'nobody named'],
      ]}
    >
      {children}
      <nav aria-label="Sheets of this job" className="job-nav">
        {(job.strip === null ? SHEETS : STRIP_SHEETS).map(([part, name]) => (
          <a key={part} href={to.job(job.id, part)}>
            {name}
          </a>
        ))}
        {pack === null ? null : <a href={to.pack(pack.id)}>Pack</a>}
      </nav>
    </Sheet>
  );
}
