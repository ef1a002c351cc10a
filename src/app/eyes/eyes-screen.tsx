// The second look by its own address, so that it can be opened on the phone of whoever looks.

import type { Pack } from '../../pack/types.ts';
import type { LookState } from '../../record/second-look.ts';
import type { JobState } from '../../record/types.ts';
import { to } from '../shared/route.ts';
import { useWords } from '../shared/say.tsx';
import { Sheet } from '../shared/sheet.tsx';
import { useAwake } from '../work/awake.ts';
import { LookSheet } from './look-sheet.tsx';

type EyesProps = { readonly job: JobState; readonly pack: Pack | null };

/** No tally and no list above it: nothing here says how a closure should stand. */
export function EyesScreen({ job, pack }: EyesProps) {
  useAwake(job.closed === null);
  const { eyes: w, sheet } = useWords();
  const due = job.closed === null ? job.looks.filter(isDue) : [];
  const standing = job.looks.filter((look) => look.how !== null);
  return (
    <Sheet title={w.title} block={[[sheet.job, pack?.title ?? job.title]]}>
      <p className="job-title">{job.title}</p>
      {due.map((look) => (
        <LookSheet key={look.thing} job={job} look={look} />
      ))}
      {due.length === 0 && standing.length === 0 ? <p>{w.nothing}</p> : null}
      {standing.map((look) => (
        <p key={look.thing} className="sentence" data-looked={look.moment}>
          {w.moments[look.moment]}: <How look={look} />
        </p>
      ))}
      <p>
        <a className="plain" href={to.job(job.id)}>
          {w.toWork}
        </a>
      </p>
    </Sheet>
  );
}

/** A look that is lifted with its isolation at the end, or comes later, is not asked for now. */
const isDue = (look: LookState): boolean => look.how === null && look.notYet.length === 0;

function How({ look }: { readonly look: LookState }) {
  const { eyes: w } = useWords();
  const by = look.by ?? '';
  if (look.how === 'used anyway') return w.goneWithout(by);
  return look.how === 'checked alone' ? w.passedAlone(by) : w.passed(by);
}
