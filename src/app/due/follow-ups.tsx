// What closed jobs left to look at again, on the page of the log: one tap says that it was done.

import { useState } from 'react';
import { Plain } from '../shared/controls.tsx';
import { useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { to } from '../shared/route.ts';
import { useTold, useWords } from '../shared/say.tsx';

/** Of the whole vessel; or of one job, done ones too. */
export function FollowUpsLeft({ job }: { readonly job?: string }) {
  const { state } = useVessel();
  const { followUps: w } = useWords();
  const lines = Object.entries(state.machines).flatMap(([machine, { followUps }]) =>
    followUps
      .filter(({ id, doneBy }) => (job === undefined ? doneBy === null : id.startsWith(`${job}/`)))
      .map((each) => ({ machine, ...each })),
  );
  if (lines.length === 0) return null;
  return (
    <section aria-labelledby="follow-left-head">
      <h2 id="follow-left-head">{w.head}</h2>
      {lines.map((line) => (
        <FollowUpLine key={line.id} line={line} inLog={job === undefined} />
      ))}
    </section>
  );
}

type Line = {
  readonly machine: string;
  readonly id: string;
  readonly what: string;
  readonly owner: string;
  readonly doneBy: string | null;
};

type LineProps = { readonly line: Line; readonly inLog: boolean };

function FollowUpLine({ line, inLog }: LineProps) {
  const { state, record } = useVessel();
  const { name } = useHolder();
  const { followUps: w } = useWords();
  const told = useTold();
  const [busy, setBusy] = useState(false);
  const of = Object.values(state.jobs).find(({ id }) => line.id.startsWith(`${id}/`));
  const done = async () => {
    setBusy(true);
    const stream = { kind: 'machine', id: line.machine } as const;
    await record({ stream, kind: 'follow-up-done', by: name, body: { followUp: line.id } });
    setBusy(false);
  };
  return (
    <p className="line" data-follow-up={line.id}>
      {told(line.what)} · {w.owner(line.owner)}
      {inLog && of !== undefined ? (
        <>
          <br />
          <a href={to.job(of.id, 'record')}>{of.title}</a>
        </>
      ) : null}
      <br />
      {line.doneBy === null ? (
        <Plain onPress={() => void done()} disabled={busy || name === ''}>
          {w.done}
        </Plain>
      ) : (
        <b>{w.doneBy(line.doneBy)}</b>
      )}
    </p>
  );
}
