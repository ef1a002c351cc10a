// What is laid out beforehand: tools, seals, consumables, weights; values and proofs with origins.

import type { Pack, ShownValue } from '../../pack/types.ts';

export function Lists({ pack }: { readonly pack: Pack }) {
  const { lists } = pack;
  return (
    <section aria-labelledby="lists-head">
      <h2 id="lists-head">To lay out and look up</h2>
      <List
        name="Values"
        rows={lists.values.map((each) => ({ key: each.id, text: <ValueWords value={each} /> }))}
      />
      <List
        name="Tools"
        rows={lists.tools.map((each) => ({
          key: each.tool,
          text: `${each.tool} · for ${each.for.join('; ')}`,
        }))}
      />
      <List
        name="Gaskets and rings"
        rows={lists.seals.map((each) => ({
          key: each.thing,
          text: `${each.count} × ${each.name}${words([each.size, each.compound])} · ${each.joint}`,
        }))}
      />
      <List
        name="Loose parts, counted"
        rows={lists.loose.map((each) => ({
          key: each.thing,
          text: `${each.count} × ${each.name}`,
        }))}
      />
      <List
        name="Consumables"
        rows={lists.consumables.map((each) => ({
          key: `${each.name} ${each.for}`,
          text: `${each.name}${words([each.amount])} · ${each.for}`,
        }))}
      />
      <List
        name="Blanks, supports and other temporary things"
        rows={lists.temporary.map((each) => ({
          key: each.thing,
          text: `Number ${each.thing.split('/')[1] ?? ''}: ${each.name} · ${each.where}`,
        }))}
      />
      <List
        name="Weights"
        rows={lists.weights.map((each) => ({
          key: each.part,
          text: `${weight(each.massKg)} · ${each.name}${words([each.carriedBy])}`,
        }))}
      />
      <List
        name="Proofs owed"
        rows={lists.proofs.map((each) => ({ key: each.id, text: `${each.name}: ${each.what}` }))}
      />
      <List
        name="Limits"
        rows={pack.limits.map((each) => ({ key: each.id, text: <ValueWords value={each} /> }))}
      />
      <List
        name="Follow-ups"
        rows={lists.followUps.map((each) => ({
          key: each.id,
          text: `After ${each.after}: ${each.what}`,
        }))}
      />
    </section>
  );
}

const weight = (massKg: number | null): string =>
  massKg === null ? 'weight not known' : `${massKg} kg`;

const words = (list: readonly (string | null)[]): string =>
  list
    .filter((each) => each !== null)
    .map((each) => `, ${each}`)
    .join('');

type Row = { readonly key: string; readonly text: React.ReactNode };

function List({ name, rows }: { readonly name: string; readonly rows: readonly Row[] }) {
  if (rows.length === 0) return null;
  return (
    <details className="list">
      <summary>
        {rows.length} · {name}
      </summary>
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
  return (
    <span className="value">
      <b data-value={value.id}>{value.shown ?? 'NO VALUE STATED'}</b> {value.name}
      <br />
      <span className="small">
        {value.origin}
        {value.issue === null ? '' : `, issue ${value.issue}`}
        {value.date === null ? '' : ` of ${value.date}`}
        {value.authority === null ? '' : `, ${value.authority}`}
        {value.threadCondition === null ? '' : ` · threads ${value.threadCondition}`}
        {value.was === null ? '' : ` · was ${value.was.value} in issue ${value.was.issue}`}
        {value.source?.kind === 'invented for the demo' ? ' · invented for the demo' : ''}
      </span>
    </span>
  );
}
