// `pattern` as the register shows it: the rounds and the order in which bolts are tightened.

import { pattern, patternInput, patternOutput } from '../tightening/pattern-rounds.ts';
import { simple } from './simple.ts';

export const patternCalculation = simple({
  name: 'pattern',
  summary: 'the rounds and the order in which the bolts of a joint are tightened',
  help: [
    'layout: "ring" (bolts numbered clockwise), {kind: "rows" or "rectangle", rows, columns}, or',
    'positions [[x, y], …], x to the right and y up; bare numbers are mm.',
    'rounds: shares of the value, 0.3, 0.6, 1 unless given; circleRound: then once round at 1.',
  ],
  input: patternInput,
  output: patternOutput,
  solve: pattern,
  example: { bolts: 8, layout: 'ring' },
});
