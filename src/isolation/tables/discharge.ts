// Discharge coefficients of openings as published, 0.6 to 1.0, and what makes them differ.

import type { Source } from '../../quantity/types.ts';

export type Coefficient = {
  readonly value: number;
  readonly says: string;
  readonly source: Source;
};

const published = (title: string, edition: string, place: string): Source => ({
  kind: 'published',
  title,
  edition,
  place,
});
const companion = 'as worked in its public companion notebook';

/** From the least to the greatest; the spread is one of edges, not of errors. */
export const coefficients: readonly Coefficient[] = [
  {
    value: 0.6,
    says: 'sharp edge, the jet draws in: 47 US gal/min through 2 in at 1 ft is 0.60',
    source: published(
      'Damage-control figure for a hole of 2 in',
      'as quoted',
      '47 gal/min at 1 ft',
    ),
  },
  {
    value: 0.619,
    says: 'orifice of 2 in in a tank of 4 ft, timed from 6 to 2 ft',
    source: published('Hydraulics, J. Lal', companion, 'Example 3.6'),
  },
  {
    value: 0.628,
    says: 'orifice of 1 in, velocity 0.975 times contraction 0.644',
    source: published('Hydraulics, J. Lal', companion, 'Example 3.1'),
  },
  {
    value: 0.99,
    says: 'a table for boats that takes no contraction: its rows are 0.988 to 1.000',
    source: published('Boat flooding rates, a yacht club’s table', 'as read', 'rows of 1 to 4 in'),
  },
];

export const LEAST = 0.6;
export const GREATEST = 1;
