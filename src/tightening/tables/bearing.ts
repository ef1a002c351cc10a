// Washer faces of hexagon heads (ISO 4014) and medium clearance holes (ISO 273), the defaults.

import type { Source } from '../../quantity/types.ts';

/** Thread diameter, least washer-face diameter, medium hole, mm. */
export const bearingRows: readonly (readonly [number, number, number])[] = [
  [4, 5.9, 4.5],
  [5, 6.9, 5.5],
  [6, 8.9, 6.6],
  [8, 11.6, 9],
  [10, 14.6, 11],
  [12, 16.6, 13.5],
  [14, 19.6, 15.5],
  [16, 22.5, 17.5],
  [18, 25.3, 20],
  [20, 28.2, 22],
  [22, 31.7, 24],
  [24, 33.6, 26],
  [27, 38, 30],
  [30, 42.7, 33],
];

/** The same from memory, for sizes that could not be read. */
export const bearingFromMemory: readonly (readonly [number, number, number])[] = [
  [3, 4.6, 3.4],
  [33, 46.5, 36],
  [36, 51.1, 39],
  [39, 55.9, 42],
];

export const headSource: Source = {
  kind: 'published',
  title: 'ISO 4014, hexagon head bolts',
  edition: '2011, as quoted by a public data file',
  place: 'least washer-face diameter',
};
export const holeSource: Source = {
  kind: 'published',
  title: 'ISO 273, clearance holes for bolts and screws',
  edition: '1979, as quoted by a public data file',
  place: 'medium series',
};
export const headMemory: Source = { kind: 'from memory', of: 'ISO 4014, washer-face diameter' };
export const holeMemory: Source = { kind: 'from memory', of: 'ISO 273, medium series' };
