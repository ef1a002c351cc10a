// Begin a job on a machine that nobody has written down: vessel known, the rest in words.

import { useState } from 'react';
import type { HandsAboard } from '../../pack/types.ts';
import { slugged } from '../../record/strip.ts';
import { Aboard } from '../eyes/aboard.tsx';
import { Choice, Field, Plain } from '../shared/controls.tsx';
import { useKept } from '../shared/kept.ts';
import { Hands, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { go, to } from '../shared/route.ts';
import { useWords } from '../shared/say.tsx';
import { Sheet } from '../shared/sheet.tsx';
import { freshMark } from './mark.ts';

const SIDES = ['port', 'starboard', 'midships', 'only one'];
const DOES: Readonly<Record<string, string>> = {
  'only taken apart': '',
  exchanged: 'exchange',
  overhauled: 'overhaul',
  'renewed in place': 'renew-in-place',
};

export function BeginStrip() {
  const { replica, state, record } = useVessel();
  const holder = useHolder();
  const { stripping: w, work } = useWords();
  const [fresh] = useState(freshMark);
  const [mark] = useKept('mark', fresh);
  const [machine, setMachine] = useState('');
  const [side, setSide] = useState('');
  const [component, setComponent] = useState('');
  const [does, setDoes] = useState('');
  const [people, setPeople] = useState<readonly string[]>([]);
  const [aboard, setAboard] = useState<HandsAboard | ''>('');
  const begin = async () => {
    const words = [component, machine, side, new Date().toISOString().slice(0, 10), mark].join(' ');
    const base = slugged(words);
    const used = Object.keys(state.jobs).filter((id) => id.startsWith(base)).length;
    const id = used === 0 ? base : `${base}-${used + 1}`;
    const body = {
      vessel: replica.vessel.name,
      machine: machine.trim(),
      component: component.trim(),
      why: '',
      hands: people.length === 0 ? [holder.name] : [...people],
      ...(SIDES.indexOf(side) < SIDES.length - 1 && side !== '' ? { side } : {}),
      ...((DOES[does] ?? '') === '' ? {} : { does: DOES[does] ?? '' }),
      ...(aboard === '' ? {} : { handsAboard: aboard }),
    };
    const stream = { kind: 'job', id } as const;
    if (await record({ stream, kind: 'strip-started', by: holder.name, body })) go(to.job(id));
  };
  const lacks = [
    ...(holder.name === '' ? [work.whoHolds] : []),
    ...(machine.trim() === '' ? [w.machineLack] : []),
    ...(component.trim() === '' ? [w.componentLack] : []),
  ];
  return (
    <Sheet title={w.beginTitle} block={[[w.on, replica.vessel.name]]}>
      <p>{w.noFile}</p>
      <Field
        label={w.machine}
        value={machine}
        onChange={setMachine}
        list={replica.machines.map((each) => each.name)}
      />
      <Choice label={w.side} value={side} onChange={setSide} choices={SIDES} />
      <Field
        label={w.component}
        value={component}
        onChange={setComponent}
        list={[...new Set(replica.machines.flatMap((m) => m.targets.map((t) => t.name)))]}
      />
      <Choice label={w.itWillBe} value={does} onChange={setDoes} choices={Object.keys(DOES)} />
      <Hands label={w.hands} value={people} onChange={setPeople} />
      <Aboard value={aboard} onChange={setAboard} />
      {lacks.length === 0 ? null : <p className="lacks">{w.stillToSay(lacks.join('; '))}</p>}
      <Plain onPress={() => void begin()} disabled={lacks.length > 0}>
        {w.begin}
      </Plain>
    </Sheet>
  );
}
