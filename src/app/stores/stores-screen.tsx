// The stores with a phone in one hand: short for open jobs, then all by place; one tap each.

import { useMemo, useState } from 'react';
import { needWords } from '../../pack/seal-words.ts';
import { storesNow } from '../../record/stores-now.ts';
import { findItem } from '../../stores/find.ts';
import { type StoredItem, shortKits } from '../../stores/item.ts';
import type { Words } from '../../words/words.ts';
import { Field, Plain } from '../shared/controls.tsx';
import { useHolder } from '../shared/person.tsx';
import { useVessel } from '../shared/replica.tsx';
import { useTold, useWords } from '../shared/say.tsx';
import { Sheet } from '../shared/sheet.tsx';

export function StoresScreen() {
  const { replica } = useVessel();
  const { stores: w } = useWords();
  const [asked, setAsked] = useState('');
  const items = useMemo(
    () => storesNow(replica.stores ?? [], replica.acts),
    [replica.stores, replica.acts],
  );
  const shown = useFound(items, asked);
  return (
    <Sheet title={w.title}>
      {replica.stores === undefined ? <p>{w.none}</p> : null}
      <ShortNow />
      <Kits items={items} />
      <Field label={w.find} value={asked} onChange={setAsked} />
      {shown.length === 0 && asked !== '' ? <p role="status">{w.nothing}</p> : null}
      {placesOf(shown, w.noPlace).map(([place, own]) => (
        <section key={place} aria-label={place}>
          <h2>{place}</h2>
          {own.map((item) => (
            <OneItem key={item.id} item={item} />
          ))}
        </section>
      ))}
    </Sheet>
  );
}

/** What was scanned by its code, anything else by the words of it. */
function useFound(items: readonly StoredItem[], asked: string): readonly StoredItem[] {
  const { replica } = useVessel();
  const text = asked.trim().toLowerCase();
  if (text === '') return items;
  const year = new Date().getFullYear();
  const meant = findItem(asked, items, { vessel: replica.vessel.id, year });
  if (meant.items.length > 0) return meant.items;
  return items.filter((item) =>
    [item.id, item.name, item.size, item.compound, item.place, item.batch, item.serial].some(
      (each) => each?.toLowerCase().includes(text) === true,
    ),
  );
}

function placesOf(items: readonly StoredItem[], unknown: string) {
  const places = [...new Set(items.map(({ place }) => place ?? unknown))].sort();
  return places.map(
    (place) => [place, items.filter((item) => (item.place ?? unknown) === place)] as const,
  );
}

/** Of jobs that are open, what their packs could not draw. */
function ShortNow() {
  const { replica, state } = useVessel();
  const { stores: w, seals } = useWords();
  const told = useTold();
  const open = Object.values(state.jobs).filter((job) => job.closed === null);
  const rows = open.flatMap((job) => {
    const pack = replica.packs.find(({ id }) => id === job.packInForce);
    return (pack?.seals?.needs ?? []).flatMap((need) =>
      (need.short ?? 0) > 0
        ? [w.shortFor(needWords(need, seals, told), need.short ?? 0, job.title)]
        : [],
    );
  });
  return (
    <section aria-labelledby="short-head">
      <h2 id="short-head">{w.short}</h2>
      {rows.length === 0 ? <p className="line">{w.noneShort}</p> : null}
      <ul className="ruled-list">
        {rows.map((row) => (
          <li key={row}>{row}</li>
        ))}
      </ul>
    </section>
  );
}

function Kits({ items }: { readonly items: readonly StoredItem[] }) {
  const { stores: w } = useWords();
  const short = shortKits(items);
  if (short.length === 0) return null;
  return (
    <section aria-labelledby="kits-head">
      <h2 id="kits-head">{w.kits}</h2>
      <ul className="ruled-list">
        {short.map(({ kit, missing }) => (
          <li key={kit}>
            {w.kitShort(
              kit,
              missing.map(({ item, missing: n }) => `${n} × ${item.name}`).join(', '),
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

function OneItem({ item }: { readonly item: StoredItem }) {
  const { replica, record } = useVessel();
  const { name } = useHolder();
  const { stores: w } = useWords();
  const [busy, setBusy] = useState(false);
  const stream = { kind: 'vessel', id: replica.vessel.id } as const;
  const move = async (kind: 'drawn' | 'received') => {
    setBusy(true);
    await record({ stream, kind, by: name, body: { item: item.id, count: 1 } });
    setBusy(false);
  };
  const figures = [item.size, item.thickness, item.compound].filter((each) => each !== undefined);
  const what = [item.name, ...figures].join(', ');
  const off = busy || name === '';
  return (
    <article className="stored" data-item={item.id}>
      <p className="step-value">
        <b data-held>{w.held(String(item.quantity), item.unit)}</b> · {what}
      </p>
      <p className="small">{marksOf(item, w).join(' · ')}</p>
      {item.expires !== undefined && item.expires < today() ? <p>{w.ended}</p> : null}
      <p className="with-act">
        <Plain
          onPress={() => void move('drawn')}
          disabled={off || item.quantity < 1}
          label={w.drawThis(what)}
        >
          {w.draw}
        </Plain>
        <Plain onPress={() => void move('received')} disabled={off} label={w.receiveThis(what)}>
          {w.receive}
        </Plain>
      </p>
      {name === '' ? <p className="small">{w.whoFirst}</p> : null}
    </article>
  );
}

const today = (): string => new Date().toISOString().slice(0, 10);

type W = Words['stores'];

const marksOf = (item: StoredItem, w: W): readonly string[] => [
  w.condition[item.condition],
  ...(item.serial === undefined ? [] : [w.serial(item.serial)]),
  ...(item.batch === undefined ? [] : [w.batch(item.batch)]),
  ...(item.cured === undefined ? [] : [w.cured(item.cured)]),
  ...(item.expires === undefined ? [] : [w.lastDay(item.expires)]),
  ...(item.reservedFor === undefined ? [] : [w.keptFor(item.reservedFor)]),
];
