// Line-up, filling and proof: giving back in stages, and what the disturbed joints owe.

import { backOrder, refittedId } from './boxup.ts';
import {
  type Context,
  isLiquidLine,
  isWet,
  jointOf,
  opensLine,
  partOf,
  placeName,
} from './context.ts';
import { givenBackFor } from './isolation.ts';
import { lineUpLook, lineUpLookStep } from './looks.ts';
import { roundIds } from './make.ts';
import type { DraftStep } from './order.ts';
import { step, stepId } from './step.ts';
import type { Temporary } from './temporary.ts';
import type { ProofFacts } from './types.ts';
import { unitOf } from './values.ts';

const RESULTS = ['pass', 'fail', 'cannot tell'];

const proofId = (id: string): string => stepId('proof', `proof/${id}`);

const connectorJoints = (c: Context): string[] => {
  const sensed = new Set(Object.values(c.machine.sensors).flatMap((s) => s.joint ?? []));
  return c.undone
    .filter(
      (u) =>
        sensed.has(u.id) ||
        Object.values(jointOf(c, u.id).fasteners ?? {}).some((f) => f.kind === 'connector'),
    )
    .map((u) => u.id);
};

/** The proofs this job owes and the things whose undoing owes each. */
export const proofFacts = (c: Context): Record<string, ProofFacts> => {
  const all = c.undone.map((u) => `joint/${u.id}`);
  const wet = c.undone.filter((u) => opensLine(c.machine, u.id)).map((u) => `joint/${u.id}`);
  const sensors = connectorJoints(c);
  const proofs: Record<string, ProofFacts> = {};
  if (wet.length > 0)
    proofs['static-look'] = {
      name: c.say('proofFill'),
      what: c.say('proofFillWhat'),
      owedBy: wet,
    };
  if (sensors.length > 0)
    proofs.alarms = {
      name: c.say('proofAlarms'),
      what: c.say('proofAlarmsWhat'),
      owedBy: sensors.map((j) => `joint/${j}`),
    };
  proofs.running = {
    name: c.say('proofRunning'),
    what: c.say('proofRunningWhat'),
    owedBy: all,
  };
  proofs['after-stop'] = {
    name: c.say('proofHot'),
    what: c.say('proofHotWhat'),
    owedBy: all,
  };
  return proofs;
};

export const proveSteps = (c: Context, temps: readonly Temporary[]): DraftStep[] => {
  const boxed = [
    ...c.undone.flatMap((u) => roundIds(c, u.id)),
    ...backOrder(c).map((m) => refittedId(m.id)),
    ...temps.map((t) => stepId('taken-away', `temp/${t.n}`)),
    ...c.undone.flatMap((u) =>
      Object.keys(jointOf(c, u.id).loose ?? {}).map((l) =>
        stepId('loose-in', `loose/${u.id}:${l}`),
      ),
    ),
  ];
  const tools = step({
    verb: 'checked',
    thing: 'check/tools',
    phase: 'line-up',
    rank: 50_000,
    text: c.say('toolsCounted'),
    reason: c.say('toolsCountedWhy'),
    needs: boxed,
    asks: [
      { name: 'result', label: 'Counted', kind: 'choice', choices: ['all here', 'one missing'] },
    ],
  });
  return [tools, ...lineUp(c, boxed), ...firstStart(c)];
};

type Back = ReturnType<typeof givenBackFor>;

/** Last shut, first given back: so starting comes back after everything else. */
const closuresOf = (c: Context, what: Back): string[] =>
  c.isolation.closures
    .map((x) => x.closure)
    .filter((id) => givenBackFor(c.machine, id) === what)
    .reverse();

const restoredIds = (c: Context, what: Back): string[] =>
  closuresOf(c, what).map((id) => stepId('restored', `closure/${id}`));

/** Vents of the water side shut last, when water runs without air; others before giving back. */
const drainsAndVents = (c: Context): { readonly drains: string[]; readonly vents: string[] } => {
  const all = [...new Set([...c.isolation.drains, ...c.isolation.vents])];
  const vents = all.filter(
    (id) => c.isolation.vents.includes(id) && isLiquidLine(c.machine, c.machine.closures[id]?.line),
  );
  return { drains: all.filter((id) => !vents.includes(id)), vents };
};

const drainsShut = (c: Context): string[] =>
  drainsAndVents(c).drains.map((d) => stepId('drain-shut', `drain/${d}`));

