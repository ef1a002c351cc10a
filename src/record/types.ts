// The record: acts as they are kept, and the state that folding them gives.

import type { Before } from '../pack/before.ts';
import type { HandsAboard, Pack, Thing } from '../pack/types.ts';
import type { Sentence } from '../words/say.ts';
import type { LookState } from './second-look.ts';

export type Stream = { readonly kind: 'job' | 'machine' | 'vessel'; readonly id: string };

/** Device time with the offset in force; shown, never trusted. */
export type DeviceTime = { readonly utc: string; readonly offsetMinutes: number };

/**
 * One entry of the record. `hash` is SHA-256 of the RFC 8785 bytes of the act without `hash` and
 * `signature`; `(vessel, hash)` is its key. `parents` are all heads of the vessel that the device
 * had seen. `proved` stays false while names are chosen without proof.
 */
export type Act = {
  readonly vessel: string;
  readonly stream: Stream;
  readonly kind: string;
  readonly version: 1;
  readonly by: string;
  readonly proved: boolean;
  readonly device: string;
  readonly deviceSeq: number;
  readonly parents: readonly string[];
  readonly at: DeviceTime;
  readonly body: ActBody;
  readonly hash: string;
  readonly signature?: string;
};

export type Json =
  | string
  | number
  | boolean
  | null
  | readonly Json[]
  | { readonly [key: string]: Json };

/** A body is plain JSON; `kinds.ts` holds the zod shape of each kind's body. */
export type ActBody = { readonly [key: string]: Json };

export type Draft = Pick<Act, 'stream' | 'kind' | 'by' | 'body'>;

/** One thing undone and not yet made good; derived by the fold, ticked by nobody. */
export type Entry = {
  readonly thing: Thing;
  /** In words: `Pump mounting: 6 nuts off`. */
  readonly what: string;
  readonly place: string | null;
  readonly kind:
    | 'joint'
    | 'part'
    | 'item'
    | 'old seal'
    | 'new seal'
    | 'loose part'
    | 'closure'
    | 'tag'
    | 'drain'
    | 'temporary'
    | 'as found'
    | 'missing'
    | 'proof';
  readonly openedBy: string;
  readonly closedBy: readonly string[];
  readonly open: boolean;
  /** For a joint: round → hole labels recorded so far. */
  readonly tally?: Readonly<Record<string, readonly string[]>>;
};

export type Finding = {
  readonly id: string;
  readonly kind:
    | 'found'
    | 'could not'
    | 'out of order'
    | 'made good without being undone'
    | 'at the same time'
    | 'count differs'
    | 'position differs'
    | 'closed with entries open'
    | 'after closing'
    | 'two amendments'
    | 'value superseded'
    | 'proof failed';
  readonly thing: Thing;
  readonly what: string;
  readonly act: string;
  /** Findings a person raised need an owner and a decision before closing. */
  readonly needsDecision: boolean;
  readonly decision: { readonly by: string; readonly owner: string; readonly what: string } | null;
};

export type Deviation = {
  readonly act: string;
  readonly thing: Thing;
  readonly by: string;
  readonly reason: string;
  readonly limits: string;
};

/** A thing seen while stripping, as whoever did it told it; nothing of it is read anywhere else. */
export type Seen = {
  readonly thing: Thing;
  readonly did: 'took off' | 'shut' | 'put in' | 'opened' | 'tagged';
  readonly what: string;
  readonly act: string;
  readonly by: string;
  /** The device's date, `2026-03-14`; shown, never trusted. */
  readonly on: string;
  /** What had been seen last before it: it may have stood behind these. */
  readonly justBefore: readonly Thing[];
  /** Does it hold liquid? Asked when it is taken off; not known counts as wet. */
  readonly wet: 'yes' | 'no' | 'do not know' | null;
  readonly medium: string | null;
  readonly fasteners: readonly { readonly count: number; readonly what: string }[];
  /** Old seals that came out, and those still in there. */
  readonly seals: number;
  readonly sealsLeft: number;
  readonly sealKind: string | null;
  readonly bag: number | null;
  /** Hashes of pictures. */
  readonly photos: readonly string[];
  /** Of a closure or a temporary thing: valve, breaker, plug; blank, tie, rag. */
  readonly kind: string | null;
  readonly where: string | null;
  /** Of a tag: the closure it hangs on. */
  readonly of: Thing | null;
  readonly found: string | null;
  readonly position: string | null;
  readonly turns: number | null;
};

