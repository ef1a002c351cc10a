// Hours since last done beside the issued interval, as lines of the log, and hours read off.

import { useState } from 'react';
import type { DueLine } from '../../record/replica.ts';
import { Field, Plain } from '../shared/controls.tsx';
import { Figure } from '../shared/figure.tsx';
import { Person, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useTold, useWords } from '../shared/say.tsx';
import { dayWords } from '../shared/words.ts';

export function Hours() {
  const { replica } = useVessel();
  const { hoursWords: w } = useWords();
  const machines = replica.machines.filter((machine) =>
    replica.due.some((line) => line.machine === machine.id),
  );
  return (
    <section aria-labelledby="hours-head">
      <h2 id="hours-head">{w.head}</h2>
      <p className="small">{w.beside}</p>
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
  const w = useWords();
  const { hoursWords } = w;
  const now = lines[0]?.since.runNow ?? null;
  return (
    <>
      <h3>{name}</h3>
      <p className="line">
        {now === null
          ? hoursWords.noReading
          : hoursWords.onMeter(String(now.hours), dayWords(now.at, w))}
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
  const { hoursWords: w } = useWords();
  const told = useTold();
  const interval =
    since.interval === null
      ? w.noInterval
      : w.interval(since.interval.shown, since.interval.issue, since.interval.date);
  const field = `since ${line.machine} ${line.target} ${line.does}`;
  return (
    <div className="since-line">
      <p className="line">
        {line.targetName}: {told(line.doing)}
      </p>
      {since.sinceHours === null ? (
        <p className="line">{w.cannotTell(told(since.why ?? ''), interval)}</p>
      ) : (
        <Figure
          name={w.since(interval)}
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
  const { hoursWords: w, log } = useWords();
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
        {w.write}
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
      <Field label={w.meter} type="number" value={hours} onChange={setHours} />
      <Person label={w.readBy} value={by} onChange={setBy} />
      <Plain onPress={() => void add()} disabled={hours.trim() === '' || by.trim() === ''}>
        {log.writeDown}
      </Plain>{' '}
      <Plain onPress={() => setOpen(false)}>{log.leaveIt}</Plain>
    </>
  );
}
