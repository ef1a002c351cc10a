// `due` as the register shows it: when an interval of hours is reached, with its spread.

import { due } from '../hours/due.ts';
import { dueInput, dueOutput } from '../hours/model.ts';
import { simple } from './simple.ts';

export const dueCalculation = simple({
  name: 'due',
  summary: 'when an interval of running hours is reached, with its spread; faults in the readings',
  help: [
    'readings: [{at, hours}] in the order they came in; a day or an instant, UTC.',
    'exchanges: [{at, oldLast, newFirst}], where a person says how the meters follow.',
    'interval (h); lastDoneAt (h, as shown then) or lastDoneOn (hours not read); on: the day of',
    'asking; horizon (days, 730). voyagePlan: [{from, to, hoursPerDay}], days as planned.',
    'dueOn p10, p50, p90: by then 10, 50, 90 of 100 such machines have reached it.',
  ],
  input: dueInput,
  output: dueOutput,
  solve: due,
  example: {
    readings: [
      { at: '2026-01-05', hours: 8_412 },
      { at: '2026-01-19', hours: 8_530 },
      { at: '2026-02-02', hours: 8_655 },
      { at: '2026-02-16', hours: 8_748 },
      { at: '2026-03-02', hours: 8_866 },
      { at: '2026-03-16', hours: 8_968 },
      { at: '2026-03-23', hours: 9_204 },
      { at: '2026-03-30', hours: 9_095 },
      { at: '2026-04-13', hours: 9_211 },
    ],
    interval: '2000 h',
    lastDoneAt: 7_950,
    on: '2026-04-15',
    voyagePlan: [{ from: '2026-05-04', to: '2026-05-17', hoursPerDay: 0 }],
  },
});
