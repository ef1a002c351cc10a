// How each second look went, for the record and the hand-over: by whom, alone or not, or left out.

import type { JobState } from '../../record/types.ts';
import { useWords } from '../shared/say.tsx';
import { timeWords } from '../shared/words.ts';

export function LooksSaid({ job }: { readonly job: JobState }) {
  const { eyes: w } = useWords();
  if (job.looks.length === 0) return null;
  return (
    <section aria-labelledby="looks-head" data-looks>
      <h2 id="looks-head">{w.head}</h2>
      <ul className="ruled-list">
        {job.looks.map((look) => {
          const passed = look.said.filter((said) => said.passed);
          const anyway = job.deviations.filter((each) => each.thing === look.thing);
          return (
            <li key={look.thing}>
              {w.moments[look.moment]}:{' '}
              {[
                ...passed.map(({ by, at, alone, minutesAfter }) =>
                  alone
                    ? w.saidAlone(by, minutesAfter ?? 0, timeWords(at))
                    : w.said(by, timeWords(at)),
                ),
                ...anyway.map((each) => w.anyway(each.by, each.reason)),
                ...(passed.length + anyway.length === 0 ? [w.none] : []),
              ].join('; ')}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
