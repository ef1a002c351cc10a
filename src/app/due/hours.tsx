// Hours since last done beside the issued interval, as lines of the log, and hours read off.

import { useState } from 'react';
import type { DueLine } from '../../record/replica.ts';
import { Field, Plain } from '../shared/controls.tsx';
import { Figure } from '../shared/figure.tsx';
import { Person, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { dayWords } from '../shared/words.ts';

export function Hours() {
  const { replica } = useVessel();
  const machines = replica.machines.filter((machine) =>
    replica.due.some((line) => line.machine === machine.id),
  );
  return (
    <section aria-labelledby="hours-head">
      <h2 id="hours-head">Hours since last done</h2>
      <p className="small">Beside the interval as issued. No forecast is made.</p>
      {machines.map((machine) => (
        <MachineHours
          key={machine.id}
          id={machine.id}
          name={machine.name}
          lines={replica.due.filter((line) => line.machine === machine.id)}
        />
      ))}
    </section>
  );
}

type MachineHoursProps = {
  readonly id: string;
  readonly name: string;
  readonly lines: readonly DueLine[];
};

function MachineHours({ id, name, lines }: MachineHoursProps) {
  const now = lines[0]?.since.runNow ?? null;
  return (
    <>
      <h3>{name}</h3>
      <p className="line">
        {now === null
          ? 'No reading of its hours yet.'
          : `${now.hours} h on the meter, ${dayWords(now.at)}`}
      </p>
      <ReadHours machine={id} />
      {lines.map((line) => (
        <SinceLine key={`${line.target} ${line.does}`} line={line} />
      ))}
    </>
  );
}

function SinceLine({ line }: { readonly line: DueLine }) {
  const { since } = line;
  const interval =
    since.interval === null
      ? 'no interval issued'
      : `interval ${since.interval.shown}, issue ${since.interval.issue} of ${since.interval.date}`;
  const field = `since ${line.machine} ${line.target} ${line.does}`;
  return (
    <div className="since-line">
      <p className="line">
        {line.targetName}: {line.doing}
      </p>
      {since.sinceHours === null ? (
        <p className="line">
          Cannot tell: {since.why}; {interval}
        </p>
      ) : (
        <Figure
          name={`since last done; ${interval}`}
          value={since.sinceHours}
          unit="h"
          working={since.working}
          field={field}
        />
      )}
    </div>
  );
}

function ReadHours({ machine }: { readonly machine: string }) {
  const { record } = useVessel();
  const holder = useHolder();
  const [open, setOpen] = useState(false);
  const [hours, setHours] = useState('');
  const [by, setBy] = useState(holder.name);
  if (!open) {
    return (
      <Plain
        onPress={() => {
          setBy(holder.name);
          setOpen(true);
        }}
      >
        Write down its hours
      </Plain>
    );
  }
  const add = async () => {
    const body = { machine, hours: Number(hours), at: new Date().toISOString() };
    const stream = { kind: 'machine', id: machine } as const;
    if (await record({ stream, kind: 'hours-read', by, body })) setOpen(false);
  };
  return (
    <>
      <Field label="Hours on the meter (h)" type="number" value={hours} onChange={setHours} />
      <Person label="Read by" value={by} onChange={setBy} />
      <Plain onPress={() => void add()} disabled={hours.trim() === '' || by.trim() === ''}>
        Write it down
      </Plain>{' '}
      <Plain onPress={() => setOpen(false)}>Leave it</Plain>
    </>
  );
}
