// When the vessel sails, typed by hand.

import { useState } from 'react';
import { Field, Plain } from '../shared/controls.tsx';
import { Person, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { dayWords } from '../shared/words.ts';

export function Sailings() {
  const { replica, state, record } = useVessel();
  const holder = useHolder();
  const [adding, setAdding] = useState(false);
  const [at, setAt] = useState('');
  const [where, setWhere] = useState('');
  const [by, setBy] = useState(holder.name);
  const stream = { kind: 'vessel', id: replica.vessel.id } as const;
  const add = async () => {
    const body = { at, where: where.trim() };
    if (await record({ stream, kind: 'sailing-set', by, body })) {
      setAdding(false);
      setAt('');
      setWhere('');
    }
  };
  const isVessel = replica.vessel.kind === 'vessel';
  return (
    <section aria-labelledby="sailings-head">
      <h2 id="sailings-head">{isVessel ? 'Sailings' : 'Wanted in service'}</h2>
      {state.sailings.length === 0 ? <p className="line">None written down.</p> : null}
      {state.sailings.map((sailing) => (
        <p className="line with-act" key={sailing.act}>
          <span>
            {dayWords(sailing.at)}, {sailing.at.slice(11, 16)} · {sailing.where}
          </span>
          <Plain
            disabled={holder.name === ''}
            onPress={() =>
              void record({
                stream,
                kind: 'sailing-off',
                by: holder.name,
                body: { of: sailing.act },
              })
            }
          >
            Strike out
          </Plain>
        </p>
      ))}
      {adding ? (
        <>
          <Field label="Day and time" type="datetime-local" value={at} onChange={setAt} />
          <Field label={isVessel ? 'Bound for' : 'What for'} value={where} onChange={setWhere} />
          <Person label="Written down by" value={by} onChange={setBy} />
          <Plain
            onPress={() => void add()}
            disabled={at === '' || where.trim() === '' || by.trim() === ''}
          >
            Write it down
          </Plain>{' '}
          <Plain onPress={() => setAdding(false)}>Leave it</Plain>
        </>
      ) : (
        <Plain
          onPress={() => {
            setBy(holder.name);
            setAdding(true);
          }}
        >
          {isVessel ? 'Add a sailing' : 'Add a day'}
        </Plain>
      )}
    </section>
  );
}
