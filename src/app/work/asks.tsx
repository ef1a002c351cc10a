// What a step asks for besides "done": a choice, a name, a count, a reading.

import { useState } from 'react';
import type { Ask } from '../../pack/types.ts';
import { Choice, Field, Plain } from '../shared/controls.tsx';
import { Person } from '../shared/person.tsx';
import type { Answers } from './draft.ts';
import { Keypad } from './keypad.tsx';

type AsksProps = {
  readonly asks: readonly Ask[];
  readonly answers: Answers;
  readonly onAnswer: (name: string, value: string) => void;
};

export function Asks({ asks, answers, onAnswer }: AsksProps) {
  const numbers = asks.filter((ask) => ask.kind === 'number');
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
      {numbers.length === 0 ? null : (
        <Numbers asks={numbers} answers={answers} onAnswer={onAnswer} />
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
  switch (ask.kind) {
    case 'choice':
      return (
        <Choice label={ask.label} value={value} onChange={onChange} choices={ask.choices ?? []} />
      );
    case 'person':
      return <Person label={ask.label} value={value} onChange={onChange} />;
    case 'count':
      return <Count ask={ask} value={value} onChange={onChange} />;
    default:
      return <Field label={ask.label} value={value} onChange={onChange} />;
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
  const expected = ask.expected;
  const [other, setOther] = useState(false);
  if (expected === undefined || other) {
    return <Keypad label={ask.label} unit={ask.unit ?? ''} value={value} onChange={onChange} />;
  }
  const all = expected === 0 ? 'none' : `${expected} of ${expected}`;
  const another = 'another count';
  return (
    <Choice
      label={ask.label}
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
function Numbers({ asks, answers, onAnswer }: AsksProps) {
  const [at, setAt] = useState(asks[0]?.name ?? '');
  const now = asks.find((ask) => ask.name === at) ?? asks[0];
  if (now === undefined) return null;
  return (
    <>
      {asks.length === 1
        ? null
        : asks.map((ask) => (
            <p key={ask.name} className="reading">
              <Plain onPress={() => setAt(ask.name)}>
                {ask.label}: {answers[ask.name] || '–'} {ask.unit ?? ''}
                {ask.optional === true ? ' (if read)' : ''}
              </Plain>
            </p>
          ))}
      <Keypad
        label={now.label}
        unit={now.unit ?? ''}
        value={answers[now.name] ?? ''}
        onChange={(value) => onAnswer(now.name, value)}
      />
    </>
  );
}
