// Two amendments of one pack: which packs stand side by side, so that a person decides for one.

import type { Act, JobState } from './types.ts';

export type Rival = { readonly pack: string; readonly why: string; readonly by: string };

const FINDING = 'two amendments ';

/** The pack that both amend; null for a finding of another kind. */
const amended = (finding: string): string | null =>
  finding.startsWith(FINDING) ? finding.slice(FINDING.length) : null;

/** The packs a decision may choose from: those that amend the one, never that one itself. */
export function rivalPacks(job: JobState, finding: string): readonly string[] {
  const from = amended(finding);
  return from === null ? [] : job.packs.slice(job.packs.indexOf(from) + 1);
}

/** With who amended it, and why, in the words they gave. */
export function rivalsOf(acts: readonly Act[], job: JobState, finding: string): readonly Rival[] {
  const from = amended(finding);
  return rivalPacks(job, finding).flatMap((pack) => {
    const act = acts.find(
      (a) =>
        a.kind === 'pack-amended' &&
        a.stream.id === job.id &&
        a.body.from === from &&
        a.body.to === pack,
    );
    return act === undefined ? [] : [{ pack, why: String(act.body.why), by: act.by }];
  });
}
