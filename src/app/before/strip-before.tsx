// Before you stop it, on a machine nobody has written down: a row a speed, or "can't run".

import { useState } from 'react';
import { BEFORE_CAUTIONS, type Before, USUAL_BEFORE } from '../../pack/before.ts';
import { newReading } from '../../record/before.ts';
import { Choice, Main } from '../shared/controls.tsx';
import { useKept } from '../shared/kept.ts';
import { useWords } from '../shared/say.tsx';
import { type FormProps, useStripForm } from '../strip/form.tsx';
import { Asks } from '../work/asks.tsx';
import { Cautions } from '../work/caution.tsx';
import { type Answers, answersIn } from '../work/draft.ts';
import { Baseline } from './baseline.tsx';

export function StripBefore({ job, onEnd }: FormProps) {
  const w = useWords();
  const [answers, setAnswers] = useState<Answers>({});
  const [of, setOf] = useState<Before>('before');
  const [verifiedBy, setVerifiedBy] = useKept(`verifies.${job.id}`, '');
  const { mark, say, busy, name } = useStripForm(job, () => setAnswers({}));
  const leaving = useStripForm(job, onEnd);
  const nothing = Object.values(answers).every((answer) => answer === '');
  const lacks = [
    ...(name === '' ? [w.before.whoHolds] : []),
    ...(verifiedBy === '' ? [w.before.whoVerified] : []),
    ...(nothing ? [w.before.nothingRead] : []),
  ];
  const keep = () =>
    void say({
      kind: 'measured',
      body: { thing: newReading(job, of, mark), verifiedBy, ...answersIn(USUAL_BEFORE, answers) },
    });
  const machines: readonly [Before, string][] = [
    ['before', w.before.thisMachine],
    ['before-other', w.before.otherMachine],
  ];
  return (
    <section className="form" aria-label={w.before.title}>
      <h2>{w.before.title}</h2>
      <Choice
        label={w.before.whichMachine}
        value={machines.find(([id]) => id === of)?.[1] ?? ''}
        onChange={(words) => setOf(machines.find(([, each]) => each === words)?.[0] ?? 'before')}
        choices={machines.map(([, words]) => words)}
      />
      <Cautions cautions={BEFORE_CAUTIONS} verifiedBy={verifiedBy} onVerifiedBy={setVerifiedBy} />
      <p className="small">{w.before.moreSpeeds}</p>
      <Asks
        asks={USUAL_BEFORE}
        answers={answers}
        onAnswer={(ask, value) => setAnswers({ ...answers, [ask]: value })}
      />
      {lacks.length === 0 ? null : <p className="lacks">{w.before.lacks(lacks.join('; '))}</p>}
      <div className="main-acts">
        <Main onPress={keep} disabled={busy || lacks.length > 0}>
          {w.before.keepIt}
        </Main>
        <Main
          onPress={() => void leaving.say({ kind: 'cannot-run', body: { thing: of } })}
          disabled={busy || name === ''}
        >
          {of === 'before' ? w.before.cannotRun : w.before.notRunning}
        </Main>
        <Main onPress={onEnd}>{w.before.leaveIt}</Main>
      </div>
      <Baseline job={job} />
    </section>
  );
}
