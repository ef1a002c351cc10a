// Diameters and pitches of the threads known by name: metric (ISO 261) and unified inch.

/** Diameter, coarse pitch, fine pitches, mm. */
export type MetricRow = readonly [
  diameterMm: number,
  coarsePitchMm: number,
  fine: readonly number[],
];

// M4 to M39 coarse and their first fine pitch: read (ISO 261, ISO 724). Smaller, larger and the
// other fine pitches: ISO 261, from memory. The pitch alone is taken; all else is worked out.
export const metricRows: readonly MetricRow[] = [
  [1.6, 0.35, []],
  [2, 0.4, []],
  [2.5, 0.45, []],
  [3, 0.5, [0.35]],
  [3.5, 0.6, []],
  [4, 0.7, [0.5]],
  [5, 0.8, [0.5]],
  [6, 1, [0.75]],
  [7, 1, [0.75]],
  [8, 1.25, [1, 0.75]],
  [10, 1.5, [1.25, 1, 0.75]],
  [12, 1.75, [1.5, 1.25, 1]],
  [14, 2, [1.5, 1.25, 1]],
  [16, 2, [1.5, 1]],
  [18, 2.5, [2, 1.5, 1]],
  [20, 2.5, [2, 1.5, 1]],
  [22, 2.5, [2, 1.5, 1]],
  [24, 3, [2, 1.5, 1]],
  [27, 3, [2, 1.5, 1]],
  [30, 3.5, [3, 2, 1.5, 1]],
  [33, 3.5, [3, 2, 1.5]],
  [36, 4, [3, 2, 1.5]],
  [39, 4, [3, 2, 1.5]],
  [42, 4.5, [4, 3, 2, 1.5]],
  [45, 4.5, [4, 3, 2, 1.5]],
  [48, 5, [4, 3, 2, 1.5]],
  [52, 5, [4, 3, 2, 1.5]],
  [56, 5.5, [4, 3, 2, 1.5]],
  [60, 5.5, [4, 3, 2, 1.5]],
  [64, 6, [4, 3, 2, 1.5]],
  [68, 6, [4, 3, 2, 1.5]],
  [72, 6, [4, 3, 2, 1.5]],
  [76, 6, [4, 3, 2, 1.5]],
  [80, 6, [4, 3, 2, 1.5]],
  [90, 6, [4, 3, 2]],
  [100, 6, [4, 3, 2]],
];

/** Pitches that were read, not remembered. */
export const readPitches: ReadonlySet<string> = new Set([
  ...metricRows.filter(([d]) => d >= 4 && d <= 39).map(([d, p]) => `${d}x${p}`),
  '8x1',
  '10x1',
  '10x1.25',
  '12x1.25',
  '12x1.5',
  '14x1.5',
  '16x1.5',
  '18x1.5',
  '20x1.5',
  '22x1.5',
  '24x2',
  '27x2',
  '30x2',
  '33x2',
  '36x3',
  '39x3',
]);

/** Size, diameter in inches, threads an inch: coarse, fine, extra fine and others. */
export type UnifiedRow = readonly [
  size: string,
  diameterIn: number,
  coarse: number | null,
  fine: number | null,
  others: readonly (readonly [threadsAnInch: number, series: 'UNEF' | 'UN' | 'UNS'])[],
];

// Coarse and fine to 1-1/2 in (without 1-1/8 and 1-3/8): read in Shigley's Mechanical Engineering
// Design, 9th edition, Table 8-2; 1-1/8 and 1-3/8 fine in a second public table; rest from memory.
export const unifiedRows: readonly UnifiedRow[] = [
  ['0', 0.06, null, 80, []],
  ['1', 0.073, 64, 72, []],
  ['2', 0.086, 56, 64, []],
  ['3', 0.099, 48, 56, []],
  ['4', 0.112, 40, 48, []],
  ['5', 0.125, 40, 44, []],
  ['6', 0.138, 32, 40, []],
  ['8', 0.164, 32, 36, []],
  ['10', 0.19, 24, 32, []],
  ['12', 0.216, 24, 28, [[32, 'UNEF']]],
  ['1/4', 0.25, 20, 28, [[32, 'UNEF']]],
  ['5/16', 0.3125, 18, 24, [[32, 'UNEF']]],
  ['3/8', 0.375, 16, 24, [[32, 'UNEF']]],
  ['7/16', 0.4375, 14, 20, [[28, 'UNEF']]],
  ['1/2', 0.5, 13, 20, [[28, 'UNEF']]],
  ['9/16', 0.5625, 12, 18, [[24, 'UNEF']]],
  ['5/8', 0.625, 11, 18, [[24, 'UNEF']]],
  ['3/4', 0.75, 10, 16, [[20, 'UNEF']]],
  ['7/8', 0.875, 9, 14, [[20, 'UNEF']]],
  [
    '1',
    1,
    8,
    12,
    [
      [20, 'UNEF'],
      [14, 'UNS'],
    ],
  ],
  ['1-1/8', 1.125, 7, 12, [[8, 'UN']]],
  ['1-1/4', 1.25, 7, 12, [[8, 'UN']]],
  ['1-3/8', 1.375, 6, 12, [[8, 'UN']]],
  ['1-1/2', 1.5, 6, 12, [[8, 'UN']]],
  ['1-5/8', 1.625, null, null, [[8, 'UN']]],
  ['1-3/4', 1.75, 5, null, [[8, 'UN']]],
  ['1-7/8', 1.875, null, null, [[8, 'UN']]],
  ['2', 2, 4.5, null, [[8, 'UN']]],
  ['2-1/4', 2.25, 4.5, null, [[8, 'UN']]],
  ['2-1/2', 2.5, 4, null, [[8, 'UN']]],
  ['2-3/4', 2.75, 4, null, [[8, 'UN']]],
  ['3', 3, 4, null, [[8, 'UN']]],
];
