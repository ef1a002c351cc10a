// How stiff a bolt and its parts are: pieces in a row, cones under head and nut, Wileman's fit.

export type Piece = { readonly areaMm2: number; readonly lengthMm: number };
export type Layer = { readonly modulusGPa: number; readonly thicknessMm: number };

/** A gigapascal is a kilonewton for each square millimetre: stiffness comes in kN/mm. */
export const pieceStiffness = ({ areaMm2, lengthMm }: Piece, modulusGPa: number): number =>
  (areaMm2 * modulusGPa) / lengthMm;

export const inARow = (stiffnesses: readonly number[]): number =>
  1 / stiffnesses.reduce((sum, one) => sum + 1 / one, 0);

/** Face of head and nut over the diameter of the bolt, as the textbooks take it. */
export const FACE = 1.5;
const SLOPE = Math.tan(Math.PI / 6);

export type Frustum = Layer & {
  /** At the end towards head or nut. */
  readonly faceMm: number;
};

export const frustumStiffness = (
  { modulusGPa: e, thicknessMm: t, faceMm: face }: Frustum,
  d: number,
): number => {
  const grown = 2 * SLOPE * t;
  const ratio = ((grown + face - d) * (face + d)) / ((grown + face + d) * (face - d));
  return (SLOPE * Math.PI * e * d) / Math.log(ratio);
};

/** The cones from head and nut meet half way: the layers cut there, each with its upper face. */
export function frustaOf(layers: readonly Layer[], diameterMm: number): readonly Frustum[] {
  const half = layers.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0) / 2;
  const side = (ordered: readonly Layer[]): Frustum[] => {
    const found: Frustum[] = [];
    let deep = 0;
    for (const { modulusGPa, thicknessMm } of ordered) {
      const taken = Math.min(thicknessMm, half - deep);
      // What is left by rounding alone is no layer.
      if (taken <= 1e-12 * half) break;
      found.push({ modulusGPa, thicknessMm: taken, faceMm: FACE * diameterMm + 2 * SLOPE * deep });
      deep += taken;
    }
    return found;
  };
  return [...side(layers), ...side([...layers].reverse()).reverse()];
}

/** Fitted by finite elements for each material; the modulus tells which one it is. */
export const wilemanRows: readonly (readonly [
  material: string,
  modulusGPa: number,
  a: number,
  b: number,
])[] = [
  ['steel', 207, 0.78715, 0.62873],
  ['aluminium', 71, 0.7967, 0.63816],
  ['copper', 119, 0.79568, 0.63553],
  ['grey cast iron', 100, 0.77871, 0.61616],
];
const GENERAL = ['any material', 0, 0.78952, 0.62914] as const;
const NEAR = 0.1;

export function wilemanRow(modulusGPa: number) {
  const off = ([, modulus]: readonly [string, number, number, number]) =>
    Math.abs(modulusGPa / modulus - 1);
  const nearest = [...wilemanRows].sort((one, other) => off(one) - off(other))[0];
  return nearest !== undefined && off(nearest) <= NEAR ? nearest : GENERAL;
}

/** A layer counts as its part of a joint all of its material. */
export const wilemanStiffness = (
  { modulusGPa, thicknessMm }: Layer,
  diameterMm: number,
  wholeMm: number,
): number => {
  const [, , a, b] = wilemanRow(modulusGPa);
  const whole = modulusGPa * diameterMm * a * Math.exp((b * diameterMm) / wholeMm);
  return (whole * wholeMm) / thicknessMm;
};

/** Greatest force on a bolt of a circle that a bending moment pulls at, N. */
export function momentOnCircleN(momentNmm: number, circleMm: number, bolts: number): number {
  return (4 * momentNmm) / (circleMm * bolts);
}

/** Force that a moment puts on the part of the circle between two angles, as an even line of it. */
export const momentOnArcN = (
  momentNmm: number,
  circleMm: number,
  fromRad: number,
  toRad: number,
): number => ((momentNmm * 2) / (Math.PI * circleMm)) * (Math.cos(fromRad) - Math.cos(toRad));
