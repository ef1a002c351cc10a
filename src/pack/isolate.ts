// The steps before anything is opened: who is told, what is shut, tagged, drained and proved.

import type { Hazard } from '../quantity/authority.ts';
import { type Context, isLiquidLine, isWet, placeName } from './context.ts';
import { isWaterSide } from './isolation.ts';
import type { DraftStep } from './order.ts';
import { step, stepId } from './step.ts';

const hazardsOf = (c: Context, closureId: string): Hazard[] => {
  const closure = c.machine.closures[closureId];
  if (isWaterSide(c.machine, closureId)) return ['flooding'];
  if (closure?.kind === 'breaker') return ['electricity', 'rotation'];
  if (closure?.kind === 'switch' || closure?.kind === 'turning gear') return ['rotation'];
  return ['stored energy', 'rotation'];
};

/** Ids of the steps that must stand before people rely on the isolation. */
export const isolatedBy = (c: Context): { readonly tags: string[]; readonly proof: string[] } => ({
  tags: c.isolation.tags.map((t) => stepId('tagged', `tag/${t.n}`)),
  proof: proofDrains(c).map((d) => stepId('proved-dead', `drain/${d}`)),
});

/** The drain at which the isolation is proved, where the list names one. */
export const proofDrains = (c: Context): string[] =>
  c.isolation.proveAt === null ? [] : [c.isolation.proveAt];

export const isolateSteps = (c: Context): DraftStep[] => {
  const opensWater = c.undone.some((u) => isWet(c.machine, u.id));
  const steps: DraftStep[] = [];
  if (opensWater) steps.push(toldStep(c));
  c.isolation.closures.forEach(({ closure, position }, i) => {
    steps.push(shutStep(c, closure, position, i, opensWater));
    for (const tag of c.isolation.tags.filter((t) => t.closure === closure))
      steps.push(tagStep(c, tag, position, i));
  });
  steps.push(...drainSteps(c));
  return steps;
};

const toldStep = (c: Context): DraftStep =>
  step({
    verb: 'told',
    thing: 'check/told',
    phase: 'before',
    rank: 0,
    text:
      c.plant.kind === 'vessel'
        ? 'Tell the bridge and the engineer in charge that the sea side is being opened.'
        : 'Tell the control room and the person in charge that the water side is being opened.',
    reason: 'whoever is not at the job must know in the first minute if water comes in',
    asks: [{ name: 'who', label: 'Who has been told', kind: 'person' }],
  });

const shutStep = (
  c: Context,
  id: string,
  position: string,
  i: number,
  opensWater: boolean,
): DraftStep => {
  const closure = c.machine.closures[id];
  const at = closure?.stations?.[0] ?? closure?.place;
  const normal = closure?.normal;
  const choices = [normal, 'open', 'shut', 'on', 'off', 'not as listed'].filter(
    (x): x is string => x !== undefined,
  );
  return step({
    verb: 'shut',
    thing: `closure/${id}`,
    phase: 'isolate',
    rank: 100 + i * 10,
    text:
      `${closure?.name ?? id}: bring to ${position}.` +
      `${at === undefined ? '' : ` ${at}.`} Note how it was found.` +
      `${closure?.secure === undefined ? '' : ` Secure: ${closure.secure}.`}`,
    reason: `listed by hand by ${c.isolation.by ?? 'nobody'}`,
    place: placeName(c, closure?.place) ?? at ?? null,
    needs: opensWater && isWaterSide(c.machine, id) ? [stepId('told', 'check/told')] : [],
    asks: [{ name: 'found', label: 'Found', kind: 'choice', choices: [...new Set(choices)] }],
    fixed: { position },
    hazards: hazardsOf(c, id),
  });
};

const tagStep = (
  c: Context,
  tag: Context['isolation']['tags'][number],
  position: string,
  i: number,
): DraftStep =>
  step({
    verb: 'tagged',
    thing: `tag/${tag.n}`,
    phase: 'isolate',
    rank: 100 + i * 10 + 1 + tag.n / 1000,
    text:
      `Tag ${tag.n} on ${c.machine.closures[tag.closure]?.name ?? tag.closure} ` +
      `(${position}), ${tag.station}.`,
    reason: 'one tag for each place it can be moved from; who shuts it hangs it',
    place: tag.station,
    needs: [stepId('shut', `closure/${tag.closure}`)],
    fixed: { closure: tag.closure, station: tag.station },
  });

const drainSteps = (c: Context): DraftStep[] => {
  const shut = c.isolation.closures.map((x) => stepId('shut', `closure/${x.closure}`));
  const liquid = (id: string) => isLiquidLine(c.machine, c.machine.closures[id]?.line);
  const tags = isolatedBy(c).tags;
  const name = (id: string) => c.machine.closures[id]?.name ?? id;
  const open = [...new Set([...c.isolation.drains, ...c.isolation.vents])].map((d, i) =>
    step({
      verb: 'drain-opened',
      thing: `drain/${d}`,
      phase: 'isolate',
      rank: 300 + i,
      text: `Open ${name(d)}${liquid(d) ? '; catch what comes' : ''}.`,
      reason: 'what is trapped must go before anything is opened',
      place: placeName(c, c.machine.closures[d]?.place),
      needs: shut,
      hazards: liquid(d) ? ['heat', 'stored energy'] : ['stored energy'],
    }),
  );
  const proofs = proofDrains(c).map((d) =>
    step({
      verb: 'proved-dead',
      thing: `drain/${d}`,
      phase: 'isolate',
      rank: 350,
      text: liquid(d)
        ? `At ${name(d)}: see water run, then die away and stay dead. ` +
          'Nothing came at all: rod the drain; that is no proof.'
        : `At ${name(d)}: hear it blow, then die away and stay dead. ` +
          'Nothing came at all: clear it; that is no proof.',
      reason: 'a closure that looks shut may pass; no wet joint is opened before this',
      place: placeName(c, c.machine.closures[d]?.place),
      needs: [stepId('drain-opened', `drain/${d}`), ...tags],
      asks: [
        { name: 'sawRun', label: 'Seen to run', kind: 'choice', choices: ['yes', 'no'] },
        {
          name: 'diedAway',
          label: 'Died away and stayed dead',
          kind: 'choice',
          choices: ['yes', 'no'],
        },
      ],
      hazards: liquid(d) ? ['flooding', 'heat'] : ['stored energy'],
    }),
  );
  return [...open, ...proofs];
};
