// All the sentences of the pack with their reasons, put away until wanted.

import type { Pack, Phase } from '../../pack/types.ts';
import { useTold, useWords } from '../shared/say.tsx';

const PHASES: readonly Phase[] = [
  ...(['before', 'isolate', 'strip', 'inspect'] as const),
  ...(['fit', 'box-up', 'line-up', 'prove'] as const),
];

export function StepList({ pack }: { readonly pack: Pack }) {
  const { sentences: w } = useWords();
  const told = useTold();
  return (
    <details>
      <summary>{w.every}</summary>
      {PHASES.map((phase) => {
        const steps = pack.steps.filter((step) => step.phase === phase);
        return steps.length === 0 ? null : (
          <section key={phase} aria-label={w.phases[phase]}>
            <h3>{w.phases[phase]}</h3>
            <ul>
              {steps.map((step) => (
                <li key={step.id}>
                  {told(step.text)} <span className="small">({told(step.reason)})</span>
                  {step.cautions.map((caution) => (
                    <b key={caution.hazard}>{w.caution(told(caution.text))}</b>
                  ))}
                </li>
              ))}
            </ul>
          </section>
        );
      })}
    </details>
  );
}
