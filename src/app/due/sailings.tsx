// When the vessel sails, typed by hand.

import { useState } from 'react';
import { Field, Plain } from '../shared/controls.tsx';
import { Person, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useWords } from '../shared/say.tsx';
import { dayWords } from '../shared/words.ts';

export function Sailings() {
  const { replica, state, record } = useVessel();
  const holder = useHolder();
  const words = useWords();
  const { sailings: w, log } = words;
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
      <h2 id="sailings-head">{isVessel ? w.head : w.wanted}</h2>
      {state.sailings.length === 0 ? <p className="line">{w.none}</p> : null}
      {state.sailings.map((sailing) => (
        <p className="line with-act" key={sailing.act}>
          <span>
            {dayWords(sailing.at, words)}, {sailing.at.slice(11, 16)} · {sailing.where}
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
            {w.strikeOut}
          </Plain>
        </p>
      ))}
      {adding ? (
        <>
          <Field label={w.dayAndTime} type="datetime-local" value={at} onChange={setAt} />
          <Field label={isVessel ? w.boundFor : w.whatFor} value={where} onChange={setWhere} />
          <Person label={w.by} value={by} onChange={setBy} />
          <Plain
            onPress={() => void add()}
            disabled={at === '' || where.trim() === '' || by.trim() === ''}
          >
            {log.writeDown}
          </Plain>{' '}
          <Plain onPress={() => setAdding(false)}>{log.leaveIt}</Plain>
        </>
      ) : (
        <Plain
          onPress={() => {
            setBy(holder.name);
            setAdding(true);
          }}
        >
          {isVessel ? w.add : w.addDay}
        </Plain>
      )}
    </section>
  );
}
