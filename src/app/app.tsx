// The whole app: one screen at a time, chosen by the address.

import { useEffect } from 'react';
import type { Pack } from '../pack/types.ts';
import type { JobState } from '../record/types.ts';
import { CalcScreen } from './calc/calc-screen.tsx';
import { Begin } from './due/begin.tsx';
import { Log } from './due/log.tsx';
import { EyesScreen } from './eyes/eyes-screen.tsx';
import { HandOverScreen } from './hand-over/hand-over-screen.tsx';
import { PackScreen } from './pack/pack-screen.tsx';
import { PaperScreen } from './paper/paper-screen.tsx';
import { ProofScreen } from './proof/proof-screen.tsx';
import { RecordScreen } from './record/record-screen.tsx';
import { SetupScreen } from './setup/setup-screen.tsx';
import { HolderProvider } from './shared/person.tsx';
import { ReplicaProvider, useVessel } from './shared/replica.tsx';
import { type JobPart, type Route, useRoute } from './shared/route.ts';
import { Speaking, useLanguage, useWords } from './shared/say.tsx';
import { useControlSizes } from './shared/scale.tsx';
import { Sheet } from './shared/sheet.tsx';
import { StoresScreen } from './stores/stores-screen.tsx';
import { BeginStrip } from './strip/begin-strip.tsx';
import { BoxUp } from './strip/box-up.tsx';
import { StripScreen } from './strip/strip-screen.tsx';
import { TightScreen } from './tight/tight-screen.tsx';
import { OpenScreen } from './work/open-screen.tsx';
import { PROOF_PHASES, useReady, WorkScreen } from './work/work-screen.tsx';

export function App() {
  return (
    <HolderProvider>
      <ReplicaProvider>
        <Screen route={useRoute()} />
      </ReplicaProvider>
    </HolderProvider>
  );
}

function Screen({ route }: { readonly route: Route }) {
  const [language] = useLanguage();
  const title = useWords().sheet.titles[route.screen];
  useControlSizes();
  useEffect(() => {
    document.title = `${title} · Boxup`;
    document.documentElement.lang = language;
  }, [title, language]);
  switch (route.screen) {
    case 'log':
      return <Log />;
    case 'begin':
      return <Begin />;
    case 'strip':
      return <BeginStrip />;
    case 'setup':
      return <SetupScreen />;
    case 'stores':
      return <StoresScreen />;
    case 'pack':
      return <PackScreen key={route.id} id={route.id} />;
    case 'calc':
      return <CalcScreen name={route.name} />;
    default:
      return <JobScreen key={route.job} id={route.job} screen={route.screen} />;
  }
}

function JobScreen({ id, screen }: { readonly id: string; readonly screen: JobPart }) {
  const { state, replica } = useVessel();
  const { sheet: w } = useWords();
  const job = state.jobs[id];
  const packId = job?.packInForce ?? job?.packs.at(-1);
  const pack = replica.packs.find((each) => each.id === packId) ?? null;
  if (job === undefined || (pack === null && job.strip === null)) {
    return (
      <Sheet title={w.job}>
        <p>{w.jobNotHere}</p>
      </Sheet>
    );
  }
  return (
    <Speaking said={pack?.said}>
      <Speaking said={job.said}>
        <Chosen job={job} pack={pack} screen={screen} />
      </Speaking>
    </Speaking>
  );
}

/** Once all is boxed up the work is the proof: nobody has to be sent there. */
function WorkOrProof({ job, pack }: { readonly job: JobState; readonly pack: Pack }) {
  const ready = useReady({ job, pack });
  const working = ready.some((each) => !PROOF_PHASES.includes(each.phase));
  const begun = pack.steps.some(
    (each) => PROOF_PHASES.includes(each.phase) && job.done[each.id] !== undefined,
  );
  return !working && (begun || ready.length > 0) && job.closed === null ? (
    <ProofScreen job={job} pack={pack} />
  ) : (
    <WorkScreen job={job} pack={pack} />
  );
}

type ChosenProps = {
  readonly job: JobState;
  readonly pack: Pack | null;
  readonly screen: JobPart;
};

function Chosen({ job, pack, screen }: ChosenProps) {
  switch (screen) {
    case 'open':
      return <OpenScreen job={job} pack={pack} />;
    case 'eyes':
      return <EyesScreen job={job} pack={pack} />;
    case 'record':
      return <RecordScreen job={job} pack={pack} />;
    case 'hand-over':
      return <HandOverScreen job={job} pack={pack} />;
    case 'work':
    case 'tight':
    case 'box-up':
    case 'paper':
    case 'proof':
      if (pack === null) {
        return screen === 'work' ? <StripScreen job={job} /> : <BoxUp job={job} />;
      }
      if (screen === 'tight') return <TightScreen job={job} pack={pack} />;
      if (screen === 'paper') return <PaperScreen job={job} pack={pack} />;
      return screen === 'proof' ? (
        <ProofScreen job={job} pack={pack} />
      ) : (
        <WorkOrProof job={job} pack={pack} />
      );
  }
}
