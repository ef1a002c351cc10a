// What a step asks for besides "done": a choice, a name, a count, a reading.

import { type ReactNode, useState } from 'react';
import type { Ask } from '../../pack/types.ts';
import { amountOf, keyedIn, ownUnit } from '../../quantity/own-units.ts';
import { Choice, Field, Plain } from '../shared/controls.tsx';
import { Person } from '../shared/person.tsx';
import { useTold, useWords } from '../shared/say.tsx';
import { useOwnUnits } from '../shared/units.tsx';
import { unitSign } from '../shared/words.ts';
import { HowMany } from '../strip/how-many.tsx';
import type { Answers } from './draft.ts';
import { Keypad } from './keypad.tsx';

type AsksProps = {
  readonly asks: readonly Ask[];
  readonly answers: Answers;
  readonly onAnswer: (name: string, value: string) => void;
  /** What is shown beside a reading: the same one from before the job. */
  readonly beside?: (name: string) => ReactNode;
};

export function Asks({ asks, answers, onAnswer, beside }: AsksProps) {
  const numbers = asks.filter((ask) => ask.kind === 'number' && ask.name !== 'turns');
  const told = useTold();
  const turns = asks.find((ask) => ask.name === 'turns');
  return (
    <>
      {asks.map((ask) =>
        ask.kind === 'number' ? null : (
          <OneAsk
            key={ask.name}
            ask={ask}
            value={answers[ask.name] ?? ''}
            onChange={(value) => onAnswer(ask.name, value)}
          />
        ),
      )}
      {turns === undefined ? null : (
        <HowMany
          label={told(turns.label)}
          value={answers.turns ?? ''}
          onChange={(value) => onAnswer('turns', value)}
          usual={[1, 2, 3, 4, 6, 8]}
        />
      )}
      {numbers.length === 0 ? null : (
        <Numbers
          asks={numbers}
          answers={answers}
          onAnswer={onAnswer}
          {...(beside === undefined ? {} : { beside })}
        />
      )}
    </>
  );
}

function OneAsk({
  ask,
  value,
  onChange,
}: {
  readonly ask: Ask;
  readonly value: string;
  readonly onChange: (value: string) => void;
}) {
  const label = useTold()(ask.label);
  switch (ask.kind) {
    case 'choice':
      return <Choice label={label} value={value} onChange={onChange} choices={ask.choices ?? []} />;
    case 'person':
      return <Person label={label} value={value} onChange={onChange} />;
    case 'count':
      return <Count ask={ask} value={value} onChange={onChange} />;
    default:
      return <Field label={label} value={value} onChange={onChange} />;
  }
}

/** The expected count is one tap; another answer is keyed in and becomes a finding, no error. */
function Count({
  ask,
  value,
  onChange,
}: {
  readonly ask: Ask;
  readonly value: string;
  readonly onChange: (value: string) => void;
}) {
  const { work: w } = useWords();
  const label = useTold()(ask.label);
  const expected = ask.expected;
  const [other, setOther] = useState(false);
  if (expected === undefined || other) {
    return <Keypad label={label} unit={ask.unit ?? ''} value={value} onChange={onChange} />;
  }
  const all = expected === 0 ? w.noneMissing : w.nOfN(expected, expected);
  const another = w.anotherCount;
  return (
    <Choice
      label={label}
      value={value === String(expected) ? all : ''}
      onChange={(choice) => {
        if (choice === all) onChange(String(expected));
        else {
          onChange('');
          setOther(true);
        }
      }}
      choices={[all, another]}
    />
  );
}

/** One reading at a time has the keypad; the others stand above it with what was keyed in. */
function Numbers({ asks, answers, onAnswer, beside }: AsksProps) {
  const { work: w } = useWords();
  const told = useTold();
  const [units] = useOwnUnits();
  const [at, setAt] = useState(asks[0]?.name ?? '');
  const now = asks.find((ask) => ask.name === at) ?? asks[0];
  if (now === undefined) return null;
  const ownOf = (ask: Ask) => ownUnit(ask.unit ?? '', units);
  const signOf = (ask: Ask) => ownOf(ask)?.symbol ?? unitSign(ask.unit ?? '');
  const keyed = (ask: Ask) => amountOf(answers[ask.name] ?? '');
  return (
    <>
      {asks.length === 1
        ? null
        : asks.map((ask) => (
            <p key={ask.name} className="reading">
              <Plain onPress={() => setAt(ask.name)}>
                {told(ask.label)}: {keyed(ask) || '–'} {signOf(ask)}
                {ask.optional === true ? w.ifRead : ''}
              </Plain>
              {beside?.(ask.name)}
            </p>
          ))}
      <Keypad
        label={told(now.label)}
        unit={signOf(now)}
        value={keyed(now)}
        onChange={(value) => onAnswer(now.name, keyedIn(value, ownOf(now)))}
      />
      {asks.length === 1 ? beside?.(now.name) : null}
    </>
  );
}
