// A reading on a big keypad: the unit stands fixed beside it, and the figure is read back in words.

import { Button } from 'react-aria-components/Button';
import { useWords } from '../shared/say.tsx';
import { numberWords, unitSign, unitWords } from '../shared/words.ts';

type KeypadProps = {
  readonly label: string;
  readonly unit: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
};

const KEYS = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '.', '0', '−'] as const;
const MOST_DIGITS = 9;

function press(value: string, key: (typeof KEYS)[number]): string {
  if (key === '−') return value.startsWith('-') ? value.slice(1) : `-${value}`;
  if (value.length >= MOST_DIGITS) return value;
  if (key === '.') return value.includes('.') ? value : `${value === '' ? '0' : value}.`;
  return value === '0' ? key : `${value}${key}`;
}

export function Keypad({ label, unit, value, onChange }: KeypadProps) {
  const w = useWords();
  const { numbers } = w;
  const named = { '−': numbers.minusKey, '.': numbers.pointKey };
  const words = numberWords(value, w);
  return (
    <fieldset className="keypad">
      <legend>{label}</legend>
      <p className="keypad-value">
        <output>{value === '' ? '–' : value.replace('-', '−')}</output> <b>{unitSign(unit)}</b>
      </p>
      <p className="read-back" role="status">
        {words === null ? numbers.nothingKeyed : `${words} ${unitWords(unit, w)}`}
      </p>
      <div className="keys">
        {KEYS.map((key) => (
          <Button
            key={key}
            className="key"
            aria-label={key === '−' || key === '.' ? named[key] : key}
            onPress={() => onChange(press(value, key))}
          >
            {key}
          </Button>
        ))}
        <Button className="key wide" onPress={() => onChange(value.slice(0, -1))}>
          {numbers.rubOut}
        </Button>
      </div>
    </fieldset>
  );
}
