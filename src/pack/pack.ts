// Works out the whole job for one component on one machine and freezes it as a pack.

import { limits } from '../limits.ts';
import type { Machine, Plant } from '../plant/types.ts';
import {
  AUTHORITY_LINE,
  ISOLATION_BY_HAND,
  ISOLATION_NOT_STATED,
  NAMES_NOT_PROVED,
} from '../quantity/authority.ts';
import { hashOf } from '../quantity/sha.ts';
import type { Problem, Quantity, Working } from '../quantity/types.ts';
import type { RemovalPlan, Solver } from '../removal/model.ts';
import { removal, saidOfPlan } from '../removal/removal.ts';
import { newSpeech, type Speech, saidIn } from '../words/say.ts';
import { beforeSteps } from './before.ts';
import { boxUp, boxUpNotes } from './boxup.ts';
import { type Context, makeContext, partOf } from './context.ts';
import { decisionsOf, notChecked } from './decisions.ts';
import { factsOf } from './facts.ts';
import { type Held, NOTHING_HELD } from './fastening-types.ts';
import { fasteningsOf } from './fastenings.ts';
import { isolateSteps } from './isolate.ts';
import { liftsOf } from './lifts.ts';
import { listsOf } from './lists.ts';
import { orderSteps } from './order.ts';
import {
  alreadyAfter,
  alreadyOf,
  inStepOrder,
  onTheBench,
  planView,
  removalInput,
} from './plan.ts';
import { proveSteps } from './prove.ts';
import { findNames, requestProblems } from './request.ts';
import { sayBeforehand } from './said.ts';
import { sealsOf } from './seals.ts';
import { sideDifferences } from './sides.ts';
import { stripSteps } from './strip.ts';
import { temporaries } from './temporary.ts';
import type { Pack, PackRequest, ShownValue } from './types.ts';
import { shownValue } from './values.ts';

export type MadePack =
  | { readonly kind: 'pack'; readonly pack: Pack }
  | { readonly kind: 'infeasible'; readonly why: string }
  | { readonly kind: 'problems'; readonly problems: readonly Problem[] };

/**
 * Makes the pack for a request. Names may be ids or slugs. Unknown names and impossible closures
 * come back as problems; a part that can't be freed as `infeasible` with the reason. Tools are
 * chosen from those held.
 */
export const makePack = async (
  plant: Plant,
  request: PackRequest,
  solver: Solver,
  held: Held = NOTHING_HELD,
): Promise<MadePack> => {
  const found = findNames(plant, request);
  if (!found.ok) return { kind: 'problems', problems: found.problems };
  const { machine, settled } = found;
  const problems = requestProblems(machine, settled);
  if (problems.length > 0) return { kind: 'problems', problems };
  const speech = newSpeech();
  const ask: Asked = { plant, solver, say: speech.say, keep: speech.keep, held };
  const here = await compile(ask, machine, settled);
  if ('infeasible' in here) return { kind: 'infeasible', why: here.infeasible };
  const otherSide = await comparedWith(ask, machine, settled, here);
  const rest = rounded({ ...here, otherSide });
  const body = { ...rest, said: saidIn(rest, speech.said) };
  return { kind: 'pack', pack: { id: hashOf(body), ...body } };
};

type Core = Omit<Pack, 'id' | 'otherSide' | 'said'>;
type Asked = {
  readonly plant: Plant;
  readonly solver: Solver;
  readonly say: Speech['say'];
  readonly keep: Speech['keep'];
  readonly held: Held;
};

const comparedWith = async (
  ask: Asked,
  machine: Machine,
  request: PackRequest,
  here: Core,
): Promise<Pack['otherSide']> => {
  const { plant } = ask;
  const other = machine.otherSide === undefined ? undefined : plant.machines[machine.otherSide];
  if (other?.targets[request.target]?.does[request.does] === undefined) return null;
  const { already: _, closures: __, ...plain } = request;
  // Tools are held by the vessel, not by a side: they make no difference between the two.
  const there = await compile({ ...ask, held: NOTHING_HELD }, other, {
    ...plain,
    machine: other.id,
  });
  if ('infeasible' in there) return null;
  const list = sideDifferences(here, there, ask.say);
  return { machine: other.id, name: other.name, count: list.length, list };
};

