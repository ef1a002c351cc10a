// Takes back the last thing that was said, when a finger slipped: an act of its own.

import type { Pack } from '../../pack/types.ts';
import type { JobState } from '../../record/types.ts';
import { actSaid, actsOf, actWords } from '../shared/act-words.ts';
import { Plain } from '../shared/controls.tsx';
import { useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useSpeaks } from '../shared/say.tsx';

const NOT_TAKEN_BACK = ['corrected', 'job-started', 'strip-started', 'pack-amended', 'closed'];

export function TakeBack({ job, pack }: { readonly job: JobState; readonly pack: Pack | null }) {
  const { replica, record } = useVessel();
  const { name } = useHolder();
  const speaks = useSpeaks();
  const { work: w } = speaks.words;
  const acts = actsOf(replica.acts, job.id);
  const gone = new Set(acts.filter((a) => a.kind === 'corrected').map((a) => a.body.of));
  const last = acts.findLast((a) => !NOT_TAKEN_BACK.includes(a.kind) && !gone.has(a.hash));
  if (last === undefined || job.closed !== null || name === '') return null;
  const what = actWords(last, pack === null ? [] : [pack], speaks);
  const said = actSaid(last, speaks);
  const takeBack = () =>
    void record({
      stream: { kind: 'job', id: job.id },
      kind: 'corrected',
      by: name,
      body: { of: last.hash, why: w.mistake },
    });
  return (
    <p className="take-back">
      <Plain onPress={takeBack}>{w.takeBack(said === '' ? what : `${what} (${said})`)}</Plain>
    </p>
  );
}
