// How one closure stands, in words on big controls; so many turns open asks how many.

import { useState } from 'react';
import { ANOTHER, CANNOT_TELL } from '../../record/look-order.ts';
import type { LookRow } from '../../record/second-look.ts';
import type { Words } from '../../words/words.ts';
import { Main, Plain } from '../shared/controls.tsx';
import { useWords } from '../shared/say.tsx';
import { Keypad } from '../work/keypad.tsx';

type PositionProps = {
  readonly row: LookRow;
  readonly disabled: boolean;
  readonly onSee: (position: string) => void;
};

/** Positions are kept in the words of the record and shown in the person's own. */
export function positionWords(position: string, w: Words['eyes']): string {
  if (position === 'open') return w.open;
  if (position === 'shut') return w.shut;
  if (position === CANNOT_TELL) return w.cannotTell;
  if (position === ANOTHER) return w.another;
  const turns = /^open (\S+) turns$/.exec(position)?.[1];
  return turns === undefined ? position : w.turnsOpen(turns);
}

export function PositionChoice({ row, disabled, onSee }: PositionProps) {
  const { eyes: w } = useWords();
  return (
    <>
      <div className="main-acts">
        {row.choices.map((choice) => (
          <Main key={choice} onPress={() => onSee(choice)} disabled={disabled}>
            {positionWords(choice, w)}
          </Main>
        ))}
        <Main onPress={() => onSee(CANNOT_TELL)} disabled={disabled}>
          {w.cannotTell}
        </Main>
      </div>
      {row.turns ? <Turns disabled={disabled} onSee={onSee} /> : null}
    </>
  );
}

const COUNTS = ['1', '2', '3', '4', '5', '6', '7', '8'] as const;

/** A throttled valve is one tap as well: the turns stand there, more of them on the keypad. */
function Turns({ disabled, onSee }: Omit<PositionProps, 'row'>) {
  const { eyes: w } = useWords();
  const [keying, setKeying] = useState(false);
  const [typed, setTyped] = useState('');
  const count = Number(typed);
  return (
    <fieldset className="choice">
      <legend>{w.soManyTurns}</legend>
      {COUNTS.map((n) => (
        <Plain key={n} onPress={() => onSee(`open ${n} turns`)} disabled={disabled}>
          {n}
        </Plain>
      ))}
      {keying ? (
        <>
          <Keypad label={w.howManyTurns} unit="" value={typed} onChange={setTyped} />
          <Plain
            onPress={() => onSee(`open ${count} turns`)}
            disabled={disabled || typed === '' || !(count > 0)}
          >
            {w.thatMany}
          </Plain>
        </>
      ) : (
        <Plain onPress={() => setKeying(true)}>{w.anotherCount}</Plain>
      )}
    </fieldset>
  );
}
