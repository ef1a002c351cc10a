// Every seal, spare and consumable that a job needs, against what the stores hold that day.

import type { Seal } from '../plant/schema.ts';
import { readQuantity } from '../quantity/quantity.ts';
import { greaseForRing } from '../sealing/amounts.ts';
import { GREASES } from '../sealing/tables/compounds.ts';
import type { StoredItem } from '../stores/item.ts';
import { allocate } from './allocate.ts';
import { type Context, jointOf, partOf } from './context.ts';
import { sealAgainst } from './seal-against.ts';
import {
  ageOf,
  type Fit,
  type FitAsk,
  freeWhy,
  isNear,
  ruleOf,
  same,
  sealFits,
} from './seal-fits.ts';
import { nearSeals } from './seal-near.ts';
import type {
  ConsumableNeed,
  Drawn,
  NotDrawn,
  SealList,
  SealNeed,
  SpareNeed,
  StoresHeld,
} from './seal-types.ts';
import type { PackRequest, Settled } from './types.ts';

type Asked = Pick<
  Context,
  'plant' | 'machine' | 'request' | 'undone' | 'moved' | 'items' | 'targetId' | 'does' | 'say'
>;

type Row = { readonly joint: string; readonly id: string; readonly seal: Seal };

export const sealKey = (joint: string, seal: string): string => `${joint}:${seal}`;

/** Each seal of each joint undone, once, in the order of the removal. */
export const disturbedSeals = (c: Pick<Context, 'machine' | 'undone'>): readonly Row[] =>
  [...new Set(c.undone.map((u) => u.id))].flatMap((joint) =>
    Object.entries(jointOf(c, joint).seals ?? {}).map(([id, seal]) => ({ joint, id, seal })),
  );

export function sealsOf(c: Asked, held: StoresHeld | null, heldOn: string | null): SealList {
  const on = c.request.when?.slice(0, 10) ?? c.request.on ?? heldOn;
  const rule = ruleOf(c.plant.storageRule);
  const ask: FitAsk | null =
    on === null
      ? null
      : {
          machine: c.machine,
          on,
          rule,
          job: [`${partOf(c, c.targetId).name}, ${c.machine.name}`, c.machine.name],
          say: c.say,
        };
  const items = held === null || ask === null ? null : held.items;
  return {
    on,
    rule,
    held: items !== null,
    needs: needsOf(c, items, ask),
    spares: sparesOf(c, items, ask),
    consumables: consumablesOf(c, items, ask),
    near: nearSeals(c, held?.fitted ?? {}, on),
  };
}

type Judged = { readonly item: StoredItem; readonly fit: Fit; readonly settled: Settled | null };

const markOf = ({ serial, batch }: StoredItem): string | null => serial ?? batch ?? null;

function needsOf(
  c: Asked,
  items: readonly StoredItem[] | null,
  ask: FitAsk | null,
): readonly SealNeed[] {
  const rows = disturbedSeals(c);
  const judged = rows.map((row) => (ask === null ? [] : judge(c.request, row, items ?? [], ask)));
  const drawn = share(judged.map((own, at) => ({ own, count: rows[at]?.seal.count ?? 0 })));
  return rows.map(({ joint, id, seal }, at): SealNeed => {
    const own = judged[at] ?? [];
    const got = drawn[at] ?? [];
    const key = sealKey(joint, id);
    const told = seal.size !== undefined || (items ?? []).some((i) => i.serves?.includes(key));
    const { against, notChecked, notes } = sealAgainst(c, joint, seal);
    const taken = got.reduce((sum, { count }) => sum + count, 0);
    return {
      thing: `seal/${key}`,
      joint,
      jointName: jointOf(c, joint).name,
      name: seal.name ?? seal.kind,
      kind: seal.kind,
      size: seal.size ?? null,
      compound: seal.compound ?? null,
      thickness: seal.thickness ?? null,
      count: seal.count,
      grease: seal.lubricant ?? null,
      sealant: seal.sealant ?? null,
      drawn: got,
      short: items === null || !told ? null : seal.count - taken,
      notDrawn: notDrawnOf(own, got, seal.count - taken, c),
      against,
      notChecked: [...(told ? [] : [c.say('sealNoSize')]), ...notChecked],
      notes,
    };
  });
}