const compile = async (
  { plant, solver, say, keep, held }: Asked,
  machine: Machine,
  request: PackRequest,
): Promise<Core | { readonly infeasible: string }> => {
  const target = machine.targets[request.target];
  const spec = target?.does[request.does];
  if (target === undefined || spec === undefined)
    throw new Error(`no ${request.does} of ${request.target} after its names were checked`);
  const already = alreadyOf(request);
  const first = await removal(removalInput(machine, spec.take, already), solver);
  if (!first.feasible) return { infeasible: first.why };
  const plans: RemovalPlan[] = [first];
  if (request.does === 'overhaul' && spec.bench !== undefined) {
    const after = alreadyAfter(already, first, request.target);
    const input = removalInput(machine, spec.bench, after);
    const second = await removal(onTheBench(input, request.target), solver);
    if (!second.feasible) return { infeasible: `at the bench: ${second.why}` };
    plans.push(second);
  }
  sayBeforehand(machine, say);
  for (const plan of plans) keep(saidOfPlan(plan));
  const base = { plant, machine, request, target, spec, say };
  const c = makeContext({ ...base, targetId: request.target, does: request.does }, plans);
  return assemble({
    ...c,
    fastenings: await fasteningsOf(c, held, solver),
    lifts: liftsOf(c, held),
    seals: sealsOf(c, held.stores ?? null, held.on),
  });
};

const assemble = (c: Context): Core => {
  const temps = temporaries(c);
  const box = boxUp(c, temps);
  const drafts = [
    ...beforeSteps(c),
    ...isolateSteps(c),
    ...stripSteps(c, temps),
    ...box.steps,
    ...proveSteps(c, temps),
  ];
  const { steps, given } = orderSteps(drafts, box.preferences);
  const ids = steps.map((s) => s.id);
  const views = c.plans.map((p) => inStepOrder(planView(c.machine, p), ids));
  const [plan, bench] = views;
  if (plan === undefined) throw new Error('a pack without a removal plan');
  const doing = c.spec.name ?? DOING[c.does];
  const people = Math.max(1, ...steps.map((s) => s.hands));
  const minutes = totalMinutes(c);
  return {
    format: 'boxup pack 1',
    title: c.say('packTitle', partOf(c, c.targetId).name, c.machine.name, doing),
    authority: AUTHORITY_LINE,
    namesNotProved: NAMES_NOT_PROVED,
    vessel: { id: c.plant.id, name: c.plant.name, kind: c.plant.kind },
    invented: c.plant.source === 'invented for the demo',
    machine: {
      id: c.machine.id,
      name: c.machine.name,
      slug: c.machine.slug,
      plate: c.machine.plate ?? null,
      position: c.machine.position ?? null,
      type: c.machine.type,
    },
    target: { id: c.targetId, name: partOf(c, c.targetId).name, does: c.does, doing },
    plantIssue: {
      number: c.plant.issue.number,
      date: c.plant.issue.date,
      hash: c.plant.issue.hash,
    },
    valueIssues: valueIssues(c.machine, [...steps.flatMap((s) => s.values), ...valuesOf(c)]),
    request: JSON.parse(JSON.stringify(c.request)) as PackRequest,
    isolationNote: c.isolation.stated ? ISOLATION_BY_HAND : ISOLATION_NOT_STATED,
    isolationListedBy:
      c.isolation.by === null || c.isolation.on === null
        ? null
        : { by: c.isolation.by, on: c.isolation.on },
    plan,
    bench: bench ?? null,
    steps,
    fastenings: c.fastenings,
    lifts: c.lifts,
    seals: c.seals,
    facts: factsOf(c, steps, temps),
    lists: listsOf(c, steps, temps),
    decisions: decisionsOf(c),
    notChecked: notChecked(c),
    boxUpNotes: boxUpNotes(c, given),
    people,
    minutes: minutes.total,
    workings: { minutes: minutes.working, people: peopleWorking(steps.map((s) => s.hands)) },
    rotation: c.target.rotation ?? null,
    flowSeenAt: c.target.flowSeenAt ?? null,
    speeds: c.target.speeds ?? [],
    interval: intervalOf(c),
    limits: (c.target.limits ?? []).map((id) => shownValue(c.machine, id, id)),
  };
};

