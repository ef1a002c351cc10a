// A second look as it stands on its sheet: who looked, and where each closure was seen.

import { useState } from 'react';
import type { Pack, Step } from '../../pack/types.ts';
import { CANNOT_TELL, lookOrder } from '../../record/look-order.ts';
import type { LookRow, LookState } from '../../record/second-look.ts';
import type { JobState } from '../../record/types.ts';
import { positionWords } from '../eyes/position.tsx';
import { Choice, Plain } from '../shared/controls.tsx';
import { Person } from '../shared/person.tsx';
import { useTold, useWords } from '../shared/say.tsx';
import type { Answers } from '../work/draft.ts';
import { Keypad } from '../work/keypad.tsx';

type LookRowsProps = {
  readonly job: JobState;
  readonly pack: Pack;
  readonly step: Step;
  readonly by: string;
  readonly seen: Answers;
  readonly onBy: (name: string) => void;
  readonly onSeen: (thing: string, position: string) => void;
};

export const lookOf = (job: JobState, step: Step): LookState | null =>
  job.looks.find((look) => look.step === step.id) ?? null;

export function LookRows({ job, pack, step, by, seen, onBy, onSeen }: LookRowsProps) {
  const { paper: w } = useWords();
  const rows = asPrinted(lookOf(job, step), pack);
  return (
    <>
      <Person label={w.whoLooked} value={by} onChange={onBy} />
      {rows.map((row) => (
        <OneClosure
          key={row.thing}
          row={row}
          seen={seen[row.thing] ?? ''}
          onSeen={(position) => onSeen(row.thing, position)}
        />
      ))}
    </>
  );
}

/** In the order of the printed sheet, so that both are gone down side by side. */
function asPrinted(look: LookState | null, pack: Pack): readonly LookRow[] {
  if (look === null) return [];
  const things = look.rows.map(({ thing }) => thing);
  const order = lookOrder(things, pack.id, look.moment, 'paper');
  return [...look.rows].sort((a, b) => order.indexOf(a.thing) - order.indexOf(b.thing));
}

type OneProps = {
  readonly row: LookRow;
  readonly seen: string;
  readonly onSeen: (position: string) => void;
};

/** Every position that may stand there, the wanted one no larger than the others. */
function OneClosure({ row, seen, onSeen }: OneProps) {
  const { eyes } = useWords();
  const told = useTold();
  const [turns, setTurns] = useState<string | null>(null);
  const key = (typed: string) => {
    setTurns(typed);
    onSeen(Number(typed) > 0 ? `open ${Number(typed)} turns` : '');
  };
  return (
    <div data-closure={row.thing}>
      <Choice
        label={told(row.name)}
        choices={[...row.choices, CANNOT_TELL]}
        value={seen}
        onChange={(position) => {
          setTurns(null);
          onSeen(position);
        }}
        say={(position) => positionWords(position, eyes)}
      />
      {!row.turns ? null : turns === null ? (
        <Plain onPress={() => key('')}>{eyes.soManyTurns}</Plain>
      ) : (
        <Keypad label={eyes.howManyTurns} unit="" value={turns} onChange={key} />
      )}
    </div>
  );
}
