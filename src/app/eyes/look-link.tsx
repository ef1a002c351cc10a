// Without a pack the second look is offered while something stands shut that nobody else has seen.

import type { JobState } from '../../record/types.ts';
import { to } from '../shared/route.ts';
import { useWords } from '../shared/say.tsx';

export function LookLink({ job }: { readonly job: JobState }) {
  const { eyes: w } = useWords();
  const due = job.looks.some((look) => look.rows.length > 0 && look.how === null);
  if (!due || job.closed !== null) return null;
  return (
    <p data-look-offered>
      <a className="plain" href={to.job(job.id, 'eyes')}>
        {w.stripLink}
      </a>{' '}
      <span className="small">{w.stripWhy}</span>
    </p>
  );
}
