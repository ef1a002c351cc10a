// The whole app: one screen at a time, chosen by the address.

import { useEffect } from 'react';
import type { Pack } from '../pack/types.ts';
import type { JobState } from '../record/types.ts';
import { CalcScreen } from './calc/calc-screen.tsx';
import { Begin } from './due/begin.tsx';
import { Log } from './due/log.tsx';
import { PackScreen } from './pack/pack-screen.tsx';
import { ProofScreen } from './proof/proof-screen.tsx';
import { RecordScreen } from './record/record-screen.tsx';
import { HolderProvider } from './shared/person.tsx';
import { ReplicaProvider, useJob } from './shared/replica.tsx';
import { type Route, useRoute } from './shared/route.ts';
import { Sheet } from './shared/sheet.tsx';
import { OpenScreen } from './work/open-screen.tsx';
import { WorkScreen } from './work/work-screen.tsx';

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
  useEffect(() => {
    document.title = `${route.screen} · Boxup`;
  }, [route.screen]);
  switch (route.screen) {
    case 'log':
      return <Log />;
    case 'begin':
      return <Begin />;
    case 'pack':
      return <PackScreen key={route.id} id={route.id} />;
    case 'calc':
      return <CalcScreen name={route.name} />;
    default:
      return <JobScreen key={route.job} id={route.job} screen={route.screen} />;
  }
}

const SCREENS: Readonly<
  Record<
    'work' | 'open' | 'proof' | 'record',
    (props: { readonly job: JobState; readonly pack: Pack }) => React.ReactNode
  >
> = { work: WorkScreen, open: OpenScreen, proof: ProofScreen, record: RecordScreen };

function JobScreen({ id, screen }: { readonly id: string; readonly screen: keyof typeof SCREENS }) {
  const found = useJob(id);
  if (found === null) {
    return (
      <Sheet title="Job">
        <p>This job, or its pack, is not kept here.</p>
      </Sheet>
    );
  }
  const Chosen = SCREENS[screen];
  return <Chosen job={found.job} pack={found.pack} />;
}
