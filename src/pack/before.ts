// Before you stop it: what the proof will ask for, read while the machine still runs.

import type { Target } from '../plant/schema.ts';
import type { Machine } from '../plant/types.ts';
import { type Caution, cautionFor, type Hazard } from '../quantity/authority.ts';
import type { Context } from './context.ts';
import type { DraftStep } from './order.ts';
import { readingAsks } from './prove.ts';
import { step } from './step.ts';
import type { Ask } from './types.ts';

/** `before/…` is of the machine of the job, `before-other/…` of the one on its other side. */
export const BEFORE = ['before', 'before-other'] as const;
export type Before = (typeof BEFORE)[number];

/** Which of the two a thing is read on, or null. */
export const beforeOf = (thing: string): Before | null =>
  BEFORE.find((each) => thing.startsWith(`${each}/`)) ?? null;

const reading = (name: string, label: string, unit: string): Ask => ({
  name,
  label,
  kind: 'number',
  unit,
  optional: true,
});

const SPEED = reading('speed', 'Speed', '1/min');
const LOOKS: readonly Ask[] = [
  {
    name: 'leaks',
    label: 'Leaks',
    kind: 'choice',
    choices: ['dry', 'weeps', 'leaks'],
    optional: true,
  },
  { name: 'noise', label: 'Noise', kind: 'choice', choices: ['as usual', 'odd'], optional: true },
];

/** On a machine that nobody has written down: what a running engine usually shows. */
export const USUAL_BEFORE: readonly Ask[] = [
  SPEED,
  reading('pressure', 'Pump pressure', 'bar'),
  reading('seaWaterIn', 'Sea water in', 'Cel'),
  reading('seaWaterOut', 'Sea water out', 'Cel'),
  reading('jacket', 'Jacket temperature', 'Cel'),
  ...LOOKS,
];

/** Whoever reads stands beside a running machine. */
const RUNNING: readonly Hazard[] = ['rotation', 'heat'];
export const BEFORE_CAUTIONS: readonly Caution[] = RUNNING.map(cautionFor);

/** At each speed of the proof, for this machine and for the one on the other side. */
export const beforeSteps = (c: Context): DraftStep[] => {
  const id = c.machine.otherSide;
  const other = id === undefined ? undefined : c.plant.machines[id];
  const there = other?.targets[c.targetId];
  return [
    ...readAt(c, 'before', c.machine, c.target, -2_000),
    ...(other === undefined || there === undefined
      ? []
      : readAt(c, 'before-other', other, there, -1_000)),
  ];
};

const readAt = (
  c: Context,
  of: Before,
  machine: Machine,
  target: Target,
  rank: number,
): DraftStep[] => {
  // Seen after a start is not to be seen while it runs.
  const running = readingAsks({ ...c, machine, target }).filter(
    (ask) => machine.values[ask.name]?.kind !== 'time',
  );
  const asks = [SPEED, ...running, ...LOOKS];
  const what = asks.map((ask) => ask.label);
  const speeds = target.speeds ?? [];
  return (speeds.length === 0 ? [c.say('speedItRunsAt')] : speeds).map((speed, i) =>
    step({
      verb: 'measured',
      thing: `${of}/running:${slug(speed)}`,
      phase: 'before',
      rank: rank + i,
      text:
        of === 'before'
          ? c.say('beforeAt', speed, what)
          : c.say('otherAt', machine.name, speed, what),
      reason: of === 'before' ? c.say('beforeAtWhy') : c.say('otherAtWhy'),
      fixed: { at: speed },
      asks,
      hazards: RUNNING,
    }),
  );
};

const slug = (speed: string): string =>
  speed
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '');
