// Limits of squeeze, stretch and fill, and the gap that a ring bridges, each with its source.

import type { Source } from '../../quantity/types.ts';

const notes = (place: string): Source => ({
  kind: 'published',
  title: 'Public notes on O-rings: compression, groove fill and stretch',
  edition: 'as read',
  place,
});

export const compressionSource = notes('compression, static');
export const fillSource = notes('groove fill, static');
export const faceSource = notes('face seal, internal pressure and vacuum');

export const stretchSource: Source = {
  kind: 'published',
  title: 'Seal engineering articles on the stretch of O-rings',
  edition: 'two, as read',
  place: 'static, 0 to 5 %, 2 % best',
};

export const rowsSource: Source = {
  kind: 'published',
  title: 'Seal Types & Gland Design, general tables by section',
  edition: 'as read in a public copy',
  place: 'static radial, static axial and dynamic rows',
};

export const rodSource: Source = {
  kind: 'from memory',
  of: 'ISO 3601-2, a ring in a bore is compressed by at most 3 % of its diameter',
};

export const extrusionSource: Source = {
  kind: 'from memory',
  of: 'O-ring handbooks, radial gap without a back-up ring by section, pressure and hardness',
};

export const backUpSource: Source = {
  kind: 'published',
  title: 'Public O-ring handbook',
  edition: 'section IV, as read',
  place: 'static seals, 103.5 bar (1500 psi)',
};

export type SqueezeLimits = {
  /** Of the least squeeze. */
  readonly least: number;
  readonly typical: number;
  /** Of the nominal squeeze. */
  readonly most: number;
};

export const squeezeLimits = {
  face: { least: 0.1, typical: 0.25, most: 0.35 },
  radial: { least: 0.05, typical: 0.2, most: 0.3 },
  /** From the least to the greatest figure of the dynamic rows. */
  moving: { least: 0.08, typical: 0.15, most: 0.28 },
} as const;

/** Thinner rings take more: the nominal squeeze of their printed static rows. */
export const THIN_MM = 1.1;
export const THIN_MOST = 0.35;

export const fillLimits = { least: 0.65, typical: 0.75, most: 0.85 } as const;
export const stretchLimits = { least: 0, best: 0.02, most: 0.05 } as const;
/** Of the outer diameter, against the outer wall. */
export const outerLimits = { least: 0, most: 0.03 } as const;
export const BACK_UP_MPA = 10.35;
/** The gaps hold up to here. */
export const GAP_CEL = 70;

/** Sections up to these share a column; the last takes the rest. */
export const gapSectionsMm = [2, 3, 5, 7] as const;

type GapRow = readonly [mostMPa: number, ...gapsMm: number[]];

export const gapRows: readonly { readonly irhd: number; readonly rows: readonly GapRow[] }[] = [
  {
    irhd: 70,
    rows: [
      [3.5, 0.08, 0.09, 0.1, 0.13, 0.15],
      [7, 0.05, 0.07, 0.08, 0.09, 0.1],
      [10.5, 0.03, 0.04, 0.05, 0.07, 0.08],
    ],
  },
  {
    irhd: 90,
    rows: [
      [3.5, 0.13, 0.15, 0.2, 0.23, 0.25],
      [7, 0.1, 0.13, 0.15, 0.18, 0.2],
      [10.5, 0.07, 0.09, 0.1, 0.13, 0.15],
      [14, 0.05, 0.07, 0.08, 0.09, 0.1],
      [17.5, 0.04, 0.05, 0.07, 0.08, 0.09],
      [21, 0.03, 0.04, 0.05, 0.07, 0.08],
      [35, 0.02, 0.03, 0.03, 0.04, 0.04],
    ],
  },
];
