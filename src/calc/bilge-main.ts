// `bilge-main` as the register shows it: the bore that the rule asks for, and the pump.

import { bilgeMain, bilgeMainIn, bilgeMainOut } from '../isolation/bilge-main.ts';
import { carry } from '../quantity/carry.ts';
import { simple } from './simple.ts';

export const bilgeMainCalculation = simple({
  name: 'bilge-main',
  summary: 'least bore of the bilge main and least capacity of each power bilge pump',
  help: [
    'length, breadth, depth to the bulkhead deck (m); speed of the water (m/s, 2).',
    'By SOLAS II-1/35-1; the rule in force for the vessel comes first.',
  ],
  input: bilgeMainIn,
  output: bilgeMainOut,
  solve: (input) => carry(input, bilgeMain),
  example: { length: 24, breadth: 6.5, depth: 3.2 },
});
