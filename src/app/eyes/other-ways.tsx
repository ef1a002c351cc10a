// Besides looking: could not do, found something, go on without it by name.

import { useState } from 'react';
import type { LookState } from '../../record/second-look.ts';
import type { JobState } from '../../record/types.ts';
import { Plain } from '../shared/controls.tsx';
import { useWords } from '../shared/say.tsx';
import { type Side, SideAct } from '../work/side-acts.tsx';

type OtherWaysProps = {
  readonly job: JobState;
  readonly look: LookState;
  readonly onDone: (() => void) | undefined;
};

export function OtherWays({ job, look, onDone }: OtherWaysProps) {
  const { eyes: w } = useWords();
  const [side, setSide] = useState<Side | null>(null);
  if (side !== null) {
    const end = () => {
      setSide(null);
      if (side === 'used-anyway') onDone?.();
    };
    const about = { id: look.step, thing: look.thing };
    return <SideAct side={side} job={job.id} step={about} onEnd={end} />;
  }
  return (
    <p className="quick">
      <Plain onPress={() => setSide('could-not')}>{w.couldNot}</Plain>
      <Plain onPress={() => setSide('found')}>{w.found}</Plain>
      <Plain onPress={() => setSide('used-anyway')}>{w.useAnyway}</Plain>
    </p>
  );
}
