// How tight each joint of the job is, bolt by bolt where they differ, and the file of results.

import type { Pack } from '../../pack/types.ts';
import { type JointTight, jointsTight } from '../../record/bolts.ts';
import type { JobState } from '../../record/types.ts';
import { useVessel } from '../shared/replica.tsx';
import { useTold, useWords } from '../shared/say.tsx';

type Props = { readonly job: JobState; readonly pack: Pack | null };

export function HowTight({ job, pack }: Props) {
  const { tight: w } = useWords();
  const told = useTold();
  const { replica } = useVessel();
  const joints = jointsTight(job, replica.packs);
  return (
    <section aria-labelledby="tight-head" data-how-tight>
      <h2 id="tight-head">{w.standing}</h2>
      {joints.length === 0 ? <p>{w.standingNone}</p> : null}
      <ul className="ruled-list">
        {joints.map((joint) => (
          <li key={joint.thing} data-joint-tight={joint.word}>
            {joint.name}: <b>{told(joint.word)}</b>
            <span className="small">
              {joint.round === null ? '' : ` · ${w.round(told(joint.round))}`}
              {mixed(joint).map(([word, holes]) => ` · ${w.holesAs(holes, told(word))}`)}
            </span>
          </li>
        ))}
      </ul>
      {pack === null || joints.length === 0 ? null : (
        <p className="acts-row">
          <a
            className="plain"
            href={`/api/jobs/${encodeURIComponent(job.id)}/tightening-results`}
            download
          >
            {w.fileOut}
          </a>
        </p>
      )}
    </section>
  );
}

const WORDS = ['tight', 'not tight', 'not judged'] as const;

/** Only where the bolts of a joint are not all alike. */
function mixed({ holes }: JointTight): readonly (readonly [string, string])[] {
  if (new Set(holes.map(({ word }) => word)).size < 2) return [];
  return WORDS.flatMap((word) => {
    const own = holes.filter((h) => h.word === word).map((h) => h.hole);
    return own.length === 0 ? [] : [[word, own.join(', ')] as const];
  });
}
