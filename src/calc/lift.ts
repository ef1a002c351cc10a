// `lift` as the register shows it: what may be lifted by hand, by how many, and whether this may.

import { lift } from '../lifting/lift.ts';
import { liftInput, liftOutput } from '../lifting/model.ts';
import { carry } from '../quantity/carry.ts';
import { simple } from './simple.ts';

export const liftCalculation = simple({
  name: 'lift',
  summary: 'whether a weight may be lifted by hand, and what would help most',
  help: [
    'weight (kg); origin and destination {h: hands ahead of the ankles, v: above the floor (cm),',
    'asymmetry: twist (deg)}; travel (cm) without a destination; coupling good, fair or poor.',
    'frequency (1/min), or spell {perMinute, minutes} of each 15 min; duration and recovery (h).',
    'constants metric or us; people. Outside the method: posture, hands, footing, headroom (cm),',
    'heat (Cel), moving, hold (s): the figure is then the best case on a dry floor.',
  ],
  input: liftInput,
  output: liftOutput,
  solve: (input) => carry(input, lift),
  example: {
    weight: '12 kg',
    origin: { h: 30, v: 40, asymmetry: 0 },
    destination: { h: 40, v: 90, asymmetry: 30 },
    coupling: 'fair',
    frequency: 0.2,
    duration: 0.5,
    posture: 'standing',
    hands: 2,
    footing: 'firm',
    moving: false,
  },
});
