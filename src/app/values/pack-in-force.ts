// A job's pack as it is worked by: steps with the values in force now, in the person's language.

import { useMemo } from 'react';
import type { Pack } from '../../pack/types.ts';
import type { JobState } from '../../record/types.ts';
import { stepInForce, textInForce } from '../../record/values-used.ts';
import { useTold, useWords } from '../shared/say.tsx';

/** The very same pack where nothing was superseded; what is kept stays as it was frozen. */
export function usePackInForce(job: JobState, pack: Pack): Pack {
  const told = useTold();
  const { lists } = useWords();
  return useMemo(() => {
    if (job.superseded.length === 0) return pack;
    const steps = pack.steps.map((step) => {
      const now = stepInForce(step, job);
      if (now === step) return step;
      return { ...now, text: textInForce(told(step.text), step, job, lists.noValue) };
    });
    return { ...pack, steps };
  }, [job, pack, told, lists]);
}
