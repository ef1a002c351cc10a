// What a pack says of the seals of every disturbed joint: needed, held, short, and what is near.

import type { StoredItem } from '../stores/item.ts';
import type { Thing } from './types.ts';

/** Seals by `machine joint:seal` with the day they were fitted, as the record tells. */
export type FittedOn = Readonly<Record<string, string>>;

export type StoresHeld = {
  readonly items: readonly StoredItem[];
  readonly fitted?: FittedOn;
};

export type Drawn = {
  readonly item: string;
  readonly name: string;
  readonly place: string | null;
  readonly mark: string | null;
  readonly count: number;
  /** Last day under the storage rule or on its label; null: no limit, or not known. */
  readonly until: string | null;
  readonly notChecked: readonly string[];
  readonly anyway: {
    readonly by: string;
    readonly why: string;
    readonly against: readonly string[];
  } | null;
};

/** Near to what is needed, and why it is not drawn. */
export type NotDrawn = {
  readonly item: string;
  readonly name: string;
  readonly place: string | null;
  readonly why: readonly string[];
};

export type SealNeed = {
  readonly thing: Thing;
  readonly joint: string;
  readonly jointName: string;
  readonly name: string;
  readonly kind: string;
  readonly size: string | null;
  readonly compound: string | null;
  readonly thickness: string | null;
  readonly count: number;
  readonly grease: string | null;
  readonly sealant: string | null;
  readonly drawn: readonly Drawn[];
  /** Null where no list of stores is kept, or nothing tells which one it takes. */
  readonly short: number | null;
  readonly notDrawn: readonly NotDrawn[];
  /** What speaks against the seal as the description of the machine has it. */
  readonly against: readonly string[];
  readonly notChecked: readonly string[];
  readonly notes: readonly string[];
};

export type SpareNeed = {
  readonly part: string;
  readonly name: string;
  readonly type: string | null;
  readonly drawn: readonly Drawn[];
  readonly short: number | null;
  readonly notDrawn: readonly NotDrawn[];
};

export type ConsumableNeed = {
  readonly name: string;
  readonly joint: string;
  readonly jointName: string;
  readonly amount: string | null;
  readonly amountSource: string | null;
  readonly held: { readonly name: string; readonly place: string | null } | null;
  readonly against: readonly string[];
};

/** Opened up to by this job but not disturbed. */
export type NearSeal = {
  readonly thing: Thing;
  readonly jointName: string;
  readonly name: string;
  readonly fittedOn: string | null;
  readonly years: number | null;
  readonly renewAfterYears: number | null;
  readonly doNow: boolean;
};

export type SealList = {
  readonly on: string | null;
  readonly rule: string | null;
  /** False where no list of stores is kept. */
  readonly held: boolean;
  readonly needs: readonly SealNeed[];
  readonly spares: readonly SpareNeed[];
  readonly consumables: readonly ConsumableNeed[];
  readonly near: readonly NearSeal[];
};

export const NO_SEALS: SealList = {
  on: null,
  rule: null,
  held: false,
  needs: [],
  spares: [],
  consumables: [],
  near: [],
};
