// The controls every screen uses: plain buttons, the large ones of the Work screen, and fields.

import { type ReactNode, useId } from 'react';
import { Button } from 'react-aria-components/Button';
import { Label } from 'react-aria-components/Label';
import { Radio, RadioGroup } from 'react-aria-components/RadioGroup';
import { useTold } from './say.tsx';

type PressProps = {
  readonly onPress: () => void;
  readonly children: ReactNode;
  readonly disabled?: boolean;
  readonly describedBy?: string;
  /** What is heard, where the words on it are too short. */
  readonly label?: string;
};

/** A button of at least 44 CSS px. */
export function Plain({ onPress, children, disabled = false, describedBy, label }: PressProps) {
  return (
    <Button
      className="plain"
      onPress={onPress}
      isDisabled={disabled}
      {...(label === undefined ? {} : { 'aria-label': label })}
      {...(describedBy === undefined ? {} : { 'aria-describedby': describedBy })}
    >
      {children}
    </Button>
  );
}

/** A main control of the Work screen: at least 120 CSS px in the shorter direction. */
export function Main({ onPress, children, disabled = false, describedBy }: PressProps) {
  return (
    <Button
      className="main-control"
      onPress={onPress}
      isDisabled={disabled}
      {...(describedBy === undefined ? {} : { 'aria-describedby': describedBy })}
    >
      {children}
    </Button>
  );
}

type FieldProps = {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly type?: 'text' | 'datetime-local' | 'date' | 'number';
  readonly lines?: number;
  readonly list?: readonly string[];
};

export function Field({ label, value, onChange, type = 'text', lines = 1, list }: FieldProps) {
  const id = useId();
  return (
    <p className="field">
      <label htmlFor={id}>{label}</label>
      {lines > 1 ? (
        <textarea id={id} rows={lines} value={value} onChange={(e) => onChange(e.target.value)} />
      ) : (
        <input
          id={id}
          type={type}
          value={value}
          autoComplete="off"
          onChange={(e) => onChange(e.target.value)}
          {...(list === undefined ? {} : { list: `${id}-list` })}
        />
      )}
      {list === undefined ? null : (
        <datalist id={`${id}-list`}>
          {list.map((each) => (
            <option key={each} value={each} />
          ))}
        </datalist>
      )}
    </p>
  );
}

type PickProps = {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly options: readonly { readonly id: string; readonly name: string }[];
  readonly empty?: string;
};

/** A list to choose from: the device's own, which gloves and screen readers already know. */
export function Pick({ label, value, onChange, options, empty }: PickProps) {
  const id = useId();
  return (
    <p className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(e) => onChange(e.target.value)}>
        {empty === undefined ? null : <option value="">{empty}</option>}
        {options.map((each) => (
          <option key={each.id} value={each.id}>
            {each.name}
          </option>
        ))}
      </select>
    </p>
  );
}

type ChoiceProps = {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** As they are kept; shown in the language of who holds the phone. */
  readonly choices: readonly string[];
  readonly say?: (choice: string) => string;
};

/**
 * A few words to choose between, all in sight: a filled ring and bold type mark the chosen one.
 * With none chosen the value is null: an empty one would count as chosen, out of the tab key's way.
 */
export function Choice({ label, value, onChange, choices, say }: ChoiceProps) {
  const told = useTold();
  return (
    <RadioGroup className="choice" value={value === '' ? null : value} onChange={onChange}>
      <Label>{label}</Label>
      {choices.map((each) => (
        <Radio key={each} value={each} className="choice-one">
          {(say ?? told)(each)}
        </Radio>
      ))}
    </RadioGroup>
  );
}
