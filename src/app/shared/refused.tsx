// Tells in words why something was not recorded, with everything that is missing.

import { useEffect, useRef } from 'react';
import { Plain } from './controls.tsx';
import { useVessel } from './replica.tsx';
import { useTold, useWords } from './say.tsx';

export function RefusedStrip() {
  const { refused, tellRefused } = useVessel();
  const { refused: w } = useWords();
  const told = useTold(refused?.refusal?.said);
  const place = useRef<HTMLElement>(null);
  useEffect(() => {
    if (refused !== null) place.current?.focus();
  }, [refused]);
  if (refused === null) return null;
  const { refusal, problems } = refused;
  return (
    <section className="refused" role="alert" tabIndex={-1} ref={place}>
      <h2>{refusal === null ? w.head : w.headStop(told(refusal.stop))}</h2>
      {refusal === null ? (
        <ul>
          {problems.map((each) => (
            <li key={`${each.path} ${each.why}`}>
              {w.problem(each.path, told(each.why), told(each.expected))}
            </li>
          ))}
        </ul>
      ) : (
        <>
          <p>{told(refusal.why)}</p>
          <ul>
            {refusal.open.map((each) => (
              <li key={each}>{told(each)}</li>
            ))}
          </ul>
        </>
      )}
      <Plain onPress={() => tellRefused(null)}>{w.read}</Plain>
    </section>
  );
}
