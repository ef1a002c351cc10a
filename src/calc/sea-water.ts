// `sea-water` as the register shows it: what sea water is at a temperature, and where it boils.

import { seaWater } from '../media/answer.ts';
import { seaWaterInput, seaWaterOutput } from '../media/model.ts';
import { carry } from '../quantity/carry.ts';
import { simple } from './simple.ts';

export const seaWaterCalculation = simple({
  name: 'sea-water',
  summary: 'density, heat capacity, viscosity and vapour pressure of fresh and sea water',
  help: [
    'temperature (Cel, to 60; without it boilsAt alone), salinity (g/kg, absolute: 35.16504/35',
    'times the practical salinity; 0 is fresh water), pressure (MPa absolute, 0.101325).',
  ],
  input: seaWaterInput,
  output: seaWaterOutput,
  solve: (input) => carry(input, seaWater),
  example: { temperature: '28 °C', salinity: 35.16504, pressure: 0.101325 },
});
