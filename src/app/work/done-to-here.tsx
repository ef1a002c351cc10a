// Done to here: a run already carried out is ticked together, and the record says so. Whatever
// wants a count, a reading, a proof or an isolation is never in it: the core says where it stops.

import { useState } from 'react';
import { signDrawing } from '../../drawing/caution.ts';
import type { Pack, Step } from '../../pack/types.ts';
import type { Caution } from '../../quantity/authority.ts';
import { doneToHere, type Together } from '../../record/done-to-here.ts';
import type { Draft, JobState } from '../../record/types.ts';
import { Plain } from '../shared/controls.tsx';
import { Drawn } from '../shared/drawn.tsx';
import { useKept } from '../shared/kept.ts';
import { Person, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useMaking, useTold, useWords } from '../shared/say.tsx';

type DoneToHereProps = { readonly job: JobState; readonly pack: Pack };
type Row = Together['steps'][number];

export function DoneToHere({ job, pack }: DoneToHereProps) {
  const { state, record } = useVessel();
  const { name } = useHolder();
  const { together: w, cautionWords } = useWords();
  const tell = useTold();
  const [verifiedBy, setVerifiedBy] = useKept(`verifies.${job.id}`, '');
  const [busy, setBusy] = useState(false);
  const last = pack.steps.at(-1)?.id ?? '';
  const told = doneToHere(state, job.id, pack, last);
  const rows = runOf(told.steps);
  if (rows.length < 2) return null;
  const cautions = rows.flatMap((row) => row.step.cautions);
  const off = busy || name === '' || (cautions.length > 0 && verifiedBy === '');
  const say = async (upTo: number, answer: Readonly<Record<string, string>> = {}) => {
    setBusy(true);
    const drafts = rows.slice(0, upTo + 1).map(
      ({ step, body }, i): Draft => ({
        stream: { kind: 'job', id: job.id },
        kind: step.verb,
        by: name,
        body: {
          ...body,
          step: step.id,
          ...(step.cautions.length === 0 ? {} : { verifiedBy }),
          ...(i === upTo ? answer : {}),
        },
      }),
    );
    const [first, ...more] = drafts;
    if (first !== undefined && (await record(first, ...more))) window.scrollTo(0, 0);
    setBusy(false);
  };
  return (
    <section aria-labelledby="together-head" className="together" data-run={rows.length}>
      <h2 id="together-head">{w.head}</h2>
      <p>{w.tapLast}</p>
      {cautions.length === 0 ? null : (
        <Person label={cautionWords.verifiedBy} value={verifiedBy} onChange={setVerifiedBy} />
      )}
      <ul className="others">
        {rows.map((row, at) => (
          <li key={row.step.id} data-together={row.step.id}>
            <RowCautions rows={rows} at={at} />
            <RunRow row={row} at={at} off={off} onSay={(answer) => void say(at, answer)} />
          </li>
        ))}
      </ul>
      {told.stopsAt === null || told.steps.length > rows.length ? null : (
        <p className="small">
          {w.notFurther(tell(told.stopsAt.step.text), tell(told.stopsAt.why))}
        </p>
      )}
    </section>
  );
}

type RowCautionsProps = {
  readonly rows: readonly { readonly step: Step }[];
  readonly at: number;
};

/** At its step: in full where it stands first, by its word where the same stood above. */
export function RowCautions({ rows, at }: RowCautionsProps) {
  const { cautionWords: w } = useWords();
  const told = useTold();
  const making = useMaking();
  const above = rows.slice(0, at).flatMap((row) => row.step.cautions.map(wordsOf));
  return rows[at]?.step.cautions.map((caution) =>
    above.includes(wordsOf(caution)) ? (
      <p key={caution.hazard} className="small" data-caution={caution.hazard}>
        <b>{w.cautionWord}</b>
        {w.asAbove(told(caution.hazard))}
      </p>
    ) : (
      <div className="cautions" key={caution.hazard}>
        <div className="caution" data-caution={caution.hazard}>
          <Drawn drawing={making(() => signDrawing(caution, { width: 96 }))} className="sign" />
          <p>
            <b>{w.caution}</b> {told(caution.text)} <b>{w.verify}</b> {told(caution.verify)}.
          </p>
        </div>
      </div>
    ),
  );
}

type RunRowProps = {
  readonly row: Row;
  readonly at: number;
  readonly off: boolean;
  readonly onSay: (answer?: Readonly<Record<string, string>>) => void;
};

/** One that asks a question is answered by its own words; the first alone is done above. */
function RunRow({ row, at, off, onSay }: RunRowProps) {
  const { together: w } = useWords();
  const told = useTold();
  const { step } = row;
  const ask = row.asks[0];
  if (ask === undefined) {
    return (
      <Plain onPress={() => onSay()} disabled={off || at === 0}>
        {told(step.text)} <b>{at === 0 ? w.firstOne : w.doneToHere}</b>
      </Plain>
    );
  }
  return (
    <>
      {told(step.text)}
      <span className="quick">
        {(ask.choices ?? []).map((choice) => (
          <Plain key={choice} onPress={() => onSay({ [ask.name]: choice })} disabled={off}>
            {w.doneWith(told(ask.label).toLowerCase(), told(choice))}
          </Plain>
        ))}
      </span>
    </>
  );
}

/** Up to the first that wants an answer; that one may end the run when a tap can give it. */
function runOf(steps: readonly Row[]): readonly Row[] {
  const at = steps.findIndex((row) => row.asks.length > 0);
  if (at < 0) return steps;
  const [ask, another] = steps[at]?.asks ?? [];
  return steps.slice(0, ask?.kind === 'choice' && another === undefined ? at + 1 : at);
}

const wordsOf = (c: Caution): string => `${c.hazard} ${c.text} ${c.verify}`;