/** Drains shut, then the water side given back by hand and by stages, vented and primed. */
const lineUp = (c: Context, boxed: readonly string[]): DraftStep[] => {
  const wet = c.undone.some((u) => isWet(c.machine, u.id));
  const { drains, vents } = drainsAndVents(c);
  const name = (id: string) => c.machine.closures[id]?.name ?? id;
  const shutDrains = drainsShut(c);
  const restored = restoredIds(c, 'water');
  const steps = drains.map((d, i) =>
    step({
      verb: 'drain-shut',
      thing: `drain/${d}`,
      phase: 'line-up',
      rank: 51_000 + i,
      text: c.say('shutAndPlug', name(d)),
      reason: c.say('shutAndPlugWhy'),
      place: placeName(c, c.machine.closures[d]?.place),
      needs: boxed,
    }),
  );
  steps.push(...giveBack(c, 'water', [...boxed, ...shutDrains], 52_000));
  vents.forEach((v, i) => {
    const previous = vents[i - 1];
    steps.push(
      step({
        verb: 'drain-shut',
        thing: `drain/${v}`,
        phase: 'line-up',
        rank: 53_000 + i,
        text: c.say('shutVent', name(v)),
        reason: c.say('shutVentWhy'),
        place: placeName(c, c.machine.closures[v]?.place),
        needs: [
          ...restored,
          ...(previous === undefined ? [] : [stepId('drain-shut', `drain/${previous}`)]),
        ],
      }),
    );
  });
  const vented = vents.map((v) => stepId('drain-shut', `drain/${v}`));
  if (wet && c.isolation.prime !== null)
    steps.push(primeStep(c, c.isolation.prime, [...restored, ...vented]));
  if (c.undone.some((u) => opensLine(c.machine, u.id)))
    steps.push(staticLook(c, [...restored, ...vented, stepId('checked', 'check/prime')]));
  return steps;
};

const primeStep = (c: Context, prime: string, needs: string[]): DraftStep =>
  step({
    verb: 'checked',
    thing: 'check/prime',
    phase: 'line-up',
    rank: 53_500,
    text: c.say('prime', prime.replace(/\.$/, '')),
    reason: c.say('primeWhy'),
    needs,
  });

const staticLook = (c: Context, needs: string[]): DraftStep => {
  const joints = c.undone
    .filter((u) => opensLine(c.machine, u.id))
    .map((u) => jointOf(c, u.id).name);
  return step({
    verb: 'proof',
    thing: 'proof/static-look',
    phase: 'prove',
    rank: 54_000,
    text: c.say('standingHead', joints),
    reason: c.say('standingHeadWhy'),
    needs: [...needs, stepId('checked', 'check/tools')],
    asks: [{ name: 'result', label: 'Result', kind: 'choice', choices: RESULTS }],
  });
};

const giveBack = (c: Context, what: Back, needs: readonly string[], rank: number): DraftStep[] =>
  closuresOf(c, what).flatMap((id, i) => {
    const water = what === 'water';
    const closure = c.machine.closures[id];
    const tags = c.isolation.tags.filter((t) => t.closure === id);
    const normal = closure?.normal;
    const crack = closure?.kind === 'sea valve';
    const position = normal ?? c.say('normalNotStated');
    const off = tags.map((t) =>
      step({
        verb: 'untagged',
        thing: `tag/${t.n}`,
        phase: 'line-up',
        rank: rank + i * 10,
        text: c.say('tagOff', t.n, closure?.name ?? id, t.station),
        reason: c.say('tagOffWhy'),
        place: t.station,
        needs,
      }),
    );
    const back = step({
      verb: 'restored',
      thing: `closure/${id}`,
      phase: 'line-up',
      rank: rank + i * 10 + 5,
      text: c.say('giveBack', closure?.name ?? id, crack, position),
      reason: c.say('giveBackWhy'),
      place: placeName(c, closure?.place) ?? closure?.stations?.[0] ?? null,
      needs: [...needs, ...off.map((s) => s.id)],
      fixed: normal === undefined ? {} : { position: normal },
      asks: normal === undefined ? [{ name: 'position', label: 'Brought to', kind: 'text' }] : [],
      hazards: water && closure?.kind === 'sea valve' ? ['flooding'] : water ? [] : ['rotation'],
    });
    return [...off, back];
  });

