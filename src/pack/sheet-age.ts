// Value sheets that should have been confirmed again before anybody tightens by them.

import type { IssuedValue, Plant } from '../plant/types.ts';
import { standing } from '../values/confirm.ts';
import { type Context, jointOf } from './context.ts';
import type { Decision, PackRequest } from './types.ts';
import { tighteningValues } from './values.ts';

/** One value of each sheet this pack uses stands for the sheet: they were issued together. */
function sheetsUsed(c: Context): IssuedValue[] {
  const settings = c.undone.flatMap((u) =>
    Object.values(jointOf(c, u.id).settings ?? {}).flatMap((s) => s.value ?? []),
  );
  const tightened = c.undone.flatMap((u) =>
    tighteningValues(c.machine, jointOf(c, u.id)).map(({ id }) => id),
  );
  const ids = [...tightened, ...settings, ...(c.target.limits ?? []), c.spec.interval ?? ''];
  const bySheet = new Map<string, IssuedValue>();
  for (const id of ids) {
    const value = c.machine.values[id];
    if (value?.confirm !== undefined) bySheet.set(value.sheet, value);
  }
  return [...bySheet.values()].sort((a, b) => (a.sheet < b.sheet ? -1 : 1));
}

/** Settled when the pack is made, by somebody who can ask whoever issued it. */
export function sheetsOpen(c: Context): Omit<Decision, 'settled'>[] {
  const { on } = c.request;
  if (on === undefined) return [];
  return sheetsUsed(c).flatMap((value) => {
    const { last, over } = standing(value, on);
    if (!over) return [];
    return [
      {
        id: `sheet not confirmed ${value.sheet}`,
        question: c.say('sheetStands', value.issue, value.sheet, value.authority),
        why: c.say('sheetOver', value.sheet, last, value.confirm ?? ''),
      },
    ];
  });
}

/** Without a day nobody can say how old a sheet is. */
export function sheetsUnchecked(c: Context): string[] {
  if (c.request.on !== undefined) return [];
  return sheetsUsed(c).map((v) => c.say('sheetUnchecked', v.sheet, v.confirm ?? ''));
}

/** The request with the day it is asked on, where a sheet of its machine grows old. */
export function withDay(plant: Plant, request: PackRequest, day: string): PackRequest {
  const machine =
    plant.machines[request.machine] ??
    Object.values(plant.machines).find((m) => m.slug === request.machine);
  const ages = Object.values(machine?.values ?? {}).some((v) => v.confirm !== undefined);
  return ages && request.on === undefined ? { ...request, on: day.slice(0, 10) } : request;
}
