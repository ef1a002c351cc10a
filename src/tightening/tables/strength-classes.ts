// Proof, yield and tensile strength of bolts by class, each with where it was had.

import type { Source } from '../../quantity/types.ts';

export type ClassRow = {
  readonly name: string;
  /** Diameters that the row is for, mm: above the first, up to the second. */
  readonly aboveMm: number;
  readonly uptoMm: number;
  /** Null where the standard gives none: then the 0.2 % limit stands for it. */
  readonly proofMPa: number | null;
  readonly yieldMPa: number;
  readonly tensileMPa: number;
  readonly source: Source;
};

const NO_END = 1_000_000;
const KSI_IN_MPA = 6.894757293168361;

const iso898: Source = {
  kind: 'published',
  title: 'ISO 898-1, mechanical properties of fasteners made of carbon steel and alloy steel',
  edition: '2013',
  place: 'Table 3, minimum values',
};
const iso898Memory: Source = { kind: 'from memory', of: 'ISO 898-1, Table 3, minimum yield' };
const iso3506: Source = {
  kind: 'published',
  title: 'ISO 3506-1, fasteners of corrosion-resistant stainless steel',
  edition: '2020',
  place: 'austenitic classes 70 and 80',
};
const iso3506Memory: Source = { kind: 'from memory', of: 'ISO 3506-1, class 50' };
const shigley: Source = {
  kind: 'published',
  title: 'Mechanical Engineering Design (Shigley and Mischke), SAE specifications for steel bolts',
  edition: '5th, 1989',
  place: 'page 341',
};

const steel = (
  name: string,
  [proofMPa, yieldMPa, tensileMPa]: readonly [number, number, number],
  source: Source = iso898,
  [aboveMm, uptoMm]: readonly [number, number] = [0, NO_END],
): ClassRow => ({ name, aboveMm, uptoMm, proofMPa, yieldMPa, tensileMPa, source });

const stainless = (name: string, yieldMPa: number, tensileMPa: number): readonly ClassRow[] =>
  ['A2', 'A4'].map((grade) => ({
    name: `${grade}-${name}`,
    aboveMm: 0,
    uptoMm: NO_END,
    proofMPa: null,
    yieldMPa,
    tensileMPa,
    source: name === '50' ? iso3506Memory : iso3506,
  }));

const sae = (
  grade: string,
  [proof, yields, tensile]: readonly [number, number, number],
  [above, upto]: readonly [number, number] = [0, NO_END],
): ClassRow =>
  steel(`SAE ${grade}`, [proof * KSI_IN_MPA, yields * KSI_IN_MPA, tensile * KSI_IN_MPA], shigley, [
    above * 25.4,
    upto * 25.4,
  ]);

export const classRows: readonly ClassRow[] = [
  steel('4.6', [225, 240, 400]),
  steel('4.8', [310, 340, 420]),
  steel('5.6', [280, 300, 500], iso898Memory),
  steel('5.8', [380, 420, 520]),
  steel('6.8', [440, 480, 600], iso898Memory),
  steel('8.8', [580, 640, 800], iso898, [0, 16]),
  steel('8.8', [600, 660, 830], iso898, [16, NO_END]),
  steel('9.8', [650, 720, 900]),
  steel('10.9', [830, 940, 1040]),
  steel('12.9', [970, 1100, 1220]),
  ...stainless('50', 210, 500),
  ...stainless('70', 450, 700),
  ...stainless('80', 600, 800),
  sae('1', [33, 36, 60]),
  sae('2', [55, 57, 74], [0, 0.8]),
  sae('2', [33, 36, 60], [0.8, NO_END]),
  sae('4', [65, 100, 115]),
  sae('5', [85, 92, 120], [0, 1.0001]),
  sae('5', [74, 81, 105], [1.0001, NO_END]),
  sae('5.2', [85, 92, 120]),
  sae('7', [105, 115, 133]),
  sae('8', [120, 130, 150]),
  sae('8.2', [120, 130, 150]),
];

/** Greatest diameter that the standard is for, mm; beyond it the result says so. */
export const classRangeMm: Readonly<Record<string, readonly [number, number]>> = {
  '9.8': [1.6, 16],
  'SAE 5.2': [6.35, 25.4],
  'SAE 8.2': [6.35, 25.4],
};
