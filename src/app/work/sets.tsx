// How the torque wrench is set for this round: drawn, and the same in words under it.

import { wrenchDrawing } from '../../drawing/wrench.ts';
import { wrenchWords } from '../../pack/fastening-words.ts';
import type { Step } from '../../pack/types.ts';
import { formatNumber } from '../../quantity/quantity.ts';
import { Drawn } from '../shared/drawn.tsx';
import { useMaking, useWords } from '../shared/say.tsx';
import { tallyWidth } from '../shared/width.ts';

export function Sets({ step }: { readonly step: Step }) {
  const w = useWords().fastenings;
  const making = useMaking();
  return (step.sets ?? []).map((line) => {
    const [head = '', ...rest] = making(() => wrenchWords(line, step.round ?? null, w));
    const { gripPointMm: mm } = line;
    const grip = mm === null ? w.gripUnknown : w.gripMm(formatNumber(mm, 4));
    const words = { alt: [head, ...rest].join(', '), grip };
    return (
      <section key={line.fastener} className="wrench" data-set={line.fastener}>
        <p className="step-value">{head}</p>
        <Drawn
          drawing={wrenchDrawing(line, step.round ?? null, words, { width: tallyWidth() })}
          className="drawn"
        />
        <ul className="small">
          {rest.map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ul>
      </section>
    );
  });
}
