// "Done", in as few taps as the truth allows: one question with few answers is answered by the
// tap that reports the step.

import type { Ask, Step } from '../../pack/types.ts';
import { Main, Plain } from '../shared/controls.tsx';
import { useTold, useWords } from '../shared/say.tsx';
import type { Answers } from './draft.ts';
import type { Along } from './together.ts';

export type Quick =
  | {
      readonly kind: 'choice';
      readonly label: string;
      readonly choices: readonly string[];
      /** What each choice answers: one tap may answer two questions that go together. */
      readonly says: Readonly<Record<string, Answers>>;
      /** What is asked besides, above the choices: a count or a reading. */
      readonly rest: readonly Ask[];
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

/** Seen to run and died away are one look at one drain. */
const FLOW: Quick = {
  kind: 'choice',
  label: 'Flow',
  choices: ['ran, then died away', 'nothing came', 'went on running'],
  says: {
    'ran, then died away': { sawRun: 'yes', diedAway: 'yes' },
    'nothing came': { sawRun: 'no', diedAway: 'no' },
    'went on running': { sawRun: 'yes', diedAway: 'no' },
  },
  rest: [],
  first: { sawRun: 'yes', diedAway: 'yes' },
};

/** `first` is any answer, to ask what else is missing. */
export function quickOf(step: Pick<Step, 'asks'>): Quick | null {
  if (step.asks.map((each) => each.name).join() === 'sawRun,diedAway') return FLOW;
  // How far it passed is asked only after "passed up to" was said.
  const [ask, another, third] = step.asks.filter((each) => each.name !== 'upTo');
  if (ask === undefined) return null;
  if (
    ['result', 'found'].includes(ask.name) &&
    ask.choices !== undefined &&
    another?.optional === true
  ) {
    return choiceOf(
      ask,
      step.asks.slice(1).filter((each) => each.name !== 'upTo'),
    );
  }
  if (third !== undefined) return null;
  const counts = another?.kind === 'count' || another?.kind === 'number';
  if (another !== undefined && !(counts && (ask.choices?.length ?? 0) <= FEW)) return null;
  const rest = another === undefined ? [] : [another];
  if (ask.kind === 'choice' && ask.choices !== undefined) return choiceOf(ask, rest);
  if (ask.kind === 'count' && ask.expected !== undefined && another === undefined) {
    const first = { [ask.name]: String(ask.expected) };
    return { kind: 'count', ask: ask.name, expected: ask.expected, first };
  }
  return null;
}

function choiceOf(ask: Ask, rest: readonly Ask[]): Quick {
  const choices = ask.choices ?? [];
  const says = Object.fromEntries(choices.map((choice) => [choice, { [ask.name]: choice }]));
  return {
    kind: 'choice',
    label: ask.label,
    choices,
    says,
    rest,
    first: { [ask.name]: choices[0] ?? '' },
  };
}

type DoneActsProps = {
  readonly step: Pick<Step, 'count'>;
  /** Holes not yet ticked in this round. */
  readonly left: number;
  readonly mustTick: boolean;
  readonly disabled: boolean;
  readonly quick: Quick | null;
  /** What the same tap reports besides. */
  readonly along: Along;
  readonly onSay: (more: Answers) => void;
};

/** The answers that are no main control: each reports the step too. */
export function LesserAnswers({
  quick,
  disabled,
  onSay,
}: Pick<DoneActsProps, 'quick' | 'disabled' | 'onSay'>) {
  const told = useTold();
  if (quick?.kind !== 'choice' || quick.choices.length <= FEW) return null;
  return (
    <p className="quick">
      {quick.choices.slice(1).map((choice) => (
        <Plain key={choice} onPress={() => onSay(quick.says[choice] ?? {})} disabled={disabled}>
          {told(quick.label)}: {told(choice)}
        </Plain>
      ))}
    </p>
  );
}

export function DoneActs(props: DoneActsProps) {
  const { step, left, mustTick, disabled, quick, along, onSay } = props;
  const { work: w } = useWords();
  const told = useTold();
  const { always } = along;
  const tags = along.steps.length + 1;
  if (tags > 1 && quick === null) {
    return (
      <Main onPress={() => onSay({})} disabled={disabled}>
        {w.done}
        <br />
        {always ? w.allOf(tags) : tags === 2 ? w.bothTags : w.allTags(tags)}
      </Main>
    );
  }
  if (quick?.kind === 'choice') {
    const main = quick.choices.length <= FEW ? quick.choices : quick.choices.slice(0, 1);
    return main.map((choice, at) => (
      <Main key={choice} onPress={() => onSay(quick.says[choice] ?? {})} disabled={disabled}>
        <span className="small">
          {told(quick.label)}
          {tags === 1 ? '' : always || at === 0 ? w.all(tags) : w.thisOne}
        </span>
        <br />
        {told(choice)}
      </Main>
    ));
  }
  if (quick?.kind === 'count') {
    const { ask, expected } = quick;
    return (
      <Main onPress={() => onSay({ [ask]: String(expected) })} disabled={disabled}>
        {w.done}
        <br />
        {w.nOfN(expected, expected)}
      </Main>
    );
  }
  return (
    <Main onPress={() => onSay({})} disabled={disabled || mustTick}>
      {mustTick ? w.tick(left) : w.done}
      {step.count === null || mustTick ? null : (
        <>
          <br />
          {w.nOfN(step.count.n, step.count.n)}
        </>
      )}
    </Main>
  );
}
