// Where the methods of this room are printed.

import type { Source } from '../../quantity/types.ts';

/** Title and place as the reference data names them; the book itself was not at hand. */
export const likelihoodSource: Source = {
  kind: 'from memory',
  of: 'Meeker & Escobar, Statistical Methods for Reliability Data (1998), ch. 8',
};

export const weibullPlotSource: Source = {
  kind: 'published',
  title: 'NIST/SEMATECH e-Handbook of Statistical Methods',
  edition: 'as read in 2026',
  place: '8.4.1.3',
};

export const newtonSource: Source = {
  kind: 'computed',
  by: "Newton's steps to the top of the likelihood",
};

export const byTop: Source = { kind: 'computed', by: 'the curvature of the likelihood at its top' };

export const bySum: Source = { kind: 'computed', by: 'a sum over all records' };

export const byFunction: Source = { kind: 'computed', by: 'a function of this program' };

export const ageReplacementSource: Source = {
  kind: 'from memory',
  of: 'Barlow & Proschan, Mathematical Theory of Reliability (1965): age replacement',
};

export const minimalRepairSource: Source = {
  kind: 'from memory',
  of: 'Barlow & Proschan: overhaul at an age with minimal repair between',
};

export const poissonSource: Source = { kind: 'from memory', of: 'the Poisson law of rare events' };

export const renewalSource: Source = {
  kind: 'computed',
  by: 'convolution of the law of lives on a grid',
};

export const nelsonSource: Source = {
  kind: 'from memory',
  of: 'Nelson (1995), Technometrics 37: mean cumulative function',
};

export const growthSource: Source = {
  kind: 'from memory',
  of: 'MIL-HDBK-189 (1981), appendix C',
};
