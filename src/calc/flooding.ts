// `flooding` as the register shows it: water through a hole, against time and pumps.

import { flooding } from '../isolation/flooding.ts';
import { floodingIn, floodingOut } from '../isolation/flooding-model.ts';
import { carry } from '../quantity/carry.ts';
import { simple } from './simple.ts';

export const floodingCalculation = simple({
  name: 'flooding',
  summary: 'water through an open end: inflow, force, time to a level, margin of the pumps',
  help: [
    'diameter (mm) or area (mm2); depth (m) of the hole below the outside water; holeHeight (m)',
    'above the sole; coefficient (0.6; 0.6 to 1.0 are published); density (kg/m3).',
    'spaceArea (m2), permeability and toLevel (m above the sole) give the time; pumps (m3/h).',
    'timeToLevel null and not in notWorkedOut: the level never gets there.',
  ],
  input: floodingIn,
  output: floodingOut,
  solve: (input) => carry(input, flooding),
  example: {
    diameter: 50,
    depth: 0.9,
    holeHeight: 0.2,
    spaceArea: 14,
    permeability: 0.85,
    toLevel: 0.6,
    pumps: ['7.2 m3/h'],
  },
});
