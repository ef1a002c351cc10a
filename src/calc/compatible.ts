// `compatible` as the register shows it: a compound against what it meets, and its age.

import { compatible } from '../sealing/compatible.ts';
import { compatibleInput, compatibleOutput } from '../sealing/compatible-model.ts';
import { simple } from './simple.ts';

export const compatibleCalculation = simple({
  name: 'compatible',
  summary: 'whether a seal bears its media, grease and temperature, and is not too old',
  help: [
    'compound: NBR, HNBR, FKM, EPDM, VMQ, CR; for storage others too. media: sea water, ethylene',
    'glycol coolant, diesel fuel, mineral lubricating oil, mineral-oil grease, silicone grease.',
    'grease: one of the two. temperature (Cel). cured: a quarter, 3Q2024, counted from its last',
    'day, or a day; on: the day asked for; storageRule: ISO 2230, SAE ARP5316 or RMA.',
  ],
  input: compatibleInput,
  output: compatibleOutput,
  solve: (input) => ({ ok: true, result: compatible(input) }),
  example: {
    compound: 'EPDM',
    media: ['ethylene glycol coolant', 'sea water'],
    grease: 'mineral-oil grease',
    temperature: '85 °C',
    cured: '3Q2024',
    on: '2026-11-25',
    storageRule: 'ISO 2230',
  },
});
