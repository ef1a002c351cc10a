// A small pack made by hand for the record's tests, and the acts of its whole job. All invented.

import { asFoundAsks } from '../pack/as-found.ts';
import { USUAL_BEFORE } from '../pack/before.ts';
import type { JointFacts, Pack, PackFacts, Step, StepVerb } from '../pack/types.ts';
import { AUTHORITY_LINE, NAMES_NOT_PROVED } from '../quantity/authority.ts';
import { hashOf } from '../quantity/sha.ts';
import { makeAct } from './act.ts';
import type { Act, ActBody, Draft } from './types.ts';

const labels = (n: number): string[] => Array.from({ length: n }, (_, i) => String(i + 1));

type Shape = {
  readonly id: string;
  readonly bolts: number;
  readonly wet: boolean;
  readonly seal: boolean;
  readonly key: boolean;
};

/** Six joints with seals and keys between them, two of them wet. */
const shapes: readonly Shape[] = [
  { id: 'suction-flange', bolts: 4, wet: true, seal: true, key: false },
  { id: 'delivery-flange', bolts: 4, wet: true, seal: true, key: false },
  { id: 'guard', bolts: 3, wet: false, seal: false, key: false },
  { id: 'bracket', bolts: 2, wet: false, seal: false, key: true },
  { id: 'mounting', bolts: 6, wet: false, seal: true, key: false },
  { id: 'drive', bolts: 1, wet: false, seal: false, key: true },
];

export const closures = ['sea-suction', 'start-switch'] as const;
const rounds = ['hand', '50 %', '100 %'] as const;

function joint(s: Shape): JointFacts {
  const holes = labels(s.bolts);
  return {
    name: `${s.id} joint`,
    critical: s.wet,
    wet: s.wet,
    fasteners: [{ id: 'bolts', what: 'bolts', count: s.bolts, holes }],
    holes,
    rounds: s.bolts > 3 ? [...rounds] : ['made'],
    seals: s.seal ? [{ id: 'gasket', name: 'gasket', count: 1 }] : [],
    loose: s.key ? [{ id: 'key', name: 'key', count: 2 }] : [],
    proofs: s.wet ? ['static-look', 'running'] : ['running'],
    place: 'port side, low',
    layout: { kind: 'unknown' },
  };
}

function factsOf(): PackFacts {
  const wetJoints = shapes.filter((s) => s.wet).map((s) => s.id);
  return {
    joints: Object.fromEntries(shapes.map((s) => [s.id, joint(s)])),
    parts: { pump: { name: 'Pump', massKg: 41 }, pipe: { name: 'Suction pipe', massKg: null } },
    items: { impeller: { name: 'Impeller', renewed: true } },
    closures: Object.fromEntries(
      [...closures, 'casing-drain'].map((id) => [
        id,
        {
          name: id,
          kind: id === 'casing-drain' ? 'drain' : 'valve',
          normal: id === 'casing-drain' ? 'shut' : 'open',
          workPosition: 'shut',
          stations: ['at the valve'],
          secure: null,
          medium: 'sea water',
          place: 'floor plates',
        },
      ]),
    ),
    temps: { '1': { name: 'Blank', kind: 'blank', where: 'suction pipe' } },
    checks: { faces: { name: 'Faces' } },
    settings: { 'mounting:backlash': { name: 'Backlash' } },
    proofs: {
      'static-look': { name: 'Fill and look', what: 'dry', owedBy: [] },
      running: { name: 'Running look', what: 'dry and cool', owedBy: ['part/pump'] },
    },
    asFound: { target: 'pump', name: 'Pump', owedBy: ['part/pump'] },
    isolation: { stated: true, closures: [...closures], proveAt: ['casing-drain'], wetJoints },
  };
}

type Bare = { readonly verb: StepVerb; readonly thing: string } & Partial<Step>;

function step(bare: Bare): Step {
  const round = bare.round === undefined ? '' : ` ${bare.round}`;
  return {
    id: `${bare.verb} ${bare.thing}${round}`,
    phase: 'strip',
    text: `${bare.verb} ${bare.thing}${round}.`,
    reason: 'the fixture says so',
    place: null,
    tool: null,
    needs: [],
    count: null,
    holes: [],
    perHole: false,
    values: [],
    cautions: [],
    asks: [],
    fixed: {},
    minutes: null,
    hands: 1,
    stop: null,
    ...bare,
  };
}

/** At one speed on this machine and on the one on its other side. */
const reading = (of: 'before' | 'before-other'): Step =>
  step({
    verb: 'measured',
    thing: `${of}/running:600-rpm`,
    phase: 'before',
    fixed: { at: '600 rpm' },
    asks: USUAL_BEFORE,
  });

