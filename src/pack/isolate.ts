// The steps before anything is opened: who is told, what is shut, tagged, drained and proved.

import type { Closure } from '../plant/schema.ts';
import type { Hazard } from '../quantity/authority.ts';
import { type Context, isLiquidLine, isWet, placeName } from './context.ts';
import { isWaterSide } from './isolation.ts';
import { isolationLookStep } from './looks.ts';
import type { DraftStep } from './order.ts';
import { step, stepId } from './step.ts';
import type { Ask } from './types.ts';

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
  const { tags, proof } = isolatedBy(c);
  const shut = c.isolation.closures.map((x) => stepId('shut', `closure/${x.closure}`));
  steps.push(...isolationLookStep(c, [...shut, ...tags, ...proof]));
  return steps;
};

const toldStep = (c: Context): DraftStep =>
  step({
    verb: 'told',
    thing: 'check/told',
    phase: 'before',
    rank: 0,
    text: c.say(c.plant.kind === 'vessel' ? 'tellVessel' : 'tellStation'),
    reason: c.say('tellWhy'),
    asks: [{ name: 'who', label: c.say('askTold'), kind: 'person' }],
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
    text: c.say('bringTo', closure?.name ?? id, position, at ?? null, closure?.secure ?? null),
    reason: c.say('listedByHand', c.isolation.by ?? c.say('nobody')),
    place: placeName(c, closure?.place) ?? at ?? null,
    needs: opensWater && isWaterSide(c.machine, id) ? [stepId('told', 'check/told')] : [],
    asks: [
      { name: 'found', label: 'Found', kind: 'choice', choices: [...new Set(choices)] },
      ...turnsAsk(closure),
    ],
    fixed: { position },
    hazards: hazardsOf(c, id),
  });
};

const TURNED = ['valve', 'sea valve', 'non-return valve'];

/** Turns may be told of any valve; of a throttled one they are asked unless it stood as normal. */
const turnsAsk = (closure: Closure | undefined): Ask[] => {
  if (closure === undefined || !TURNED.includes(closure.kind)) return [];
  const ask = { name: 'turns', label: 'Turns from shut', kind: 'number', unit: 'turns' } as const;
  const { normal } = closure;
  return normal !== undefined && /turn|throttl/i.test(normal)
    ? [{ ...ask, optional: true, unless: { ask: 'found', is: normal } }]
    : [{ ...ask, optional: true }];
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
    text: c.say(
      'tagOn',
      tag.n,
      c.machine.closures[tag.closure]?.name ?? tag.closure,
      position,
      tag.station,
    ),
    reason: c.say('tagOnWhy'),
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
      text: c.say('openDrain', name(d), liquid(d)),
      reason: c.say('openDrainWhy'),
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
      text: c.say(liquid(d) ? 'seeItDie' : 'hearItDie', name(d)),
      reason: c.say('proveWhy'),
      place: placeName(c, c.machine.closures[d]?.place),
      needs: [stepId('drain-opened', `drain/${d}`), ...tags],
      asks: [
        { name: 'sawRun', label: c.say('askSeenToRun'), kind: 'choice', choices: ['yes', 'no'] },
        {
          name: 'diedAway',
          label: c.say('askDiedAway'),
          kind: 'choice',
          choices: ['yes', 'no'],
        },
      ],
      hazards: liquid(d) ? ['flooding', 'heat'] : ['stored energy'],
    }),
  );
  return [...open, ...proofs];
};
