// Lifting gear chosen from the list held: marked load, angle, examination; what is missing and why.

import { monthsOn } from '../quantity/day.ts';
import { formatNumber } from '../quantity/quantity.ts';
import { type Gear, type GearKind, isGear, type Tool } from '../tools/tool.ts';

/** So many of one kind, each bearing this much. */
export type GearNeed = {
  readonly kind: GearKind;
  readonly count: number;
  readonly bearsKg: number;
  /** From straight down; null where it is no matter. */
  readonly angleDeg: number | null;
};

export type GearChoice = GearNeed & {
  readonly chosen: readonly { readonly id: string; readonly name: string }[];
  /** Held, of its kind, and not to be used, with all that speaks against each. */
  readonly against: readonly { readonly name: string; readonly why: readonly string[] }[];
  readonly missing: number;
};

/** Whether its examination still holds on that day. */
export function datedAgainst(gear: Gear, on: string): readonly string[] {
  const { examinedOn, intervalMonths } = gear;
  if (examinedOn === undefined) return ['not known: examined'];
  if (intervalMonths === undefined) return ['not known: months between examinations'];
  const until = monthsOn(examinedOn, intervalMonths);
  if (on < examinedOn) return [`examined on ${examinedOn}, after ${on}`];
  return on <= until ? [] : [`out of date: examined on ${examinedOn}, until ${until}`];
}

/** All that speaks against hanging this on it on that day. */
export function gearAgainst(gear: Gear, need: GearNeed, on: string): readonly string[] {
  const { value } = gear.safeLoad;
  const found = [...datedAgainst(gear, on)];
  if (value < need.bearsKg) {
    found.unshift(`marked ${formatNumber(value)} kg, must bear ${formatNumber(need.bearsKg)} kg`);
  }
  if (gear.kind !== 'sling' && gear.kind !== 'eye bolt') return found;
  const pulled = need.angleDeg ?? 0;
  if (pulled === 0) return found;
  if (gear.mostAngle === undefined) return [...found, 'not known: the angle it is marked for'];
  return gear.mostAngle >= pulled
    ? found
    : [...found, `marked for ${gear.mostAngle}° at most, pulled at ${pulled}°`];
}

/** The least that serves, so that the strong is left for the heavy; nothing is chosen twice. */
export function chooseGear(
  needs: readonly GearNeed[],
  tools: readonly Tool[],
  on: string,
  taken: ReadonlySet<string>,
): readonly GearChoice[] {
  const used = new Set(taken);
  return needs.map((need) => {
    const own = tools.filter(isGear).filter((tool) => tool.kind === need.kind);
    const judged = own.map((tool) => ({ tool, why: gearAgainst(tool, need, on) }));
    const free = judged
      .filter(({ tool, why }) => why.length === 0 && !used.has(tool.id))
      .sort((a, b) => a.tool.safeLoad.value - b.tool.safeLoad.value)
      .slice(0, need.count);
    for (const { tool } of free) used.add(tool.id);
    const against = judged.flatMap(({ tool, why }) => {
      if (why.length > 0) return [{ name: tool.name, why }];
      return taken.has(tool.id)
        ? [{ name: tool.name, why: ['holds another part of this job'] }]
        : [];
    });
    const chosen = free.map(({ tool }) => ({ id: tool.id, name: tool.name }));
    return { ...need, chosen, against, missing: need.count - chosen.length };
  });
}
