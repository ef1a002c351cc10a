// The step drawn. On a joint each hole is a button laid over the drawing: a tap ticks the bolt,
// and is recorded at once.

import { holeCentres } from '../../drawing/joint.ts';
import { jointInputOf, stepDrawing } from '../../drawing/step.ts';
import type { Pack, Step } from '../../pack/types.ts';
import type { JobState } from '../../record/types.ts';
import { Drawn } from '../shared/drawn.tsx';
import { useMaking, useTold, useWords } from '../shared/say.tsx';
import { tallyWidth } from '../shared/width.ts';

type DrawnStepProps = {
  readonly job: JobState;
  readonly pack: Pack;
  readonly step: Step;
  /** Null where holes are only shown: an undoing is reported as a whole. */
  readonly onTick: ((hole: string) => void) | null;
};

export function DrawnStep({ job, pack, step, onTick }: DrawnStepProps) {
  const { work: w } = useWords();
  const told = useTold();
  const entry = job.entries.find((each) => each.thing === step.thing && each.open);
  const input = {
    pack,
    step,
    ...(step.verb === 'made' ? { tally: entry?.tally ?? {} } : {}),
  };
  const options = { width: Math.min(tallyWidth(), 480) };
  const making = useMaking();
  const joint = jointInputOf(input);
  const centres =
    joint === null || onTick === null || joint.joint.holes.length === 0
      ? null
      : holeCentres(joint, options);
  return (
    <div className="joint">
      <Drawn drawing={making(() => stepDrawing(input, options))} />
      {centres?.holes.map((hole) => {
        const state = joint?.states?.[hole.label] ?? 'not yet';
        const ticked = state === 'this round';
        return (
          <button
            key={hole.label}
            type="button"
            className="hole"
            data-tick={hole.label}
            aria-label={w.hole(hole.label, told(state))}
            aria-pressed={ticked}
            onClick={() => (ticked ? undefined : onTick?.(hole.label))}
            style={{
              left: `${(100 * (hole.x - centres.viewBox.x)) / centres.viewBox.width}%`,
              top: `${(100 * (hole.y - centres.viewBox.y)) / centres.viewBox.height}%`,
            }}
          />
        );
      })}
    </div>
  );
}
