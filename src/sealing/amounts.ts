// How much grease a ring takes and how much sealant a face: geometry times a named thickness.

import type { Quantity, Source } from '../quantity/types.ts';

export type Amount = { readonly amount: Quantity; readonly source: Source };

const practice: Source = { kind: 'common practice, no source' };

/** A thin film all over a ring; a bead as it leaves the nozzle. */
export const GREASE_FILM_MM = 0.1;
export const SEALANT_BEAD_MM = 3;

/** Grease for one ring: the whole surface of the torus times the film. */
export function greaseForRing(
  innerMm: number,
  sectionMm: number,
  filmMm: number = GREASE_FILM_MM,
): Amount {
  const surfaceMm2 = Math.PI ** 2 * (innerMm + sectionMm) * sectionMm;
  return { amount: { value: (surfaceMm2 * filmMm) / 1_000, unit: 'mL' }, source: practice };
}

/** Sealant for a bead so long. */
export function sealantForBead(lengthMm: number, beadMm: number = SEALANT_BEAD_MM): Amount {
  const sectionMm2 = (Math.PI / 4) * beadMm ** 2;
  return { amount: { value: (sectionMm2 * lengthMm) / 1_000, unit: 'mL' }, source: practice };
}
