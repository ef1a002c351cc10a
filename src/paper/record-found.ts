// On the printed record: what was read before the stop, how closures stood, how things were found.

import { positionWords } from '../record/before.ts';
import type { JobState } from '../record/types.ts';

export type FoundPart = {
  readonly title: string;
  readonly columns: readonly (readonly [string, number])[];
  readonly rows: readonly (readonly string[])[];
  /** Said where there is nothing to show in rows. */
  readonly words: string | null;
};

type NameOf = (thing: string) => string;

export const foundParts = (job: JobState, nameOf: NameOf): readonly FoundPart[] => [
  beforeStop(job),
  closuresFound(job, nameOf),
  asFound(job, nameOf),
];

const MACHINE = { before: 'this machine', 'before-other': 'the other side' } as const;

const beforeStop = (job: JobState): FoundPart => {
  const { readings, cannotRun } = job.baseline;
  const passed = cannotRun.map(
    (c) => `${MACHINE[c.of]} could not run (${c.by})${c.why === null ? '' : `: ${c.why}`}`,
  );
  return {
    title: 'Before it was stopped',
    columns: [
      ['At', 1],
      ['What', 2],
      ['Reading', 1.2],
      ['Of', 1],
      ['By', 1],
    ],
    rows: readings.map((r) => [r.at, r.label, `${r.value} ${r.unit}`.trim(), MACHINE[r.of], r.by]),
    words: passed.length > 0 ? passed.join('; ') : readings.length === 0 ? 'nothing read' : null,
  };
};

const closuresFound = (job: JobState, nameOf: NameOf): FoundPart => ({
  title: 'How each closure was found',
  columns: [
    ['Closure', 2],
    ['Found', 1.6],
    ['By', 1],
    ['Pictures', 0.8],
  ],
  rows: job.foundPositions.map((p) => [
    nameOf(p.thing),
    positionWords(p),
    p.by,
    String(job.photos.filter((photo) => photo.thing === p.thing).length),
  ]),
  words: job.foundPositions.length === 0 ? 'none said' : null,
});

const asFound = (job: JobState, nameOf: NameOf): FoundPart => ({
  title: 'As found',
  columns: [
    ['What', 1.6],
    ['Its state', 1.4],
    ['What failed', 1.4],
    ['Hours', 0.9],
    ['Pieces missing', 0.9],
    ['By', 0.9],
  ],
  rows: job.asFound.map((f) => [
    nameOf(f.thing),
    f.grade,
    f.text === null ? f.failed : `${f.failed}: ${f.text}`,
    f.hours === null ? 'not read' : String(f.hours),
    String(f.missing),
    f.by,
  ]),
  words: job.asFound.length === 0 ? 'not said' : null,
});
