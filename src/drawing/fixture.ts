// A small hand-written pack with every kind of thing in it, for the tests of drawings and paper.

import type { Pack } from '../pack/types.ts';
import { AUTHORITY_LINE, ISOLATION_BY_HAND, NAMES_NOT_PROVED } from '../quantity/authority.ts';
import { fixtureSteps, labels, mountingValue, noValue } from './fixture-steps.ts';

const ring = (count: number, radius: number): readonly (readonly [number, number])[] =>
  Array.from({ length: count }, (_, i) => {
    const angle = Math.PI / 2 - (i * 2 * Math.PI) / count;
    const round = (v: number): number => Math.round(v * 100) / 100;
    return [round(radius * Math.cos(angle)), round(-radius * Math.sin(angle))] as const;
  });

const facts: Pack['facts'] = {
  joints: {
    'pump-mounting': {
      name: 'Pump mounting',
      critical: true,
      wet: false,
      fasteners: [{ id: 'nuts', what: 'nuts M10', count: 8, holes: labels(8) }],
      holes: labels(8),
      rounds: ['hand', '60 %', '100 %'],
      seals: [],
      loose: [{ id: 'dowel', name: 'Dowel', count: 2 }],
      proofs: ['running'],
      place: 'port side, forward end',
      layout: { kind: 'positions', mm: ring(8, 90) },
    },
    'suction-flange': {
      name: 'Suction flange',
      critical: false,
      wet: true,
      fasteners: [{ id: 'bolts', what: 'bolts M12', count: 4, holes: labels(4) }],
      holes: labels(4),
      rounds: ['made'],
      seals: [{ id: 'gasket', name: 'Suction flange gasket', count: 1 }],
      loose: [],
      proofs: ['running'],
      place: 'port side, below the pump',
      layout: { kind: 'unknown' },
    },
  },
  parts: {
    pump: { name: 'Sea-water pump', massKg: 23 },
    filter: { name: 'Fuel filter', massKg: null },
  },
  items: { pump: { name: 'Sea-water pump', renewed: true } },
  closures: {
    'sea-suction': {
      name: 'Sea suction valve',
      kind: 'sea valve',
      normal: 'open',
      workPosition: 'shut',
      stations: ['at the valve', 'deck spindle'],
      secure: 'chain and lock',
      medium: 'sea water',
      place: 'port sea chest',
    },
    'start-breaker': {
      name: 'Start battery breaker',
      kind: 'breaker',
      normal: 'on',
      workPosition: 'off',
      stations: ['battery box'],
      secure: 'lock',
      medium: 'electricity',
      place: 'battery box',
    },
    'casing-drain': {
      name: 'Pump casing drain',
      kind: 'drain',
      normal: 'shut',
      workPosition: 'open',
      stations: ['at the drain'],
      secure: null,
      medium: 'sea water',
      place: 'under the pump',
    },
  },
  temps: {
    'suction-blank': { name: 'Suction pipe blank', kind: 'blank', where: 'suction pipe, pump end' },
  },
  checks: { faces: { name: 'Pump and gear case faces' } },
  settings: { 'pump-mounting:backlash': { name: 'Backlash of the pump gear' } },
  proofs: {
    running: {
      name: 'Running look',
      what: 'every disturbed joint dry at each speed',
      owedBy: ['joint/pump-mounting', 'joint/suction-flange'],
    },
  },
  isolation: {
    stated: true,
    closures: ['sea-suction', 'start-breaker'],
    proveAt: ['casing-drain'],
    wetJoints: ['suction-flange'],
  },
};

const minutes = (value: number) => ({ value, unit: 'min' });

const plan: Pack['plan'] = {
  order: [
    ...(
      [
        ['undo', 'filter-bracket', 'Filter bracket', []],
        ['aside', 'filter', 'Fuel filter', ['filter-bracket']],
        ['undo', 'suction-flange', 'Suction flange', ['filter']],
        ['undo', 'delivery-hose', 'Delivery hose clips', []],
        ['off', 'delivery-hose-part', 'Delivery hose', ['delivery-hose']],
        ['undo', 'pump-mounting', 'Pump mounting', ['delivery-hose-part', 'filter']],
        ['off', 'pump', 'Sea-water pump', ['suction-flange', 'pump-mounting']],
      ] as const
    ).map(([does, id, name, after]) => ({
      do: does,
      id,
      name,
      way: null,
      access: null,
      tool: null,
      place: null,
      reason: 'on the way to the pump',
      after,
    })),
  ],
  minutes: minutes(74),
  bound: minutes(74),
  proven: true,
  gap: 0,
  orderProven: true,
  avoided: null,
  used: [],
  cautions: [],
  working: [
    {
      symbol: 't',
      text: 'removal minutes',
      expression: '20 + 54',
      value: 74,
      unit: 'min',
      source: { kind: 'computed', by: 'removal' },
    },
  ],
};

