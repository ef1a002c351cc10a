// The two stops of a job without a pack, in words, and the acts that lift them.

import { useState } from 'react';
import { newThing } from '../../record/strip.ts';
import type { JobState } from '../../record/types.ts';
import { Choice, Field, Main, Plain } from '../shared/controls.tsx';
import { useTold, useWords } from '../shared/say.tsx';
import { FormEnd, type FormProps, useStripForm } from './form.tsx';
import { nextTag } from './took-off.tsx';

export function IsolationStop({ job }: { readonly job: JobState }) {
  const { stops: w } = useWords();
  const told = useTold();
  if (job.isolation.proved) return null;
  return (
    <section className="stop" aria-label={w.isolation} data-stop="isolation">
      <h2>{w.isolation}</h2>
      <p>{w.mayHold}</p>
      <ul>
        {job.isolation.why.split('; ').map((each) => (
          <li key={each}>{told(each)}</li>
        ))}
      </ul>
    </section>
  );
}

/** Tags not hung yet, and the drain at which the flow is seen to run and die away. */
export function ProveIsolation({ job }: { readonly job: JobState }) {
  const { say, busy, name } = useStripForm(job, () => undefined);
  const { drains: w } = useWords();
  const [draining, setDraining] = useState(false);
  const strip = job.strip;
  if (strip === null || job.closed !== null) return null;
  const standing = new Set(job.entries.filter((e) => e.open).map((e) => e.thing));
  const hung = strip.seen.filter((s) => s.did === 'tagged' && standing.has(s.thing));
  const bare = strip.seen.filter(
    (s) => s.did === 'shut' && standing.has(s.thing) && !hung.some((t) => t.of === s.thing),
  );
  const shut = strip.seen.some((s) => s.did === 'shut');
  const hang = (thing: string) =>
    void say({
      kind: 'tagged',
      body: { thing: `tag/${nextTag(job)}`, closure: thing.slice('closure/'.length) },
    });
  if (draining) return <Drain job={job} onEnd={() => setDraining(false)} />;
  return (
    <p className="quick">
      {bare.map((s) => (
        <Plain key={s.thing} onPress={() => hang(s.thing)} disabled={busy || name === ''}>
          {w.hang(nextTag(job), s.what)}
        </Plain>
      ))}
      {shut ? <Plain onPress={() => setDraining(true)}>{w.look}</Plain> : null}
    </p>
  );
}

const YES_NO = ['yes', 'no'];

function Drain({ job, onEnd }: FormProps) {
  const { mark, say, busy, name } = useStripForm(job, onEnd);
  const { drains: w, stripping, work } = useWords();
  const open = (job.strip?.seen ?? []).filter(
    (s) => s.did === 'opened' && job.entries.some((e) => e.thing === s.thing && e.open),
  );
  const [what, setWhat] = useState(open[0]?.what ?? '');
  const [ran, setRan] = useState('');
  const [died, setDied] = useState('');
  const lacks = [
    ...(name === '' ? [work.whoHolds] : []),
    ...(what.trim() === '' ? [w.whichLack] : []),
    ...(ran === '' ? [w.ranLack] : []),
    ...(died === '' ? [w.diedLack] : []),
  ];
  const keep = () => {
    const there = open.find((s) => s.what === what.trim());
    const thing = there?.thing ?? newThing(job, 'drain', what.trim(), mark);
    const seen = { kind: 'proved-dead', body: { thing, sawRun: ran, diedAway: died } };
    const opened = { kind: 'drain-opened', body: { thing, what: what.trim() } };
    void (there === undefined ? say(opened, seen) : say(seen));
  };
  return (
    <section className="form" aria-label={w.look}>
      <h2>{w.look}</h2>
      <Field label={w.which} value={what} onChange={setWhat} list={open.map((s) => s.what)} />
      <Choice label={w.ran} value={ran} onChange={setRan} choices={YES_NO} />
      <Choice label={w.died} value={died} onChange={setDied} choices={YES_NO} />
      <FormEnd lacks={lacks} onEnd={onEnd}>
        <Main onPress={keep} disabled={busy || lacks.length > 0}>
          {stripping.keepIt}
        </Main>
      </FormEnd>
    </section>
  );
}

/** Everyone clear is called and answered before the machine is turned or started. */
export function BeforeItTurns({ job }: { readonly job: JobState }) {
  const { say, busy, name } = useStripForm(job, () => undefined);
  const { drains: w, stops } = useWords();
  if (job.strip === null || job.closed !== null) return null;
  const thing = `machine/${job.machine}`;
  const off = busy || name === '';
  return (
    <>
      {job.clear ? null : (
        <section className="stop" aria-label={stops.clear} data-stop="clear">
          <h2>{stops.clear}</h2>
          <p>{stops.notTurned}</p>
        </section>
      )}
      <p className="quick">
        <Plain
          onPress={() => void say({ kind: 'people-clear', body: { thing } })}
          disabled={off || job.clear}
        >
          {w.everyoneClear}
        </Plain>
        <Plain onPress={() => void say({ kind: 'turned', body: { thing } })} disabled={off}>
          {w.turned}
        </Plain>
        <Plain onPress={() => void say({ kind: 'started', body: { thing } })} disabled={off}>
          {w.started}
        </Plain>
      </p>
    </>
  );
}
