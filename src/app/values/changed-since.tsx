// At the head of a pack: what changed since this person last did the job, and what is out of force.

import type { Pack } from '../../pack/types.ts';
import { replacedIn } from '../../record/superseded.ts';
import { changedSince } from '../../record/values-used.ts';
import { useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useTold, useWords } from '../shared/say.tsx';
import { SupersededWords } from './superseded.tsx';

export function PackValues({ pack }: { readonly pack: Pack }) {
  const { state } = useVessel();
  const { values: w } = useWords();
  // One value may stand at several joints; here it is told once.
  const replaced = replacedIn(pack, state.issued).filter(
    (row, i, all) => all.findIndex((each) => each.value === row.value) === i,
  );
  return (
    <>
      {replaced.length === 0 ? null : (
        <section aria-labelledby="replaced-head">
          <h2 id="replaced-head">{w.superseded}</h2>
          <p>{w.makeAgain}</p>
          <ul className="ruled-list">
            {replaced.map((row) => (
              <li key={`${row.thing} ${row.value}`}>
                <SupersededWords row={{ ...row, reached: null, looked: null }} />
              </li>
            ))}
          </ul>
        </section>
      )}
      <ChangedSince pack={pack} />
    </>
  );
}

function ChangedSince({ pack }: { readonly pack: Pack }) {
  const { state, replica } = useVessel();
  const { name } = useHolder();
  const { values: w } = useWords();
  const told = useTold();
  const since = changedSince(state, replica.packs, pack, name);
  if (since === null) return null;
  return (
    <section aria-labelledby="since-head" data-changed-since={since.changes.length}>
      <h2 id="since-head">{w.changedSince(name)}</h2>
      <p className="small">{w.lastDone(since.title, since.closedOn)}</p>
      {since.changes.length === 0 ? <p>{w.nothingChanged}</p> : null}
      <ul className="ruled-list">
        {since.changes.map((each) => (
          <li key={each.id}>
            <b>{each.is ?? w.gone}</b> {told(each.name)}
            <br />
            {each.was === null ? w.added : w.wasIn(each.was, each.wasIssue ?? '–')}
            {each.why === null ? '' : ` · ${each.why}`}
          </li>
        ))}
      </ul>
    </section>
  );
}
