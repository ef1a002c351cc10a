// Before you stop it: one speed of one machine, read while it runs, or passed over in one tap.

import { useState } from 'react';
import { beforeOf } from '../../pack/before.ts';
import type { Step } from '../../pack/types.ts';
import type { Draft, JobState } from '../../record/types.ts';
import { Main } from '../shared/controls.tsx';
import { useKept } from '../shared/kept.ts';
import { useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useTold, useWords } from '../shared/say.tsx';
import { Asks } from '../work/asks.tsx';
import { Cautions } from '../work/caution.tsx';
import { type Answers, draftOf } from '../work/draft.ts';
import { PhotoAct } from '../work/photo.tsx';

type BeforeSheetProps = {
  readonly job: JobState;
  readonly step: Step;
  readonly ready: readonly Step[];
  readonly onDone: () => void;
};

export function BeforeSheet({ job, step, ready, onDone }: BeforeSheetProps) {
  const w = useWords();
  const told = useTold();
  const { record } = useVessel();
  const { name } = useHolder();
  const [answers, setAnswers] = useState<Answers>({});
  const [verifiedBy, setVerifiedBy] = useKept(`verifies.${job.id}`, '');
  const [busy, setBusy] = useState(false);
  const of = beforeOf(step.thing) ?? 'before';
  const both = of === 'before' && ready.some((each) => beforeOf(each.thing) === 'before-other');
  const lacks = [
    ...(name === '' ? [w.before.whoHolds] : []),
    ...(step.cautions.length > 0 && verifiedBy === '' ? [w.before.whoVerified] : []),
    ...(Object.values(answers).every((answer) => answer === '') ? [w.before.nothingRead] : []),
  ];
  const say = async (first: Draft, ...more: readonly Draft[]) => {
    setBusy(true);
    const kept = await record(first, ...more);
    setBusy(false);
    if (kept) onDone();
  };
  const cannot = (thing: string): Draft => ({
    stream: { kind: 'job', id: job.id },
    kind: 'cannot-run',
    by: name,
    body: { thing },
  });
  const read = () => void say(draftOf(step, { job: job.id, by: name, verifiedBy, answers }));
  return (
    <article className="step" data-step={step.id} aria-label={w.before.now}>
      <p className="sentence">{told(step.text)}</p>
      <p className="step-facts small">{w.before.why(told(step.reason))}</p>
      <div className="main-acts">
        <Main onPress={() => void say(cannot(of))} disabled={busy || name === ''}>
          {of === 'before' ? w.before.cannotRun : w.before.notRunning}
        </Main>
        {both ? (
          <Main
            onPress={() => void say(cannot('before'), cannot('before-other'))}
            disabled={busy || name === ''}
          >
            {w.before.neitherRuns}
          </Main>
        ) : null}
      </div>
      <Cautions cautions={step.cautions} verifiedBy={verifiedBy} onVerifiedBy={setVerifiedBy} />
      <Asks
        asks={step.asks}
        answers={answers}
        onAnswer={(ask, value) => setAnswers({ ...answers, [ask]: value })}
      />
      {lacks.length === 0 ? null : <p className="lacks">{w.before.lacks(lacks.join('; '))}</p>}
      <div className="main-acts">
        <Main onPress={read} disabled={busy || lacks.length > 0}>
          {w.before.done}
        </Main>
        <PhotoAct job={job.id} step={step} />
      </div>
    </article>
  );
}
