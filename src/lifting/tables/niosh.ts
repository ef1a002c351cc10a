// The revised NIOSH lifting equation: constants, limits and tables, each with where it was read.

import type { Source } from '../../quantity/types.ts';

const manual = (place: string): Source => ({
  kind: 'published',
  title: 'Applications Manual for the Revised NIOSH Lifting Equation, DHHS (NIOSH) 94-110',
  edition: '1994, revised 2021, as transcribed in a public specification',
  place,
});

export const constantsSource = manual('section 1.3, p. 7');
export const limitsSource = manual('sections 1.3.1 to 1.3.5, pp. 8 to 15');
export const frequencySource = manual('Table 5, p. 15');
export const spellSource = manual('section 1.3.5.5, p. 16');
export const durationSource = manual('section 1.3.5, pp. 13 and 14');
export const couplingSource = manual('Table 7, p. 18');
export const meaningSource = manual('p. 20');

/** The cells of 1.00 were not read. */
export const couplingMemorySource: Source = {
  kind: 'from memory',
  of: 'NIOSH 94-110, Table 7, the cells of 1.00',
};

/** What the manual says its equation is not for. */
export const outsideSource: Source = {
  kind: 'from memory',
  of: 'NIOSH 94-110, section 1.2, limits of the equation',
};

export const headroomSource: Source = {
  kind: 'from memory',
  of: 'ISO 3411, tall operator with shoes, 1.91 m',
};

export const teamSource: Source = {
  kind: 'from memory',
  of: 'HSE L23, guidance on teams: two lift two thirds, three half, of what they lift singly',
};

/** Below this nobody tall stands upright. */
export const UPRIGHT_CM = 191;
/** The air in which the equation holds, °C. */
export const AIR_CEL = { least: 19, most: 26 } as const;
/** Hours of lifting in a day. */
export const LONGEST_H = 8;
/** What a team lifts, as a share of what its people lift singly. */
export const teamShares: Readonly<Record<number, readonly [over: number, under: number]>> = {
  1: [1, 1],
  2: [2, 3],
  3: [1, 2],
};

export const SETS = ['metric', 'us'] as const;

/** Lengths in the set's own unit: cm or in. */
export type ConstantSet = {
  readonly name: (typeof SETS)[number];
  readonly lengthCm: number;
  readonly massKg: number;
  readonly load: number;
  readonly nearH: number;
  readonly farH: number;
  readonly bestV: number;
  readonly slopeV: number;
  readonly highV: number;
  readonly leastD: number;
  readonly mostD: number;
  readonly travel: number;
  /** Frequency and coupling change here. */
  readonly kneeV: number;
};

export const sets: Readonly<Record<ConstantSet['name'], ConstantSet>> = {
  metric: {
    name: 'metric',
    lengthCm: 1,
    massKg: 1,
    load: 23,
    nearH: 25,
    farH: 63,
    bestV: 75,
    slopeV: 0.003,
    highV: 175,
    leastD: 25,
    mostD: 175,
    travel: 4.5,
    kneeV: 75,
  },
  us: {
    name: 'us',
    lengthCm: 2.54,
    massKg: 0.45359237,
    load: 51,
    nearH: 10,
    farH: 25,
    bestV: 30,
    slopeV: 0.0075,
    highV: 70,
    leastD: 10,
    mostD: 70,
    travel: 1.8,
    kneeV: 30,
  },
};

export const MOST_ASYMMETRY_DEG = 135;
export const LEAST_FREQUENCY = 0.2;
export const MOST_FREQUENCY = 15;

export const DURATIONS = ['short', 'moderate', 'long'] as const;
export type DurationClass = (typeof DURATIONS)[number];

/** Longest work of the class in hours; recovery needed as a share of the work. */
export const durationRules = {
  short: { mostH: 1, recovery: 1 },
  moderate: { mostH: 2, recovery: 0.3 },
  long: { mostH: LONGEST_H, recovery: 0 },
} as const;

type FrequencyRow = readonly [perMinute: number, low: number, high: number];

/** Lifts a minute, then the multiplier with the hands below and at or above the knee of V. */
export const frequencyTable: Readonly<Record<DurationClass, readonly FrequencyRow[]>> = {
  short: [
    [0.2, 1, 1],
    [0.5, 0.97, 0.97],
    [1, 0.94, 0.94],
    [2, 0.91, 0.91],
    [3, 0.88, 0.88],
    [4, 0.84, 0.84],
    [5, 0.8, 0.8],
    [6, 0.75, 0.75],
    [7, 0.7, 0.7],
    [8, 0.6, 0.6],
    [9, 0.52, 0.52],
    [10, 0.45, 0.45],
    [11, 0.41, 0.41],
    [12, 0.37, 0.37],
    [13, 0, 0.34],
    [14, 0, 0.31],
    [15, 0, 0.28],
  ],
  moderate: [
    [0.2, 0.95, 0.95],
    [0.5, 0.92, 0.92],
    [1, 0.88, 0.88],
    [2, 0.84, 0.84],
    [3, 0.79, 0.79],
    [4, 0.72, 0.72],
    [5, 0.6, 0.6],
    [6, 0.5, 0.5],
    [7, 0.42, 0.42],
    [8, 0.35, 0.35],
    [9, 0.3, 0.3],
    [10, 0.26, 0.26],
    [11, 0, 0.23],
    [12, 0, 0.21],
    [13, 0, 0],
    [14, 0, 0],
    [15, 0, 0],
  ],
  long: [
    [0.2, 0.85, 0.85],
    [0.5, 0.81, 0.81],
    [1, 0.75, 0.75],
    [2, 0.65, 0.65],
    [3, 0.55, 0.55],
    [4, 0.45, 0.45],
    [5, 0.35, 0.35],
    [6, 0.27, 0.27],
    [7, 0.22, 0.22],
    [8, 0.18, 0.18],
    [9, 0, 0.15],
    [10, 0, 0.13],
    [11, 0, 0],
    [12, 0, 0],
    [13, 0, 0],
    [14, 0, 0],
    [15, 0, 0],
  ],
};

export const COUPLINGS = ['good', 'fair', 'poor'] as const;

/** The multiplier with the hands below and at or above the knee of V. */
export const couplingTable: Readonly<
  Record<(typeof COUPLINGS)[number], readonly [low: number, high: number]>
> = {
  good: [1, 1],
  fair: [0.95, 1],
  poor: [0.9, 0.9],
};
