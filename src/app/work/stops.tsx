// The two stops that have no way past, in words, with what is missing.

import type { Pack } from '../../pack/types.ts';
import type { JobState } from '../../record/types.ts';

export function Stops({ job, pack }: { readonly job: JobState; readonly pack: Pack }) {
  if (job.closed !== null) return null;
  const waits = (stop: 'isolation' | 'clear') =>
    pack.steps.some((step) => step.stop === stop && job.done[step.id] === undefined);
  const wet = waits('isolation') && !job.isolation.proved;
  const turning = waits('clear') && !job.clear && job.stage === 'Proof';
  return (
    <>
      {wet ? (
        <section className="stop" aria-label="Stop: isolation not proved" data-stop="isolation">
          <h2>Stop: isolation not proved</h2>
          <p>No wet joint is opened before it is. There is no way past this stop. Missing:</p>
          <ul>
            {job.isolation.why.split('; ').map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        </section>
      ) : null}
      {turning ? (
        <section className="stop" aria-label="Stop: someone not clear" data-stop="clear">
          <h2>Stop: someone not clear</h2>
          <p>
            Nothing is turned or started before everyone has been called clear and has answered,
            after the last thing was undone or opened. There is no way past this stop.
          </p>
        </section>
      ) : null}
    </>
  );
}
