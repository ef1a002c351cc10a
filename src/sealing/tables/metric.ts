// The metric O-rings of the general industrial series: inside diameters by section, in mm.

import type { Source } from '../../quantity/types.ts';

export const metricSource: Source = {
  kind: 'published',
  title: 'GB/T 3452.1 series G, stated there to equal ISO 3601-1 (earlier metric series)',
  edition: '2005, as listed in a public build script',
  place: 'sections and inside diameters',
};

export const metricToleranceSource: Source = {
  kind: 'from memory',
  of: 'ISO 3601-1:2012 class B, tolerance of the inside diameter',
};

/** Class B, rounded to hundredths; the copy's older stepped tolerances are smaller and not used. */
export const metricInnerToleranceMm = (innerMm: number): number =>
  Math.round((0.009 * innerMm ** 0.95 + 0.11) * 100) / 100;

export type MetricGroup = {
  readonly sectionMm: number;
  readonly toleranceMm: number;
  readonly innerMm: readonly number[];
};

export const metricGroups: readonly MetricGroup[] = [
  {
    sectionMm: 1.8,
    toleranceMm: 0.08,
    innerMm: [
      1.8, 2, 2.24, 2.5, 2.8, 3.15, 3.55, 3.75, 4, 4.5, 4.87, 5, 5.15, 5.3, 5.6, 6, 6.3, 6.7, 6.9,
      7.1, 7.5, 8, 8.5, 8.75, 9, 9.5, 10, 10.6, 11.2, 11.8, 12.5, 13.2, 14, 15, 16, 17, 18, 19, 20,
      21, 22.4, 23.6, 25, 25.8, 26.5, 28, 30,
    ],
  },
  {
    sectionMm: 2.65,
    toleranceMm: 0.09,
    innerMm: [
      7.1, 7.5, 8, 8.5, 8.75, 9, 9.5, 10, 10.6, 11.2, 11.8, 12.5, 13.2, 14, 15, 16, 17, 18, 19, 20,
      21, 22.4, 23.6, 25, 25.8, 26.5, 28, 30, 31.5, 32.5, 33.5, 34.5, 35.5, 36.5, 37.5, 38.7, 40,
      41.2, 42.5, 43.7, 45, 46.2, 47.5, 48.7, 50,
    ],
  },
  {
    sectionMm: 3.55,
    toleranceMm: 0.1,
    innerMm: [
      18, 19, 20, 21, 22.4, 23.6, 25, 25.8, 26.5, 28, 30, 31.5, 32.5, 33.5, 34.5, 35.5, 36.5, 37.5,
      38.7, 40, 41.2, 42.5, 43.7, 45, 46.2, 47.5, 48.7, 50, 51.5, 53, 54.5, 56, 58, 60, 61.5, 63,
      65, 67, 69, 71, 73, 75, 77.5, 80, 82.5, 85, 87.5, 90, 92.5, 95, 97.5, 100, 103, 106, 109, 112,
    ],
  },
  {
    sectionMm: 5.3,
    toleranceMm: 0.13,
    innerMm: [
      31.5, 32.5, 33.5, 34.5, 35.5, 36.5, 37.5, 38.7, 40, 41.2, 42.5, 43.7, 45, 46.2, 47.5, 48.7,
      50, 51.5, 53, 54.5, 56, 58, 60, 61.5, 63, 65, 67, 69, 71, 73, 75, 77.5, 80, 82.5, 85, 87.5,
      90, 92.5, 95, 97.5, 100, 103, 106, 109, 112, 115, 118, 122, 125, 128, 132, 136, 140, 145, 150,
      155, 160, 165, 170, 175, 180, 185, 190, 195, 200, 206, 212, 218, 224, 230, 236, 243, 250, 258,
      265, 272, 280, 290, 300, 307, 315,
    ],
  },
  {
    sectionMm: 7,
    toleranceMm: 0.15,
    innerMm: [
      40, 41.2, 42.5, 43.7, 45, 46.2, 47.5, 48.7, 50, 51.5, 53, 54.5, 56, 58, 60, 61.5, 63, 65, 67,
      69, 71, 73, 75, 77.5, 80, 85, 90, 95, 100, 106, 109, 112, 115, 118, 122, 125, 128, 132, 136,
      140, 145, 150, 155, 160, 165, 170, 175, 180, 185, 190, 195, 200, 206, 212, 218, 224, 230, 236,
      243, 250, 258, 265, 272, 280, 290, 300, 307, 315, 325, 335, 345, 355, 365, 375, 387, 400,
    ],
  },
];
