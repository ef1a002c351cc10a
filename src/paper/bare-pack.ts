// A job begun without a pack prints its record from what was seen: an empty pack that says so.

import type { Pack } from '../pack/types.ts';
import { AUTHORITY_LINE, ISOLATION_NOT_STATED, NAMES_NOT_PROVED } from '../quantity/authority.ts';
import type { JobState } from '../record/types.ts';

const none = { value: 0, unit: 'min' } as const;

/** Nothing here was worked out; the title block and the head of the record need the names only. */
export const barePack = (job: JobState, vessel: string): Pack => {
  const strip = job.strip;
  const machine = [strip?.machineName ?? job.machine, strip?.side ?? '']
    .filter((x) => x !== '')
    .join(', ');
  return {
    format: 'boxup pack 1',
    id: 'no pack: stripped as seen',
    title: job.title,
    authority: AUTHORITY_LINE,
    namesNotProved: NAMES_NOT_PROVED,
    vessel: { id: vessel, name: strip?.vessel ?? vessel, kind: 'vessel' },
    invented: false,
    machine: { id: job.machine, name: machine, slug: job.machine, plate: null, position: null },
    target: {
      id: job.target,
      name: strip?.component ?? job.target,
      does: 'exchange',
      doing: job.does,
    },
    plantIssue: { number: 0, date: 'no plant file', hash: '' },
    valueIssues: [],
    request: { machine: job.machine, target: job.target, does: 'exchange' },
    otherSide: null,
    isolationNote: ISOLATION_NOT_STATED,
    isolationListedBy: null,
    plan: emptyPlan,
    bench: null,
    steps: [],
    facts: emptyFacts,
    lists: emptyLists,
    decisions: [],
    notChecked: ['No pack was worked out: everything here is as it was seen'],
    boxUpNotes: [],
    people: 1,
    minutes: none,
    workings: {},
    rotation: null,
    flowSeenAt: null,
    speeds: [],
    interval: null,
    limits: [],
  };
};

const emptyPlan: Pack['plan'] = {
  order: [],
  minutes: none,
  bound: none,
  proven: false,
  gap: 0,
  orderProven: false,
  avoided: null,
  used: [],
  cautions: [],
  working: [],
};

const emptyFacts: Pack['facts'] = {
  joints: {},
  parts: {},
  items: {},
  closures: {},
  temps: {},
  checks: {},
  settings: {},
  proofs: {},
  isolation: { stated: false, closures: [], proveAt: [], wetJoints: [] },
};

const emptyLists: Pack['lists'] = {
  tools: [],
  seals: [],
  consumables: [],
  loose: [],
  closures: [],
  temporary: [],
  values: [],
  proofs: [],
  followUps: [],
  weights: [],
};
