// The two stops that have no way past, in words, with what is missing.

import type { Pack } from '../../pack/types.ts';
import type { JobState } from '../../record/types.ts';
import { useTold, useWords } from '../shared/say.tsx';

export function Stops({ job, pack }: { readonly job: JobState; readonly pack: Pack }) {
  const { stops: w } = useWords();
  const told = useTold();
  if (job.closed !== null) return null;
  const waits = (stop: 'isolation' | 'clear') =>
    pack.steps.some((step) => step.stop === stop && job.done[step.id] === undefined);
  const wet = waits('isolation') && !job.isolation.proved;
  const turning = waits('clear') && !job.clear && job.stage === 'Proof';
  return (
    <>
      {wet ? (
        <section className="stop" aria-label={w.isolation} data-stop="isolation">
          <h2>{w.isolation}</h2>
          <p>{w.wetJoint}</p>
          <ul>
            {job.isolation.why.split('; ').map((each) => (
              <li key={each}>{told(each)}</li>
            ))}
          </ul>
        </section>
      ) : null}
      {turning ? (
        <section className="stop" aria-label={w.clear} data-stop="clear">
          <h2>{w.clear}</h2>
          <p>{w.notTurned}</p>
        </section>
      ) : null}
    </>
  );
}