/** What a job without a pack knows of its machine. */
export type StripState = {
  readonly vessel: string;
  readonly machineName: string;
  readonly side: string;
  readonly component: string;
  readonly seen: readonly Seen[];
  /** Drains at which flow was seen to run and die away. */
  readonly provedAt: readonly Thing[];
  /** The order a person set for boxing up; things not named keep their proposed place. */
  readonly order: readonly Thing[];
};

/** The last handing over of the watch on this job: what was not tapped stays "not seen". */
export type HandedOver = {
  readonly act: string;
  readonly by: string;
  readonly to: string;
  readonly at: DeviceTime;
  readonly list: readonly { readonly thing: Thing; readonly seenBy: string | null }[];
};

/** Read while the machine still ran, on it (`before`) or on its other side (`before-other`). */
export type Baseline = {
  readonly readings: readonly {
    readonly act: string;
    readonly by: string;
    readonly of: Before;
    /** The speed it was read at, in words. */
    readonly at: string;
    readonly name: string;
    readonly label: string;
    readonly value: number | string;
    readonly unit: string;
  }[];
  readonly cannotRun: readonly {
    readonly act: string;
    readonly by: string;
    readonly of: Before;
    readonly why: string | null;
  }[];
};

/** A bolt found to hold nothing; it stands until the joint is undone again, or the nut checked. */
export type BoltFound = {
  readonly act: string;
  readonly thing: Thing;
  /** Null where nobody said which. */
  readonly hole: string | null;
  readonly what: string;
  readonly stands: boolean;
};

export type JobState = {
  readonly id: string;
  /** What its sentences say, for other languages. */
  readonly said: readonly Sentence[];
  readonly title: string;
  readonly machine: string;
  readonly target: string;
  readonly does: string;
  readonly why: string;
  readonly hands: readonly string[];
  /** Who stands for the work that a competent person must verify, where one was named. */
  readonly competent: string | null;
  /** The act that began it; a job is closed, never corrected away. */
  readonly startAct: string;
  readonly startedBy: string;
  readonly startedAt: DeviceTime;
  readonly packs: readonly string[];
  /** Null while two amendments stand side by side undecided, and in a job without a pack. */
  readonly packInForce: string | null;
  /** Not null where the machine is stripped without a pack, from what is seen. */
  readonly strip: StripState | null;
  readonly handedOver: HandedOver | null;
  readonly stage: 'Pack' | 'Work' | 'Proof' | 'Record';
  readonly entries: readonly Entry[];
  readonly openCount: number;
  /** Step id → hash of the act that reported it. */
  readonly done: Readonly<Record<string, string>>;
  readonly findings: readonly Finding[];
  readonly deviations: readonly Deviation[];
  readonly isolation: {
    readonly shut: readonly string[];
    readonly tagged: readonly string[];
    readonly provedAt: readonly string[];
    /** True when every typed closure is shut and tagged and flow was seen to run and die away. */
    readonly proved: boolean;
    readonly why: string;
  };
  /** Said when the pack was made, or when a strip began; null where nobody said it. */
  readonly handsAboard: HandsAboard | null;
  /** What a second pair of eyes looks at, and whether that stands; see `second-look.ts`. */
  readonly looks: readonly LookState[];
  /** True after `people-clear` and until anything is undone or opened again. */
  readonly clear: boolean;
  readonly readings: readonly {
    readonly act: string;
    readonly thing: Thing;
    readonly name: string;
    readonly value: number | string;
    readonly unit: string;
  }[];
  readonly superseded: readonly Superseded[];
  readonly verdict: 'pass' | 'fail' | 'cannot tell' | `passed up to ${string}` | null;
  readonly followUps: readonly {
    readonly id: string;
    readonly after: string;
    readonly what: string;
    readonly owner: string | null;
    readonly doneBy: string | null;
  }[];
  readonly photos: readonly {
    readonly act: string;
    readonly thing: Thing;
    readonly hash: string;
  }[];
  readonly notes: readonly {
    readonly act: string;
    readonly by: string;
    readonly thing: Thing;
    readonly text: string;
  }[];
  readonly items: readonly {
    readonly act: string;
    readonly part: string;
    readonly way: 'out' | 'in';
    readonly serial: string;
    readonly hours: number | null;
  }[];
  readonly baseline: Baseline;
  readonly bolts: readonly BoltFound[];
  /** How each closure stood before this job moved it, the last word on each. */
  readonly foundPositions: readonly {
    readonly act: string;
    readonly by: string;
    readonly thing: Thing;
    readonly found: string;
    readonly turns: number | null;
  }[];
  readonly asFound: readonly {
    readonly act: string;
    readonly by: string;
    readonly thing: Thing;
    readonly grade: string;
    readonly failed: string;
    readonly text: string | null;
    readonly hours: number | null;
    readonly missing: number;
    readonly photo: string | null;
  }[];
  readonly closed: {
    readonly act: string;
    readonly by: string;
    readonly at: DeviceTime;
    readonly deviations: number;
  } | null;
};

