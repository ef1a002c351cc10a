// Looking again alone: only where nobody else is there, and not before the time of the core's rule.

import { type ReactNode, useEffect, useState } from 'react';
import type { LookState } from '../../record/second-look.ts';
import { aloneFrom, mayLookAlone } from '../../record/second-look-refused.ts';
import type { JobState } from '../../record/types.ts';
import { useWords } from '../shared/say.tsx';
import { timeWords } from '../shared/words.ts';

type AloneProps = {
  readonly job: JobState;
  readonly look: LookState;
  readonly by: string;
  readonly children: ReactNode;
};

const AGAIN_MS = 5_000;

export function AloneWait({ job, look, by, children }: AloneProps) {
  const { eyes: w } = useWords();
  const now = useNow();
  if (!mayLookAlone(job, look)) return <p className="lacks">{w.notAlone(by)}</p>;
  const from = aloneFrom(look);
  const clock = (utc: string) =>
    timeWords({ utc, offsetMinutes: 0 - new Date().getTimezoneOffset() }).slice(-5);
  return (
    <>
      <p>{w.alone(by)}</p>
      {from === null || now >= from ? (
        children
      ) : (
        <p className="lacks" data-wait>
          {w.notBefore(clock(from), clock(now))}
        </p>
      )}
    </>
  );
}

/** This device's clock, shown as such; the core judges by the times that stand in the acts. */
function useNow(): string {
  const [now, setNow] = useState(() => new Date().toISOString());
  useEffect(() => {
    const again = setInterval(() => setNow(new Date().toISOString()), AGAIN_MS);
    return () => clearInterval(again);
  }, []);
  return now;
}
