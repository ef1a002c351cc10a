// "Done", in as few taps as the truth allows: one question with few answers is answered by the
// tap that reports the step.

import type { Step } from '../../pack/types.ts';
import { Main } from '../shared/controls.tsx';
import type { Answers } from './draft.ts';

export type Quick =
  | {
      readonly kind: 'choice';
      readonly ask: string;
      readonly label: string;
      readonly choices: readonly string[];
      readonly first: Answers;
    }
  | {
      readonly kind: 'count';
      readonly ask: string;
      readonly expected: number;
      readonly first: Answers;
    };

/** More answers than this are listed above "Done" instead. */
const FEW = 4;

/** `first` is any answer, to ask what else is missing. */
export function quickOf(step: Step): Quick | null {
  const [ask, another] = step.asks;
  if (ask === undefined || another !== undefined) return null;
  const first = { [ask.name]: ask.choices?.[0] ?? String(ask.expected) };
  if (ask.kind === 'choice' && ask.choices !== undefined && ask.choices.length <= FEW) {
    return { kind: 'choice', ask: ask.name, label: ask.label, choices: ask.choices, first };
  }
  if (ask.kind === 'count' && ask.expected !== undefined) {
    return { kind: 'count', ask: ask.name, expected: ask.expected, first };
  }
  return null;
}

type DoneActsProps = {
  readonly step: Step;
  /** Holes not yet ticked in this round. */
  readonly left: number;
  readonly mustTick: boolean;
  readonly disabled: boolean;
  readonly quick: Quick | null;
  readonly onSay: (more: Answers) => void;
};

export function DoneActs({ step, left, mustTick, disabled, quick, onSay }: DoneActsProps) {
  if (quick?.kind === 'choice') {
    return quick.choices.map((choice) => (
      <Main key={choice} onPress={() => onSay({ [quick.ask]: choice })} disabled={disabled}>
        <span className="small">{quick.label}</span>
        <br />
        {choice}
      </Main>
    ));
  }
  if (quick?.kind === 'count') {
    const { ask, expected } = quick;
    return (
      <Main onPress={() => onSay({ [ask]: String(expected) })} disabled={disabled}>
        Done
        <br />
        {expected} of {expected}
      </Main>
    );
  }
  return (
    <Main onPress={() => onSay({})} disabled={disabled || mustTick}>
      {mustTick ? `Tick ${left} on the drawing` : 'Done'}
      {step.count === null || mustTick ? null : (
        <>
          <br />
          {step.count.n} of {step.count.n}
        </>
      )}
    </Main>
  );
}