const lists: Pack['lists'] = {
  tools: [
    { tool: '17 mm ring spanner', for: ['Suction flange'] },
    { tool: 'torque wrench 20 N.m to 100 N.m', for: ['Pump mounting'] },
  ],
  seals: [
    {
      thing: 'seal/suction-flange:gasket',
      name: 'Suction flange gasket',
      count: 1,
      size: '76 mm x 50 mm x 2 mm',
      compound: 'NBR',
      joint: 'Suction flange',
    },
  ],
  consumables: [{ name: 'clean rags', amount: '6', for: 'faces' }],
  loose: [{ thing: 'loose/pump-mounting:dowel', name: 'Dowel', count: 2 }],
  closures: [
    {
      closure: 'sea-suction',
      name: 'Sea suction valve',
      position: 'shut',
      normal: 'open',
      stations: ['at the valve', 'deck spindle'],
      tags: [1, 2],
    },
    {
      closure: 'start-breaker',
      name: 'Start battery breaker',
      position: 'off',
      normal: 'on',
      stations: ['battery box'],
      tags: [3],
    },
  ],
  temporary: [
    { thing: 'temp/suction-blank', name: 'Suction pipe blank', where: 'suction pipe, pump end' },
  ],
  values: [mountingValue, noValue],
  proofs: [{ id: 'running', name: 'Running look', what: 'every disturbed joint dry' }],
  followUps: [{ id: 'look-1', after: '1 h', what: 'Look at the disturbed joints again.' }],
  weights: [{ part: 'pump', name: 'Sea-water pump', massKg: 23, carriedBy: 'two hands' }],
};

export const fixturePack: Pack = {
  format: 'boxup pack 1',
  id: 'f1'.repeat(32),
  title: 'Sea-water pump, port main engine: exchange',
  authority: AUTHORITY_LINE,
  namesNotProved: NAMES_NOT_PROVED,
  vessel: { id: 'tern-rock', name: 'Tern Rock', kind: 'vessel' },
  invented: true,
  machine: {
    id: 'main-engine-port',
    name: 'Port main engine',
    slug: 'main-engine-port',
    plate: 'TR-P',
    position: 'port, frame 12 to 18',
  },
  target: { id: 'pump', name: 'Sea-water pump', does: 'exchange', doing: 'exchange' },
  plantIssue: { number: 3, date: '2026-03-01', hash: 'ab'.repeat(32) },
  valueIssues: [
    {
      sheet: 'main-engine',
      issue: 'C',
      date: '2026-02-03',
      authority: 'chief engineer (invented)',
    },
  ],
  request: {
    machine: 'main-engine-port',
    target: 'pump',
    does: 'exchange',
    why: 'weeping at the shaft',
    when: '2026-03-14',
    people: ['Ines', 'Tomas'],
  },
  otherSide: {
    machine: 'main-engine-starboard',
    name: 'Starboard main engine',
    count: 2,
    list: ['The fuel filter is in the way on this side only.', 'The suction comes from aft.'],
  },
  isolationNote: ISOLATION_BY_HAND,
  isolationListedBy: { by: 'Ines', on: '2026-03-10' },
  plan,
  bench: null,
  steps: fixtureSteps,
  facts,
  lists,
  decisions: [
    {
      id: 'no value joint/suction-flange',
      question: 'How tight are the suction flange bolts?',
      why: 'no value is issued for this joint',
      settled: { by: 'Ines', reason: 'by feel, even, looked at under pressure' },
    },
    {
      id: 'unknown minutes joint/filter-bracket',
      question: 'How long does the filter bracket take?',
      why: 'its minutes are unknown',
      settled: null,
    },
  ],
  notChecked: ['Bolt lengths of the suction flange: unknown, bottoming cannot be checked.'],
  boxUpNotes: ['The mounting is tightened first, the pipe is offered up after.'],
  people: 2,
  minutes: minutes(185),
  workings: { minutes: plan.working },
  rotation: 'clockwise seen from forward',
  flowSeenAt: 'overboard discharge, port',
  speeds: ['600 rpm', '1200 rpm', '1800 rpm'],
  interval: null,
  limits: [],
};
