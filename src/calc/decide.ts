// `decide` as the register shows it: pass, fail or cannot tell of a reading with its uncertainty.

import { decide } from '../proving/decide.ts';
import { decideInput, decideOutput } from '../proving/decide-model.ts';
import { simple } from './simple.ts';

export const decideCalculation = simple({
  name: 'decide',
  summary: 'pass, fail or cannot tell of a reading with its uncertainty and its limits',
  help: [
    'measured, u (standard uncertainty), lower and upper (one may be missing), all in one unit.',
    'degreesOfFreedom (none: infinite), distribution normal or rectangular. rule: simple;',
    'guarded-accept (a pass only where the risk is at most maxRisk); guarded-reject (a fail only',
    'there); maxRisk, or guardFactor in standard uncertainties.',
  ],
  input: decideInput,
  output: decideOutput,
  solve: decide,
  example: {
    measured: '2.31 bar',
    u: '0.05 bar',
    lower: '2.2 bar',
    rule: 'guarded-accept',
    maxRisk: 0.05,
  },
});
