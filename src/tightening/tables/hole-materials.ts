// Shear strength of what a bolt may be screwed into, by name: low figures, since no grade is known.

import type { Source } from '../../quantity/types.ts';

export type HoleMaterial = {
  readonly name: string;
  readonly shearMPa: number;
  readonly says: string;
  readonly source: Source;
};

const ratio: Source = {
  kind: 'from memory',
  of: 'shear strength of ductile metals about 0.6 of tensile strength',
};

export const holeMaterials: readonly HoleMaterial[] = [
  {
    name: 'aluminium',
    shearMPa: 130,
    says: 'the lowest of the published figures for cast aluminium, 130 to 190',
    source: {
      kind: 'published',
      title: 'Required thread engagement in 310 aluminium (doi 10.1201/9781482273786-99)',
      edition: 'as read in its public abstract',
      place: 'worked example, ultimate shear strength',
    },
  },
  {
    name: 'bronze',
    shearMPa: 124,
    says: '0.6 of the least tensile strength of leaded gunmetal C83600, 207 N/mm²',
    source: ratio,
  },
  {
    name: 'cast iron',
    shearMPa: 179,
    says: 'grey iron, ASTM grade 20 (ISO grade 150), the weakest listed',
    source: {
      kind: 'published',
      title: 'ASTM Grade 20 (ISO Grade 150) grey cast iron, shear strength',
      edition: 'a public list of material properties, as read',
      place: 'mechanical properties',
    },
  },
  {
    name: 'steel',
    shearMPa: 204,
    says: '0.6 of the least tensile strength of S235, 340 N/mm²',
    source: ratio,
  },
  {
    name: 'stainless steel',
    shearMPa: 300,
    says: '0.6 of the least tensile strength of austenitic steel, 500 N/mm²',
    source: ratio,
  },
];