const judge = (
  request: PackRequest,
  { joint, id, seal }: Row,
  items: readonly StoredItem[],
  ask: FitAsk,
): readonly Judged[] =>
  items
    .filter((item) => item.quantity > 0 && isNear(item, seal, sealKey(joint, id)))
    .map((item) => ({
      item,
      fit: sealFits(item, seal, ask),
      settled: request.decisions?.[`use seal ${item.id} for ${sealKey(joint, id)}`] ?? null,
    }));

/** What expires first is used first; what nobody can date comes last, and by name last of all. */
const rank = ({ fit, settled }: Judged): string => {
  const byName = fit.why.length > 0 && settled !== null ? 1 : 0;
  return `${byName}${fit.until ?? (fit.notChecked.length > 0 ? '9' : '8')}`;
};

function share(
  wants: readonly { readonly own: readonly Judged[]; readonly count: number }[],
): readonly (readonly Drawn[])[] {
  const usable = wants.map(({ own }) =>
    own
      .filter(({ fit, settled }) => fit.why.length === 0 || settled !== null)
      .toSorted((a, b) => (rank(a) < rank(b) ? -1 : rank(a) > rank(b) ? 1 : 0)),
  );
  const stock = new Map(
    usable.flat().map(({ item }) => [item.id, Math.floor(item.quantity)] as const),
  );
  const given = allocate(
    wants.map(({ count }, at) => ({ count, may: (usable[at] ?? []).map(({ item }) => item.id) })),
    stock,
  );
  return given.map((own, at) =>
    [...own].flatMap(([id, count]): readonly Drawn[] => {
      const one = usable[at]?.find(({ item }) => item.id === id);
      return one === undefined ? [] : [drawnOf(one, count)];
    }),
  );
}

const drawnOf = ({ item, fit, settled }: Judged, count: number): Drawn => ({
  item: item.id,
  name: item.name,
  place: item.place ?? null,
  mark: markOf(item),
  count,
  until: fit.until,
  notChecked: fit.notChecked,
  anyway:
    fit.why.length === 0 || settled === null
      ? null
      : { by: settled.by, why: settled.reason, against: fit.why },
});

const notDrawnOf = (
  own: readonly Judged[],
  drawn: readonly Drawn[],
  short: number,
  c: Asked,
): readonly NotDrawn[] =>
  own
    .filter(({ item }) => !drawn.some((one) => one.item === item.id))
    .filter(({ fit }) => fit.why.length > 0 || short > 0)
    .map(({ item, fit }) => ({
      item: item.id,
      name: item.name,
      place: item.place ?? null,
      why: fit.why.length > 0 ? fit.why : [c.say('storeAllDrawn')],
    }));

/** A shaft seal is a part of its own and the seal of its seat: it is drawn once, as a seal. */
const isSealItself = (c: Asked, part: string): boolean =>
  disturbedSeals(c).some(
    ({ joint, seal }) =>
      seal.kind === 'shaft seal' && jointOf(c, joint).between?.includes(part) === true,
  );

