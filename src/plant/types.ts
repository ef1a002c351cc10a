// What reading a plant folder gives: the plant, its machines with differences applied, problems.

import type { Problem } from '../quantity/types.ts';
import type { Fault } from './faults.ts';
import type {
  Closure,
  Difference,
  Isolation,
  Joint,
  Line,
  Part,
  PlantFile,
  SheetFile,
  Target,
  TypeFile,
  ValueEntry,
} from './schema.ts';

/** Where a field came from; `path` is as in `parts/sea-water-pump/mass`. */
export type Origin = {
  readonly path: string;
  readonly from: 'drawing' | 'measured' | 'seen once' | 'assumed';
  readonly by?: string;
  readonly on?: string;
};

/** An issued figure in force, with the sheet it stands on. */
export type IssuedValue = ValueEntry & {
  readonly id: string;
  readonly sheet: string;
  readonly issue: string;
  readonly date: string;
  readonly authority: string;
  /** How long its sheet stands before it is confirmed again, and when that was done last. */
  readonly confirm?: SheetFile['confirm'];
  readonly confirmed?: SheetFile['confirmed'];
};

/** A machine at a fitted position: its type with the position's differences applied. */
export type Machine = {
  readonly id: string;
  readonly name: string;
  /** Made from the name; commands take slug or id. */
  readonly slug: string;
  readonly type: string;
  readonly typeName: string;
  readonly otherSide?: string;
  readonly side?: 'port' | 'starboard';
  readonly plate?: string;
  readonly position?: string;
  readonly parts: Readonly<Record<string, Part>>;
  readonly joints: Readonly<Record<string, Joint>>;
  /** Lines and closures of the type and of the plant together. */
  readonly lines: Readonly<Record<string, Line>>;
  readonly closures: Readonly<Record<string, Closure>>;
  readonly sensors: NonNullable<TypeFile['sensors']>;
  readonly isolations: Readonly<Record<string, Isolation>>;
  readonly targets: Readonly<Record<string, Target>>;
  readonly differences: readonly Difference[];
  /** Values of the sheets whose `for` names this machine or its type, by value id. */
  readonly values: Readonly<Record<string, IssuedValue>>;
  readonly origins: readonly Origin[];
  /** Paths written `unknown`. */
  readonly unknown: readonly string[];
};

export type Plant = {
  readonly id: string;
  readonly name: string;
  readonly kind: 'vessel' | 'station';
  readonly issue: PlantFile['issue'] & { readonly hash: string };
  readonly source?: 'invented for the demo';
  readonly storageRule?: string;
  readonly people: readonly { readonly name: string; readonly role: string }[];
  readonly places: Readonly<Record<string, { readonly name: string }>>;
  readonly machines: Readonly<Record<string, Machine>>;
  readonly types: Readonly<Record<string, TypeFile>>;
  /** Every issue of every value sheet, also those no longer in force, with the file of each. */
  readonly sheets: readonly (SheetFile & { readonly file: string })[];
};

/** A problem with its place in a file. `must` is refused; `should` and `note` are not. */
export type FileProblem = Problem & {
  readonly level: 'must' | 'should' | 'note';
  readonly file: string;
  readonly line: number;
  /** Which of the twenty faults of `docs/plant.md` it is; only *must* problems have one. */
  readonly fault?: Fault;
};

/** A folder's files as text; reading itself touches no disk. */
export type PlantText = readonly { readonly file: string; readonly text: string }[];

export type ReadPlant = { readonly plant: Plant | null; readonly problems: readonly FileProblem[] };
