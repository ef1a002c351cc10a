// `isolate` as the register shows it: a plain network, links with valves, lines with their parts.

import { isolatePlain, isolateSegments } from '../isolation/isolate.ts';
import { isolateLines } from '../isolation/lines.ts';
import {
  type IsolateIn,
  linesIn,
  linesOut,
  plainIn,
  plainOut,
  segmentsIn,
  segmentsOut,
} from '../isolation/model.ts';
import { isolateProblems } from '../isolation/problems.ts';
import type { Calculation, Form } from './register.ts';

const plain: Form = { schema: plainIn, plain: true };
const segments: Form = { schema: segmentsIn, plain: true };
const lines: Form = { schema: linesIn, plain: false };

// What passed the schema of one form is an input of the calculation.
const asInput = (input: unknown): IsolateIn => input as IsolateIn;

export const isolateCalculation: Calculation = {
  name: 'isolate',
  summary: 'what to shut so that a part is cut off from every source, by one barrier or two',
  help: [
    'Plain: {nodes: [{id, kind: source, work, valve or junction, weight}], edges: [[a, b]],',
    'barriers: 1 or 2, keep: nodes that stay joined to a source}.',
    'Segments only: {nodes: [id], links: [{id, a, b}], valves: [{link, node}]}.',
    'Lines: {parts: {ID: {kind: run, machine, junction, valve, non-return, source, drain, vent',
    'or service, …}}, joins: [[a, b]], opened: [part], barriers, keep: [service]}.',
  ].join('\n'),
  forms: [plain, segments, lines],
  formOf: (raw) => {
    if ('parts' in raw || 'joins' in raw || 'opened' in raw) return lines;
    return 'links' in raw || 'valves' in raw ? segments : plain;
  },
  results: [plainOut, segmentsOut, linesOut],
  problems: (input) => isolateProblems(asInput(input)),
  run: async (input, { late }) => {
    const given = asInput(input);
    const search = late === undefined ? undefined : { late };
    if ('parts' in given) return isolateLines(given, search);
    return 'links' in given ? isolateSegments(given) : isolatePlain(given, search);
  },
  needsSolver: false,
  seconds: () => null,
  example: {
    nodes: [
      { id: 'sea', kind: 'source' },
      { id: 'sea valve', kind: 'valve', weight: 2 },
      { id: 'strainer', kind: 'junction' },
      { id: 'fire pump', kind: 'junction' },
      { id: 'fire suction', kind: 'valve', weight: 1 },
      { id: 'pump suction', kind: 'valve', weight: 1 },
      { id: 'pump', kind: 'work' },
      { id: 'pump discharge', kind: 'valve', weight: 1 },
      { id: 'overboard valve', kind: 'valve', weight: 1 },
      { id: 'overboard', kind: 'source' },
    ],
    edges: [
      ['sea', 'sea valve'],
      ['sea valve', 'strainer'],
      ['strainer', 'fire suction'],
      ['fire suction', 'fire pump'],
      ['strainer', 'pump suction'],
      ['pump suction', 'pump'],
      ['pump', 'pump discharge'],
      ['pump discharge', 'overboard valve'],
      ['overboard valve', 'overboard'],
    ],
    barriers: 1,
    keep: ['fire pump'],
  },
};
