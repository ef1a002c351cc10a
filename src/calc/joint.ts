// `joint` as the register shows it: a bolted joint under load, its stiffness, the clamp left.

import { carry } from '../quantity/carry.ts';
import { joint } from '../tightening/joint.ts';
import { jointInput, jointOutput } from '../tightening/joint-model.ts';
import { simple } from './simple.ts';

export const jointCalculation = simple({
  name: 'joint',
  summary: 'stiffness of bolt and parts, share of the load, clamp that remains',
  help: [
    'bolt [{area (mm2), length (mm)}] with modulus (GPa), or boltStiffness (kN/mm);',
    'clamped [{modulus, thickness}] with diameter (mm) and method (cone, wileman), or',
    'clampedStiffness; preload, load (a bolt) and proofLoad (kN), embedding (um).',
  ],
  input: jointInput,
  output: jointOutput,
  solve: (input) => carry(input, joint),
  example: {
    bolt: [
      { area: 78.5, length: 20 },
      { area: 58, length: 10 },
    ],
    modulus: 205,
    clamped: [
      { modulus: 70, thickness: 20 },
      { modulus: 205, thickness: 10 },
    ],
    diameter: 10,
    preload: 25,
    load: 8,
    proofLoad: 33.6,
    embedding: 8,
  },
});
