// One second look: who looks, then one closure at a time from a blank list; the last tap says it.

import { useState } from 'react';
import { lookOrder } from '../../record/look-order.ts';
import type { LookRow, LookState } from '../../record/second-look.ts';
import { sameName } from '../../record/second-look.ts';
import type { JobState } from '../../record/types.ts';
import { Plain } from '../shared/controls.tsx';
import { useKept } from '../shared/kept.ts';
import { useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useTold, useWords } from '../shared/say.tsx';
import { AloneWait } from './alone.tsx';
import { OtherWays } from './other-ways.tsx';
import { PositionChoice, positionWords } from './position.tsx';
import { WhoLooks } from './who-looks.tsx';

type LookSheetProps = {
  readonly job: JobState;
  readonly look: LookState;
  /** The pack's own sentence, where there is one. */
  readonly text?: string | undefined;
  readonly onDone?: (() => void) | undefined;
};

export function LookSheet({ job, look, text, onDone }: LookSheetProps) {
  const { eyes: w } = useWords();
  const told = useTold();
  const { name } = useHolder();
  const did = (who: string) => look.doers.some((doer) => sameName(doer, who));
  const [chosen, setBy] = useState<string | null>(null);
  const [last, keepLast] = useKept(`looks.${job.id}`, '');
  // Who holds this phone is asked no second time, nor who looked before, unless they did it.
  const other = last !== '' && !did(last) ? last : '';
  const by = chosen ?? (did(name) ? other : name);
  const choose = (who: string) => {
    setBy(who);
    keepLast(who);
  };
  const rows = { job, look, by, onDone, onSaid: () => setBy(null) };
  return (
    <article className="step" data-step={look.step} data-look={look.moment} aria-label={w.title}>
      <p className="sentence">
        {text !== undefined ? told(text) : look.moment === 'isolation' ? w.isolation : w.lineUp}
      </p>
      <Before look={look} first={text === undefined} />
      {look.notYet.length > 0 ? (
        <p className="lacks">{w.notYet(look.notYet.join(', '))}</p>
      ) : by === '' ? (
        <WhoLooks doers={look.doers} onChoose={choose} />
      ) : (
        <>
          <p className="holder">
            <b>{w.looksNow(by)}</b> <Plain onPress={() => setBy('')}>{w.change}</Plain>
          </p>
          {did(by) ? (
            <AloneWait job={job} look={look} by={by}>
              <Rows {...rows} alone />
            </AloneWait>
          ) : (
            <Rows {...rows} alone={false} />
          )}
        </>
      )}
      <OtherWays job={job} look={look} onDone={onDone} />
    </article>
  );
}

/** What came of the last look, without a position: the next list is as blank as the first. */
function Before({ look, first }: { readonly look: LookState; readonly first: boolean }) {
  const { eyes: w } = useWords();
  const last = look.said.at(-1);
  if (last === undefined) return first ? <p>{w.byAnother}</p> : null;
  if (last.otherwise.length > 0)
    return <p className="lacks">{w.otherwise(last.by, last.otherwise.join(', '))}</p>;
  return <p className="lacks">{last.why === null ? w.moved : w.notAlone(last.by)}</p>;
}

type Seen = Readonly<Record<string, string>>;

type RowsProps = Omit<LookSheetProps, 'text'> & {
  readonly by: string;
  readonly alone: boolean;
  readonly onSaid: () => void;
};

/** One closure a screen, in an order of the core's; what was seen may be looked at again. */
function Rows({ job, look, by, alone, onSaid, onDone }: RowsProps) {
  const { record } = useVessel();
  const { eyes: w } = useWords();
  const [seen, setSeen] = useState<Seen>({});
  const [busy, setBusy] = useState(false);
  const rows = inOrder(job, look, by);
  const left = rows.filter((row) => seen[row.thing] === undefined);
  const now = left[0];
  const say = async (all: Seen) => {
    setBusy(true);
    const said = rows.map(({ thing }) => ({ thing, position: all[thing] ?? '' }));
    const body = { thing: look.thing, step: look.step, rows: said, alone };
    const stream = { kind: 'job', id: job.id } as const;
    const kept = await record({ stream, kind: 'second-look', by, body });
    setBusy(false);
    if (kept) {
      // Where it did not agree the next list is as blank as this one was.
      setSeen({});
      onSaid();
      onDone?.();
    }
    window.scrollTo(0, 0);
  };
  const see = (row: LookRow, position: string) => {
    const all = { ...seen, [row.thing]: position };
    setSeen(all);
    if (rows.every(({ thing }) => all[thing] !== undefined)) void say(all);
  };
  return (
    <>
      {now === undefined ? null : (
        <section key={now.thing} data-closure={now.thing} aria-label={now.name}>
          <h2 className="closure-name">{now.name}</h2>
          <p>{now.place ?? ''}</p>
          <PositionChoice row={now} disabled={busy} onSee={(position) => see(now, position)} />
          <p>{w.still(left.length)}</p>
        </section>
      )}
      {left.length === rows.length ? null : (
        <section aria-labelledby="seen-head">
          <h2 id="seen-head">{w.seen}</h2>
          <ul className="others">
            {rows
              .filter((row) => seen[row.thing] !== undefined)
              .map((row) => (
                <li key={row.thing}>
                  <Plain onPress={() => setSeen(without(seen, row.thing))} disabled={busy}>
                    {w.lookAgain(row.name)} ({positionWords(seen[row.thing] ?? '', w)})
                  </Plain>
                </li>
              ))}
          </ul>
        </section>
      )}
    </>
  );
}

const without = (seen: Seen, thing: string): Seen =>
  Object.fromEntries(Object.entries(seen).filter(([key]) => key !== thing));

function inOrder(job: JobState, look: LookState, by: string): readonly LookRow[] {
  const things = lookOrder(
    look.rows.map((row) => row.thing),
    job.id,
    look.moment,
    by,
  );
  return things.flatMap((thing) => look.rows.filter((row) => row.thing === thing));
}
