// `combine` as the register shows it: which jobs to do together while the way is open.

import { combine, combineProblems } from '../together/combine.ts';
import { type CombineInput, combineInput, combineOutput } from '../together/model.ts';
import type { Calculation, Form } from './register.ts';

const form: Form = { schema: combineInput, plain: true };

// What passed the schema is an input of the calculation.
const asInput = (input: unknown): CombineInput => input as CombineInput;

export const combineCalculation: Calculation = {
  name: 'combine',
  summary: 'which jobs to do together while the way is open, and the minutes that saves',
  help: [
    'jobs: [{id, due {earliest, latest}, minutes, joints, closures, value}]; a job counts where',
    'its window holds the moment `on`. jointMinutes and closureMinutes: minutes of each, paid',
    'once however many of the chosen need it. limit: minutes there are. Most value is chosen,',
    'then most minutes saved; where no job has a value, most minutes saved, then most jobs.',
  ].join('\n'),
  forms: [form],
  formOf: () => form,
  results: [combineOutput],
  problems: (input) => combineProblems(asInput(input)),
  run: async (input, { solver }) => ({ ...(await combine(asInput(input), solver)) }),
  needsSolver: true,
  seconds: () => null,
  example: {
    jobs: [
      {
        id: 'sea-water pump seals',
        due: { earliest: '2026-03-01', latest: '2026-04-15' },
        minutes: 60,
        joints: ['suction', 'discharge'],
        closures: ['sea valve', 'overboard valve'],
        value: 10,
      },
      {
        id: 'impeller',
        due: { earliest: '2026-02-01', latest: '2026-03-31' },
        minutes: 30,
        joints: ['suction', 'cover'],
        closures: ['sea valve'],
        value: 6,
      },
      {
        id: 'strainer basket',
        due: { earliest: '2026-03-10', latest: '2026-03-20' },
        minutes: 20,
        joints: ['strainer lid'],
        closures: ['sea valve'],
        value: 3,
      },
    ],
    jointMinutes: { suction: 25, discharge: 20, cover: 15, 'strainer lid': 10 },
    closureMinutes: { 'sea valve': 12, 'overboard valve': 8 },
    limit: '3.5 h',
    on: '2026-03-14',
  },
};
