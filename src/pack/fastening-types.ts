// What a pack says of each fastening: the value in force, what it does to bolt and hole, the tools.

import type { Quantity, Source, Working } from '../quantity/types.ts';
import type { Verdict } from '../tightening/model.ts';
import type { Surface } from '../tightening/tables/friction-ranges.ts';
import type { Tool } from '../tools/tool.ts';
import type { StoresHeld } from './seal-types.ts';
import type { ShownValue } from './types.ts';

/** The tools held, as the shell read them; `on` is the day of the work. */
export type Held = {
  readonly tools: readonly Tool[];
  readonly on: string | null;
  /** The stores held; absent where no list of them is kept. */
  readonly stores?: StoresHeld;
};

/** No list of tools is at hand: none is chosen, and none is missing. */
export const NOTHING_HELD: Held = { tools: [], on: null };

/** What the issued torque does under one condition of the thread, at both ends of the friction. */
export type Band = {
  readonly surface: Surface;
  readonly preloadMin: Quantity;
  readonly preloadMax: Quantity;
  readonly yieldShareMin: Quantity | null;
  readonly yieldShareMax: Quantity | null;
  readonly verdict: Verdict | null;
  /** The weaker thread and what it bears; null where the hole is not checked. */
  readonly stripping: { readonly load: Quantity; readonly weaker: 'hole' | 'bolt' } | null;
  readonly cautions: readonly string[];
  readonly working: Working;
};

/** One round as the wrench is set for it. */
export type RoundSet = {
  readonly round: string;
  /** On the scale, in its own unit: `28.5 N·m`. */
  readonly shown: string;
  /** Below what may be used of the scale: brought there by feel, the next round counts. */
  readonly belowRange: boolean;
};

export type WrenchLine = {
  readonly fastener: string;
  readonly what: string;
  readonly wrenchId: string;
  readonly wrench: string;
  /** Setting for the full value. */
  readonly shown: string;
  readonly rounds: readonly RoundSet[];
  readonly gripPointMm: number | null;
  readonly angleDeg: number | null;
  readonly offsetMm: number | null;
};

export type FasteningTools = {
  readonly names: readonly string[];
  readonly widthMm: number;
  readonly widthSource: Source;
  readonly line: WrenchLine | null;
  readonly anyway: {
    readonly by: string;
    readonly why: string;
    readonly against: readonly string[];
  } | null;
  readonly cautions: readonly string[];
};

export type Fastening = {
  /** `joint:fastener`. */
  readonly id: string;
  readonly joint: string;
  readonly fastener: string;
  readonly jointName: string;
  /** `4 nuts M12`. */
  readonly what: string;
  readonly value: ShownValue;
  /** What each bolt must clamp, where the model tells; null where it does not. */
  readonly clampNeeded: { readonly force: Quantity; readonly working: Working } | null;
  /** One where the value says the condition of the thread, more where it does not: both shown. */
  readonly bands: readonly Band[];
  /** Why nothing stands beside the value, in words; null where something does. */
  readonly notChecked: string | null;
  readonly tools: FasteningTools | null;
};

export type ToolList = {
  /** The day for which tools were taken as in date. */
  readonly on: string;
  /** Distinct tools to lay out before anything is opened, in the order of the list held. */
  readonly layOut: readonly {
    readonly id: string;
    readonly name: string;
    readonly place: string | null;
  }[];
  /** No choice of fewer tools does the job. */
  readonly bound: number;
  readonly proven: boolean;
  readonly missing: readonly {
    readonly fastening: string;
    readonly what: string;
    readonly why: string;
    readonly nearest: readonly {
      readonly tool: string;
      readonly name: string;
      readonly whyNot: readonly string[];
    }[];
  }[];
  readonly laidAside: readonly {
    readonly tool: string;
    readonly name: string;
    readonly why: readonly string[];
    readonly instead: readonly string[];
  }[];
  /** What must be measured or said before a tool can be chosen. */
  readonly asks: readonly { readonly fastening: string; readonly ask: string }[];
};

/** All fastenings of a job; `tools` is null where no list of tools is at hand. */
export type Fastenings = {
  readonly list: readonly Fastening[];
  readonly tools: ToolList | null;
};
