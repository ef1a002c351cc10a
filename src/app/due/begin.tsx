// Begin a job: which machine, which part, what is done to it, and why. The pack is then worked out.

import { useState } from 'react';
import type { Does } from '../../plant/schema.ts';
import { Choice, Field, Pick, Plain } from '../shared/controls.tsx';
import { Hands } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { go, to } from '../shared/route.ts';
import { Sheet } from '../shared/sheet.tsx';

const REASONS = ['its interval', 'it failed', 'found worn or leaking', 'the way is open anyway'];

export function Begin() {
  const { replica, makePack } = useVessel();
  const [machineId, setMachine] = useState('');
  const [targetId, setTarget] = useState('');
  const [does, setDoes] = useState<Does | ''>('');
  const [why, setWhy] = useState('');
  const [when, setWhen] = useState('');
  const [people, setPeople] = useState<readonly string[]>([]);
  const machine = replica.machines.find((each) => each.id === machineId);
  const target = machine?.targets.find((each) => each.id === targetId);
  const doing = target?.does.find((each) => each.id === does);
  const work = async () => {
    if (does === '') return;
    const pack = await makePack({
      machine: machineId,
      target: targetId,
      does,
      ...(why.trim() === '' ? {} : { why: why.trim() }),
      ...(when === '' ? {} : { when }),
      ...(people.length === 0 ? {} : { people }),
    });
    if (pack !== null) go(to.pack(pack.id));
  };
  return (
    <Sheet title="Begin a job">
      <NotWrittenDown />
      <Pick
        label="Machine"
        value={machineId}
        onChange={(id) => {
          setMachine(id);
          setTarget('');
          setDoes('');
        }}
        options={replica.machines.filter((each) => each.targets.length > 0)}
        empty="choose a machine"
      />
      {machine === undefined ? null : (
        <>
          {machine.position === null ? null : <p className="small">{machine.position}</p>}
          <Pick
            label="Component"
            value={targetId}
            onChange={(id) => {
              setTarget(id);
              setDoes('');
            }}
            options={machine.targets}
            empty="choose a component"
          />
        </>
      )}
      {target === undefined ? null : (
        <Choice
          label="What is done"
          value={doing?.name ?? ''}
          onChange={(name) => setDoes(target.does.find((each) => each.name === name)?.id ?? '')}
          choices={target.does.map((each) => each.name)}
        />
      )}
      <Field label="Why" value={why} onChange={setWhy} list={REASONS} />
      <Field label="When" type="date" value={when} onChange={setWhen} />
      <Hands label="Hands" value={people} onChange={setPeople} />
      <Plain onPress={() => void work()} disabled={doing === undefined}>
        Work out the pack
      </Plain>
    </Sheet>
  );
}

function NotWrittenDown() {
  return (
    <p>
      <a className="plain" href={to.strip()}>
        No plant file for this machine: strip as you go
      </a>
    </p>
  );
}
