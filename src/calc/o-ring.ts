// `o-ring` as the register shows it: a ring in its groove, and which ring would fit.

import { carry } from '../quantity/carry.ts';
import { oRing, withFitting } from '../sealing/o-ring.ts';
import { oRingInput, oRingOutput } from '../sealing/o-ring-model.ts';
import { simple } from './simple.ts';

export const oRingCalculation = simple({
  name: 'o-ring',
  summary: 'squeeze, stretch and fill of an O-ring in its groove, and which ring fits',
  help: [
    'ring: "AS568-214", "ISO 3601 20x2.65", {inner, section, innerTolerance, sectionTolerance}',
    '(mm), or "any" for the rings that fit. groove: {kind face, piston or rod; moving; diameter',
    "the ring's inside goes over; outerDiameter of the wall about it; depth, bottom to facing",
    'wall; width (mm)}: a figure, or [least, greatest]. pressure (MPa) across it, pressureSide,',
    'temperature (Cel), hardness (IRHD), gap (mm, radial).',
  ],
  input: oRingInput,
  output: oRingOutput,
  solve: (input) => ({ ok: true, result: withFitting(input, carry(input, oRing)) }),
  example: {
    ring: 'AS568-214',
    groove: {
      kind: 'piston',
      diameter: ['25.35 mm', '25.40 mm'],
      depth: [2.82, 2.87],
      width: [4.75, 4.9],
    },
    pressure: '3 bar',
    hardness: 70,
    gap: 0.08,
    temperature: 60,
  },
});
