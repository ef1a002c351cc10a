// What wants a decision, settled here once by name: settling makes a new request and a new pack.

import { useState } from 'react';
import type { Decision, Pack } from '../../pack/types.ts';
import { Field, Plain } from '../shared/controls.tsx';
import { Person, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { go, to } from '../shared/route.ts';
import { useTold, useWords } from '../shared/say.tsx';

export function Decisions({ pack }: { readonly pack: Pack }) {
  const { decisions: w } = useWords();
  if (pack.decisions.length === 0) return null;
  const open = pack.decisions.filter((each) => each.settled === null).length;
  return (
    <section aria-labelledby="decisions-head">
      <h2 id="decisions-head">
        {w.toSettle} <span data-figure="unsettled">{open}</span> {w.of(pack.decisions.length)}
      </h2>
      <ul className="ruled-list">
        {pack.decisions.map((each) => (
          <OneDecision key={each.id} pack={pack} decision={each} />
        ))}
      </ul>
    </section>
  );
}

function OneDecision({ pack, decision }: { readonly pack: Pack; readonly decision: Decision }) {
  const { makePack } = useVessel();
  const holder = useHolder();
  const { decisions: w } = useWords();
  const told = useTold();
  const [open, setOpen] = useState(false);
  const [by, setBy] = useState(holder.name);
  const [reason, setReason] = useState('');
  const [limits, setLimits] = useState('');
  const settle = async () => {
    const settled = { by, reason: reason.trim(), limits: limits.trim() };
    const decisions = { ...pack.request.decisions, [decision.id]: settled };
    const next = await makePack({ ...pack.request, decisions });
    if (next !== null) go(to.pack(next.id));
  };
  const ready = by.trim() !== '' && reason.trim() !== '' && limits.trim() !== '';
  return (
    <li>
      <p>
        <b>{told(decision.question)}</b>
        <br />
        {told(decision.why)}
      </p>
      {decision.settled === null ? null : (
        <p>
          {w.settledBy(decision.settled.by, decision.settled.reason)}
          {decision.settled.limits === undefined ? '' : `; ${decision.settled.limits}`}
        </p>
      )}
      {decision.settled === null && open ? (
        <>
          <Person label={w.by} value={by} onChange={setBy} />
          <Field label={w.what} value={reason} onChange={setReason} lines={2} />
          <Field label={w.limits} value={limits} onChange={setLimits} lines={2} />
          <Plain onPress={() => void settle()} disabled={!ready}>
            {w.settleIt}
          </Plain>{' '}
          <Plain onPress={() => setOpen(false)}>{w.leaveIt}</Plain>
        </>
      ) : null}
      {decision.settled === null && !open ? (
        <Plain onPress={() => setOpen(true)}>{w.settle(told(decision.question))}</Plain>
      ) : null}
    </li>
  );
}
