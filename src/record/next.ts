// Which steps are ready: not done, with everything done that the machine demands first.

import { beforeOf } from '../pack/before.ts';
import type { Pack, Step } from '../pack/types.ts';
import { isStopped } from './before.ts';
import { isWet } from './isolation.ts';
import type { Moment } from './second-look.ts';
import { after } from './things.ts';
import type { State } from './types.ts';

/** In the order of the pack. A step behind one of the two stops is not ready while it stands. */
export function nextSteps(state: State, job: string, pack: Pack): readonly Step[] {
  const now = state.jobs[job];
  if (now === undefined || now.closed !== null) return [];
  const known = new Set(pack.steps.map((s) => s.id));
  const done = (id: string): boolean => now.done[id] !== undefined;
  return pack.steps.filter((step) => {
    if (done(step.id)) return false;
    if (isStopped(now) && beforeOf(step.thing) !== null) return false;
    if (step.needs.some((need) => known.has(need) && !done(need))) return false;
    const wet = step.verb === 'undone' && isWet(pack.facts, after(step.thing));
    if ((step.stop === 'isolation' || wet) && !now.isolation.proved) return false;
    const looked = (m: Moment) => now.looks.every((l) => l.moment !== m || l.how !== null);
    if (wet && !looked('isolation')) return false;
    if (step.verb === 'started' && !looked('line-up')) return false;
    const turns = step.verb === 'turned' || step.verb === 'started';
    return !((step.stop === 'clear' || turns) && !now.clear);
  });
}
