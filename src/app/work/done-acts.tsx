// "Done", in as few taps as the truth allows: one question with few answers is answered by the
// tap that reports the step.

import type { Step } from '../../pack/types.ts';
import { Main, Plain } from '../shared/controls.tsx';
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

/** Of more answers than this only the first, the expected one, is a main control. */
const FEW = 4;

/** `first` is any answer, to ask what else is missing. */
export function quickOf(step: Pick<Step, 'asks'>): Quick | null {
  const [ask, another] = step.asks;
  if (ask === undefined || another !== undefined) return null;
  const first = { [ask.name]: ask.choices?.[0] ?? String(ask.expected) };
  if (ask.kind === 'choice' && ask.choices !== undefined) {
    return { kind: 'choice', ask: ask.name, label: ask.label, choices: ask.choices, first };
  }
  if (ask.kind === 'count' && ask.expected !== undefined) {
    return { kind: 'count', ask: ask.name, expected: ask.expected, first };
  }
  return null;
}

type DoneActsProps = {
  readonly step: Pick<Step, 'count'>;
  /** Holes not yet ticked in this round. */
  readonly left: number;
  readonly mustTick: boolean;
  readonly disabled: boolean;
  readonly quick: Quick | null;
  /** How many tags one tap reports, this one included; 1 where it is alone. */
  readonly tags: number;
  readonly onSay: (more: Answers) => void;
};

/** The answers that are no main control: each reports the step too. */
export function LesserAnswers({
  quick,
  disabled,
  onSay,
}: Pick<DoneActsProps, 'quick' | 'disabled' | 'onSay'>) {
  if (quick?.kind !== 'choice' || quick.choices.length <= FEW) return null;
  return (
    <p className="quick">
      {quick.choices.slice(1).map((choice) => (
        <Plain key={choice} onPress={() => onSay({ [quick.ask]: choice })} disabled={disabled}>
          {quick.label}: {choice}
        </Plain>
      ))}
    </p>
  );
}

export function DoneActs(props: DoneActsProps) {
  const { step, left, mustTick, disabled, quick, tags, onSay } = props;
  if (tags > 1) {
    return (
      <Main onPress={() => onSay({})} disabled={disabled}>
        Done
        <br />
        {tags === 2 ? 'both tags' : `all ${tags} tags`}
      </Main>
    );
  }
  if (quick?.kind === 'choice') {
    const main = quick.choices.length <= FEW ? quick.choices : quick.choices.slice(0, 1);
    return main.map((choice) => (
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
