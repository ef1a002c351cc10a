// `tightening` as the register shows it: bolt, preload and torque, and an issued value weighed.

import { carry } from '../quantity/carry.ts';
import { tighteningInput, tighteningOutput } from '../tightening/model.ts';
import { tightening } from '../tightening/tightening.ts';
import { simple } from './simple.ts';

export const tighteningCalculation = simple({
  name: 'tightening',
  summary: 'preload and torque of a bolt, and whether an issued torque can be right',
  help: [
    'thread: "M10", "M10x1.25", "3/8-16 UNC", or {diameter, pitch (mm), stressArea (mm2)}.',
    'strengthClass: "8.8", "A4-70", "SAE 5", or {proof, yield, tensile (N/mm2)}.',
    'Friction by one of: frictionThread with frictionHead; surface (as received, oiled,',
    'anti-seize, threadlock: a range); nutFactor. Tightness by one of: utilisation (0.9 of',
    'yield), proofShare, preload (kN). issuedTorque (N.m) is weighed with toolScatter or',
    'scatterFactor, clampNeeded (kN) and threadInto {material or shearStrength, engagement}.',
  ],
  input: tighteningInput,
  output: tighteningOutput,
  solve: (input) => carry(input, tightening),
  example: {
    thread: 'M10',
    strengthClass: '8.8',
    surface: 'oiled',
    issuedTorque: '35.4 lbf.ft',
    toolScatter: 0.06,
    clampNeeded: 12,
    threadInto: { material: 'aluminium', engagement: 20 },
  },
});
