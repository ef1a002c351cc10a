// A ring in its groove: squeeze, stretch, fill and section, nominal and at the ends of tolerance.

import type { Ring } from './rings.ts';

/** A figure with its tolerance; an end that is not known is null. */
export type Band = {
  readonly nominal: number;
  readonly min: number | null;
  readonly max: number | null;
};

export type Span = { readonly min: number; readonly max: number };

export const KINDS = ['face', 'piston', 'rod'] as const;
export const SIDES = ['inside', 'outside', 'both'] as const;

/** Diameters: what the ring's inside goes over, and the wall about its outside. */
export type Groove = {
  readonly kind: (typeof KINDS)[number] | null;
  readonly moving: boolean;
  readonly innerMm: Span | null;
  readonly outerMm: Span | null;
  readonly depthMm: Span | null;
  readonly widthMm: Span | null;
  readonly side: (typeof SIDES)[number] | null;
};

export type InGroove = {
  readonly stretch: Band | null;
  /** After stretch; as made where the stretch is not known. */
  readonly section: Band;
  readonly compressionMm: Band | null;
  readonly squeeze: Band | null;
  readonly fill: Band | null;
};

export const middle = ({ min, max }: Span): number => (min + max) / 2;

/** A ring that is loose keeps its section. */
export const afterStretch = (sectionMm: number, stretch: number): number =>
  sectionMm / Math.sqrt(1 + Math.max(0, stretch));

/** The same by the mean diameters, for the working beside it. */
export const byMeanDiameter = (sectionMm: number, innerMm: number, overMm: number): number =>
  overMm <= innerMm
    ? sectionMm
    : sectionMm / Math.sqrt((overMm + sectionMm) / (innerMm + sectionMm));

function stretchOf(ring: Ring, over: Span | null): Band | null {
  if (over === null) return null;
  const { innerMm, innerToleranceMm: tolerance } = ring;
  const at = (diameter: number, inner: number) => (diameter - inner) / inner;
  return {
    nominal: at(middle(over), innerMm),
    min: tolerance === null ? null : at(over.min, innerMm + tolerance),
    max: tolerance === null ? null : at(over.max, innerMm - tolerance),
  };
}

function sectionOf(ring: Ring, stretch: Band | null): Band {
  const { sectionMm, sectionToleranceMm: tolerance } = ring;
  if (stretch === null) {
    return {
      nominal: sectionMm,
      min: tolerance === null ? null : sectionMm - tolerance,
      max: tolerance === null ? null : sectionMm + tolerance,
    };
  }
  const end = (sign: number, at: number | null) =>
    tolerance === null || at === null ? null : afterStretch(sectionMm + sign * tolerance, at);
  return {
    nominal: afterStretch(sectionMm, stretch.nominal),
    min: end(-1, stretch.max),
    max: end(1, stretch.min),
  };
}

const each = (
  section: Band,
  figure: (section: number, at: 'nominal' | 'min' | 'max') => number,
): Band => ({
  nominal: figure(section.nominal, 'nominal'),
  min: section.min === null ? null : figure(section.min, 'min'),
  max: section.max === null ? null : figure(section.max, 'max'),
});

/** The depth, or the width, that goes with an end: the least of a ring lies in the greatest. */
const opposite = (span: Span, at: 'nominal' | 'min' | 'max'): number =>
  at === 'nominal' ? middle(span) : at === 'min' ? span.max : span.min;

export function inGroove(ring: Ring, groove: Groove): InGroove {
  const stretch = stretchOf(ring, groove.innerMm);
  const section = sectionOf(ring, stretch);
  const { depthMm: depth, widthMm: width } = groove;
  const compressionMm = depth === null ? null : each(section, (w, at) => w - opposite(depth, at));
  const squeeze = depth === null ? null : each(section, (w, at) => (w - opposite(depth, at)) / w);
  const fill =
    depth === null || width === null
      ? null
      : each(section, (w, at) => {
          const space = opposite(depth, at) * opposite(width, at);
          return ((Math.PI / 4) * w * w) / space;
        });
  return { stretch, section, compressionMm, squeeze, fill };
}
