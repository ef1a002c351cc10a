// The caution at its step: sign, word, what to verify, and the name of who verified it.
// It can't be turned off or folded away, and it is never the colour alone.

import { signDrawing } from '../../drawing/caution.ts';
import type { Caution as CautionShape } from '../../quantity/authority.ts';
import { Drawn } from '../shared/drawn.tsx';
import { Person } from '../shared/person.tsx';
import { useMaking, useTold, useWords } from '../shared/say.tsx';

type CautionsProps = {
  readonly cautions: readonly CautionShape[];
  readonly verifiedBy: string;
  readonly onVerifiedBy: (name: string) => void;
};

export function Cautions({ cautions, verifiedBy, onVerifiedBy }: CautionsProps) {
  const { cautionWords: w } = useWords();
  const told = useTold();
  const making = useMaking();
  if (cautions.length === 0) return null;
  return (
    <section className="cautions" aria-label={w.section}>
      {cautions.map((caution) => (
        <div className="caution" key={caution.hazard} data-caution={caution.hazard}>
          <Drawn drawing={making(() => signDrawing(caution, { width: 96 }))} className="sign" />
          <p>
            <b>{w.caution}</b> {told(caution.text)} <b>{w.verify}</b> {told(caution.verify)}.
          </p>
        </div>
      ))}
      <Person label={w.verifiedBy} value={verifiedBy} onChange={onVerifiedBy} />
    </section>
  );
}
