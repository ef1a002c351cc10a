// As found, on the record: its state, what failed, hours, pieces missing, and the picture.

import type { JobState } from '../../record/types.ts';
import { KeptPhoto } from '../shared/offline-lines.tsx';
import { useTold, useWords } from '../shared/say.tsx';

type FoundListProps = {
  readonly job: JobState;
  readonly nameOf: (thing: string) => string;
};

export function FoundList({ job, nameOf }: FoundListProps) {
  const w = useWords();
  const told = useTold();
  if (job.asFound.length === 0) return null;
  return (
    <section aria-labelledby="as-found-head" data-as-found-list={job.asFound.length}>
      <h2 id="as-found-head">{w.asFound.head}</h2>
      <ul className="ruled-list">
        {job.asFound.map((each) => (
          <li key={each.act}>
            <b>{told(each.grade)}</b> · {nameOf(each.thing)} ·{' '}
            {w.asFound.failedWas(told(each.failed))}
            {each.text === null ? '' : ` (${each.text})`} ·{' '}
            {each.hours === null ? w.asFound.hoursNotRead : w.asFound.hoursAt(each.hours)} ·{' '}
            {w.asFound.missingWas(each.missing)} · {each.by}
            {each.photo === null ? null : (
              <div className="seen-photo">
                <KeptPhoto hash={each.photo} alt={w.asFound.pictureOf} />
              </div>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
