// Holds what this device knows of the vessel, and folds its acts with the same core as everywhere.

import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import { limits } from '../../limits.ts';
import type { Pack, PackRequest } from '../../pack/types.ts';
import type { Problem } from '../../quantity/types.ts';
import { fold } from '../../record/fold.ts';
import type { Replica } from '../../record/replica.ts';
import type { Draft, JobState, Refusal, State } from '../../record/types.ts';
import { type Answer, getReplica, postAct, postPack } from './api.ts';

export type Refused = {
  readonly problems: readonly Problem[];
  readonly refusal: Refusal | null;
};

export type Vessel = {
  readonly replica: Replica;
  readonly state: State;
  /** True when it is recorded; false when it was refused, which the strip on top then tells. */
  readonly record: (draft: Draft, ...more: readonly Draft[]) => Promise<boolean>;
  readonly makePack: (request: PackRequest) => Promise<Pack | null>;
  readonly refused: Refused | null;
  readonly tellRefused: (refused: Refused | null) => void;
};

const Context = createContext<Vessel | null>(null);

export function useVessel(): Vessel {
  const vessel = useContext(Context);
  if (vessel === null) throw new Error('a screen stands outside of the replica');
  return vessel;
}

export function useJob(id: string): { readonly job: JobState; readonly pack: Pack } | null {
  const { state, replica } = useVessel();
  const job = state.jobs[id];
  const packId = job?.packInForce ?? job?.packs.at(-1);
  const pack = replica.packs.find((each) => each.id === packId);
  return job === undefined || pack === undefined ? null : { job, pack };
}

type Known = { readonly seen: string; readonly replica: Replica | null };

function useKnown() {
  const [known, setKnown] = useState<Known>({ seen: '', replica: null });
  const [lost, setLost] = useState<string | null>(null);
  const seen = useRef('');
  /** While acts are being said the news waits: a screen must not move on between two of them. */
  const saying = useRef(false);
  const refresh = useCallback(async (asked = true) => {
    const answer = await getReplica(seen.current);
    if (saying.current && !asked) return;
    if (!answer.ok) {
      setLost(answer.problems[0]?.why ?? 'no answer');
      return;
    }
    setLost(null);
    if (answer.value.unchanged) return;
    seen.current = answer.value.seen;
    setKnown({ seen: answer.value.seen, replica: answer.value.replica });
  }, []);
  useEffect(() => {
    void refresh();
    const timer = window.setInterval(() => {
      if (document.visibilityState === 'visible' && !saying.current) void refresh(false);
    }, limits.server.replicaEverySeconds * 1000);
    return () => window.clearInterval(timer);
  }, [refresh]);
  return { replica: known.replica, lost, refresh, saying };
}

export function ReplicaProvider({ children }: { readonly children: ReactNode }) {
  const { replica, lost, refresh, saying } = useKnown();
  const [refused, tellRefused] = useState<Refused | null>(null);
  const keep = useCallback(
    async <T,>(answer: Answer<T>): Promise<T | null> => {
      tellRefused(answer.ok ? null : { problems: answer.problems, refusal: answer.refusal });
      await refresh();
      return answer.ok ? answer.value : null;
    },
    [refresh],
  );
  const vessel = useMemo((): Vessel | null => {
    if (replica === null) return null;
    return {
      replica,
      state: fold({ acts: replica.acts, packs: replica.packs }),
      record: async (draft, ...more) => {
        saying.current = true;
        let answer = await postAct(draft);
        for (const each of more) if (answer.ok) answer = await postAct(each);
        saying.current = false;
        return (await keep(answer)) !== null;
      },
      makePack: async (request) => (await keep(await postPack(request)))?.pack ?? null,
      refused,
      tellRefused,
    };
  }, [replica, refused, keep, saying]);
  if (vessel === null) {
    return <p role="status">{lost === null ? 'Opening the log …' : `No log yet: ${lost}.`}</p>;
  }
  return (
    <Context value={vessel}>
      {lost === null ? null : (
        <p className="strip" role="alert">
          Cut off: {lost}. What you see is the last that was known.
        </p>
      )}
      {children}
    </Context>
  );
}
