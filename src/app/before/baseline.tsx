// What was read before the job: beside the same question at the proof, and as a list on the record.

import { baselineAt, positionWords } from '../../record/before.ts';
import type { JobState } from '../../record/types.ts';
import { KeptPhoto } from '../shared/offline-lines.tsx';
import { useMaking, useTold, useWords } from '../shared/say.tsx';

type BesideProps = { readonly job: JobState; readonly ask: string };

/** `before the job: 1.4 bar at 600 rpm`, one line a speed; nothing where nothing was read. */
export function BeforeBeside({ job, ask }: BesideProps) {
  const w = useWords();
  const told = useTold();
  return baselineAt(job, ask).map((each) => (
    <span key={`${each.act} ${each.at}`} className="small before-beside" data-before={ask}>
      {w.before.beforeJob(`${told(String(each.value))} ${each.unit}`.trim(), told(each.at))}
    </span>
  ));
}

export function Baseline({ job }: { readonly job: JobState }) {
  const w = useWords();
  const told = useTold();
  const { readings, cannotRun } = job.baseline;
  return (
    <section aria-labelledby="before-head" data-baseline={readings.length}>
      <h2 id="before-head">{w.before.head}</h2>
      {readings.length + cannotRun.length === 0 ? <p>{w.before.none}</p> : null}
      <ul className="ruled-list">
        {cannotRun.map((each) => (
          <li key={each.act}>
            {each.of === 'before'
              ? w.before.couldNotRun(each.by)
              : w.before.otherCouldNotRun(each.by)}{' '}
            {each.why ?? ''}
          </li>
        ))}
        {readings.map((each) => (
          <li key={`${each.act} ${each.name}`}>
            <b>{`${told(String(each.value))} ${each.unit}`.trim()}</b>{' '}
            {w.before.readBy(told(each.label), told(each.at), each.by)}
            {each.of === 'before' ? '' : ` · ${w.before.onOther}`}
          </li>
        ))}
      </ul>
    </section>
  );
}

type FoundProps = { readonly job: JobState; readonly thing: string };

/** How a closure stood before this job moved it, with the pictures taken of it. */
export function FoundPosition({ job, thing }: FoundProps) {
  const w = useWords();
  const making = useMaking();
  const found = job.foundPositions.find((each) => each.thing === thing);
  const pictures = job.photos.filter((each) => each.thing === thing);
  if (found === undefined) return null;
  return (
    <div data-found={thing}>
      <p className="step-value">
        {w.before.wasFound(
          making(() => positionWords(found)),
          found.by,
        )}
      </p>
      {pictures.length === 0 ? null : (
        <div className="seen-photo">
          {pictures.map((each) => (
            <KeptPhoto key={each.hash} hash={each.hash} alt={w.before.pictureOf} />
          ))}
        </div>
      )}
    </div>
  );
}

type PositionsFoundProps = {
  readonly job: JobState;
  readonly nameOf: (thing: string) => string;
};

/** On the record: how each closure was found, by whom. */
export function PositionsFound({ job, nameOf }: PositionsFoundProps) {
  const w = useWords();
  if (job.foundPositions.length === 0) return null;
  return (
    <section aria-labelledby="positions-head">
      <h2 id="positions-head">{w.before.foundHead}</h2>
      <ul className="ruled-list">
        {job.foundPositions.map((each) => (
          <li key={each.act}>
            <b>{nameOf(each.thing)}</b> <FoundPosition job={job} thing={each.thing} />
          </li>
        ))}
      </ul>
    </section>
  );
}
