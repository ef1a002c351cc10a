// A second look as it stands on its sheet: who looked, and where each closure was seen.

import { useState } from 'react';
import type { Step } from '../../pack/types.ts';
import { CANNOT_TELL } from '../../record/look-order.ts';
import type { LookRow } from '../../record/second-look.ts';
import type { JobState } from '../../record/types.ts';
import { positionWords } from '../eyes/position.tsx';
import { Choice, Plain } from '../shared/controls.tsx';
import { Person } from '../shared/person.tsx';
import { useTold, useWords } from '../shared/say.tsx';
import type { Answers } from '../work/draft.ts';
import { Keypad } from '../work/keypad.tsx';

type LookRowsProps = {
  readonly job: JobState;
  readonly step: Step;
  readonly by: string;
  readonly seen: Answers;
  readonly onBy: (name: string) => void;
  readonly onSeen: (thing: string, position: string) => void;
};

export const lookOf = (job: JobState, step: Step) =>
  job.looks.find((look) => look.step === step.id) ?? null;

export function LookRows({ job, step, by, seen, onBy, onSeen }: LookRowsProps) {
  const { paper: w } = useWords();
  const rows = lookOf(job, step)?.rows ?? [];
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