const firstStart = (c: Context): DraftStep[] => {
  const proofs = proofFacts(c);
  const look = proofs['static-look'] === undefined ? [] : [proofId('static-look')];
  const ready = [stepId('checked', 'check/tools'), ...look, ...drainsShut(c)];
  const gear = giveBack(c, 'turn', ready, 54_500);
  const geared = [...ready, ...restoredIds(c, 'turn')];
  const turn = c.target.rotation === undefined ? [] : handTurn(c, geared);
  const turned = turn.map((s) => s.id);
  const steps = [...gear, ...turn, ...giveBack(c, 'start', [...geared, ...turned], 56_000)];
  const energised = restoredIds(c, 'start');
  if (proofs.alarms !== undefined) steps.push(alarmStep(c, [...ready, ...energised]));
  const alarms = proofs.alarms === undefined ? [] : [proofId('alarms')];
  const linedUp = [...geared, ...turned, ...restoredIds(c, 'water'), ...energised];
  steps.push(...lineUpLookStep(c, linedUp));
  const before = [...geared, ...turned, ...energised, ...alarms, ...lineUpLook(c)];
  steps.push(clearStep(c, 'start', 57_000, before), startStep(c, before));
  const readings = readingAsks(c);
  const speeds = c.target.speeds ?? [];
  const at = speeds.length > 0 ? c.say('listed', speeds) : c.say('speedsOfProcedure');
  steps.push(
    step({
      verb: 'proof',
      thing: 'proof/running',
      phase: 'prove',
      rank: 58_000,
      text: c.say('runningLook', at),
      reason: c.say('runningLookWhy'),
      needs: [stepId('started', 'check/first-start')],
      asks: [
        { name: 'result', label: 'Result', kind: 'choice', choices: [...RESULTS, 'passed up to'] },
        { name: 'upTo', label: 'Highest speed reached', kind: 'choice', choices: speeds },
        ...readings,
      ],
      hazards: ['rotation', 'heat'],
    }),
    step({
      verb: 'proof',
      thing: 'proof/after-stop',
      phase: 'prove',
      rank: 59_000,
      text: c.say('hotLook'),
      reason: c.say('hotLookWhy'),
      needs: [proofId('running')],
      asks: [{ name: 'result', label: 'Result', kind: 'choice', choices: RESULTS }],
      hazards: ['heat'],
    }),
  );
  return steps;
};

const handTurn = (c: Context, ready: readonly string[]): DraftStep[] => [
  clearStep(c, 'turn', 55_000, ready),
  step({
    verb: 'turned',
    thing: 'check/hand-turn',
    phase: 'prove',
    rank: 55_010,
    text: c.say('handTurn', String(c.target.rotation)),
    reason: c.say('handTurnWhy'),
    needs: [...ready, stepId('people-clear', 'check/clear:turn')],
    asks: [{ name: 'result', label: 'Felt', kind: 'choice', choices: ['turns free', 'binds'] }],
    hazards: ['rotation'],
    stop: 'clear',
  }),
];

const clearStep = (
  c: Context,
  key: 'turn' | 'start',
  rank: number,
  needs: readonly string[],
): DraftStep =>
  step({
    verb: 'people-clear',
    thing: `check/clear:${key}`,
    phase: 'prove',
    rank,
    text: c.say('everyoneClear', key === 'start'),
    reason: c.say('everyoneClearWhy'),
    needs,
    hazards: ['rotation'],
  });

const alarmStep = (c: Context, needs: readonly string[]): DraftStep => {
  const named = Object.values(c.machine.sensors)
    .filter((s) => s.joint !== undefined && c.undone.some((u) => u.id === s.joint))
    .map((s) => s.alarm ?? s.name);
  const what = named.length > 0 ? named : connectorJoints(c).map((j) => jointOf(c, j).name);
  return step({
    verb: 'proof',
    thing: 'proof/alarms',
    phase: 'prove',
    rank: 56_900,
    text: c.say('makeAlarmsAct', what),
    reason: c.say('makeAlarmsActWhy'),
    needs,
    asks: [{ name: 'result', label: 'Result', kind: 'choice', choices: RESULTS }],
  });
};

const startStep = (c: Context, before: readonly string[]): DraftStep => {
  const flow = c.target.flowSeenAt;
  return step({
    verb: 'started',
    thing: 'check/first-start',
    phase: 'prove',
    rank: 57_010,
    text: c.say('firstStart', partOf(c, c.targetId).name.toLowerCase(), flow ?? null),
    reason: c.say('firstStartWhy'),
    needs: [...before, stepId('people-clear', 'check/clear:start')],
    hands: 2,
    asks: [
      { name: 'result', label: 'Seen', kind: 'choice', choices: ['runs, nothing odd', 'stopped'] },
    ],
    hazards: ['rotation', 'heat'],
    stop: 'clear',
  });
};

/** A reading for each issued limit of the target, in the limit's own unit. */
export const readingAsks = (c: Pick<Context, 'machine' | 'target'>) =>
  (c.target.limits ?? []).flatMap((id) => {
    const value = c.machine.values[id];
    const unit = unitOf(value);
    if (value === undefined || unit === null) return [];
    return [{ name: id, label: value.name, kind: 'number' as const, unit, optional: true }];
  });