function stripping(): Step[] {
  const tags = closures.map((_, i) => `tagged tag/${i + 1}`);
  return [
    reading('before'),
    reading('before-other'),
    ...closures.flatMap((id, i) => [
      step({ verb: 'shut', thing: `closure/${id}`, fixed: { position: 'shut' } }),
      step({
        verb: 'tagged',
        thing: `tag/${i + 1}`,
        needs: [`shut closure/${id}`],
        fixed: { closure: id, station: 'at the valve' },
      }),
    ]),
    step({
      verb: 'drain-opened',
      thing: 'drain/casing-drain',
      needs: ['shut closure/sea-suction'],
    }),
    step({
      verb: 'proved-dead',
      thing: 'drain/casing-drain',
      needs: ['drain-opened drain/casing-drain', ...tags],
      fixed: { sawRun: 'yes', diedAway: 'yes' },
    }),
    step({ verb: 'measured', thing: 'setting/mounting:backlash', round: 'found' }),
    ...shapes.map((s) =>
      step({
        verb: 'undone',
        thing: `joint/${s.id}`,
        needs: s.wet ? ['proved-dead drain/casing-drain'] : [],
        stop: s.wet ? 'isolation' : null,
      }),
    ),
    step({ verb: 'moved-aside', thing: 'part/pipe', needs: ['undone joint/suction-flange'] }),
    step({ verb: 'put-in', thing: 'temp/1', needs: ['moved-aside part/pipe'] }),
    step({ verb: 'moved-off', thing: 'part/pump', needs: ['undone joint/mounting'] }),
    step({ verb: 'item-out', thing: 'item/impeller', needs: ['moved-off part/pump'] }),
    step({
      verb: 'as-found',
      thing: 'item/pump',
      needs: ['moved-off part/pump'],
      asks: asFoundAsks(['impeller']),
    }),
    ...shapes
      .filter((s) => s.seal)
      .map((s) => step({ verb: 'seal-out', thing: `seal/${s.id}:gasket` })),
    ...shapes
      .filter((s) => s.key)
      .map((s) => step({ verb: 'loose-out', thing: `loose/${s.id}:key` })),
    step({
      verb: 'checked',
      thing: 'check/faces',
      asks: [{ name: 'result', label: 'Seen', kind: 'choice', choices: ['good', 'not good'] }],
    }),
  ];
}

function boxingUp(): Step[] {
  return [
    step({ verb: 'item-in', thing: 'item/impeller' }),
    step({ verb: 'refitted', thing: 'part/pump', needs: ['item-in item/impeller'] }),
    step({ verb: 'taken-away', thing: 'temp/1' }),
    step({ verb: 'refitted', thing: 'part/pipe', needs: ['taken-away temp/1'] }),
    ...shapes
      .filter((s) => s.key)
      .map((s) => step({ verb: 'loose-in', thing: `loose/${s.id}:key` })),
    ...shapes
      .filter((s) => s.seal)
      .map((s) =>
        step({
          verb: 'seal-in',
          thing: `seal/${s.id}:gasket`,
          asks: [{ name: 'count', label: 'Put in', kind: 'count', expected: 1 }],
        }),
      ),
    ...shapes.flatMap((s) =>
      joint(s).rounds.map((round, i, all) =>
        step({
          verb: 'made',
          thing: `joint/${s.id}`,
          round,
          holes: labels(s.bolts),
          perHole: true,
          needs: i === 0 ? [] : [`made joint/${s.id} ${all[i - 1]}`],
        }),
      ),
    ),
    step({ verb: 'drain-shut', thing: 'drain/casing-drain' }),
    step({ verb: 'untagged', thing: 'tag/1' }),
    step({ verb: 'restored', thing: 'closure/sea-suction', needs: ['untagged tag/1'] }),
    step({ verb: 'proof', thing: 'proof/static-look', fixed: { result: 'pass' } }),
    step({ verb: 'people-clear', thing: 'check/clear:turn' }),
    step({ verb: 'turned', thing: 'check/hand-turn', stop: 'clear' }),
    step({ verb: 'untagged', thing: 'tag/2' }),
    step({ verb: 'restored', thing: 'closure/start-switch', needs: ['untagged tag/2'] }),
    step({ verb: 'people-clear', thing: 'check/clear:start' }),
    step({ verb: 'started', thing: 'check/first-start', stop: 'clear' }),
    step({ verb: 'proof', thing: 'proof/running', fixed: { result: 'pass' } }),
  ];
}

const noQuantity = { value: 60, unit: 'min' } as const;

