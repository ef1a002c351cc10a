// What is shut, drained and tagged. Typed by a named person; nothing of it is worked out here.

import { useState } from 'react';
import type { Pack } from '../../pack/types.ts';
import { Field, Pick, Plain } from '../shared/controls.tsx';
import { Person, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { go, to } from '../shared/route.ts';
import { useTold, useWords } from '../shared/say.tsx';

export function IsolationList({ pack }: { readonly pack: Pack }) {
  const [typing, setTyping] = useState(false);
  const { isolationSheet: w } = useWords();
  const told = useTold();
  const { isolation, closures } = pack.facts;
  const prove = isolation.proveAt.map((id) => closures[id]?.name ?? id);
  return (
    <section aria-labelledby="isolation-head">
      <h2 id="isolation-head">{w.head}</h2>
      <p data-isolation-note>
        <b>{told(pack.isolationNote)}</b>
        {pack.isolationListedBy === null
          ? ''
          : w.by(pack.isolationListedBy.by, pack.isolationListedBy.on)}
      </p>
      <ul className="ruled-list">
        {pack.lists.closures.map((each) => (
          <li key={each.closure}>
            <b>
              {each.name}: {told(each.position)}
            </b>
            <br />
            {w.normally(told(each.normal ?? w.notStatedLoud))} ·{' '}
            {each.tags
              .map((tag, i) => w.tagAt(tag, told(each.stations[i] ?? w.placeNotStated)))
              .join('; ')}
          </li>
        ))}
      </ul>
      {prove.length === 0 ? null : <p>{w.provedAt(prove.join(', '))}</p>}
      {typing ? <TypeIsolation pack={pack} /> : null}
      {typing ? null : (
        <Plain onPress={() => setTyping(true)}>{isolation.stated ? w.another : w.write}</Plain>
      )}
    </section>
  );
}

const POSITIONS = ['shut', 'open', 'off', 'out', 'in hand'];

function TypeIsolation({ pack }: { readonly pack: Pack }) {
  const { replica, makePack } = useVessel();
  const holder = useHolder();
  const { isolationSheet: w } = useWords();
  const told = useTold();
  const [by, setBy] = useState(holder.name);
  const [positions, setPositions] = useState<Readonly<Record<string, string>>>({});
  const [proveAt, setProveAt] = useState('');
  const machine = replica.machines.find((each) => each.id === pack.machine.id);
  const all = machine?.closures ?? [];
  const drains = all.filter((each) => each.kind === 'drain');
  const vents = all.filter((each) => each.kind === 'vent');
  const others = all.filter((each) => each.kind !== 'drain' && each.kind !== 'vent');
  const chosen = (list: typeof all) =>
    list.filter((each) => (positions[each.id] ?? '') !== '').map((each) => each.id);
  const make = async () => {
    const closures = chosen(others).map((closure) => ({
      closure,
      position: positions[closure] ?? '',
    }));
    const next = await makePack({
      ...pack.request,
      closures: {
        by,
        on: new Date().toISOString().slice(0, 10),
        closures,
        drains: chosen(drains),
        vents: chosen(vents),
        ...(proveAt === '' ? {} : { proveAt }),
      },
    });
    if (next !== null) go(to.pack(next.id));
  };
  const ready = by.trim() !== '' && chosen(others).length > 0;
  const set = (id: string) => (value: string) => setPositions({ ...positions, [id]: value });
  return (
    <div className="form">
      <p>{w.explain}</p>
      {others.map((each) => (
        <Field
          key={each.id}
          label={w.closure(each.name, told(each.normal ?? 'not stated'))}
          value={positions[each.id] ?? ''}
          onChange={set(each.id)}
          list={POSITIONS}
        />
      ))}
      {[...drains, ...vents].map((each) => (
        <Field
          key={each.id}
          label={`${each.name} (${told(each.kind)})`}
          value={positions[each.id] ?? ''}
          onChange={set(each.id)}
          list={['open']}
        />
      ))}
      <Pick
        label={w.where}
        value={proveAt}
        onChange={setProveAt}
        options={drains}
        empty={told('not stated')}
      />
      <Person label={w.listedBy} value={by} onChange={setBy} />
      <Plain onPress={() => void make()} disabled={!ready}>
        {w.workOut}
      </Plain>
    </div>
  );
}
