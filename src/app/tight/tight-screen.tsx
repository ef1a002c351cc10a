// A joint that is tight: pick it, then one of two acts, each on a screen of its own.

import { useState } from 'react';
import { jointDrawing } from '../../drawing/joint.ts';
import type { WrenchLine } from '../../pack/fastening-types.ts';
import type { Pack } from '../../pack/types.ts';
import {
  checkDraft,
  retightenDraft,
  type TightJoint,
  tightJoints,
} from '../../record/tight-offers.ts';
import type { JobState, Refusal } from '../../record/types.ts';
import { ValueWords } from '../pack/lists.tsx';
import { Choice, Main, Plain } from '../shared/controls.tsx';
import { Drawn } from '../shared/drawn.tsx';
import { JobSheet } from '../shared/job-sheet.tsx';
import { useKept } from '../shared/kept.ts';
import { useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { to } from '../shared/route.ts';
import { Speaking, useTold, useWords } from '../shared/say.tsx';
import { tallyWidth } from '../shared/width.ts';
import { Cautions } from '../work/caution.tsx';
import { Sets } from '../work/sets.tsx';
import { Lacks } from '../work/step-sheet.tsx';

type Act = 'check' | 'retighten';

export function TightScreen({ job, pack }: { readonly job: JobState; readonly pack: Pack }) {
  const { tight: w, work } = useWords();
  const [thing, setThing] = useState<string | null>(null);
  const [act, setAct] = useState<Act | null>(null);
  const { replica } = useVessel();
  const joints = job.closed === null ? tightJoints(job, replica.packs) : [];
  const joint = joints.find((each) => each.thing === thing) ?? null;
  const back = () => (act === null ? setThing(null) : setAct(null));
  return (
    <JobSheet job={job} pack={pack} title={w.title} quietTitle={joint !== null}>
      {joint === null ? (
        <Joints joints={joints} onPick={setThing} />
      ) : (
        <Speaking said={joint.said}>
          <article className="step" data-tight={joint.thing} data-act={act ?? 'choose'}>
            {act === null ? <Choose joint={joint} onAct={setAct} /> : null}
            {act === 'check' ? <Check key={joint.thing} job={job} joint={joint} /> : null}
            {act === 'retighten' ? <Retighten key={joint.thing} job={job} joint={joint} /> : null}
            <Plain onPress={back}>{act === null ? w.another : w.back}</Plain>
          </article>
        </Speaking>
      )}
      <p>
        <a className="plain" href={to.job(job.id)}>
          {work.title}
        </a>
      </p>
    </JobSheet>
  );
}

type JointsProps = {
  readonly joints: readonly TightJoint[];
  readonly onPick: (thing: string) => void;
};

function Joints({ joints, onPick }: JointsProps) {
  const { tight: w } = useWords();
  if (joints.length === 0) return <p className="sentence">{w.none}</p>;
  return (
    <>
      <p>{w.intro}</p>
      <ul className="others">
        {joints.map((joint) => (
          <li key={joint.thing} data-joint={joint.thing}>
            <Plain onPress={() => onPick(joint.thing)}>{joint.name}</Plain>
          </li>
        ))}
      </ul>
    </>
  );
}

type JointProps = { readonly joint: TightJoint };

function Choose({ joint, onAct }: JointProps & { readonly onAct: (act: Act) => void }) {
  const { tight: w } = useWords();
  const offered = joint.check.filter((each) => each.to !== null);
  const checkWhy = joint.check.filter((each) => each.to === null).flatMap((each) => each.why);
  return (
    <>
      <p className="sentence">{joint.name}</p>
      <div className="main-acts">
        {offered.length === 0 ? null : <Main onPress={() => onAct('check')}>{w.checkHead}</Main>}
        {joint.retighten.to === null ? null : (
          <Main onPress={() => onAct('retighten')}>{w.retightenHead}</Main>
        )}
      </div>
      <NotOffered head={w.checkHead} why={[...new Set(checkWhy)]} />
      <NotOffered head={w.retightenHead} why={joint.retighten.why} />
    </>
  );
}

function NotOffered({ head, why }: { readonly head: string; readonly why: readonly string[] }) {
  const { tight: w } = useWords();
  const told = useTold();
  if (why.length === 0) return null;
  return (
    <section data-not-offered>
      <h2>{head}</h2>
      <p>
        {w.notOffered} {why.map((each) => told(each)).join('; ')}.
      </p>
    </section>
  );
}

function Stopped({ stop }: { readonly stop: Refusal | null }) {
  const told = useTold();
  if (stop === null) return null;
  return (
    <section className="stop" data-stop={stop.stop}>
      <p>{told(stop.why)}</p>
      <ul>
        {stop.open.map((each) => (
          <li key={each}>{told(each)}</li>
        ))}
      </ul>
    </section>
  );
}

type ActProps = JointProps & { readonly job: JobState };

function Picture({ joint, order = [] }: JointProps & { readonly order?: readonly string[] }) {
  const width = Math.min(tallyWidth(), 480);
  if (joint.holes.length === 0) return null;
  return <Drawn drawing={jointDrawing({ joint, order }, { width })} />;
}

/** The cautions of making it up stand here too, with the name of who verified. */
function useVerified({ job, joint }: ActProps) {
  const { work: w } = useWords();
  const { name } = useHolder();
  const [verifiedBy, setVerifiedBy] = useKept(`verifies.${job.id}`, '');
  const cautions = joint.step?.cautions ?? [];
  const lacks = [
    ...(name === '' ? [w.whoHolds] : []),
    ...(cautions.length > 0 && verifiedBy === '' ? [w.whoVerified] : []),
  ];
  const shown = (
    <>
      <Cautions cautions={cautions} verifiedBy={verifiedBy} onVerifiedBy={setVerifiedBy} />
      <Lacks lacks={lacks} />
    </>
  );
  return { shown, lacks, name, verifiedBy: cautions.length > 0 ? verifiedBy : '' };
}

function SetsOf({ joint, sets }: JointProps & { readonly sets: readonly WrenchLine[] }) {
  return joint.step === null ? null : <Sets step={{ ...joint.step, sets }} />;
}

/** A tap on a hole records it at once, as on the drawing of a round. */
function Check({ job, joint }: ActProps) {
  const { tight: w } = useWords();
  const { record } = useVessel();
  const { shown, lacks, name, verifiedBy } = useVerified({ job, joint });
  const told = useTold();
  const [done, setDone] = useState<readonly string[]>([]);
  const say = async (hole: string, value: string) => {
    if (await record(checkDraft(job.id, name, joint.thing, [hole], value, verifiedBy)))
      setDone([...done, hole]);
  };
  return (
    <>
      <h2>{w.checkHead}</h2>
      <Picture joint={joint} />
      <p className="sentence">{joint.name}</p>
      <Stopped stop={joint.checkStop} />
      {shown}
      {joint.check.map(({ fastener, what, holes, value, to: figure, sets }) =>
        figure === null || value === null ? null : (
          <section key={fastener} data-fastener={fastener}>
            <p className="step-value">
              <ValueWords value={value} />
            </p>
            <p className="sentence">{w.checkHow(figure)}</p>
            <SetsOf joint={joint} sets={sets} />
            <p>
              {w.checkWhich} <span className="small">{told(what)}</span>
            </p>
            <p className="quick">
              {holes.map((hole) => (
                <Plain
                  key={hole}
                  onPress={() => void say(hole, figure)}
                  disabled={lacks.length > 0 || joint.checkStop !== null || done.includes(hole)}
                >
                  {w.hole(hole)}
                </Plain>
              ))}
            </p>
          </section>
        ),
      )}
      <p role="status">{done.length === 0 ? w.checkNoted : w.checkDone(done.length)}</p>
    </>
  );
}

const YES = ['yes', 'no'];

function Retighten({ job, joint }: ActProps) {
  const { tight: w } = useWords();
  const { record } = useVessel();
  const { shown, lacks, name, verifiedBy } = useVerified({ job, joint });
  const told = useTold();
  const [cold, setCold] = useState('');
  const [noPressure, setNoPressure] = useState('');
  const [startIsolated, setStartIsolated] = useState('');
  const [done, setDone] = useState(false);
  const { to: figure, value, when, sets } = joint.retighten;
  if (figure === null || value === null) return null;
  const all = [cold, noPressure, startIsolated].every((each) => each === 'yes');
  const say = async () => {
    if (await record(retightenDraft(job.id, name, joint.thing, figure, verifiedBy))) setDone(true);
  };
  return (
    <>
      <h2>{w.retightenHead}</h2>
      <Picture joint={joint} order={joint.holes} />
      <p className="sentence">{joint.name}</p>
      <p className="step-value">
        <ValueWords value={value} />
      </p>
      <p className="sentence">{w.retightenHow(figure)}</p>
      <SetsOf joint={joint} sets={sets} />
      {when === null ? null : <p>{w.retightenWhen(told(when))}</p>}
      <Stopped stop={joint.retightenStop} />
      {shown}
      <Choice label={w.cold} value={cold} onChange={setCold} choices={YES} />
      <Choice label={w.noPressure} value={noPressure} onChange={setNoPressure} choices={YES} />
      <Choice
        label={w.startIsolated}
        value={startIsolated}
        onChange={setStartIsolated}
        choices={YES}
      />
      <div className="main-acts">
        <Main
          onPress={() => void say()}
          disabled={lacks.length > 0 || !all || done || joint.retightenStop !== null}
        >
          {w.retightenDone}
        </Main>
      </div>
      <p role="status">{done ? w.retightenDone : w.retightenNoted}</p>
    </>
  );
}
