// One step a screen: the drawing, its sentence and figure, its caution, and the acts possible now.

import { useState } from 'react';
import type { Pack, Step } from '../../pack/types.ts';
import type { JobState } from '../../record/types.ts';
import { ValueWords } from '../pack/lists.tsx';
import { Main, Plain } from '../shared/controls.tsx';
import { useKept } from '../shared/kept.ts';
import { useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { Asks } from './asks.tsx';
import { Cautions } from './caution.tsx';
import { DoneActs, LesserAnswers, quickOf } from './done-acts.tsx';
import { type Answers, asksShown, draftOf, missing } from './draft.ts';
import { DrawnStep } from './drawn-step.tsx';
import { PhotoAct } from './photo.tsx';
import { type Side, SideAct } from './side-acts.tsx';
import { togetherWith } from './together.ts';

type StepSheetProps = {
  readonly job: JobState;
  readonly pack: Pack;
  readonly step: Step;
  /** All steps that are ready, this one among them. */
  readonly ready: readonly Step[];
  readonly onDone: () => void;
};

/** Keyed by step where it is used: answers of one step never reach another. */
export function StepSheet({ job, pack, step, ready, onDone }: StepSheetProps) {
  const { record } = useVessel();
  const { name } = useHolder();
  const [answers, setAnswers] = useState<Answers>({});
  const [side, setSide] = useState<Side | null>(null);
  const [verifiedBy, setVerifiedBy] = useKept(`verifies.${job.id}`, '');
  const [busy, setBusy] = useState(false);
  const [keying, setKeying] = useState(false);
  const [alone, setAlone] = useState(false);
  const together = alone ? [] : togetherWith(step, ready, pack);
  const quick = keying ? null : quickOf(step);
  const lacks = missing(step, { by: name, verifiedBy, answers: { ...answers, ...quick?.first } });
  const say = async (holes?: readonly string[], more: Answers = {}) => {
    setBusy(true);
    const about = { job: job.id, by: name, verifiedBy, answers: { ...answers, ...more } };
    const draft = draftOf(step, holes === undefined ? about : { ...about, holes });
    const done = await record(draft, ...together.map((each) => draftOf(each, about)));
    setBusy(false);
    if (done && holes === undefined) onDone();
  };
  const left = holesLeft(job, step);
  const byHole = step.verb === 'made' && step.holes.length > 0;
  const mustTick = byHole && step.perHole && left.length > 0;
  return (
    <article className="step" data-step={step.id} aria-label="Now">
      <DrawnStep
        job={job}
        pack={pack}
        step={step}
        onTick={byHole && lacks.length === 0 ? (hole) => void say([hole]) : null}
      />
      <p className="sentence">{step.text}</p>
      {together.map((each) => (
        <p key={each.id} className="sentence">
          And: {each.text}
        </p>
      ))}
      {step.values.map((value) => (
        <p key={value.id} className="step-value">
          <ValueWords value={value} />
        </p>
      ))}
      <StepFacts step={step} />
      <Cautions cautions={step.cautions} verifiedBy={verifiedBy} onVerifiedBy={setVerifiedBy} />
      {quick === null ? (
        <Asks
          asks={asksShown(step, answers)}
          answers={answers}
          onAnswer={(ask, value) => setAnswers({ ...answers, [ask]: value })}
        />
      ) : null}
      {lacks.length === 0 ? null : (
        <p className="lacks" id="lacks">
          Before <i>Done</i>: {lacks.join('; ')}.
        </p>
      )}
      {side === null ? (
        <div className="main-acts">
          <DoneActs
            step={step}
            left={left.length}
            mustTick={mustTick}
            disabled={busy || lacks.length > 0}
            quick={quick}
            tags={together.length + 1}
            onSay={(more) => void say(undefined, more)}
          />
          <Main onPress={() => setSide('could-not')}>Could not do</Main>
          <Main onPress={() => setSide('found')}>Found something</Main>
          <PhotoAct job={job.id} step={step} />
        </div>
      ) : (
        <SideAct side={side} job={job.id} step={step} onEnd={() => setSide(null)} />
      )}
      {side === null ? (
        <LesserAnswers
          quick={quick}
          disabled={busy || lacks.length > 0}
          onSay={(more) => void say(undefined, more)}
        />
      ) : null}
      {side === null && together.length > 0 ? (
        <Plain onPress={() => setAlone(true)}>Only this tag</Plain>
      ) : null}
      {side === null && quick?.kind === 'count' ? (
        <Plain onPress={() => setKeying(true)}>Another count than {quick.expected}</Plain>
      ) : null}
      {side === null && step.stop === null && step.verb !== 'proved-dead' ? (
        <Plain onPress={() => setSide('used-anyway')}>Use anyway, without this</Plain>
      ) : null}
    </article>
  );
}

function holesLeft(job: JobState, step: Step): readonly string[] {
  const entry = job.entries.find((each) => each.thing === step.thing && each.open);
  const ticked = entry?.tally?.[step.round ?? ''] ?? [];
  return step.holes.filter((hole) => !ticked.includes(hole));
}

function StepFacts({ step }: { readonly step: Step }) {
  const facts = [step.place, step.tool, step.hands > 1 ? `${step.hands} hands` : null];
  return (
    <p className="step-facts">
      {facts.filter((each) => each !== null).join(' · ')}
      {facts.some((each) => each !== null) ? <br /> : null}
      <span className="small">Why: {step.reason}.</span>
    </p>
  );
}
