// Holds what this device knows of the vessel, and folds its acts with the same core as everywhere.

import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useMemo,
  useState,
} from 'react';
import type { Pack, PackRequest } from '../../pack/types.ts';
import type { Problem } from '../../quantity/types.ts';
import { fold } from '../../record/fold.ts';
import type { Replica } from '../../record/replica.ts';
import type { Draft, JobState, Refusal, State } from '../../record/types.ts';
import { type Answer, postPack } from './api.ts';
import { say, start, sync, takePhoto } from './offline.ts';
import { useDevice } from './offline-lines.tsx';
import type { Photo } from './offline-say.ts';
import { useWords } from './say.tsx';

export type Refused = {
  readonly problems: readonly Problem[];
  readonly refusal: Refusal | null;
};

export type Vessel = {
  readonly replica: Replica;
  readonly state: State;
  /** True when it is kept on this device; if it was refused, the strip on top tells why. */
  readonly record: (draft: Draft, ...more: readonly Draft[]) => Promise<boolean>;
  /** Null when this phone could not keep it, which the strip on top then tells. */
  readonly keepPhoto: (file: Blob) => Promise<Photo | null>;
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

export function ReplicaProvider({ children }: { readonly children: ReactNode }) {
  const { replica, lost, broken } = useDevice();
  const { sheet: w } = useWords();
  const [refused, tellRefused] = useState<Refused | null>(null);
  useEffect(start, []);
  const told = useCallback(<T,>(answer: Answer<T>): T | null => {
    tellRefused(answer.ok ? null : { problems: answer.problems, refusal: answer.refusal });
    return answer.ok ? answer.value : null;
  }, []);
  const vessel = useMemo((): Vessel | null => {
    if (replica === null) return null;
    return {
      replica,
      state: fold({ acts: replica.acts, packs: replica.packs }),
      record: async (draft, ...more) => told(await say([draft, ...more])) !== null,
      keepPhoto: async (file) => told(await takePhoto(file)),
      makePack: async (request) => {
        const made = told(await postPack(request));
        await sync();
        return made?.pack ?? null;
      },
      refused,
      tellRefused,
    };
  }, [replica, refused, told]);
  if (vessel === null) {
    const why = broken ?? lost;
    return <p role="status">{lost === null ? w.opening : w.noLog(why ?? lost)}</p>;
  }
  return <Context value={vessel}>{children}</Context>;
}
