// The joint drawn, each hole a button laid over it: a tap ticks the bolt, and is recorded at once.

import { holeCentres, holeStates, jointDrawing } from '../../drawing/joint.ts';
import type { JointFacts, Step } from '../../pack/types.ts';
import type { Entry } from '../../record/types.ts';
import { Drawn } from '../shared/drawn.tsx';
import { tallyWidth } from '../shared/width.ts';

type JointTicksProps = {
  readonly step: Step;
  readonly joint: JointFacts;
  readonly entry: Entry | undefined;
  /** Null where holes are only shown: an undoing is reported as a whole. */
  readonly onTick: ((hole: string) => void) | null;
};

export function JointTicks({ step, joint, entry, onTick }: JointTicksProps) {
  const round = step.round ?? null;
  const tally = entry?.tally ?? {};
  const isMaking = step.verb === 'made' && round !== null;
  const states = isMaking ? holeStates(joint.holes, round, joint.rounds, tally) : undefined;
  const value = step.values.find((each) => each.shown !== null)?.shown ?? null;
  const input = {
    joint,
    order: step.holes,
    round: isMaking ? round : 'undo',
    value: isMaking ? value : null,
    ...(states === undefined ? {} : { states }),
  };
  const options = { width: Math.min(tallyWidth(), 480) };
  const { viewBox, holes } = holeCentres(input, options);
  return (
    <div className="joint">
      <Drawn drawing={jointDrawing(input, options)} />
      {onTick === null
        ? null
        : holes.map((hole) => {
            const ticked = states?.[hole.label] === 'this round';
            return (
              <button
                key={hole.label}
                type="button"
                className="hole"
                data-tick={hole.label}
                aria-label={`Hole ${hole.label}, ${states?.[hole.label] ?? 'not yet'}`}
                aria-pressed={ticked}
                onClick={() => (ticked ? undefined : onTick(hole.label))}
                style={{
                  left: `${(100 * (hole.x - viewBox.x)) / viewBox.width}%`,
                  top: `${(100 * (hole.y - viewBox.y)) / viewBox.height}%`,
                }}
              />
            );
          })}
    </div>
  );
}
