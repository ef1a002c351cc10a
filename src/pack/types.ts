// The pack: everything worked out for one job, frozen with the issues it used.

import type { Does } from '../plant/schema.ts';
import type { Caution } from '../quantity/authority.ts';
import type { Quantity, Source, Working } from '../quantity/types.ts';
import type { Sentence } from '../words/say.ts';
import type { Fastenings, WrenchLine } from './fastening-types.ts';
import type { Lifts, TempFacts } from './lift-types.ts';
import type { PlanView } from './plan-types.ts';
import type { SealList } from './seal-types.ts';

export type { PlanView } from './plan-types.ts';

/**
 * What an act speaks of, never a step number: `joint/pump-mounting`, `part/pump`, `item/impeller`,
 * `seal/pump-mounting:o-ring`, `closure/sea-suction`, `tag/3`, `temp/1`, `setting/joint:backlash`,
 * `check/faces:pump-mounting`, `proof/running`, `loose/joint:key`, `job`.
 */
export type Thing = string;

/** The kinds of act a step asks for; `record/kinds.ts` says what each opens and closes. */
export type StepVerb =
  | 'shut'
  | 'tagged'
  | 'drain-opened'
  | 'proved-dead'
  | 'second-look'
  | 'told'
  | 'measured'
  | 'checked'
  | 'put-in'
  | 'undone'
  | 'moved-off'
  | 'moved-aside'
  | 'item-out'
  | 'seal-out'
  | 'seal-in'
  | 'loose-out'
  | 'as-found'
  | 'loose-in'
  | 'item-in'
  | 'refitted'
  | 'made'
  | 'taken-away'
  | 'drain-shut'
  | 'untagged'
  | 'restored'
  | 'people-clear'
  | 'turned'
  | 'started'
  | 'proof';

/** What the person may have to give besides *Done*; typing is asked for readings only. */
export type Ask = {
  readonly name: string;
  readonly label: string;
  readonly kind: 'number' | 'choice' | 'text' | 'person' | 'count';
  readonly unit?: string;
  readonly choices?: readonly string[];
  readonly optional?: boolean;
  /** Asked for unless another question of the step has this answer; goes with `optional`. */
  readonly unless?: { readonly ask: string; readonly is: string };
  /** A count or number that is expected; another answer is a finding, not an error. */
  readonly expected?: number;
};

/** A figure shown at a step, with its origin in a word. */
export type ShownValue = {
  readonly id: string;
  readonly name: string;
  /** As issued, never re-rounded: `48 N.m`, `35.4 lbf.ft`; null where none is stated. */
  readonly shown: string | null;
  readonly origin: 'issued for this joint' | 'general table' | 'none';
  readonly issue: string | null;
  readonly date: string | null;
  readonly authority: string | null;
  readonly threadCondition: string | null;
  readonly was: { readonly issue: string; readonly value: string } | null;
  /** Why it is no longer what it was; null where nobody said, absent in packs made before. */
  readonly why?: string | null;
  readonly source: Source | null;
};

export type Phase =
  | 'before'
  | 'isolate'
  | 'strip'
  | 'inspect'
  | 'fit'
  | 'box-up'
  | 'line-up'
  | 'prove';

export type Step = {
  /** Verb + thing (+ round): `undone joint/pump-mounting`, `made joint/pump-mounting 60 %`. */
  readonly id: string;
  readonly verb: StepVerb;
  readonly thing: Thing;
  /** For `made`: which round; for `measured`: `found` or `left`. */
  readonly round?: string;
  readonly phase: Phase;
  /** One sentence in the imperative, figures first where there are any. */
  readonly text: string;
  /** Why it is here: "in the way of joint J on this side". */
  readonly reason: string;
  readonly place: string | null;
  readonly tool: string | null;
  /** Steps that must be done first because the machine demands it. */
  readonly needs: readonly string[];
  readonly count: { readonly n: number; readonly what: string } | null;
  /** Hole labels in tightening order, for a tick a bolt. */
  readonly holes: readonly string[];
  readonly perHole: boolean;
  readonly values: readonly ShownValue[];
  readonly cautions: readonly Caution[];
  readonly asks: readonly Ask[];
  /** Fields the act's body carries besides what is asked, such as a tag's closure and station. */
  readonly fixed: Readonly<Record<string, string | number>>;
  readonly minutes: number | null;
  readonly hands: number;
  /** How a torque wrench is set for this round; packs of earlier days have none. */
  readonly sets?: readonly WrenchLine[];
  /** The two stops that have no way past. */
  readonly stop: 'isolation' | 'clear' | null;
};

