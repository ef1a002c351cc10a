// The stores as they are now: the list as it was counted, and what was drawn and received since.

import type { FittedOn, StoresHeld } from '../pack/seal-types.ts';
import type { Pack } from '../pack/types.ts';
import type { StoredItem } from '../stores/item.ts';
import { order } from './order.ts';
import { effective } from './said.ts';
import { after } from './things.ts';
import type { Act } from './types.ts';

/** Acts in causal order, less those taken back. */
const standing = (acts: readonly Act[]): readonly Act[] =>
  effective(order(acts)).acts.map(({ act }) => act);

/**
 * On the very day of a count what was drawn counts and what was received does not: too little is
 * the safe side. Nothing falls below nought; who drew more than was held has counted the drawer.
 */
export function storesNow(
  items: readonly StoredItem[],
  acts: readonly Act[],
): readonly StoredItem[] {
  const moves = standing(acts).filter(({ kind }) => kind === 'drawn' || kind === 'received');
  return items.map((item) => {
    const { countedOn } = item;
    const own = moves.filter(({ kind, body, at }) => {
      if (body.item !== item.id) return false;
      const day = at.utc.slice(0, 10);
      return countedOn === undefined || (kind === 'drawn' ? day >= countedOn : day > countedOn);
    });
    if (own.length === 0) return item;
    const sum = own.reduce(
      (n, { kind, body }) => n + (kind === 'drawn' ? -1 : 1) * Number(body.count),
      item.quantity,
    );
    return { ...item, quantity: Math.max(0, Number(sum.toPrecision(12))) };
  });
}

/** When each seal was fitted last, by machine and seal, as the jobs of the record tell. */
export function sealsFitted(acts: readonly Act[], packs: readonly Pack[]): FittedOn {
  const byId = new Map(packs.map((pack) => [pack.id, pack]));
  const machines = new Map<string, string>();
  const fitted: Record<string, string> = {};
  for (const { kind, stream, body, at } of standing(acts)) {
    if (kind === 'job-started') {
      const pack = byId.get(String(body.pack));
      if (pack !== undefined) machines.set(stream.id, pack.machine.id);
    }
    const machine = machines.get(stream.id);
    if (kind === 'seal-in' && machine !== undefined)
      fitted[`${machine} ${after(String(body.thing))}`] = at.utc.slice(0, 10);
  }
  return fitted;
}

/** The stores of a plant folder as they are now, and how old what is fitted is. */
export const storesHeld = (
  stores: StoresHeld,
  acts: readonly Act[],
  packs: readonly Pack[],
): StoresHeld => ({
  items: storesNow(stores.items, acts),
  fitted: { ...stores.fitted, ...sealsFitted(acts, packs) },
});
