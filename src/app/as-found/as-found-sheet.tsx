// The step "as found" of a pack: its five answers, and the same ways round as at any step.

import { useState } from 'react';
import type { Step } from '../../pack/types.ts';
import type { ActBody, JobState } from '../../record/types.ts';
import { Plain } from '../shared/controls.tsx';
import { useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useTold, useWords } from '../shared/say.tsx';
import { type Side, SideAct } from '../work/side-acts.tsx';
import { AsFoundForm } from './as-found-form.tsx';

type AsFoundSheetProps = {
  readonly job: JobState;
  readonly step: Step;
  readonly onDone: () => void;
};

export function AsFoundSheet({ job, step, onDone }: AsFoundSheetProps) {
  const w = useWords();
  const told = useTold();
  const { record } = useVessel();
  const { name } = useHolder();
  const [busy, setBusy] = useState(false);
  const [side, setSide] = useState<Side | null>(null);
  const say = async (body: ActBody) => {
    setBusy(true);
    const kept = await record({
      stream: { kind: 'job', id: job.id },
      kind: 'as-found',
      by: name,
      body: { thing: step.thing, step: step.id, ...body },
    });
    setBusy(false);
    if (kept) onDone();
  };
  return (
    <article className="step" data-step={step.id} aria-label={w.asFound.title}>
      <p className="sentence">{told(step.text)}</p>
      <p className="step-facts small">{w.asFound.why(told(step.reason))}</p>
      {name === '' ? <p className="lacks">{w.asFound.whoHolds}</p> : null}
      {side === null ? (
        <>
          <AsFoundForm
            job={job}
            failed={step.asks.find((ask) => ask.name === 'failed')?.choices ?? []}
            disabled={busy || name === ''}
            onSay={(body) => void say(body)}
          />
          <p className="acts-row">
            <Plain onPress={() => setSide('could-not')}>{w.asFound.couldNot}</Plain>{' '}
            <Plain onPress={() => setSide('found')}>{w.asFound.found}</Plain>{' '}
            <Plain onPress={() => setSide('used-anyway')}>{w.asFound.anyway}</Plain>
          </p>
        </>
      ) : (
        <SideAct side={side} job={job.id} step={step} onEnd={() => setSide(null)} />
      )}
    </article>
  );
}
