// Boxing up what was stripped: one thing at a time, in the reverse of what was seen, or as wanted.

import { useMemo, useState } from 'react';
import type { Ask } from '../../pack/types.ts';
import { stripProposal, type ToMakeGood } from '../../record/proposal.ts';
import type { JobState } from '../../record/types.ts';
import type { Words } from '../../words/words.ts';
import { Hunt } from '../as-found/hunts.tsx';
import { StripAsFound } from '../as-found/strip-as-found.tsx';
import { Baseline, FoundPosition } from '../before/baseline.tsx';
import { Plain } from '../shared/controls.tsx';
import { JobSheet } from '../shared/job-sheet.tsx';
import { useKept } from '../shared/kept.ts';
import { useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { to } from '../shared/route.ts';
import { Speaking, type Tell, useSpeaks, useTold, useWords } from '../shared/say.tsx';
import { BoltFound } from '../tight/bolt-found.tsx';
import { Asks } from '../work/asks.tsx';
import { useAwake } from '../work/awake.ts';
import { Cautions } from '../work/caution.tsx';
import { DoneActs, LesserAnswers, quickOf } from '../work/done-acts.tsx';
import { type Answers, answersIn, asksShown, missing } from '../work/draft.ts';
import { Lacks } from '../work/step-sheet.tsx';
import { TakeBack } from '../work/take-back.tsx';
import { ALONE } from '../work/together.ts';
import { BeforeItTurns } from './stops.tsx';
import { Pictures } from './strip-screen.tsx';

export function BoxUp({ job }: { readonly job: JobState }) {
  useAwake(job.closed === null);
  const { state } = useVessel();
  const { boxUp: w } = useWords();
  const [chosen, setChosen] = useState<string | null>(null);
  const rows = useMemo(() => stripProposal(state, job.id), [state, job.id]);
  const said = useMemo(() => rows.flatMap((row) => row.said), [rows]);
  const ready = rows.filter((row) => row.ready);
  const now = rows.find((row) => row.thing === chosen) ?? ready[0] ?? rows[0];
  return (
    <JobSheet job={job} pack={null} title={w.title} quietTitle>
      <Speaking said={said}>
        {now === undefined ? (
          <p className="sentence">
            <a className="main-control" href={to.job(job.id, 'record')}>
              {w.nothingOpen}
            </a>
          </p>
        ) : (
          <MakeGoodNow key={now.thing} job={job} row={now} onDone={() => setChosen(null)} />
        )}
        <TakeBack job={job} pack={null} />
        {now?.kind === 'proof' ? <BeforeItTurns job={job} /> : null}
        <Others job={job} rows={rows} now={now?.thing ?? ''} onChoose={setChosen} />
      </Speaking>
    </JobSheet>
  );
}

type MakeGoodProps = {
  readonly job: JobState;
  readonly row: ToMakeGood;
  readonly onDone: () => void;
};

/** What is only said, not put back, has its own sheet. */
function MakeGoodNow(props: MakeGoodProps) {
  const { job, row, onDone } = props;
  const hunt = job.entries.find((entry) => entry.thing === row.thing && entry.kind === 'missing');
  if (row.kind !== 'as-found' && hunt === undefined) return <MakeGood {...props} />;
  return (
    <article className="step" data-make-good={row.thing}>
      {hunt === undefined ? (
        <StripAsFound job={job} onEnd={onDone} />
      ) : (
        <Hunt job={job} entry={hunt} />
      )}
    </article>
  );
}

/** Asked only after "passed up to" was said. */
const upTo = (label: string): Ask => ({ name: 'upTo', label, kind: 'text' });

function MakeGood({ job, row, onDone }: MakeGoodProps) {
  const { record } = useVessel();
  const { name } = useHolder();
  const speaks = useSpeaks();
  const { boxUp: w, work } = speaks.words;
  const text = speaks.told(row.text);
  const [answers, setAnswers] = useState<Answers>({});
  const [verifiedBy, setVerifiedBy] = useKept(`verifies.${job.id}`, '');
  const [keying, setKeying] = useState(false);
  const [busy, setBusy] = useState(false);
  const asks = row.kind === 'proof' ? [...row.asks, upTo(w.upTo)] : row.asks;
  const step = { ...row, asks, verb: row.kind };
  const quick = keying || row.kind === 'proof' ? null : quickOf(step);
  const given = { ...answers, ...quick?.first };
  const lacks = missing(step, { by: name, verifiedBy, answers: given }, speaks);
  const say = async (more: Answers) => {
    setBusy(true);
    const body = {
      ...row.body,
      ...answersIn(asks, { ...answers, ...more }),
      ...(row.cautions.length === 0 ? {} : { verifiedBy }),
    };
    const stream = { kind: 'job', id: job.id } as const;
    const kept = await record({ stream, kind: row.kind, by: name, body });
    setBusy(false);
    if (kept) onDone();
  };
  const disabled = busy || lacks.length > 0;
  return (
    <article className="step" data-make-good={row.thing} aria-label={work.now}>
      <p className="sentence">{text}</p>
      {row.ready ? null : <p className="lacks">{w.stillOff}</p>}
      <FoundPosition job={job} thing={row.kind === 'restored' ? row.thing : ''} />
      {row.thing === 'proof/running' ? <Baseline job={job} /> : null}
      <Pictures hashes={row.kind === 'restored' ? [] : row.photos} what={text} />
      <Cautions cautions={row.cautions} verifiedBy={verifiedBy} onVerifiedBy={setVerifiedBy} />
      {quick === null ? (
        <Asks
          asks={asksShown(step, answers)}
          answers={answers}
          onAnswer={(ask, value) => setAnswers({ ...answers, [ask]: value })}
        />
      ) : null}
      <Lacks lacks={lacks} />
      <div className="main-acts">
        <DoneActs
          step={row}
          quick={quick}
          left={0}
          mustTick={false}
          along={ALONE}
          disabled={disabled}
          onSay={(more) => void say(more)}
        />
      </div>
      <LesserAnswers quick={quick} disabled={disabled} onSay={(more) => void say(more)} />
      {quick?.kind === 'count' ? (
        <Plain onPress={() => setKeying(true)}>{work.anotherThan(quick.expected)}</Plain>
      ) : null}
      {row.kind === 'put-back' ? <BoltFound job={job.id} thing={row.thing} /> : null}
    </article>
  );
}

type OthersProps = {
  readonly job: JobState;
  readonly rows: readonly ToMakeGood[];
  readonly now: string;
  readonly onChoose: (thing: string) => void;
};

/** What is on the machine may change places; lines and proofs come after it in any case. */
const MOVABLE = ['part', 'joint', 'old-seal', 'new-seal', 'temp', 'item', 'loose'];

/** A cover, its joint and its seal go together: they move as one. */
function bundleOf(thing: string): string | null {
  const [kind = '', id = ''] = thing.split('/');
  if (!MOVABLE.includes(kind)) return null;
  return kind === 'temp' ? thing : (id.split(':')[0] ?? id);
}

/** The order with the bundle of this thing moved one earlier or later, or null at the end. */
function moved(rows: readonly ToMakeGood[], thing: string, by: number): string[] | null {
  const own = bundleOf(thing);
  const all = rows.map((row) => ({ thing: row.thing, bundle: bundleOf(row.thing) }));
  const bundles = [...new Set(all.flatMap((row) => row.bundle ?? []))];
  const at = bundles.indexOf(own ?? '');
  const other = bundles[at + by];
  if (own === null || at < 0 || other === undefined) return null;
  bundles[at] = other;
  bundles[at + by] = own;
  return bundles.flatMap((bundle) =>
    all.filter((row) => row.bundle === bundle).map((row) => row.thing),
  );
}

/** The order is proposed: each may be put earlier or later, and any may be taken first. */
function Others({ job, rows, now, onChoose }: OthersProps) {
  const { boxUp: w } = useWords();
  const told = useTold();
  if (rows.length < 2) return null;
  return (
    <section aria-labelledby="order-head">
      <h2 id="order-head">{w.order}</h2>
      <p className="small">{w.proposed}</p>
      <ul className="others">
        {rows.map((row, at) => (
          <li key={row.thing} data-row={row.thing}>
            <Plain
              onPress={() => {
                onChoose(row.thing);
                window.scrollTo(0, 0);
              }}
            >
              {rowWords(row, now, w, told)}
            </Plain>
            {startsBundle(rows, at) ? <Move job={job} rows={rows} thing={row.thing} /> : null}
          </li>
        ))}
      </ul>
    </section>
  );
}

function rowWords(row: ToMakeGood, now: string, w: Words['boxUp'], told: Tell): string {
  const text = told(row.text);
  if (row.thing === now) return w.now(text);
  return row.ready ? text : w.waits(text);
}

const startsBundle = (rows: readonly ToMakeGood[], at: number): boolean => {
  const own = bundleOf(rows[at]?.thing ?? '');
  return own !== null && own !== bundleOf(rows[at - 1]?.thing ?? '');
};

type MoveProps = Pick<OthersProps, 'job' | 'rows'> & { readonly thing: string };

function Move({ job, rows, thing }: MoveProps) {
  const { record } = useVessel();
  const { name } = useHolder();
  const { boxUp: w } = useWords();
  const stream = { kind: 'job', id: job.id } as const;
  return (
    <span className="order-acts">
      {([-1, 1] as const).map((by) => {
        const order = moved(rows, thing, by);
        return (
          <Plain
            key={by}
            disabled={order === null || name === ''}
            onPress={() =>
              void record({ stream, kind: 'order-set', by: name, body: { order: order ?? [] } })
            }
          >
            {by < 0 ? w.earlier : w.later}
          </Plain>
        );
      })}
    </span>
  );
}