const intervalOf = (c: Context): ShownValue | null =>
  c.spec.interval === undefined ? null : shownValue(c.machine, c.spec.interval, 'Issued interval');

const valuesOf = (c: Context): ShownValue[] => {
  const interval = intervalOf(c);
  const limitValues = (c.target.limits ?? []).map((id) => shownValue(c.machine, id, id));
  return interval === null ? limitValues : [interval, ...limitValues];
};

const DOING: Record<Context['does'], string> = {
  'renew-in-place': 'renew in place',
  exchange: 'exchange',
  overhaul: 'overhaul off the machine',
};

/** The sheets whose values this pack uses; another sheet's new issue does not touch it. */
const valueIssues = (machine: Machine, used: readonly ShownValue[]): Pack['valueIssues'] => {
  const sheets = new Map<string, Pack['valueIssues'][number]>();
  for (const { id } of used) {
    const v = machine.values[id];
    if (v === undefined) continue;
    const { sheet, issue, date, authority } = v;
    sheets.set(`${sheet} ${issue}`, { sheet, issue, date, authority });
  }
  return [...sheets.values()].sort((a, b) => (a.sheet < b.sheet ? -1 : 1));
};

const totalMinutes = (c: Context): { total: Quantity; working: Working } => {
  const rows: Working[number][] = c.plans.map((plan, i) => ({
    symbol: i === 0 ? 'machine' : 'bench',
    text:
      i === 0 ? 'undoing and making good at the machine' : 'undoing and making good at the bench',
    expression: String(plan.minutes.value),
    value: plan.minutes.value,
    unit: 'min',
    source: { kind: 'computed', by: 'removal' },
  }));
  const value = rows.reduce((s, r) => s + r.value, 0);
  const total: Working[number] = {
    symbol: 'total',
    text: 'hands-on minutes; isolating, filling and proving are not in it',
    expression: rows.map((r) => r.symbol).join(' + '),
    value,
    unit: 'min',
    source: { kind: 'computed', by: 'pack' },
  };
  return { total: { value, unit: 'min' }, working: [...rows, total] };
};

const peopleWorking = (hands: readonly number[]): Working => {
  const kinds = [...new Set(hands)].sort((a, b) => a - b);
  return [
    {
      symbol: 'people',
      text: 'the most hands any one step asks for',
      expression: kinds.length > 1 ? `max(${kinds.join(', ')})` : String(kinds[0] ?? 1),
      value: Math.max(1, ...kinds),
      unit: '1',
      source: { kind: 'computed', by: 'pack' },
    },
  ];
};

/** Figures are rounded to 12 significant digits before freezing, so that every device agrees. */
const rounded = <T>(value: T): T => {
  const round = (x: unknown): unknown => {
    if (typeof x === 'number') return Number(x.toPrecision(limits.pack.significantDigits));
    if (Array.isArray(x)) return x.map(round);
    if (x !== null && typeof x === 'object')
      return Object.fromEntries(
        Object.entries(x)
          .filter(([, v]) => v !== undefined)
          .map(([k, v]) => [k, round(v)]),
      );
    return x;
  };
  return round(value) as T;
};
