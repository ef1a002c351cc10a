// How many: the usual counts are one tap each, any other is keyed in.

import { useState } from 'react';
import { Choice } from '../shared/controls.tsx';
import { useWords } from '../shared/say.tsx';
import { Keypad } from '../work/keypad.tsx';

type HowManyProps = {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly usual: readonly number[];
};

/** No count is called that: it asks for the keypad. */
const ANOTHER = '…';

export function HowMany({ label, value, onChange, usual }: HowManyProps) {
  const { stripping: w } = useWords();
  const [keying, setKeying] = useState(false);
  if (keying) return <Keypad label={label} unit="" value={value} onChange={onChange} />;
  return (
    <Choice
      label={label}
      value={value}
      onChange={(next) => {
        setKeying(next === ANOTHER);
        onChange(next === ANOTHER ? '' : next);
      }}
      choices={[...usual.map(String), ANOTHER]}
      say={(choice) => (choice === ANOTHER ? w.another : choice)}
    />
  );
}

/** A whole number that was said, or nothing: nothing said is not nought. */
export const whole = (said: string): number | null =>
  /^\d{1,5}$/.test(said) ? Number(said) : null;
