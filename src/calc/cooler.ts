// `cooler` as the register shows it: a heat exchanger solved for what is not known.

import { cooler } from '../proving/cooler.ts';
import { coolerInput, coolerOutput } from '../proving/cooler-model.ts';
import { carry } from '../quantity/carry.ts';
import { simple } from './simple.ts';

export const coolerCalculation = simple({
  name: 'cooler',
  summary: 'a cooler solved for what is not known: duty, flow, temperature, area or fouling',
  help: [
    'arrangement: counterflow, parallel, or {kind: shell-and-tube, shells, tubePasses},',
    '{kind: crossflow, hotMixed, coldMixed}, {kind: plate, hotPasses, coldPasses}.',
    'hot and cold: {fluid: {name}, {heatCapacity (J/(kg.K))} or {latentHeat (kJ/kg)}, flow (kg/s,',
    'or a volume flow), in, out (Cel)}. duty (kW), effectiveness, area (m2), cleanU, U',
    '(W/(m2.K)), fouling (m2.K/W). A flow without a flow meter: leave it out.',
  ],
  input: coolerInput,
  output: coolerOutput,
  solve: (input) => carry(input, cooler),
  example: {
    arrangement: { kind: 'plate', hotPasses: 1, coldPasses: 1 },
    hot: {
      fluid: { name: 'ethylene glycol coolant 40 %' },
      flow: { value: 3.4, unit: 'kg/s', u: 0.08 },
      in: { value: 78, unit: 'Cel', u: 0.25 },
      out: { value: 66.5, unit: 'Cel', u: 0.25 },
    },
    cold: {
      fluid: { name: 'sea water' },
      in: { value: 28.6, unit: 'Cel', u: 0.25 },
      out: { value: 41.2, unit: 'Cel', u: 0.25 },
    },
    area: 4.2,
    cleanU: 2_100,
  },
});
