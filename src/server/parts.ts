// What the server is put together from; it is told everything, and finds nothing by itself.

import type { Archive } from '../archive/contract.ts';
import type { Held } from '../pack/fastening-types.ts';
import type { Pack } from '../pack/types.ts';
import type { Plant } from '../plant/types.ts';
import type { Act, DeviceTime, JobState, State } from '../record/types.ts';
import type { Solver } from '../removal/model.ts';
import type { Language } from '../words/words.ts';

export type RecordToPrint = {
  readonly job: string;
  readonly state: State;
  readonly packs: readonly Pack[];
  readonly acts: readonly Act[];
};

/** What the record says of a pack's values, and for whom it is printed. */
export type PackToPrint = {
  readonly state: State;
  readonly packs: readonly Pack[];
  readonly people: readonly string[];
  readonly language: Language;
};

export type ServerParts = {
  readonly plant: Plant;
  readonly archive: Archive;
  readonly solver: Solver;
  /** The tools held, in date or not on the day of the work; none where no list is kept. */
  readonly held?: (on: string) => Held;
  readonly packPdf: (pack: Pack, about?: PackToPrint) => Promise<Uint8Array>;
  /** Blank, or of a job with what was said of its proof. */
  readonly proofPdf: (
    pack: Pack,
    said: { readonly job: JobState; readonly acts: readonly Act[] } | null,
    language: Language,
  ) => Promise<Uint8Array>;
  readonly recordPdf: (record: RecordToPrint) => Promise<Uint8Array>;
  /** The folder of the built app. */
  readonly dist: string;
  readonly now: () => DeviceTime;
  /** Asked for at each request: it is known only once the server listens. */
  readonly port: () => number;
  /** Addresses besides this computer's own names; none unless a person said so. */
  readonly addresses?: readonly string[];
};
