// One step a screen: the drawing, its sentence and figure, its caution, and the acts possible now.

import { useState } from 'react';
import type { Ask, Pack, Step } from '../../pack/types.ts';
import type { JobState } from '../../record/types.ts';
import { BeforeBeside, FoundPosition } from '../before/baseline.tsx';
import { LiftAtStep } from '../pack/lifts.tsx';
import { ValueWords } from '../pack/lists.tsx';
import { Main, Plain } from '../shared/controls.tsx';
import { useKept } from '../shared/kept.ts';
import { useHolder, usePeople } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useSpeaks, useTold, useWords } from '../shared/say.tsx';
import { BoltFound } from '../tight/bolt-found.tsx';
import { ResultsIn } from '../tight/results-in.tsx';
import { Asks } from './asks.tsx';
import { Cautions } from './caution.tsx';
import { DoneActs, LesserAnswers, type Quick, quickOf } from './done-acts.tsx';
import { type Answers, asksShown, draftOf, missing } from './draft.ts';
import { DrawnStep } from './drawn-step.tsx';
import { PhotoAct } from './photo.tsx';
import { Sets } from './sets.tsx';
import { type Side, SideAct } from './side-acts.tsx';
import { ALONE, togetherWith } from './together.ts';

export type StepSheetProps = {
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
  const speaks = useSpeaks();
  const [answers, setAnswers] = useState<Answers>({});
  const [side, setSide] = useState<Side | null>(null);
  const [verifiedBy, setVerifiedBy] = useKept(`verifies.${job.id}`, '');
  const [busy, setBusy] = useState(false);
  const [keying, setKeying] = useState(false);
  const [alone, setAlone] = useState(false);
  const along = alone ? ALONE : togetherWith(step, ready, pack);
  const cautions = cautionsOf([step, ...along.steps]);
  const quick = keying ? null : quickOf(step);
  const said = { by: name, verifiedBy, answers: { ...answers, ...quick?.first } };
  const lacks = missing({ ...step, cautions }, said, speaks);
  const say = async (holes?: readonly string[], more: Answers = {}) => {
    setBusy(true);
    const about = { job: job.id, by: name, verifiedBy, answers: { ...answers, ...more } };
    const draft = draftOf(step, holes === undefined ? about : { ...about, holes });
    const all = along.always || quick === null || sameAs(more, quick.first) ? along.steps : [];
    const kept = await record(draft, ...all.map((each) => draftOf(each, about)));
    setBusy(false);
    if (kept && holes === undefined) onDone();
  };
  const { byHole, ...ticks } = ticksOf(job, step);
  const onTick = byHole && lacks.length === 0 ? (hole: string) => void say([hole]) : null;
  const done = {
    step,
    quick,
    along,
    ...ticks,
    disabled: busy || lacks.length > 0,
    onSay: (more: Answers) => {
      const told = { ...said, answers: { ...answers, ...more } };
      const open = asksHowFar(step, more) || missing(step, told, speaks).length > 0;
      if (!open) return void say(undefined, more);
      setAnswers({ ...answers, ...more });
      setKeying(true);
    },
  };
  return (
    <article className="step" data-step={step.id} aria-label={speaks.words.work.now}>
      <DrawnStep job={job} pack={pack} step={step} onTick={onTick} />
      <StepWords step={step} together={along.steps} />
      <LiftAtStep pack={pack} thing={step.thing} />
      <Cautions cautions={cautions} verifiedBy={verifiedBy} onVerifiedBy={setVerifiedBy} />
      <Asks
        asks={asksBeside(step, quick, answers)}
        answers={answers}
        onAnswer={(ask, value) => setAnswers({ ...answers, [ask]: value })}
        beside={(ask) => (asksRunning(step) ? <BeforeBeside job={job} ask={ask} /> : null)}
      />
      {step.verb === 'restored' ? <FoundPosition job={job} thing={step.thing} /> : null}
      <Lacks lacks={lacks} />
      {side === null ? (
        <Acts
          job={job}
          done={done}
          off={busy || name === ''}
          onAlone={() => setAlone(true)}
          onKey={() => setKeying(true)}
          onSide={setSide}
        />
      ) : (
        <SideAct side={side} job={job.id} step={step} onEnd={() => setSide(null)} />
      )}
      <AtBolts job={job} step={step} />
    </article>
  );
}

/** Where bolts are turned: what a bolt may say instead, and the file of a tool that turned them. */
function AtBolts({ job, step }: Pick<StepSheetProps, 'job' | 'step'>) {
  if (step.holes.length === 0 || (step.verb !== 'undone' && step.verb !== 'made')) return null;
  const valued = step.verb === 'made' && step.values.some((value) => value.shown !== null);
  return (
    <>
      <BoltFound job={job.id} thing={step.thing} />
      {valued ? <ResultsIn job={job} /> : null}
    </>
  );
}

type ActsProps = {
  readonly job: JobState;
  readonly done: Parameters<typeof DoneActs>[0] & { readonly step: Step };
  readonly off: boolean;
  readonly onAlone: () => void;
  readonly onKey: () => void;
  readonly onSide: (side: Side) => void;
};

