// Widths across flats of hexagons and hexagon socket keys by thread, in mm, with where they came from.

import type { Source } from '../../quantity/types.ts';

/** `din` where the withdrawn DIN 931, 933 and 934 differ; ships carry both. */
export type WidthRow = {
  readonly thread: string;
  readonly iso: number;
  readonly din: number;
  /** Key of a cap screw: ISO 4762, or DIN 912 where that alone has the size. */
  readonly key: number | null;
};

const comparison = 'three open fastener libraries compared row by row';

export const WIDTH_ISO: Source = {
  kind: 'published',
  title: 'ISO 272, ISO 4014, ISO 4017, ISO 4032: hexagons, widths across flats',
  edition: `as transcribed in ${comparison}`,
  place: 'table of widths; one library carries the DIN width at M14, another at M14 and M22',
};

export const WIDTH_DIN: Source = {
  kind: 'published',
  title: 'DIN 931, 933, 934 (withdrawn): hexagons, widths across flats',
  edition: `as transcribed in ${comparison}`,
  place: 'table of widths; they differ from ISO 272 at M10, M12, M14 and M22 only',
};

export const WIDTH_KEY: Source = {
  kind: 'published',
  title: 'ISO 4762 cap screws: key sizes',
  edition: `as transcribed in ${comparison}`,
  place: 'table of key sizes',
};

export const WIDTH_KEY_MEMORY: Source = {
  kind: 'from memory',
  of: 'DIN 912: key sizes M18 to M33',
};

export const WIDTHS: readonly WidthRow[] = [
  { thread: 'M4', iso: 7, din: 7, key: 3 },
  { thread: 'M5', iso: 8, din: 8, key: 4 },
  { thread: 'M6', iso: 10, din: 10, key: 5 },
  { thread: 'M7', iso: 11, din: 11, key: null },
  { thread: 'M8', iso: 13, din: 13, key: 6 },
  { thread: 'M10', iso: 16, din: 17, key: 8 },
  { thread: 'M12', iso: 18, din: 19, key: 10 },
  { thread: 'M14', iso: 21, din: 22, key: 12 },
  { thread: 'M16', iso: 24, din: 24, key: 14 },
  { thread: 'M18', iso: 27, din: 27, key: 14 },
  { thread: 'M20', iso: 30, din: 30, key: 17 },
  { thread: 'M22', iso: 34, din: 32, key: 17 },
  { thread: 'M24', iso: 36, din: 36, key: 19 },
  { thread: 'M27', iso: 41, din: 41, key: 19 },
  { thread: 'M30', iso: 46, din: 46, key: 22 },
  { thread: 'M33', iso: 50, din: 50, key: 24 },
  { thread: 'M36', iso: 55, din: 55, key: 27 },
  { thread: 'M39', iso: 60, din: 60, key: null },
];

/** Threads whose key DIN 912 alone has. */
export const DIN_KEYS: readonly string[] = ['M18', 'M22', 'M27', 'M33'];
