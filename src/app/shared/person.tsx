// Who is who on this device: names are chosen, not proved, and every screen says so.

import { createContext, type ReactNode, useContext, useId, useMemo, useState } from 'react';
import { NAMES_NOT_PROVED } from '../../quantity/authority.ts';
import { Field, Pick, Plain } from './controls.tsx';
import { useKept } from './kept.ts';
import { useVessel } from './replica.tsx';
import { useTold, useWords } from './say.tsx';

type Holder = { readonly name: string; readonly choose: (name: string) => void };

const Context = createContext<Holder>({ name: '', choose: () => undefined });
export const useHolder = () => useContext(Context);

export function HolderProvider({ children }: { readonly children: ReactNode }) {
  const [name, choose] = useKept('holder', '');
  const holder = useMemo(() => ({ name, choose }), [name, choose]);
  return <Context value={holder}>{children}</Context>;
}

export function usePeople(): readonly string[] {
  const { replica, state } = useVessel();
  const named = replica.people.map((person) => person.name);
  return [...new Set([...named, ...state.people])];
}

/** No name has a bracket: a choice of the list, never said nor shown. */
const OTHER = '(another name)';

type PersonProps = {
  readonly label: string;
  readonly value: string;
  readonly onChange: (name: string) => void;
};

/** Whoever holds this phone said who they are once: nobody types their own name a second time. */
export function Person(props: PersonProps) {
  const { name } = useHolder();
  const people = usePeople();
  const own = name === '' || people.includes(name) ? [] : [name];
  return <PersonOf {...props} people={[...people, ...own]} />;
}

/** A person from the list, or a name typed once. */
function PersonOf({
  label,
  value,
  onChange,
  people,
}: PersonProps & { readonly people: readonly string[] }) {
  const { people: w } = useWords();
  const [typing, setTyping] = useState(value !== '' && !people.includes(value));
  const options = people.map((name) => ({ id: name, name }));
  return (
    <>
      <Pick
        label={label}
        value={typing ? OTHER : value}
        onChange={(next) => {
          setTyping(next === OTHER);
          onChange(next === OTHER ? '' : next);
        }}
        options={[...options, { id: OTHER, name: w.another }]}
        empty={w.choose}
      />
      {typing ? <Field label={w.nameOf(label)} value={value} onChange={onChange} /> : null}
    </>
  );
}

/** Several hands: each name a button that is in or out, with a tick drawn when in. */
export function Hands({
  label,
  value,
  onChange,
}: {
  readonly label: string;
  readonly value: readonly string[];
  readonly onChange: (names: readonly string[]) => void;
}) {
  const people = usePeople();
  const id = useId();
  const all = [...new Set([...people, ...value])];
  return (
    <fieldset className="hands">
      <legend id={id}>{label}</legend>
      {all.map((name) => (
        <label key={name} className="hand">
          <input
            type="checkbox"
            checked={value.includes(name)}
            onChange={(e) =>
              onChange(e.target.checked ? [...value, name] : value.filter((each) => each !== name))
            }
          />
          {name}
        </label>
      ))}
    </fieldset>
  );
}

/** The line on every screen that says who holds this phone. */
export function HolderLine() {
  const { name, choose } = useHolder();
  const { people: w } = useWords();
  const notProved = useTold()(NAMES_NOT_PROVED);
  const people = usePeople();
  const [open, setOpen] = useState(name === '');
  const pick = (next: string) => {
    choose(next);
    // A name of the list is settled by choosing it; a typed one when it is finished.
    if (people.includes(next)) setOpen(false);
  };
  if (name !== '' && !open) {
    return (
      <p className="holder">
        <span>
          {w.inHand} <b>{name}</b> <i>({notProved})</i>
        </span>
        <Plain onPress={() => setOpen(true)}>{w.change}</Plain>
      </p>
    );
  }
  return (
    <div className="holder-choice">
      <PersonOf label={w.who} value={name} onChange={pick} people={people} />
      <p className="small">
        {notProved}: {w.chosen}{' '}
        {name === '' ? null : <Plain onPress={() => setOpen(false)}>{w.thatIsMe}</Plain>}
      </p>
    </div>
  );
}