/** What the record must know of a joint to tally it and to say what its undoing opens. */
export type JointFacts = {
  readonly name: string;
  readonly critical: boolean;
  readonly wet: boolean;
  readonly fasteners: readonly {
    readonly id: string;
    readonly what: string;
    readonly count: number;
    readonly holes: readonly string[];
  }[];
  /** Hole labels over all fasteners; rounds are tallied over these. */
  readonly holes: readonly string[];
  /** Rounds that make the joint good again, in order: `hand`, `30 %` … or `made`. */
  readonly rounds: readonly string[];
  readonly seals: readonly { readonly id: string; readonly name: string; readonly count: number }[];
  readonly loose: readonly { readonly id: string; readonly name: string; readonly count: number }[];
  /** Proof ids that the first undoing opens. */
  readonly proofs: readonly string[];
  readonly place: string | null;
  readonly layout:
    | { readonly kind: 'positions'; readonly mm: readonly (readonly [number, number])[] }
    | { readonly kind: 'unknown' };
  /** What may be done to it while it is tight; packs of earlier days say nothing of it. */
  readonly recheck?: RecheckFacts;
};

/** Two acts on a joint that is tight, each with its value, or why it is not offered. */
export type RecheckFacts = {
  /** A nut backed off and brought to its value again: by kind of fastener. */
  readonly check: readonly {
    readonly fastener: string;
    readonly what: string;
    readonly holes: readonly string[];
    readonly value: ShownValue | null;
    readonly why: readonly string[];
  }[];
  /** A relaxed soft gasket re-tightened once round, nothing backed off. */
  readonly retighten: {
    readonly value: ShownValue | null;
    readonly when: string | null;
    readonly why: readonly string[];
  };
};

export type ClosureFacts = {
  readonly name: string;
  readonly kind: string;
  readonly normal: string | null;
  readonly workPosition: string;
  readonly stations: readonly string[];
  readonly secure: string | null;
  readonly medium: string | null;
  readonly place: string | null;
};

export type ProofFacts = {
  readonly name: string;
  readonly what: string;
  /** Things whose undoing owes this proof. */
  readonly owedBy: readonly Thing[];
};

/** What was found once the target is off or open: owed by the act that takes it off. */
export type AsFoundFacts = {
  readonly target: string;
  readonly name: string;
  readonly owedBy: readonly Thing[];
};

export type PackFacts = {
  readonly joints: Readonly<Record<string, JointFacts>>;
  readonly parts: Readonly<
    Record<string, { readonly name: string; readonly massKg: number | null }>
  >;
  readonly items: Readonly<Record<string, { readonly name: string; readonly renewed: boolean }>>;
  readonly closures: Readonly<Record<string, ClosureFacts>>;
  readonly temps: Readonly<Record<string, TempFacts>>;
  readonly checks: Readonly<Record<string, { readonly name: string }>>;
  readonly settings: Readonly<Record<string, { readonly name: string }>>;
  readonly proofs: Readonly<Record<string, ProofFacts>>;
  readonly asFound?: AsFoundFacts;
  /** The isolation that must stand before a wet joint may be undone. */
  readonly isolation: {
    readonly stated: boolean;
    readonly closures: readonly string[];
    readonly proveAt: readonly string[];
    readonly wetJoints: readonly string[];
    /** Of the closures those that keep it from starting; packs of earlier days name none. */
    readonly starts?: readonly string[];
  };
  /** Closures that a second pair of eyes looks at, at each moment; packs made before had none. */
  readonly looks?: {
    readonly isolation: readonly Thing[];
    readonly 'line-up': readonly Thing[];
  };
};

/** Something that wants a named decision; settled in the request, once. */
export type Decision = {
  /** Stable: `no value joint/x`, `unknown minutes joint/y`, `do not disturb joint/z`. */
  readonly id: string;
  readonly question: string;
  readonly why: string;
  readonly settled: Settled | null;
};

export type Settled = { readonly by: string; readonly reason: string; readonly limits?: string };

export type HandsAboard = '1' | '2' | '3' | 'more';

