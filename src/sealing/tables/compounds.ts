// Compounds of seals against media and greases, and their temperatures, each with its source.

import type { Source } from '../../quantity/types.ts';

export const ratingSource: Source = {
  kind: 'from memory',
  of: 'general O-ring handbook compatibility tables',
};

export const scaleSource: Source = {
  kind: 'published',
  title: 'Seal engineering article on compatibility, scale of ratings',
  edition: 'as read',
  place: 'ratings 1 to 4',
};

export const temperatureSource: Source = {
  kind: 'published',
  title: 'Matrix of elastomers and media, with continuous temperatures',
  edition: 'as read in a public repository',
  place: 'least and greatest temperature',
};

/** Silicone grease on silicone; fluorocarbon in hot water. */
export const ruleSource: Source = {
  kind: 'from memory',
  of: 'O-ring handbooks, what grease and hot water do to some compounds',
};

export const MEDIA = [
  'sea water',
  'ethylene glycol coolant',
  'diesel fuel',
  'mineral lubricating oil',
  'mineral-oil grease',
  'silicone grease',
] as const;
export type Medium = (typeof MEDIA)[number];

export const GREASES = ['mineral-oil grease', 'silicone grease'] as const;

export const WATERS: readonly Medium[] = ['sea water', 'ethylene glycol coolant'];

/** 1 satisfactory, 2 fair, 3 doubtful, 4 unsatisfactory. */
export type Rating = 1 | 2 | 3 | 4;

export const ratingWords: Readonly<Record<Rating, string>> = {
  1: 'satisfactory',
  2: 'fair, usually all right where nothing moves',
  3: 'doubtful, sometimes all right where nothing moves',
  4: 'unsatisfactory',
};

export type Compound = {
  /** In the order of `MEDIA`. */
  readonly ratings: readonly [Rating, Rating, Rating, Rating, Rating, Rating];
  readonly leastCel: number;
  readonly mostCel: number;
  readonly badInHotWater: boolean;
};

export const RATED = ['NBR', 'HNBR', 'FKM', 'EPDM', 'VMQ', 'CR'] as const;

export const compounds: Readonly<Record<(typeof RATED)[number], Compound>> = {
  NBR: { ratings: [1, 1, 1, 1, 1, 1], leastCel: -30, mostCel: 100, badInHotWater: true },
  HNBR: { ratings: [1, 1, 1, 1, 1, 1], leastCel: -40, mostCel: 150, badInHotWater: true },
  FKM: { ratings: [1, 1, 1, 1, 1, 1], leastCel: -20, mostCel: 200, badInHotWater: true },
  EPDM: { ratings: [1, 1, 4, 4, 4, 1], leastCel: -50, mostCel: 150, badInHotWater: false },
  VMQ: { ratings: [1, 1, 4, 4, 4, 3], leastCel: -60, mostCel: 200, badInHotWater: true },
  CR: { ratings: [2, 1, 3, 2, 2, 1], leastCel: -40, mostCel: 120, badInHotWater: true },
};

/** Above this only special grades of fluorocarbon bear water. */
export const HOT_WATER_CEL = 100;
