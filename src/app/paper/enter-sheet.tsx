// One sheet: who worked and when, its rows as they are ticked, and the one tap that enters it.

import { useState } from 'react';
import { type PackSheet, sheetName } from '../../pack/sheets.ts';
import type { Pack } from '../../pack/types.ts';
import {
  type FromPaper,
  fromPaper,
  type PaperRow,
  paperRows,
  type Written,
} from '../../record/from-paper.ts';
import type { JobState } from '../../record/types.ts';
import { Field, Main, Pick } from '../shared/controls.tsx';
import { useKept } from '../shared/kept.ts';
import { Person, useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useTold, useWords } from '../shared/say.tsx';
import { RowCautions } from '../work/done-to-here.tsx';
import { useHalfDone } from './half-done.ts';
import { BLANK, PaperRowView, type RowSaid, writtenRow } from './paper-row.tsx';

type EnterSheetProps = {
  readonly job: JobState;
  readonly pack: Pack;
  readonly sheet: PackSheet;
  readonly onEntered: () => void;
};

/** Keyed by sheet where it is used: ticks of one sheet never reach another. */
export function EnterSheet({ job, pack, sheet, onEntered }: EnterSheetProps) {
  const { state, record } = useVessel();
  const { name } = useHolder();
  const { paper: w } = useWords();
  const told = useTold();
  const [by, setBy] = useKept(`worked.${job.id}`, '');
  const [verifiedBy, setVerifiedBy] = useKept(`signed.${job.id}`, '');
  const { now, change, forget } = useHalfDone(job.id, sheet.letter);
  const { writtenAt, said, found, end } = now;
  const [busy, setBusy] = useState(false);
  const rows = paperRows(job, pack, sheet).filter((row) => !row.done);
  const last = rows.findIndex((row) => row.step.id === end);
  const upTo = last < 0 ? rows : rows.slice(0, last + 1);
  const written: Written = {
    by,
    writtenAt,
    enteredBy: name,
    verifiedBy,
    ...asWritten(job, rows, upTo, said),
    found,
  };
  const made = fromPaper(state, job.id, pack, sheet.letter, written);
  const enter = async () => {
    setBusy(true);
    const [first, ...more] = made.drafts;
    if (first !== undefined && (await record(first, ...more))) {
      forget();
      onEntered();
      window.scrollTo(0, 0);
    }
    setBusy(false);
  };
  const say = (id: string, row: RowSaid) => change({ said: { ...said, [id]: row } });
  const options = rows.map(({ step }) => ({ id: step.id, name: told(step.text) }));
  return (
    <section aria-labelledby="paper-sheet" className="paper-sheet" data-paper={sheet.letter}>
      <h2 id="paper-sheet">{w.sheet(sheet.letter, sheetName(sheet, w.phases, w.partOf))}</h2>
      <Person label={w.workedBy} value={by} onChange={setBy} />
      <Field
        label={w.writtenAt}
        value={writtenAt}
        onChange={(text) => change({ writtenAt: text })}
      />
      {rows.some(({ step }) => step.cautions.length > 0) ? (
        <Person label={w.verifiedBy} value={verifiedBy} onChange={setVerifiedBy} />
      ) : null}
      <Pick
        label={w.ticksEnd}
        value={end}
        onChange={(id) => change({ end: id })}
        options={options}
        empty={w.atTheEnd}
      />
      <Rows job={job} pack={pack} rows={upTo} said={said} onSay={say} />
      <Field label={w.found} value={found} onChange={(text) => change({ found: text })} lines={2} />
      <Lacks written={written} made={made} />
      <Main onPress={() => void enter()} disabled={busy || !isReady(written, made)}>
        {w.enter(sheet.letter)}
        <br />
        <span className="small">{w.howMany(...counted(made))}</span>
      </Main>
    </section>
  );
}

type RowsProps = {
  readonly job: JobState;
  readonly pack: Pack;
  readonly rows: readonly PaperRow[];
  readonly said: Readonly<Record<string, RowSaid>>;
  readonly onSay: (id: string, row: RowSaid) => void;
};

function Rows({ job, pack, rows, said, onSay }: RowsProps) {
  return (
    <ol className="paper-rows">
      {rows.map((row, at) => (
        <li key={row.step.id} data-row={row.step.id} data-alone={row.alone !== null}>
          <RowCautions rows={rows} at={at} />
          <PaperRowView
            job={job}
            pack={pack}
            row={row}
            said={said[row.step.id] ?? null}
            onSay={(next) => onSay(row.step.id, next)}
          />
        </li>
      ))}
    </ol>
  );
}

/** Below the last tick everything is blank; above it a row is as it was said. */
function asWritten(
  job: JobState,
  rows: readonly PaperRow[],
  upTo: readonly PaperRow[],
  said: Readonly<Record<string, RowSaid>>,
): Of<Written, 'rows' | 'blank'> {
  const blank = rows.filter((row) => !upTo.includes(row) || said[row.step.id] === BLANK);
  const own = upTo.flatMap((row) => {
    const one = writtenRow(job, row, said[row.step.id] ?? null);
    return one === null ? [] : [[row.step.id, one] as const];
  });
  return { rows: Object.fromEntries(own), blank: blank.map(({ step }) => step.id) };
}

type Of<T, K extends keyof T> = { readonly [Name in K]: T[Name] };

const counted = ({ drafts }: FromPaper): [number, number] => {
  const together = drafts.filter((draft) => draft.body.together === true).length;
  return [together, drafts.length - together];
};

const isReady = (written: Written, { drafts, unsaid, unverified }: FromPaper): boolean =>
  drafts.length > 0 &&
  unsaid.length === 0 &&
  !unverified &&
  [written.by, written.writtenAt, written.enteredBy].every((text) => text.trim() !== '');

type LacksProps = { readonly written: Written; readonly made: FromPaper };

function Lacks({ written, made }: LacksProps) {
  const { paper: w, work } = useWords();
  const told = useTold();
  const lacks = [
    ...(written.enteredBy.trim() === '' ? [work.whoHolds] : []),
    ...(written.by.trim() === '' ? [w.workedBy] : []),
    ...(written.writtenAt.trim() === '' ? [w.writtenAt] : []),
    ...(made.unverified ? [w.verifiedBy] : []),
  ];
  if (lacks.length + made.unsaid.length === 0) return null;
  return (
    <div className="lacks" data-lacks={made.unsaid.length}>
      <p>{w.before}</p>
      <ul>
        {lacks.map((each) => (
          <li key={each}>{each}</li>
        ))}
        {made.unsaid.map(({ step }) => (
          <li key={step.id}>{told(step.text)}</li>
        ))}
      </ul>
    </div>
  );
}
