// Shut or unplugged: what, the position it was found in, its turns, and the tag hung on it.

import { useState } from 'react';
import { newThing } from '../../record/strip.ts';
import type { ActBody } from '../../record/types.ts';
import { Choice, Field, Main } from '../shared/controls.tsx';
import { FormEnd, type FormProps, useStripForm } from './form.tsx';
import { HowMany } from './how-many.tsx';
import { PhotoPick } from './photo-pick.tsx';
import { nextTag, said } from './took-off.tsx';

const KINDS = ['valve', 'sea valve', 'non-return valve', 'breaker', 'switch', 'plug'];
const FLOW_FOUND = ['open', 'half open', 'shut'];
const POWER_FOUND = ['on', 'off', 'in'];
const USUAL = ['sea suction valve', 'overboard valve', 'fresh water valve', 'starting battery'];

export function Shut({ job, onEnd }: FormProps) {
  const { mark, say, busy, name } = useStripForm(job, onEnd);
  const [what, setWhat] = useState('');
  const [kind, setKind] = useState('');
  const [found, setFound] = useState('');
  const [turns, setTurns] = useState('');
  const [photo, setPhoto] = useState('');
  const tag = nextTag(job);
  const hang = `tag ${tag} hung on it`;
  const [tagged, setTagged] = useState(hang);
  const power = ['breaker', 'switch', 'plug'].includes(kind);
  const lacks = [
    ...(name === '' ? ['who is holding this phone'] : []),
    ...(what.trim() === '' ? ['what'] : []),
    ...(kind === '' ? ['which kind'] : []),
    ...(found === '' ? ['the position it was found in'] : []),
  ];
  const keep = () => {
    const thing = newThing(job, 'closure', what.trim(), mark);
    const body: ActBody = {
      thing,
      what: what.trim(),
      kind,
      found,
      position: kind === 'plug' ? 'out' : power ? 'off' : 'shut',
      ...(power ? {} : said('turns', turns)),
      ...(photo === '' ? {} : { photo }),
    };
    const hung = { thing: `tag/${tag}`, closure: thing.slice('closure/'.length) };
    const first = { kind: 'shut-or-unplugged', body };
    void (tagged === hang ? say(first, { kind: 'tagged', body: hung }) : say(first));
  };
  return (
    <section className="form" aria-label="Shut or unplugged">
      <h2>Shut or unplugged</h2>
      <Field label="What" value={what} onChange={setWhat} list={USUAL} />
      <Choice label="Kind" value={kind} onChange={setKind} choices={KINDS} />
      <Choice
        label="Position found"
        value={found}
        onChange={setFound}
        choices={power ? POWER_FOUND : FLOW_FOUND}
      />
      {power ? null : (
        <HowMany label="Turns" value={turns} onChange={setTurns} usual={[1, 2, 4, 6, 8, 10]} />
      )}
      <PhotoPick hash={photo} onKept={setPhoto} />
      <Choice label="Tag" value={tagged} onChange={setTagged} choices={[hang, 'no tag yet']} />
      <FormEnd lacks={lacks} onEnd={onEnd}>
        <Main onPress={keep} disabled={busy || lacks.length > 0}>
          Keep it
        </Main>
      </FormEnd>
    </section>
  );
}
