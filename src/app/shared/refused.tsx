// Tells in words why something was not recorded, with everything that is missing.

import { useEffect, useRef } from 'react';
import { Plain } from './controls.tsx';
import { useVessel } from './replica.tsx';

export function RefusedStrip() {
  const { refused, tellRefused } = useVessel();
  const place = useRef<HTMLElement>(null);
  useEffect(() => {
    if (refused !== null) place.current?.focus();
  }, [refused]);
  if (refused === null) return null;
  const { refusal, problems } = refused;
  return (
    <section className="refused" role="alert" tabIndex={-1} ref={place}>
      <h2>{refusal === null ? 'Not recorded' : `Not recorded: ${refusal.stop}`}</h2>
      {refusal === null ? (
        <ul>
          {problems.map((each) => (
            <li key={`${each.path} ${each.why}`}>
              {each.path}: {each.why}; expected {each.expected}
            </li>
          ))}
        </ul>
      ) : (
        <>
          <p>{refusal.why}</p>
          <ul>
            {refusal.open.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        </>
      )}
      <Plain onPress={() => tellRefused(null)}>I have read it</Plain>
    </section>
  );
}
