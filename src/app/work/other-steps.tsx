// The other steps that are ready: each a sentence to tap, none of them numbered.

import type { Step } from '../../pack/types.ts';
import { Plain } from '../shared/controls.tsx';
import { useTold, useWords } from '../shared/say.tsx';

type OtherStepsProps = {
  readonly steps: readonly Step[];
  readonly onChoose: (id: string) => void;
};

export function OtherSteps({ steps, onChoose }: OtherStepsProps) {
  const { work: w } = useWords();
  const told = useTold();
  if (steps.length === 0) return null;
  return (
    <section aria-labelledby="others-head">
      <h2 id="others-head">{w.alsoReady}</h2>
      <ul className="others">
        {steps.map((step) => (
          <li key={step.id}>
            <Plain
              onPress={() => {
                onChoose(step.id);
                window.scrollTo(0, 0);
              }}
            >
              {told(step.text)}
            </Plain>
          </li>
        ))}
      </ul>
    </section>
  );
}
