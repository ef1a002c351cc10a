// The moment balance of a torque wrench with an adapter at any angle, with its uncertainty.

/** Millimetres; an angle of 0 is straight ahead, 90 square to the wrench, 180 pointing back. */
export type Lever = {
  /** Drive square to the middle of the hand. */
  readonly wrenchMm: number;
  /** Drive square to the axis of the bolt. */
  readonly adapterMm: number;
  readonly angleDeg: number;
};

/** Exact at the right angle and straight back, where a rounded π is not. */
export function cosine(angleDeg: number): number {
  if (angleDeg === 90) return 0;
  return angleDeg === 180 ? -1 : Math.cos((angleDeg * Math.PI) / 180);
}

/** From the axis of the bolt to the hand, along the wrench. */
export const leverMm = ({ wrenchMm, adapterMm, angleDeg }: Lever): number =>
  wrenchMm + adapterMm * cosine(angleDeg);

/** Setting of the wrench over torque at the bolt. */
export const leverFactor = (lever: Lever): number =>
  adapterDoesNothing(lever) ? 1 : lever.wrenchMm / leverMm(lever);

/** Without an adapter, or with one at a right angle, the setting is the torque, wherever held. */
export const adapterDoesNothing = ({ adapterMm, angleDeg }: Lever): boolean =>
  adapterMm === 0 || cosine(angleDeg) === 0;

export type LeverSpread = {
  readonly wrenchMm: number;
  readonly adapterMm: number;
  readonly angleDeg: number;
};

/** Standard uncertainty of ln(factor), to first order: GUM 5.1.2, inputs independent. */
export function factorSpread(lever: Lever, spread: LeverSpread): number {
  const { wrenchMm, adapterMm, angleDeg } = lever;
  const whole = leverMm(lever);
  const along = cosine(angleDeg);
  const across = Math.sin((angleDeg * Math.PI) / 180);
  return Math.hypot(
    ((adapterMm * along) / (wrenchMm * whole)) * spread.wrenchMm,
    (along / whole) * spread.adapterMm,
    ((adapterMm * across) / whole) * ((spread.angleDeg * Math.PI) / 180),
  );
}
