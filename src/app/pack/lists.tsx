// What is laid out beforehand: tools, seals, consumables, weights; values and proofs with origins.

import type { Pack, ShownValue } from '../../pack/types.ts';
import { useTold, useWords } from '../shared/say.tsx';
import { Beside } from '../shared/units.tsx';

export function Lists({ pack }: { readonly pack: Pack }) {
  const { lists } = pack;
  const { lists: w } = useWords();
  const told = useTold();
  return (
    <section aria-labelledby="lists-head">
      <h2 id="lists-head">{w.head}</h2>
      <List
        name={w.values}
        rows={lists.values.map((each) => ({ key: each.id, text: <ValueWords value={each} /> }))}
      />
      <List
        name={w.tools}
        rows={lists.tools.map((each) => ({
          key: each.tool,
          text: w.toolFor(told(each.tool), each.for.map(told).join('; ')),
        }))}
      />
      <List
        name={w.seals}
        rows={bare(pack, lists.seals).map((each) => ({
          key: each.thing,
          text: `${each.count} × ${each.name}${words([each.size, each.compound])} · ${each.joint}`,
        }))}
      />
      <List
        name={w.loose}
        rows={lists.loose.map((each) => ({
          key: each.thing,
          text: `${each.count} × ${each.name}`,
        }))}
      />
      <List
        name={w.consumables}
        rows={bare(pack, lists.consumables).map((each) => ({
          key: `${each.name} ${each.for}`,
          text: `${each.name}${words([each.amount])} · ${each.for}`,
        }))}
      />
      <List
        name={w.temporary}
        rows={lists.temporary.map((each) => ({
          key: each.thing,
          text: w.number(each.thing.split('/')[1] ?? '', told(each.name), told(each.where)),
        }))}
      />
      <Afterwards pack={pack} />
    </section>
  );
}

/** What stands against the stores further up is not listed bare once more. */
const bare = <T,>(pack: Pack, rows: readonly T[]): readonly T[] =>
  pack.seals === undefined ? rows : [];

/** Weights, and what is looked up while the job goes on and after it. */
function Afterwards({ pack }: { readonly pack: Pack }) {
  const { lists } = pack;
  const { lists: w } = useWords();
  const told = useTold();
  return (
    <>
      <List
        name={w.weights}
        rows={lists.weights.map((each) => ({
          key: each.part,
          text: `${weight(each.massKg, w.weightUnknown)} · ${each.name}${words([each.carriedBy])}`,
        }))}
      />
      <List
        name={w.proofs}
        rows={lists.proofs.map((each) => ({
          key: each.id,
          text: `${told(each.name)}: ${told(each.what)}`,
        }))}
      />
      <List
        name={w.limits}
        rows={pack.limits.map((each) => ({ key: each.id, text: <ValueWords value={each} /> }))}
      />
      <List
        name={w.followUps}
        rows={lists.followUps.map((each) => ({
          key: each.id,
          text: w.after(told(each.after), told(each.what)),
        }))}
      />
    </>
  );
}

const weight = (massKg: number | null, unknown: string): string =>
  massKg === null ? unknown : `${massKg} kg`;

const words = (list: readonly (string | null)[]): string =>
  list
    .filter((each) => each !== null)
    .map((each) => `, ${each}`)
    .join('');

type Row = { readonly key: string; readonly text: React.ReactNode };

function List({ name, rows }: { readonly name: string; readonly rows: readonly Row[] }) {
  const { packSheet: w } = useWords();
  if (rows.length === 0) return null;
  return (
    <details className="list">
      <summary>{w.counted(rows.length, name)}</summary>
      <ul className="ruled-list">
        {rows.map((row) => (
          <li key={row.key}>{row.text}</li>
        ))}
      </ul>
    </details>
  );
}

/** The figure before its name, then where it comes from and what it replaced. */
export function ValueWords({ value }: { readonly value: ShownValue }) {
  const { lists: w } = useWords();
  const told = useTold();
  return (
    <span className="value">
      <b data-value={value.id}>{value.shown ?? w.noValue}</b>
      <Beside shown={value.shown} /> {told(value.name)}
      <br />
      <span className="small">
        {told(value.origin)}
        {value.issue === null ? '' : w.issue(value.issue)}
        {value.date === null ? '' : w.ofDate(value.date)}
        {value.authority === null ? '' : `, ${value.authority}`}
        {value.threadCondition === null ? '' : w.threads(told(value.threadCondition))}
        {value.was === null ? '' : w.was(value.was.value, value.was.issue)}
        {value.source?.kind === 'invented for the demo' ? w.invented : ''}
      </span>
    </span>
  );
}
