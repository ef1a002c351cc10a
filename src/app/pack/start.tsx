// Start the job with this pack: who works, who verifies, and what is gone on with unsettled.

import { useState } from 'react';
import type { Pack } from '../../pack/types.ts';
import { Field, Plain } from '../shared/controls.tsx';
import { Hands, Person, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { go, to } from '../shared/route.ts';
import { useWords } from '../shared/say.tsx';

/** Nobody else may have had this id: 64 random bits of this device. */
function newJobId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(8));
  return `job-${[...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;
}

export function StartJob({ pack }: { readonly pack: Pack }) {
  const { state, record } = useVessel();
  const holder = useHolder();
  const { startJob: w } = useWords();
  const [by, setBy] = useState(holder.name);
  const [hands, setHands] = useState<readonly string[]>(pack.request.people ?? []);
  const [competent, setCompetent] = useState('');
  const [reason, setReason] = useState('');
  const [limits, setLimits] = useState('');
  const running = Object.values(state.jobs).find((job) => job.packs.includes(pack.id));
  const unsettled = pack.decisions.filter((each) => each.settled === null);
  if (running !== undefined) {
    return (
      <section aria-label={w.started}>
        <p>
          {w.startedBy(running.startedBy)} <a href={to.job(running.id)}>{w.toWork}</a>
        </p>
      </section>
    );
  }
  const start = async () => {
    const id = newJobId();
    const anyway = unsettled.map((each) => ({ decision: each.id, reason, limits }));
    const body = {
      pack: pack.id,
      title: pack.title,
      machine: pack.machine.id,
      target: pack.target.id,
      does: pack.target.does,
      why: pack.request.why ?? '',
      hands: [...hands],
      competent,
      ...(anyway.length === 0 ? {} : { anyway }),
    };
    const stream = { kind: 'job', id } as const;
    if (await record({ stream, kind: 'job-started', by, body })) go(to.job(id));
  };
  const settled = unsettled.length === 0 || (reason.trim() !== '' && limits.trim() !== '');
  const ready = by.trim() !== '' && hands.length > 0 && competent.trim() !== '' && settled;
  return (
    <section aria-labelledby="start-head">
      <h2 id="start-head">{w.head}</h2>
      <Person label={w.by} value={by} onChange={setBy} />
      <Hands label={w.hands} value={hands} onChange={setHands} />
      <Person label={w.competent} value={competent} onChange={setCompetent} />
      {unsettled.length === 0 ? null : (
        <>
          <p>{w.unsettled(unsettled.length, by === '' ? w.name : by)}</p>
          <Field label={w.reason} value={reason} onChange={setReason} lines={2} />
          <Field label={w.limits} value={limits} onChange={setLimits} lines={2} />
        </>
      )}
      <Plain onPress={() => void start()} disabled={!ready}>
        {w.head}
      </Plain>
    </section>
  );
}
