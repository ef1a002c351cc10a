// Who has the watch, taken by name.

import { useState } from 'react';
import { NAMES_NOT_PROVED } from '../../quantity/authority.ts';
import { Plain } from '../shared/controls.tsx';
import { Person, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { timeWords } from '../shared/words.ts';

export function Watch() {
  const { replica, state, record } = useVessel();
  const holder = useHolder();
  const [taking, setTaking] = useState(false);
  const [name, setName] = useState(holder.name);
  const take = async () => {
    const stream = { kind: 'vessel', id: replica.vessel.id } as const;
    const done = await record({ stream, kind: 'watch-taken', by: name, body: { name } });
    if (done) setTaking(false);
  };
  return (
    <section aria-labelledby="watch-head">
      <h2 id="watch-head">Watch</h2>
      <p className="line">
        {state.watch === null
          ? 'Nobody has taken the watch.'
          : `${state.watch.name}, since ${timeWords(state.watch.at)} (${NAMES_NOT_PROVED})`}
      </p>
      {taking ? (
        <>
          <Person label="Who takes the watch" value={name} onChange={setName} />
          <Plain onPress={() => void take()} disabled={name.trim() === ''}>
            Take the watch
          </Plain>{' '}
          <Plain onPress={() => setTaking(false)}>Leave it</Plain>
        </>
      ) : (
        <Plain
          onPress={() => {
            setName(holder.name);
            setTaking(true);
          }}
        >
          Hand over the watch
        </Plain>
      )}
    </section>
  );
}
