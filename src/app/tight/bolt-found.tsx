// A bolt that says no: one tap, and it is a finding; nothing is typed.

import { useState } from 'react';
import { BOLT_FINDINGS, type BoltFinding, boltFound } from '../../record/bolts.ts';
import { Plain } from '../shared/controls.tsx';
import { useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useTold, useWords } from '../shared/say.tsx';

type Props = { readonly job: string; readonly thing: string };

export function BoltFound({ job, thing }: Props) {
  const { record } = useVessel();
  const { name } = useHolder();
  const { tight: w } = useWords();
  const told = useTold();
  const [kept, setKept] = useState<BoltFinding | null>(null);
  const say = async (what: BoltFinding) => {
    if (await record(boltFound(job, name, thing, what))) setKept(what);
  };
  return (
    <section aria-label={w.boltHead} data-bolt-found={thing}>
      <p className="quick">
        {BOLT_FINDINGS.map((what) => (
          <Plain key={what} onPress={() => void say(what)} disabled={name === ''}>
            {told(what)}
          </Plain>
        ))}
      </p>
      <p role="status">{kept === null ? '' : w.boltKept(told(kept))}</p>
    </section>
  );
}
