// `cool-down` as the register shows it: when a hot part may be touched and when opened.

import { coolDown } from '../isolation/cool-down.ts';
import { coolDownIn, coolDownOut } from '../isolation/cool-down-model.ts';
import { carry } from '../quantity/carry.ts';
import { simple } from './simple.ts';

export const coolDownCalculation = simple({
  name: 'cool-down',
  summary: 'minutes until a hot part may be touched and opened, from readings after the peak',
  help: [
    'readings [{minute, temperature (Cel)}] after the heat-soak peak, or {start, timeConstant}: an',
    'estimate; ambient (Cel); openLimit (Cel); touchLimit (Cel), or contactTime (s) and material:',
    '"bare metal", "coated metal", "ceramic, glass, stone" or "plastic, wood".',
    'The minutes stand on the clock of the readings. The gate is a measured temperature.',
  ],
  input: coolDownIn,
  output: coolDownOut,
  solve: (input) => carry(input, coolDown),
  example: {
    readings: [
      { minute: 0, temperature: 88 },
      { minute: 20, temperature: 80 },
      { minute: 40, temperature: 73 },
      { minute: 60, temperature: 67 },
    ],
    ambient: 38,
    openLimit: 60,
    material: 'bare metal',
    contactTime: 10,
  },
});
