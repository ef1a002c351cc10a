// Cycles of torque wrenches as the record tells them: one for each bolt brought to its round.

import type { Held } from '../pack/fastening-types.ts';
import type { Pack, Step } from '../pack/types.ts';
import { type WrenchUse, withCycles } from '../tools/cycles.ts';
import { stepIdOf } from './kinds.ts';
import { order } from './order.ts';
import { effective } from './said.ts';
import { storesHeld } from './stores-now.ts';
import { after } from './things.ts';
import type { Act, ActBody } from './types.ts';

/** Acts corrected away count nothing; a wrench named in the act counts in place of the pack's. */
export function wrenchUses(acts: readonly Act[], packs: readonly Pack[]): readonly WrenchUse[] {
  const ordered = effective(order(acts)).acts.map(({ act }) => act);
  const byId = new Map(packs.map((pack) => [pack.id, pack]));
  const inForce = new Map<string, Pack>();
  return ordered.flatMap((act): readonly WrenchUse[] => {
    if (act.stream.kind !== 'job') return [];
    const next = byId.get(String(act.kind === 'pack-amended' ? act.body.to : act.body.pack));
    if (act.kind === 'job-started' || act.kind === 'pack-amended') {
      if (next !== undefined) inForce.set(act.stream.id, next);
      return [];
    }
    const pack = inForce.get(act.stream.id);
    return pack === undefined ? [] : usesOf(act, pack);
  });
}

function usesOf(act: Act, pack: Pack): readonly WrenchUse[] {
  const step = stepOf(act, pack);
  const joint = pack.facts.joints[after(String(act.body.thing))];
  if (step === undefined || joint === undefined) return [];
  const at = act.at.utc;
  const said = holesSaid(act.body, joint.holes);
  if (typeof act.body.tool === 'string') return [{ tool: act.body.tool, at, times: said.length }];
  return (step.sets ?? []).flatMap((line): WrenchUse[] => {
    const own = joint.fasteners.find((f) => f.id === line.fastener)?.holes ?? [];
    const times = said.filter((hole) => own.includes(hole)).length;
    return times === 0 ? [] : [{ tool: line.wrenchId, at, times }];
  });
}

/** A check and a re-tightening are done with the wrench of the joint's last round. */
function stepOf(act: Act, pack: Pack): Step | undefined {
  if (act.kind === 'made') {
    const id = stepIdOf(act.kind, act.body);
    return pack.steps.find((s) => s.id === id);
  }
  if (act.kind !== 'checked-tight' && act.kind !== 're-tightened') return undefined;
  return pack.steps.findLast((s) => s.verb === 'made' && s.thing === act.body.thing);
}

const holesSaid = (body: ActBody, known: readonly string[]): readonly string[] =>
  Array.isArray(body.holes) ? body.holes.map(String) : known;

/** What is held as the record has it: drawn from, wrenches counted up; `on` is this day. */
export const heldCounted = (
  held: Held,
  acts: readonly Act[],
  packs: readonly Pack[],
  on: string,
): Held => ({
  ...held,
  tools: withCycles(held.tools, wrenchUses(acts, packs), on.slice(0, 10)),
  ...(held.stores === undefined ? {} : { stores: storesHeld(held.stores, acts, packs) }),
});