/** One value of one machine as an issue gives it, made known by the act `values-issued`. */
export type IssuedRow = {
  readonly machine: string;
  readonly sheet: string;
  readonly issue: string;
  readonly date: string;
  readonly authority: string;
  readonly id: string;
  readonly name: string;
  /** As issued; null where the issue withdraws it. */
  readonly is: string | null;
  readonly condition: string | null;
  readonly why: string | null;
  readonly act: string;
};

/** A value a job's pack holds, or a joint was made by, that an issue has since replaced. */
export type Superseded = Omit<IssuedRow, 'machine' | 'id'> & {
  readonly thing: Thing;
  /** The id of the value. */
  readonly value: string;
  readonly was: string;
  readonly wasIssue: string;
  readonly wasCondition: string | null;
  /** The act that brought the joint to the superseded value without a look before; else null. */
  readonly reached: string | null;
  readonly looked: { readonly by: string; readonly act: string; readonly anyway: boolean } | null;
};

export type State = {
  readonly vessel: string;
  /** What is said of the machines, for other languages; each job carries its own. */
  readonly said: readonly Sentence[];
  readonly heads: readonly string[];
  readonly jobs: Readonly<Record<string, JobState>>;
  readonly watch: { readonly name: string; readonly at: DeviceTime } | null;
  readonly sailings: readonly {
    readonly at: string;
    readonly where: string;
    readonly act: string;
  }[];
  readonly people: readonly string[];
  readonly machines: Readonly<Record<string, MachineState>>;
  /** Values made known by issues, whichever pack was made before or after. */
  readonly issued: readonly IssuedRow[];
  /** Acts kept but not folded because an ancestor is missing. */
  readonly waiting: readonly string[];
  /** Acts of a kind or version this program does not know: kept and shown as unknown. */
  readonly unknown: readonly string[];
};

export type MachineState = {
  readonly hours: readonly { readonly at: string; readonly hours: number }[];
  readonly done: readonly {
    readonly target: string;
    readonly does: string;
    readonly at: string;
    readonly hours: number | null;
    readonly job: string | null;
  }[];
  readonly openLimits: readonly {
    readonly what: string;
    readonly owner: string;
    readonly act: string;
  }[];
  readonly followUps: readonly {
    readonly id: string;
    readonly what: string;
    readonly owner: string;
    readonly doneBy: string | null;
  }[];
};

/** Why an act may not be recorded now; the two stops and closing are refused here, in the core. */
export type Refusal = {
  readonly stop:
    | 'isolation not proved'
    | 'someone not clear'
    | 'not looked at'
    | 'value superseded'
    | 'seals not counted'
    | 'not closed'
    | 'bad act';
  readonly why: string;
  readonly open: readonly string[];
  /** What these sentences say, for other languages. */
  readonly said?: readonly Sentence[];
};

export type Folding = { readonly acts: readonly Act[]; readonly packs: readonly Pack[] };
