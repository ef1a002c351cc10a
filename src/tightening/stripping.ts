// Stripping of the thread in the hole and on the bolt, FED-STD-H28/2; the weaker counts.

import type { ThreadLimits } from './thread.ts';

/** Shear strength over tensile strength of a bolt; from memory, as for ductile steel. */
export const BOLT_SHEAR_RATIO = 0.6;

/** Shear area of the hole's thread for each mm of engagement. */
export const holeAreaPerMm = (pitchMm: number, majorMm: number, holePitchMm: number): number =>
  ((Math.PI * majorMm) / pitchMm) * (pitchMm / 2 + (majorMm - holePitchMm) / Math.sqrt(3));

/** Shear area of the bolt's thread for each mm of engagement. */
export const boltAreaPerMm = (pitchMm: number, pitchDiameterMm: number, minorMm: number): number =>
  ((Math.PI * minorMm) / pitchMm) * (pitchMm / 2 + (pitchDiameterMm - minorMm) / Math.sqrt(3));

export type Stripping = {
  readonly holeN: number;
  /** Null where the bolt's tensile strength is not known. */
  readonly boltN: number | null;
  readonly loadN: number;
  readonly weaker: 'hole' | 'bolt';
};

export type StrippingCase = {
  readonly boltPitchMm: number;
  readonly bolt: ThreadLimits;
  /** The thread cut in the hole: the bolt's own, or the outer thread of an insert. */
  readonly holePitchMm: number;
  readonly hole: ThreadLimits;
  readonly engagementMm: number;
  readonly holeShearMPa: number;
  readonly boltShearMPa: number | null;
};

export function strippingOf(one: StrippingCase): Stripping {
  const { bolt, hole, engagementMm } = one;
  const holeN =
    holeAreaPerMm(one.holePitchMm, hole.majorMinMm, hole.holePitchMaxMm) *
    engagementMm *
    one.holeShearMPa;
  const boltN =
    one.boltShearMPa === null
      ? null
      : boltAreaPerMm(one.boltPitchMm, bolt.pitchMinMm, bolt.holeMinorMaxMm) *
        engagementMm *
        one.boltShearMPa;
  const weaker = boltN !== null && boltN < holeN ? 'bolt' : 'hole';
  return { holeN, boltN, loadN: boltN === null ? holeN : Math.min(holeN, boltN), weaker };
}
