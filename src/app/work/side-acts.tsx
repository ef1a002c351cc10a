// Besides "done": could not do, found something, use it anyway. Each is easy and blames nobody.

import { useState } from 'react';
import type { Step } from '../../pack/types.ts';
import { Field, Plain } from '../shared/controls.tsx';
import { useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';

export type Side = 'could-not' | 'found' | 'used-anyway';

type SideActProps = {
  readonly side: Side;
  readonly job: string;
  readonly step: Step;
  readonly onEnd: () => void;
};

const REASONS = ['seized', 'no room for the tool', 'part not on board', 'called away'];
const FOUND = ['worn', 'cracked', 'corroded', 'leaking', 'a bolt missing', 'not as drawn'];

export function SideAct({ side, job, step, onEnd }: SideActProps) {
  const { record } = useVessel();
  const { name } = useHolder();
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
    'could-not': { head: 'Could not do', label: 'Why not', list: REASONS },
    found: { head: 'Found something', label: 'What was found', list: FOUND },
    'used-anyway': { head: 'Use anyway', label: 'Reason', list: [] },
  }[side];
  return (
    <section className="form" aria-label={words.head}>
      <h2>{words.head}</h2>
      {side === 'used-anyway' ? (
        <p>
          Goes on without this being done. It stands on the record as a deviation by{' '}
          {name === '' ? 'the name in hand' : name}.
        </p>
      ) : null}
      <p className="quick">
        {words.list.map((each) => (
          <Plain key={each} onPress={() => setText(each)}>
            {each}
          </Plain>
        ))}
      </p>
      <Field label={words.label} value={text} onChange={setText} lines={2} />
      {side === 'used-anyway' ? (
        <Field label="What limits the risk" value={limits} onChange={setLimits} lines={2} />
      ) : null}
      {name === '' ? <p>Say first who is holding this phone.</p> : null}
      <Plain onPress={() => void say()} disabled={!ready}>
        Record it
      </Plain>{' '}
      <Plain onPress={onEnd}>Leave it</Plain>
    </section>
  );
}