/** The document a pack is made from; the app exports it and the command line takes it. */
export type PackRequest = {
  readonly machine: string;
  readonly target: string;
  readonly does: Does;
  readonly why?: string;
  readonly when?: string;
  /** The next sailing or shift of berth, `2026-11-25T16:30` on the vessel's clock. */
  readonly sails?: string;
  /** The day it is asked on, `2026-11-25`: there is no clock in here, and sheets grow old. */
  readonly on?: string;
  readonly people?: readonly string[];
  /** Everyone aboard who could be a second pair of eyes, the mechanic included. */
  readonly handsAboard?: HandsAboard;
  readonly closures?: {
    readonly by: string;
    readonly on: string;
    readonly closures: readonly { readonly closure: string; readonly position: string }[];
    readonly drains?: readonly string[];
    readonly proveAt?: string;
    readonly vents?: readonly string[];
    readonly prime?: string;
  };
  readonly decisions?: Readonly<Record<string, Settled>>;
  readonly already?: {
    readonly off?: readonly string[];
    readonly aside?: readonly string[];
    readonly joints?: readonly string[];
  };
};

export type Lists = {
  readonly tools: readonly { readonly tool: string; readonly for: readonly string[] }[];
  readonly seals: readonly {
    readonly thing: Thing;
    readonly name: string;
    readonly count: number;
    readonly size: string | null;
    readonly compound: string | null;
    readonly joint: string;
  }[];
  readonly consumables: readonly {
    readonly name: string;
    readonly amount: string | null;
    readonly for: string;
  }[];
  readonly loose: readonly {
    readonly thing: Thing;
    readonly name: string;
    readonly count: number;
  }[];
  readonly closures: readonly {
    readonly closure: string;
    readonly name: string;
    readonly position: string;
    readonly normal: string | null;
    readonly stations: readonly string[];
    readonly tags: readonly number[];
  }[];
  readonly temporary: readonly {
    readonly thing: Thing;
    readonly name: string;
    readonly where: string;
  }[];
  readonly values: readonly ShownValue[];
  readonly proofs: readonly { readonly id: string; readonly name: string; readonly what: string }[];
  readonly followUps: readonly {
    readonly id: string;
    readonly after: string;
    readonly what: string;
  }[];
  readonly weights: readonly {
    readonly part: string;
    readonly name: string;
    readonly massKg: number | null;
    readonly carriedBy: string | null;
  }[];
};

export type Pack = {
  readonly format: 'boxup pack 1';
  /** SHA-256 of the RFC 8785 bytes of everything below. */
  readonly id: string;
  /** Named in words: `Sea-water pump, port main engine: exchange`. */
  readonly title: string;
  readonly authority: string;
  readonly namesNotProved: string;
  readonly vessel: {
    readonly id: string;
    readonly name: string;
    readonly kind: 'vessel' | 'station';
  };
  readonly invented: boolean;
  readonly machine: {
    readonly id: string;
    readonly name: string;
    readonly slug: string;
    readonly plate: string | null;
    readonly position: string | null;
    /** Machines of one type have one job; absent in packs made before. */
    readonly type?: string;
  };
  readonly target: {
    readonly id: string;
    readonly name: string;
    readonly does: Does;
    readonly doing: string;
  };
  readonly plantIssue: { readonly number: number; readonly date: string; readonly hash: string };
  readonly valueIssues: readonly {
    readonly sheet: string;
    readonly issue: string;
    readonly date: string;
    readonly authority: string;
  }[];
  readonly request: PackRequest;
  readonly otherSide: {
    readonly machine: string;
    readonly name: string;
    readonly count: number;
    readonly list: readonly string[];
  } | null;
  readonly isolationNote: string;
  readonly isolationListedBy: { readonly by: string; readonly on: string } | null;
  readonly plan: PlanView;
  /** For an overhaul: what goes on at the bench, by the same calculation. */
  readonly bench: PlanView | null;
  readonly steps: readonly Step[];
  readonly facts: PackFacts;
  /** Each fastening weighed, with its tools; packs of earlier days have none. */
  readonly fastenings?: Fastenings;
  /** Each weight and what carries it; packs of earlier days have none. */
  readonly lifts?: Lifts;
  /** Each seal against the stores; packs of earlier days have none. */
  readonly seals?: SealList;
  readonly lists: Lists;
  readonly decisions: readonly Decision[];
  readonly notChecked: readonly string[];
  readonly boxUpNotes: readonly string[];
  readonly people: number;
  readonly minutes: Quantity;
  readonly workings: Readonly<Record<string, Working>>;
  readonly rotation: string | null;
  readonly flowSeenAt: string | null;
  readonly speeds: readonly string[];
  readonly interval: ShownValue | null;
  readonly limits: readonly ShownValue[];
  /** What its sentences say, for other languages; packs made before had none. */
  readonly said?: readonly Sentence[];
};

/** A pack that can't be made: infeasible removal, or an unknown name. */
export type NoPack = { readonly feasible: false; readonly why: string };
