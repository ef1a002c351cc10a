// What a device is given so that it can fold the same acts to the same state by itself.

import type { SinceLastDone } from '../hours/since.ts';
import type { Pack } from '../pack/types.ts';
import type { Does } from '../plant/schema.ts';
import type { StoredItem } from '../stores/item.ts';
import type { Act } from './types.ts';

export type TargetView = {
  readonly id: string;
  readonly name: string;
  readonly does: readonly { readonly id: Does; readonly name: string }[];
};

export type ClosureView = {
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  readonly normal: string | null;
  readonly place: string | null;
};

export type MachineView = {
  readonly id: string;
  readonly name: string;
  readonly position: string | null;
  readonly plate: string | null;
  readonly targets: readonly TargetView[];
  readonly closures: readonly ClosureView[];
};

/** One ruled line of the log: what, and the hours since it was last done. */
export type DueLine = {
  readonly machine: string;
  readonly machineName: string;
  readonly target: string;
  readonly targetName: string;
  readonly does: Does;
  readonly doing: string;
  readonly since: SinceLastDone;
};

export type Replica = {
  readonly vessel: {
    readonly id: string;
    readonly name: string;
    readonly kind: 'vessel' | 'station';
  };
  readonly invented: boolean;
  readonly plantIssue: { readonly number: number; readonly date: string; readonly hash: string };
  readonly people: readonly { readonly name: string; readonly role: string }[];
  readonly machines: readonly MachineView[];
  readonly packs: readonly Pack[];
  readonly acts: readonly Act[];
  readonly heads: readonly string[];
  readonly due: readonly DueLine[];
  /** What the list of stores says, as it was counted; absent where none is kept. */
  readonly stores?: readonly StoredItem[];
};

/** A device that has all of this already is told so instead. */
export type ReplicaAnswer = { readonly seen: string } & (
  | { readonly unchanged: true }
  | { readonly unchanged: false; readonly replica: Replica }
);
