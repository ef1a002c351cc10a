// What a pack says of each weight: by which hands or gear it goes, and what holds it meanwhile.

import type { Quantity, Working } from '../quantity/types.ts';
import type { GearKind } from '../tools/tool.ts';

/** A lift by hand, weighed by the method as far as the plant says how it is done. */
export type HandLift = {
  /** As `lift` gives it; null where something it needs is not stated. */
  readonly verdict: string | null;
  readonly figure: string;
  /** What each person counts for, and what may be lifted where it begins and ends. */
  readonly share: Quantity | null;
  readonly least: Quantity | null;
  readonly reasons: readonly string[];
  readonly helps: string | null;
  readonly lacks: readonly string[];
  readonly cautions: readonly string[];
  readonly restsOn: string | null;
  readonly from: { readonly hCm: number; readonly vCm: number };
  readonly to: { readonly hCm: number; readonly vCm: number } | null;
  readonly working: Working;
};

export type GearLine = {
  readonly kind: GearKind;
  readonly count: number;
  /** What each of them must bear, as the marked safe load is stated. */
  readonly bears: Quantity;
  readonly names: readonly string[];
  readonly missing: number;
  readonly against: readonly { readonly name: string; readonly why: readonly string[] }[];
};

export type GearLift = {
  /** Null where no list of gear is at hand: what is needed is said all the same. */
  readonly on: string | null;
  readonly legs: number;
  /** Of each leg from straight down. */
  readonly anglesDeg: readonly number[];
  readonly tension: Quantity | null;
  readonly needs: readonly GearLine[];
  /** Lift points and what each must bear: rated for it, not for it, or not stated. */
  readonly points: readonly {
    readonly name: string;
    readonly bears: Quantity;
    readonly rated: Quantity | null;
    readonly holds: boolean | null;
  }[];
  readonly cautions: readonly string[];
  readonly working: Working;
};

export type LiftView = {
  readonly part: string;
  readonly name: string;
  readonly as: 'off' | 'aside';
  readonly bench: boolean;
  /** What is lifted: the wet weight where it is stated. */
  readonly weight: Quantity | null;
  readonly wet: boolean;
  /** `slid`: it stays where it rests; `light`: below what is weighed, its reach not stated. */
  readonly how: 'by hand' | 'gear' | 'light' | 'slid' | 'asked';
  readonly people: number;
  readonly hand: HandLift | null;
  readonly gear: GearLift | null;
  /** What carries it while its joints are loose: in before, away when they are started by hand. */
  readonly held: readonly string[];
  /** What is to be settled before anything is shut, in words. */
  readonly asks: readonly string[];
};

/** The vessel's sailing against the job and what hangs in it. */
export type SailingClash = {
  readonly sails: string;
  /** Hands-on minutes before it: begun later, the job is not done by then. */
  readonly latestStart: string;
  readonly late: boolean;
  readonly hangs: readonly string[];
};

export type Lifts = {
  readonly list: readonly LiftView[];
  readonly sailing: SailingClash | null;
};

export const NO_LIFTS: Lifts = { list: [], sailing: null };

/** A temporary thing as the record knows it. */
export type TempFacts = {
  readonly name: string;
  readonly kind: string;
  readonly where: string;
  /** The part whose weight it carries while the joints are loose. */
  readonly holds?: string;
};
