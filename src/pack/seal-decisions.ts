// What of the seals, spares and consumables must be settled by name before anything is shut.

import type { Context } from './context.ts';
import type { Drawn, NotDrawn, SealNeed, SpareNeed } from './seal-types.ts';
import type { Decision } from './types.ts';

type Open = Omit<Decision, 'settled'>;
type Asked = Pick<Context, 'seals' | 'say' | 'request'>;

export function sealsOpen(c: Asked): readonly Open[] {
  const { needs, spares, consumables } = c.seals;
  const short = consumables.filter(({ held, against }) => held === null && against.length > 0);
  return [
    ...needs.flatMap((need) => [...sealOpen(c, need), ...againstOpen(c, need)]),
    ...spares.flatMap((need) => spareOpen(c, need)),
    ...[...new Set(short.map(({ name }) => name))].map((name): Open => {
      const own = short.filter((one) => one.name === name);
      const against = [...new Set(own.flatMap((one) => one.against))];
      return {
        id: `no consumable ${name}`,
        question: c.say(
          'consumableFrom',
          name,
          own.map(({ jointName }) => jointName),
        ),
        why: c.say('consumableFromWhy', against),
      };
    }),
  ];
}

const keyOf = ({ thing }: SealNeed): string => thing.replace(/^seal\//, '');

/** Nearest is what has least against it. */
const nearest = (list: readonly NotDrawn[]): NotDrawn | undefined =>
  list.toSorted((a, b) => a.why.length - b.why.length)[0];

const anyways = (drawn: readonly Drawn[]) =>
  drawn.flatMap(({ item, name, mark, anyway }) =>
    anyway === null ? [] : [{ item, name, mark, against: anyway.against }],
  );

function sealOpen(c: Asked, need: SealNeed): readonly Open[] {
  const { name, jointName, count, short, drawn, notDrawn } = need;
  const used = anyways(drawn);
  const settled = used.map(
    ({ item, name: what, against }): Open => ({
      id: `use seal ${item} for ${keyOf(need)}`,
      question: c.say('mayUseSeal', what, name, jointName),
      why: c.say('mayUseSealWhy', count, against),
    }),
  );
  if (short === null || short <= 0) return settled;
  // Once it was said where they come from, nothing else is asked of them.
  const other = `no seal for ${keyOf(need)}`;
  const near = c.request.decisions?.[other] === undefined ? nearest(notDrawn) : undefined;
  if (near === undefined)
    return [
      ...settled,
      {
        id: other,
        question: c.say('whereFrom', name, jointName),
        why: c.say('whereFromWhy', short, count),
      },
    ];
  return [
    ...settled,
    {
      id: `use seal ${near.item} for ${keyOf(need)}`,
      question: c.say('mayUseSeal', near.name, name, jointName),
      why: c.say('mayUseSealWhy', short, near.why),
    },
  ];
}

const againstOpen = (c: Asked, need: SealNeed): readonly Open[] =>
  need.against.length === 0
    ? []
    : [
        {
          id: `speaks against ${need.thing}`,
          question: c.say('sealRight', need.name, need.jointName),
          why: c.say('sealRightWhy', need.against),
        },
      ];

function spareOpen(c: Asked, need: SpareNeed): readonly Open[] {
  const { part, name, short, drawn, notDrawn } = need;
  const settled = anyways(drawn).map(
    ({ item, name: what, mark, against }): Open => ({
      id: `use item ${item} for ${part}`,
      question: c.say('mayUseItem', what, mark, name),
      why: c.say('mayUseItemWhy', against),
    }),
  );
  if (short === null || short <= 0) return settled;
  const other = `no item for ${part}`;
  const near = c.request.decisions?.[other] === undefined ? nearest(notDrawn) : undefined;
  if (near === undefined)
    return [{ id: other, question: c.say('itemFrom', name), why: c.say('itemFromWhy') }];
  return [
    {
      id: `use item ${near.item} for ${part}`,
      question: c.say('mayUseItem', near.name, null, name),
      why: c.say('mayUseItemWhy', near.why),
    },
  ];
}
