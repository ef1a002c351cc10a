// Torque, preload and yield of a bolt: VDI 2230-1 (2003 and later); ISO 16047's exact form.

/** Torque for each newton of preload, in mm: slope, thread friction, friction under the head. */
export type TorqueParts = {
  readonly pitchMm: number;
  readonly pitchDiameterMm: number;
  /** Middle of the bearing face under head or nut. */
  readonly bearingDiameterMm: number;
};

/** The short form of VDI 2230-1, editions 2003 and later. */
export const torquePerForceMm = (
  { pitchMm, pitchDiameterMm, bearingDiameterMm }: TorqueParts,
  frictionThread: number,
  frictionHead: number,
): number =>
  0.16 * pitchMm + 0.58 * pitchDiameterMm * frictionThread + (bearingDiameterMm / 2) * frictionHead;

/** The one friction in thread and under the head that gives a nut factor; may be negative. */
export const frictionOfNutFactor = (
  { pitchMm, pitchDiameterMm, bearingDiameterMm }: TorqueParts,
  nutFactor: number,
  diameterMm: number,
): number =>
  (nutFactor * diameterMm - 0.16 * pitchMm) / (0.58 * pitchDiameterMm + bearingDiameterMm / 2);

/** The screw itself, without collar: force times this is the torque that lifts the load. */
export const screwLiftMm = (
  leadMm: number,
  meanDiameterMm: number,
  friction: number,
  secantOfFlank: number,
): number =>
  ((meanDiameterMm / 2) * (leadMm + Math.PI * friction * meanDiameterMm * secantOfFlank)) /
  (Math.PI * meanDiameterMm - friction * leadMm * secantOfFlank);

/** The torque that lowers the load; below nought the screw runs back by itself. */
export const screwLowerMm = (
  leadMm: number,
  meanDiameterMm: number,
  friction: number,
  secantOfFlank: number,
): number =>
  ((meanDiameterMm / 2) * (Math.PI * friction * meanDiameterMm * secantOfFlank - leadMm)) /
  (Math.PI * meanDiameterMm + friction * leadMm * secantOfFlank);

export const collarMm = (friction: number, collarDiameterMm: number): number =>
  (friction * collarDiameterMm) / 2;

/** Share of the work that goes into the load. */
export const screwEfficiency = (leadMm: number, torquePerForce: number): number =>
  leadMm / (2 * Math.PI * torquePerForce);

/** Secant of the 30° flank, as ISO 16047 rounds it. */
export const FLANK = 1.154;

/** ISO 16047, exact form: the lead angle is not taken as small. */
export const torquePerForceExactMm = (
  { pitchMm: p, pitchDiameterMm: d2, bearingDiameterMm }: TorqueParts,
  frictionThread: number,
  frictionHead: number,
): number =>
  (0.5 * (p + FLANK * Math.PI * frictionThread * d2)) /
    (Math.PI - (FLANK * frictionThread * p) / d2) +
  (frictionHead * bearingDiameterMm) / 2;

/** Torsion beside tension at the stress area: shear stress times √3, over the tensile stress. */
export const torsionRatio = (
  pitchMm: number,
  pitchDiameterMm: number,
  stressAreaMm2: number,
  frictionThread: number,
): number => {
  const d0 = Math.sqrt((4 * stressAreaMm2) / Math.PI);
  const slope = pitchMm / (Math.PI * pitchDiameterMm) + 1.155 * frictionThread;
  return Math.sqrt(1 + 3 * (1.5 * (pitchDiameterMm / d0) * slope) ** 2);
};

/** Preload at a share of yield, torsion of the tightening included. */
export const preloadAtYieldShareN = (
  share: number,
  yieldMPa: number,
  stressAreaMm2: number,
  torsion: number,
): number => (stressAreaMm2 * share * yieldMPa) / torsion;
