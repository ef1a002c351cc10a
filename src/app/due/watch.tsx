// Who has the watch, taken by name.

import { useState } from 'react';
import { NAMES_NOT_PROVED } from '../../quantity/authority.ts';
import { Plain } from '../shared/controls.tsx';
import { Person, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useTold, useWords } from '../shared/say.tsx';
import { timeWords } from '../shared/words.ts';

export function Watch() {
  const { replica, state, record } = useVessel();
  const holder = useHolder();
  const { watch: w, log } = useWords();
  const told = useTold();
  const [taking, setTaking] = useState(false);
  const [name, setName] = useState(holder.name);
  const take = async () => {
    const stream = { kind: 'vessel', id: replica.vessel.id } as const;
    const done = await record({ stream, kind: 'watch-taken', by: name, body: { name } });
    if (done) setTaking(false);
  };
  return (
    <section aria-labelledby="watch-head">
      <h2 id="watch-head">{w.head}</h2>
      <p className="line">
        {state.watch === null
          ? w.nobody
          : w.since(state.watch.name, timeWords(state.watch.at), told(NAMES_NOT_PROVED))}
      </p>
      {taking ? (
        <>
          <Person label={w.who} value={name} onChange={setName} />
          <Plain onPress={() => void take()} disabled={name.trim() === ''}>
            {w.take}
          </Plain>{' '}
          <Plain onPress={() => setTaking(false)}>{log.leaveIt}</Plain>
        </>
      ) : (
        <Plain
          onPress={() => {
            setName(holder.name);
            setTaking(true);
          }}
        >
          {w.handOver}
        </Plain>
      )}
    </section>
  );
}
