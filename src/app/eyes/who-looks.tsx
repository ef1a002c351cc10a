// Who looks: a name is one tap; who shut it or lined it up stands last and is marked.

import { useState } from 'react';
import { sameName } from '../../record/second-look.ts';
import { Field, Plain } from '../shared/controls.tsx';
import { usePeople } from '../shared/person.tsx';
import { useWords } from '../shared/say.tsx';

type WhoLooksProps = {
  readonly doers: readonly string[];
  readonly onChoose: (name: string) => void;
};

export function WhoLooks({ doers, onChoose }: WhoLooksProps) {
  const { eyes: w } = useWords();
  const people = usePeople();
  const [other, setOther] = useState<string | null>(null);
  const did = (name: string) => doers.some((doer) => sameName(doer, name));
  const others = people.filter((name) => !did(name));
  return (
    <section aria-labelledby="who-looks">
      <h2 id="who-looks">{w.whoLooks}</h2>
      <p className="quick" data-who>
        {others.map((name) => (
          <Plain key={name} onPress={() => onChoose(name)}>
            {name}
          </Plain>
        ))}
        {doers.map((name) => (
          <Plain key={name} onPress={() => onChoose(name)}>
            {w.didIt(name)}
          </Plain>
        ))}
        <Plain onPress={() => setOther('')}>{w.otherName}</Plain>
      </p>
      {other === null ? null : (
        <>
          <Field label={w.otherName} value={other} onChange={setOther} />
          <Plain onPress={() => onChoose(other.trim())} disabled={other.trim() === ''}>
            {w.looksNow(other.trim())}
          </Plain>
        </>
      )}
    </section>
  );
}
