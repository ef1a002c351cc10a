// `renewal-age` as the register shows it: whether and when renewing before failure pays.

import { renewalOf } from '../life/renewal-age.ts';
import { renewalInput, renewalOutput } from '../life/renewal-model.ts';
import { simple } from './simple.ts';

export const renewalAgeCalculation = simple({
  name: 'renewal-age',
  summary: 'whether renewing before failure pays, at what age, and what it saves',
  help: [
    'shape, scale (h) of the Weibull law of lives. costPlanned and costFailure in the same money,',
    'from your own figures. policy: age (new again each time), or minimal-repair (costPlanned the',
    'overhaul, costFailure each repair between). at: ages (h) to weigh beside the best.',
  ],
  input: renewalInput,
  output: renewalOutput,
  solve: renewalOf,
  example: { shape: 2.5, scale: '8000 h', costPlanned: 600, costFailure: 4200, at: [4000, 6000] },
});
