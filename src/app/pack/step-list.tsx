// All the sentences of the pack with their reasons, put away until wanted.

import type { Pack, Phase } from '../../pack/types.ts';

const PHASES: readonly (readonly [Phase, string])[] = [
  ['before', 'Before anything is opened'],
  ['isolate', 'Make safe'],
  ['strip', 'Take off'],
  ['inspect', 'Clean and look'],
  ['fit', 'Fit'],
  ['box-up', 'Box up'],
  ['line-up', 'Line up'],
  ['prove', 'Prove'],
];

export function StepList({ pack }: { readonly pack: Pack }) {
  return (
    <details>
      <summary>Every sentence of the job, with its reason</summary>
      {PHASES.map(([phase, name]) => {
        const steps = pack.steps.filter((step) => step.phase === phase);
        return steps.length === 0 ? null : (
          <section key={phase} aria-label={name}>
            <h3>{name}</h3>
            <ul>
              {steps.map((step) => (
                <li key={step.id}>
                  {step.text} <span className="small">({step.reason})</span>
                  {step.cautions.map((caution) => (
                    <b key={caution.hazard}> Caution, {caution.text}</b>
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