/** `change` alters the content before it is named, for amended packs and unsettled decisions. */
export function fixturePack(change: (pack: Omit<Pack, 'id'>) => Omit<Pack, 'id'> = (p) => p): Pack {
  const plan = {
    order: [],
    minutes: noQuantity,
    bound: noQuantity,
    proven: true,
    gap: 0,
    orderProven: true,
    avoided: null,
    used: [],
    cautions: [],
    working: [],
  };
  const content = change({
    format: 'boxup pack 1',
    title: 'Pump, test engine: exchange',
    authority: AUTHORITY_LINE,
    namesNotProved: NAMES_NOT_PROVED,
    vessel: { id: 'tern-rock', name: 'Tern Rock', kind: 'vessel' },
    invented: true,
    machine: { id: 'engine', name: 'Test engine', slug: 'engine', plate: null, position: null },
    target: { id: 'pump', name: 'Pump', does: 'exchange', doing: 'Exchange' },
    plantIssue: { number: 1, date: '2026-03-01', hash: '0'.repeat(64) },
    valueIssues: [],
    request: { machine: 'engine', target: 'pump', does: 'exchange' },
    otherSide: null,
    isolationNote: 'fixture',
    isolationListedBy: { by: 'Ada', on: '2026-03-01' },
    plan,
    bench: null,
    steps: [...stripping(), ...boxingUp()],
    facts: factsOf(),
    lists: {
      tools: [],
      seals: [],
      consumables: [],
      loose: [],
      closures: closures.map((closure, i) => ({
        closure,
        name: closure,
        position: 'shut',
        normal: 'open',
        stations: ['at the valve'],
        tags: [i + 1],
      })),
      temporary: [],
      values: [],
      proofs: [],
      followUps: [{ id: 'look-1-h', after: '1 h', what: 'Look for leaks' }],
      weights: [],
    },
    decisions: [],
    notChecked: [],
    boxUpNotes: [],
    people: 1,
    minutes: noQuantity,
    workings: {},
    rotation: null,
    flowSeenAt: null,
    speeds: [],
    interval: null,
    limits: [],
  });
  return { ...content, id: hashOf(content) };
}

export const jobId = 'pump-test-engine';

export const jobDraft = (kind: string, body: ActBody, by = 'Ada', job = jobId): Draft => ({
  stream: { kind: 'job', id: job },
  kind,
  by,
  body,
});

export const startDraft = (pack: Pack, extra: ActBody = {}, job = jobId): Draft =>
  jobDraft(
    'job-started',
    {
      pack: pack.id,
      title: pack.title,
      machine: pack.machine.id,
      target: pack.target.id,
      does: pack.target.does,
      why: 'interval',
      hands: ['Ada', 'Ben'],
      ...extra,
    },
    'Ada',
    job,
  );

/** The body a person's one tap gives: the thing, its round, what is fixed, the first choice. */
export function bodyOf(step: Step): ActBody {
  const answers = step.asks.flatMap((ask): [string, string | number][] => {
    if (ask.optional === true) return [];
    if (ask.kind === 'count' || ask.kind === 'number') return [[ask.name, ask.expected ?? 1]];
    if (ask.kind === 'person') return [[ask.name, 'Ada']];
    return [[ask.name, ask.choices?.[0] ?? 'seen']];
  });
  return {
    thing: step.thing,
    ...(step.round === undefined ? {} : { round: step.round }),
    ...Object.fromEntries(answers),
    ...step.fixed,
  };
}

/** The step said as a sound job says it: what Ada brings about, Ben looks at a second time. */
export function saying(pack: Pack, step: Step, job = jobId): Draft {
  if (step.verb !== 'second-look') return jobDraft(step.verb, bodyOf(step), 'Ada', job);
  return jobDraft(step.verb, lookBody(pack, step.thing), 'Ben', job);
}

/** A look that sees every closure where the pack wants it. */
export function lookBody(pack: Pack, thing: string): ActBody {
  const lineUp = thing === 'look/line-up';
  const rows = (pack.facts.looks?.[lineUp ? 'line-up' : 'isolation'] ?? []).map((row) => {
    const closure = pack.facts.closures[row.slice('closure/'.length)];
    const position = (lineUp ? closure?.normal : closure?.workPosition) ?? 'as the plate says';
    return { thing: row, position };
  });
  return { thing, rows, alone: false };
}

/** All drafts of the job in the pack's order, the closing included. */
export function wholeJob(pack: Pack, job = jobId): readonly Draft[] {
  return [
    startDraft(pack, {}, job),
    ...pack.steps.map((s) => saying(pack, s, job)),
    jobDraft('closed', { deviations: [] }, 'Ada', job),
  ];
}

/** One device says the drafts one after another, each knowing all before it. */
export function chain(
  drafts: readonly Draft[],
  device = 'phone-a',
  after: readonly Act[] = [],
): Act[] {
  const said: Act[] = [];
  let parents = after.length === 0 ? [] : [after.at(-1)?.hash ?? ''];
  let seq = after.filter((a) => a.device === device).length;
  for (const draft of drafts) {
    seq += 1;
    const act = makeAct(draft, {
      vessel: 'tern-rock',
      device,
      deviceSeq: seq,
      parents,
      at: { utc: new Date(Date.UTC(2026, 2, 14, 8, 0, seq)).toISOString(), offsetMinutes: 0 },
    });
    said.push(act);
    parents = [act.hash];
  }
  return said;
}
