// `pump-test` as the register shows it: readings of a pump against its curve, and a verdict.

import { pumpTestInput, pumpTestOutput } from '../proving/pump-model.ts';
import { pumpTest } from '../proving/pump-test.ts';
import { simple } from './simple.ts';

export const pumpTestCalculation = simple({
  name: 'pump-test',
  summary: 'readings of a pump brought to its curve, with uncertainty and a verdict',
  help: [
    'curve: {speed (1/min), points [{flow (m3/h), head (m), power (kW)}]}, or {kind:',
    'positive-displacement, displacement (litres a turn), points [{speed, pressure (kPa), flow}]}.',
    'readings [{speed, suction, discharge (kPa gauge) or head (m), flow or {volume (L), time (s)},',
    'power}]. suctionBore, dischargeBore (mm), gaugeHeights {suction, discharge} (m), atmospheric',
    '(kPa), fluid {name, temperature} or {density, vapourPressure (kPa)}. grade (ISO 9906), or',
    'headTolerance, flowTolerance, or limits [{of, lower, upper}]. instruments {suction, ...:',
    '{standard} or {expanded, k}}; seed of the draws.',
  ],
  input: pumpTestInput,
  output: pumpTestOutput,
  solve: pumpTest,
  example: {
    curve: {
      speed: 2_200,
      points: [
        { flow: 0, head: 24 },
        { flow: 6, head: 23 },
        { flow: 12, head: 20 },
        { flow: 16, head: 16.5 },
      ],
    },
    readings: [{ speed: 2_087, suction: -15, discharge: 165, flow: 11.4 }],
    ...{ suctionBore: 50, dischargeBore: 40, gaugeHeights: { suction: 0, discharge: 0.35 } },
    fluid: { name: 'sea water', temperature: 28, salinity: 35 },
    headTolerance: 0.08,
    instruments: {
      suction: { standard: 0.8 },
      discharge: { standard: 1.5 },
      speed: { expanded: 16, k: 2 },
      flow: { standard: 0.25 },
    },
    seed: 7,
  },
});
