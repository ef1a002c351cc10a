// `removal` as the register shows it: its three forms, its results, an example.

import {
  fullSchema,
  limitsSchema,
  plainSchema,
  type RemovalInput,
  sequenceSchema,
} from '../removal/model.ts';
import { noRemovalSchema, planSchema } from '../removal/output.ts';
import { inputProblems } from '../removal/problems.ts';
import { removal } from '../removal/removal.ts';
import type { Calculation, Form } from './register.ts';

const full: Form = { schema: fullSchema, plain: false };
const plain: Form = { schema: plainSchema, plain: true };
const sequence: Form = { schema: sequenceSchema, plain: true };

// What passed the schema of one form is an input of the calculation.
const asInput = (input: unknown): RemovalInput => input as RemovalInput;

export const removalCalculation: Calculation = {
  name: 'removal',
  summary: 'what comes off, in what order, to free a part: fewest spared joints, then minutes',
  help: [
    'Full form: parts with their ways, joints with their accesses, targets.',
    'Plain forms: {cost, blockers, targets}, or {time, tool, side, tool_change, side_change,',
    'blockers} where every part comes off. Bare numbers are minutes.',
    'limits: {nodes} stops the search at a count, {seconds} at a time; the gap is then stated.',
  ].join('\n'),
  forms: [full, plain, sequence],
  formOf: (raw) => ('time' in raw ? sequence : 'cost' in raw ? plain : full),
  results: [planSchema, noRemovalSchema],
  problems: (input) => inputProblems(asInput(input)),
  run: async (input, { solver, late }) => ({
    ...(await removal(asInput(input), solver, undefined, late)),
  }),
  needsSolver: true,
  seconds: (raw) => {
    const given = typeof raw === 'object' && raw !== null && 'limits' in raw ? raw.limits : null;
    const read = limitsSchema.safeParse(given);
    return read.success ? (read.data.seconds ?? null) : null;
  },
  example: {
    parts: {
      pump: {
        name: 'sea-water pump',
        ways: [
          {
            id: 'forward',
            gives: 'off',
            joints: ['mounting', 'suction'],
            clear: [{ part: 'guard', as: 'off' }],
            minutes: 8,
          },
        ],
      },
      guard: {
        name: 'belt guard',
        ways: [{ id: 'lift', gives: 'off', joints: ['guard-bolts'], minutes: 2 }],
      },
      block: { name: 'engine block', stays: true },
    },
    joints: {
      mounting: {
        undoMinutes: 6,
        makeMinutes: 10,
        between: ['pump', 'block'],
        accesses: [{ id: 'front', tool: '17 mm socket', place: 'front of the engine' }],
      },
      suction: {
        undoMinutes: 3,
        makeMinutes: 5,
        accesses: [{ id: 'below', tool: '13 mm spanner', place: 'floor plates' }],
      },
      'guard-bolts': {
        undoMinutes: 2,
        makeMinutes: 3,
        between: ['guard', 'block'],
        accesses: [{ id: 'front', tool: '13 mm spanner', place: 'front of the engine' }],
      },
    },
    targets: [{ part: 'pump', as: 'off' }],
  },
};
