// The lettered sheets on which a pack's steps are printed, and by which they are entered later.

import { limits } from '../limits.ts';
import type { Pack, Phase, Step } from './types.ts';

/** One sheet in the hand: paper and screen find it by the same letter and the same words. */
export type PackSheet = {
  /** `A`, `B` … `Z`, `AA`: within its pack. */
  readonly letter: string;
  /** What is done on it, in the order of a job; its name is made of these. */
  readonly phases: readonly Phase[];
  /** Where one stretch of the job is too long for one sheet. */
  readonly part: { readonly n: number; readonly of: number } | null;
  readonly machine: string;
  /** In the pack's order; every step of the pack stands on exactly one sheet. */
  readonly steps: readonly Step[];
};

/** Phases that take turns (fit, box up, look again) are one stretch of the job: they share it. */
const STRETCH: Readonly<Record<Phase, number>> = {
  before: 0,
  isolate: 1,
  strip: 2,
  inspect: 3,
  fit: 4,
  'box-up': 4,
  'line-up': 5,
  prove: 5,
};

export const PHASES = Object.keys(STRETCH) as readonly Phase[];

export function sheetsOf(pack: Pick<Pack, 'steps' | 'machine'>): readonly PackSheet[] {
  const stretches = withoutCrumbs(stretchesOf(pack.steps));
  const parts = stretches.flatMap((steps) => {
    const phases = PHASES.filter((phase) => furthestOf(steps).includes(phase));
    const pieces = cut(steps);
    const of = pieces.length;
    return pieces.map((piece, i) => ({
      phases,
      part: of === 1 ? null : { n: i + 1, of },
      machine: pack.machine.name,
      steps: piece,
    }));
  });
  return parts.map((part, i) => ({ letter: letterOf(i), ...part }));
}

export type PhaseWords = Readonly<Record<Phase, string>>;

/** `Take off, Port main engine`; the words of the phases are the reader's. */
export function sheetName(
  sheet: PackSheet,
  words: PhaseWords,
  partOf: (n: number, of: number) => string = (n, of) => `${n} of ${of}`,
): string {
  const [first = '', ...more] = sheet.phases.map((phase) => words[phase]);
  const does = [first, ...more.map(lower)].join(', ');
  const part = sheet.part === null ? '' : ` (${partOf(sheet.part.n, sheet.part.of)})`;
  return `${does}${part}, ${sheet.machine}`;
}

const lower = (words: string): string => `${words.slice(0, 1).toLowerCase()}${words.slice(1)}`;

/** A job goes forward: a look between two fits belongs to the fitting, not to the looks before. */
function stretchesOf(steps: readonly Step[]): readonly (readonly Step[])[] {
  const stretches: Step[][] = [];
  let furthest = -1;
  for (const step of steps) {
    const last = stretches.at(-1);
    const stretch = Math.max(furthest, STRETCH[step.phase]);
    if (last !== undefined && stretch === furthest) last.push(step);
    else stretches.push([step]);
    furthest = stretch;
  }
  return stretches;
}

/** What carries the job on; a look that comes back between two fits does not name a sheet. */
function furthestOf(steps: readonly Step[]): readonly Phase[] {
  let furthest = -1;
  return steps.flatMap(({ phase }) => {
    furthest = Math.max(furthest, STRETCH[phase]);
    return STRETCH[phase] === furthest ? [phase] : [];
  });
}

/** A sheet with a step or two on it is lost; these go with what follows, the last with what was. */
function withoutCrumbs(stretches: readonly (readonly Step[])[]): readonly (readonly Step[])[] {
  const whole: (readonly Step[])[] = [];
  let crumbs: readonly Step[] = [];
  for (const stretch of stretches) {
    const steps = [...crumbs, ...stretch];
    crumbs = steps.length < limits.pack.sheetLeastSteps ? steps : [];
    if (crumbs.length === 0) whole.push(steps);
  }
  if (crumbs.length === 0) return whole;
  return [...whole.slice(0, -1), [...(whole.at(-1) ?? []), ...crumbs]];
}

/** Into pieces of like length; rounds of one joint next to each other stay on one sheet. */
function cut(steps: readonly Step[]): readonly (readonly Step[])[] {
  const count = Math.ceil(steps.length / limits.pack.sheetSteps);
  const pieces: (readonly Step[])[] = [];
  let from = 0;
  for (let n = 1; n <= count; n += 1) {
    const to =
      n === count ? steps.length : whereItChanges(steps, Math.round((steps.length * n) / count));
    if (to > from) pieces.push(steps.slice(from, to));
    from = Math.max(from, to);
  }
  return pieces;
}

function whereItChanges(steps: readonly Step[], near: number): number {
  let at = near;
  while (at < steps.length && steps[at]?.thing === steps[at - 1]?.thing) at += 1;
  return at;
}

function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : `${letterOf(Math.floor(index / 26) - 1)}${last}`;
}
