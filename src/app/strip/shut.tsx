// Shut or unplugged: what, the position it was found in, its turns, and the tag hung on it.

import { useState } from 'react';
import { newThing } from '../../record/strip.ts';
import type { ActBody } from '../../record/types.ts';
import { Choice, Field, Main } from '../shared/controls.tsx';
import { useWords } from '../shared/say.tsx';
import { FormEnd, type FormProps, useStripForm } from './form.tsx';
import { HowMany } from './how-many.tsx';
import { PhotoPick } from './photo-pick.tsx';
import { nextTag, said } from './took-off.tsx';

const KINDS = ['valve', 'sea valve', 'non-return valve', 'breaker', 'switch', 'plug'];
const FLOW_FOUND = ['open', 'half open', 'shut'];
const POWER_FOUND = ['on', 'off', 'in'];

/** Only asked here: hanging a tag is an act of its own. */
const [HUNG, NO_TAG] = ['hung', 'no-tag'] as const;

export function Shut({ job, onEnd }: FormProps) {
  const { mark, say, busy, name } = useStripForm(job, onEnd);
  const { shutForm: w, stripping, work } = useWords();
  const [what, setWhat] = useState('');
  const [kind, setKind] = useState('');
  const [found, setFound] = useState('');
  const [turns, setTurns] = useState('');
  const [photo, setPhoto] = useState('');
  const tag = nextTag(job);
  const [tagged, setTagged] = useState<string>(HUNG);
  const power = ['breaker', 'switch', 'plug'].includes(kind);
  const lacks = [
    ...(name === '' ? [work.whoHolds] : []),
    ...(what.trim() === '' ? [w.whatLack] : []),
    ...(kind === '' ? [w.kindLack] : []),
    ...(found === '' ? [w.foundLack] : []),
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
    void (tagged === HUNG ? say(first, { kind: 'tagged', body: hung }) : say(first));
  };
  return (
    <section className="form" aria-label={w.head}>
      <h2>{w.head}</h2>
      <Field label={w.what} value={what} onChange={setWhat} list={Object.values(w.usual)} />
      <Choice label={w.kind} value={kind} onChange={setKind} choices={KINDS} />
      <Choice
        label={w.positionFound}
        value={found}
        onChange={setFound}
        choices={power ? POWER_FOUND : FLOW_FOUND}
      />
      {power ? null : (
        <HowMany label={w.turns} value={turns} onChange={setTurns} usual={[1, 2, 4, 6, 8, 10]} />
      )}
      <PhotoPick hash={photo} onKept={setPhoto} />
      <Choice
        label={w.tag}
        value={tagged}
        onChange={setTagged}
        choices={[HUNG, NO_TAG]}
        say={(choice) => (choice === HUNG ? w.hung(tag) : w.noTag)}
      />
      <FormEnd lacks={lacks} onEnd={onEnd}>
        <Main onPress={keep} disabled={busy || lacks.length > 0}>
          {stripping.keepIt}
        </Main>
      </FormEnd>
    </section>
  );
}