/** What can be done now: reported, not done, found, pictured, or done in another way. */
function Acts({ job, done, off, onAlone, onKey, onSide }: ActsProps) {
  const { step, quick, along, onSay } = done;
  return (
    <>
      <div className="main-acts">
        <DoneActs {...done} />
        <SideActs onChoose={onSide} />
        <PhotoAct job={job.id} step={step} />
      </div>
      <LesserAnswers {...done} />
      <Told step={step} disabled={off} onSay={onSay} />
      <Otherwise
        alone={along.steps.length > 0 ? onAlone : null}
        quick={quick}
        onKey={onKey}
        anyway={hasWayPast(step) ? () => onSide('used-anyway') : null}
      />
    </>
  );
}

function SideActs({ onChoose }: { readonly onChoose: (side: Side) => void }) {
  const { work: w } = useWords();
  return (
    <>
      <Main onPress={() => onChoose('could-not')}>{w.couldNot}</Main>
      <Main onPress={() => onChoose('found')}>{w.found}</Main>
    </>
  );
}

/** Of all that one tap reports, each hazard once. */
const cautionsOf = (steps: readonly Step[]): Step['cautions'] =>
  steps
    .flatMap((each) => each.cautions)
    .filter((each, i, all) => all.findIndex((one) => one.hazard === each.hazard) === i);

/** The proof asks again what was read before the job. */
const asksRunning = (step: Step): boolean => step.thing === 'proof/running';

/** How far it passed is asked after "passed up to" was said, and only then. */
const asksHowFar = (step: Step, more: Answers): boolean =>
  more.result === 'passed up to' && step.asks.some((ask) => ask.name === 'upTo');

function asksBeside(step: Step, quick: Quick | null, answers: Answers): readonly Ask[] {
  if (quick === null) return asksShown(step, answers);
  return quick.kind === 'choice' ? quick.rest : [];
}

type OtherwiseProps = {
  readonly alone: (() => void) | null;
  readonly quick: Quick | null;
  readonly onKey: () => void;
  readonly anyway: (() => void) | null;
};

function Otherwise({ alone, quick, onKey, anyway }: OtherwiseProps) {
  const { work: w } = useWords();
  return (
    <>
      {alone === null ? null : <Plain onPress={alone}>{w.onlyThis}</Plain>}
      {quick?.kind === 'count' ? (
        <Plain onPress={onKey}>{w.anotherThan(quick.expected)}</Plain>
      ) : null}
      {anyway === null ? null : <Plain onPress={anyway}>{w.useAnyway}</Plain>}
    </>
  );
}

type ToldProps = {
  readonly step: Step;
  readonly disabled: boolean;
  readonly onSay: (more: Answers) => void;
};

/** Where only a name is asked, the name reports the step. */
function Told({ step, disabled, onSay }: ToldProps) {
  const people = usePeople();
  const [ask, another] = step.asks;
  if (ask?.kind !== 'person' || another !== undefined || step.cautions.length > 0) return null;
  return (
    <p className="quick" data-told>
      {people.map((person) => (
        <Plain key={person} onPress={() => onSay({ [ask.name]: person })} disabled={disabled}>
          {person}
        </Plain>
      ))}
    </p>
  );
}

const sameAs = (a: Answers, b: Answers): boolean =>
  Object.entries(b).every(([name, value]) => a[name] === value);

/** The two stops have none; the core refuses it there whatever a screen offers. */
const hasWayPast = (step: Step): boolean => step.stop === null && step.verb !== 'proved-dead';

export function Lacks({ lacks }: { readonly lacks: readonly string[] }) {
  const { work: w } = useWords();
  return lacks.length === 0 ? null : <p className="lacks">{w.before(lacks.join('; '))}</p>;
}

type StepWordsProps = { readonly step: Step; readonly together: readonly Step[] };

function StepWords({ step, together }: StepWordsProps) {
  const { work: w } = useWords();
  const told = useTold();
  return (
    <>
      <p className="sentence">{told(step.text)}</p>
      {together.map((each) => (
        <p key={each.id} className="sentence" data-along={each.id}>
          {w.and(told(each.text))}
        </p>
      ))}
      <Sets step={step} />
      {step.values.map((value) => (
        <p key={value.id} className="step-value">
          <ValueWords value={value} />
        </p>
      ))}
      <StepFacts step={step} />
    </>
  );
}

/** Whether bolts are ticked one by one here, how many are left, and whether they must be. */
function ticksOf(job: JobState, step: Step) {
  const entry = job.entries.find((each) => each.thing === step.thing && each.open);
  const ticked = entry?.tally?.[step.round ?? ''] ?? [];
  const left = step.holes.filter((hole) => !ticked.includes(hole)).length;
  const byHole = step.verb === 'made' && step.holes.length > 0;
  return { left, byHole, mustTick: step.perHole && byHole && left > 0 };
}

function StepFacts({ step }: { readonly step: Step }) {
  const { work: w } = useWords();
  const told = useTold();
  const hands = step.hands > 1 ? w.handsFor(step.hands) : null;
  const facts = [step.place, step.tool, hands].filter((each) => each !== null);
  return (
    <p className="step-facts">
      {facts.map(told).join(' · ')}
      {facts.length > 0 ? <br /> : null}
      <span className="small">{w.why(told(step.reason))}</span>
    </p>
  );
}
