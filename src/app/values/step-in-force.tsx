// Where a value of a step was superseded, the look at it comes first; else the step is shown.

import { unlooked } from '../../record/superseded.ts';
import { useWords } from '../shared/say.tsx';
import { DrawnStep } from '../work/drawn-step.tsx';
import { StepSheet, type StepSheetProps } from '../work/step-sheet.tsx';
import { LookAt } from './superseded.tsx';

export function StepInForce(props: StepSheetProps) {
  const { job, pack, step } = props;
  const { values: w } = useWords();
  const rows = unlooked(job).filter(
    (row) => row.thing === step.thing && step.values.some((value) => value.id === row.value),
  );
  if (rows.length === 0) return <StepSheet {...props} />;
  return (
    <article className="step" data-look={step.thing} aria-label={w.lookFirst}>
      <DrawnStep job={job} pack={pack} step={step} onTick={null} />
      <p className="sentence">{w.lookFirst}</p>
      {rows.map((row) => (
        <LookAt key={row.value} job={job} row={row} large />
      ))}
    </article>
  );
}