/** The items that go in new: those of the target's type, or named for its place. */
function sparesOf(
  c: Asked,
  items: readonly StoredItem[] | null,
  ask: FitAsk | null,
): readonly SpareNeed[] {
  // What is overhauled goes back itself.
  const renewed = c.items.filter(
    (part) => (c.does !== 'overhaul' || part !== c.targetId) && !isSealItself(c, part),
  );
  return renewed.map((part): SpareNeed => {
    const type = partOf(c, part).item?.type;
    const own = (items ?? [])
      .filter((item) => item.kind === 'part' && item.quantity > 0)
      .filter((item) => item.serves?.includes(part) === true || same(item.type, type))
      .map((item): Judged => {
        const other =
          item.type !== undefined && type !== undefined && !same(item.type, type)
            ? [c.say('storeOther', item.type, type)]
            : [];
        const why = ask === null ? [] : [...other, ...freeWhy(item, ask)];
        const settled = c.request.decisions?.[`use item ${item.id} for ${part}`] ?? null;
        return { item, fit: { why, notChecked: [], until: null }, settled };
      });
    const [drawn = []] = share([{ own, count: 1 }]);
    return {
      part,
      name: partOf(c, part).name,
      type: type ?? null,
      drawn,
      short: items === null ? null : 1 - drawn.reduce((sum, { count }) => sum + count, 0),
      notDrawn: notDrawnOf(own, drawn, 1 - drawn.length, c),
    };
  });
}

/** Grease for rings by their size, and whatever the joints ask for by name. */
function consumablesOf(
  c: Asked,
  items: readonly StoredItem[] | null,
  ask: FitAsk | null,
): readonly ConsumableNeed[] {
  const joints = [...new Set(c.undone.map((u) => u.id))];
  return joints.flatMap((joint) => {
    const { name: jointName, consumables = [], seals = {}, noSealant } = jointOf(c, joint);
    const stated = consumables.map((one) => ({ ...one, compound: null, seal: null }));
    const wet = Object.values(seals).flatMap((seal) =>
      [seal.lubricant, seal.sealant].flatMap((name) =>
        name === undefined ? [] : [{ name, compound: seal.compound ?? null, seal }],
      ),
    );
    return [...stated, ...wet].map((one): ConsumableNeed => {
      const worked = one.seal === null ? null : greaseAmount(one.name, one.seal);
      const amount = 'amount' in one ? (one.amount ?? null) : worked;
      const found = heldFor(one.name, one.compound, items, ask, c);
      const sealing = /seal(?:ant|ing compound)/i.test(one.name) && noSealant !== undefined;
      return {
        name: one.name,
        joint,
        jointName,
        amount,
        amountSource: worked === null ? null : c.say('amountPractice'),
        held: found.held,
        against: [
          ...found.against,
          ...(sealing ? [c.say('sealForbidden', one.name, noSealant)] : []),
        ],
      };
    });
  });
}

function greaseAmount(name: string, seal: Seal): string | null {
  if (!GREASES.some((grease) => grease === name) || seal.kind !== 'ring') return null;
  const [, inner, section] =
    /(\d+(?:\.\d+)?)\s*x\s*(\d+(?:\.\d+)?)\s*$/.exec(seal.size ?? '') ?? [];
  if (inner === undefined || section === undefined) return null;
  const { amount } = greaseForRing(Number(inner), Number(section));
  const all = readQuantity(`${amount.value * seal.count} ${amount.unit}`, 'mL', '');
  return all.ok ? `${Number(all.quantity.value.toPrecision(2))} mL` : null;
}

/** In date and allowed to touch the compound; of several the first that is. */
function heldFor(
  name: string,
  compound: string | null,
  items: readonly StoredItem[] | null,
  ask: FitAsk | null,
  c: Asked,
): Pick<ConsumableNeed, 'held' | 'against'> {
  if (items === null || ask === null) return { held: null, against: [] };
  const own = items
    .filter((item) => item.kind === 'consumable' && item.quantity > 0 && same(item.name, name))
    .map((item) => {
      const { touches } = item;
      const barred = compound !== null && touches !== undefined && !touches.includes(compound);
      const why = [
        ...ageOf(item, ask).why,
        ...freeWhy(item, ask),
        ...(barred ? [c.say('storeMayNotTouch', compound)] : []),
      ];
      return { item, why };
    });
  const good = own.find(({ why }) => why.length === 0);
  if (good !== undefined)
    return { held: { name: good.item.name, place: good.item.place ?? null }, against: [] };
  const against = own.flatMap(({ item, why }) => [c.say('storeOnly', item.name, why)]);
  return { held: null, against: against.length > 0 ? against : [c.say('storeNone')] };
}
