// Besides "done": could not do, found something, use it anyway. Each is easy and blames nobody.

import { useState } from 'react';
import type { Step } from '../../pack/types.ts';
import { Field, Plain } from '../shared/controls.tsx';
import { useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useWords } from '../shared/say.tsx';

export type Side = 'could-not' | 'found' | 'used-anyway';

type SideActProps = {
  readonly side: Side;
  readonly job: string;
  readonly step: Pick<Step, 'id' | 'thing'>;
  readonly onEnd: () => void;
};

export function SideAct({ side, job, step, onEnd }: SideActProps) {
  const { record } = useVessel();
  const { name } = useHolder();
  const { sideActs: w } = useWords();
  const [text, setText] = useState('');
  const [limits, setLimits] = useState('');
  const about = { thing: step.thing };
  const body =
    side === 'found'
      ? { ...about, what: text.trim() }
      : side === 'could-not'
        ? { ...about, step: step.id, why: text.trim() }
        : { ...about, step: step.id, reason: text.trim(), limits: limits.trim() };
  const ready =
    text.trim() !== '' && name !== '' && (side !== 'used-anyway' || limits.trim() !== '');
  const say = async () => {
    if (await record({ stream: { kind: 'job', id: job }, kind: side, by: name, body })) onEnd();
  };
  const words = {
    'could-not': { head: w.couldNot, label: w.whyNot, list: Object.values(w.reasons) },
    found: { head: w.found, label: w.whatFound, list: Object.values(w.findings) },
    'used-anyway': { head: w.anyway, label: w.reason, list: [] },
  }[side];
  return (
    <section className="form" aria-label={words.head}>
      <h2>{words.head}</h2>
      {side === 'used-anyway' ? <p>{w.goesOn(name === '' ? w.nameInHand : name)}</p> : null}
      <p className="quick">
        {words.list.map((each) => (
          <Plain key={each} onPress={() => setText(each)}>
            {each}
          </Plain>
        ))}
      </p>
      <Field label={words.label} value={text} onChange={setText} lines={2} />
      {side === 'used-anyway' ? (
        <Field label={w.limits} value={limits} onChange={setLimits} lines={2} />
      ) : null}
      {name === '' ? <p>{w.sayFirst}</p> : null}
      <Plain onPress={() => void say()} disabled={!ready}>
        {w.recordIt}
      </Plain>{' '}
      <Plain onPress={onEnd}>{w.leaveIt}</Plain>
    </section>
  );
}
