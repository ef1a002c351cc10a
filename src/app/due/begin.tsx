// Begin a job: which machine, which part, what is done to it, and why. The pack is then worked out.

import { useState } from 'react';
import type { HandsAboard } from '../../pack/types.ts';
import type { Does } from '../../plant/schema.ts';
import { Aboard } from '../eyes/aboard.tsx';
import { Choice, Field, Pick, Plain } from '../shared/controls.tsx';
import { Hands } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { go, to } from '../shared/route.ts';
import { useTold, useWords } from '../shared/say.tsx';
import { Sheet } from '../shared/sheet.tsx';

export function Begin() {
  const { replica, makePack } = useVessel();
  const { begin: w } = useWords();
  const [sails, setSails] = useState('');
  const [machineId, setMachine] = useState('');
  const [targetId, setTarget] = useState('');
  const [does, setDoes] = useState<Does | ''>('');
  const [why, setWhy] = useState('');
  const [when, setWhen] = useState('');
  const [people, setPeople] = useState<readonly string[]>([]);
  const [aboard, setAboard] = useState<HandsAboard | ''>('');
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
      ...(sails === '' ? {} : { sails }),
      ...(people.length === 0 ? {} : { people }),
      ...(aboard === '' ? {} : { handsAboard: aboard }),
    });
    if (pack !== null) go(to.pack(pack.id));
  };
  return (
    <Sheet title={w.title}>
      <NotWrittenDown />
      <Pick
        label={w.machine}
        value={machineId}
        onChange={(id) => {
          setMachine(id);
          setTarget('');
          setDoes('');
        }}
        options={replica.machines.filter((each) => each.targets.length > 0)}
        empty={w.chooseMachine}
      />
      {machine === undefined ? null : (
        <Component
          machine={machine}
          value={targetId}
          onChange={(id) => {
            setTarget(id);
            setDoes('');
          }}
        />
      )}
      {target === undefined ? null : (
        <Choice
          label={w.whatIsDone}
          value={doing?.name ?? ''}
          onChange={(name) => setDoes(target.does.find((each) => each.name === name)?.id ?? '')}
          choices={target.does.map((each) => each.name)}
        />
      )}
      <Field label={w.why} value={why} onChange={setWhy} list={Object.values(w.reasons)} />
      <Times when={when} onWhen={setWhen} sails={sails} onSails={setSails} />
      <Hands label={w.hands} value={people} onChange={setPeople} />
      <Aboard value={aboard} onChange={setAboard} />
      <Plain onPress={() => void work()} disabled={doing === undefined}>
        {w.workOut}
      </Plain>
    </Sheet>
  );
}

type TimesProps = {
  readonly when: string;
  readonly onWhen: (day: string) => void;
  readonly sails: string;
  readonly onSails: (time: string) => void;
};

/** When the work is done, and before which sailing: nothing may hang when the vessel moves. */
function Times({ when, onWhen, sails, onSails }: TimesProps) {
  const { begin: w, lifting } = useWords();
  return (
    <>
      <Field label={w.when} type="date" value={when} onChange={onWhen} />
      <Field label={lifting.nextSailing} type="datetime-local" value={sails} onChange={onSails} />
    </>
  );
}

type ComponentProps = {
  readonly machine: ReturnType<typeof useVessel>['replica']['machines'][number];
  readonly value: string;
  readonly onChange: (id: string) => void;
};

function Component({ machine, value, onChange }: ComponentProps) {
  const { begin: w } = useWords();
  const told = useTold();
  return (
    <>
      {machine.position === null ? null : <p className="small">{told(machine.position)}</p>}
      <Pick
        label={w.component}
        value={value}
        onChange={onChange}
        options={machine.targets}
        empty={w.chooseComponent}
      />
    </>
  );
}

function NotWrittenDown() {
  const { begin: w } = useWords();
  return (
    <p>
      <a className="plain" href={to.strip()}>
        {w.noFile}
      </a>
    </p>
  );
}
