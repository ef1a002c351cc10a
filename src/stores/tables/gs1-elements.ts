// The GS1 element strings that a bag or box of parts may carry, with how long each is.

import type { Source } from '../../quantity/types.ts';

export type Element = {
  readonly ai: string;
  readonly title: string;
  readonly digits: boolean;
  /** One figure where it never varies, else the most. */
  readonly length: number;
  /** Its length never varies, so nothing separates it from the next. */
  readonly fixed: boolean;
  readonly check?: 'key' | 'date';
};

export const elementSource: Source = {
  kind: 'published',
  title:
    'GS1 Barcode Syntax Dictionary (Apache-2.0) and the public list of Application Identifiers',
  edition: 'as read in its public repository and on gs1.org',
  place: 'entries 00 to 37, 240, 241, 250',
};

// biome-ignore format: an element a line
export const ELEMENTS: readonly Element[] = [
  { ai: '00', title: 'logistic unit', digits: true, length: 18, fixed: true, check: 'key' },
  { ai: '01', title: 'GTIN', digits: true, length: 14, fixed: true, check: 'key' },
  { ai: '02', title: 'GTIN of what is in it', digits: true, length: 14, fixed: true, check: 'key' },
  { ai: '10', title: 'batch', digits: false, length: 20, fixed: false },
  { ai: '11', title: 'made on', digits: true, length: 6, fixed: true, check: 'date' },
  { ai: '12', title: 'due on', digits: true, length: 6, fixed: true, check: 'date' },
  { ai: '13', title: 'packed on', digits: true, length: 6, fixed: true, check: 'date' },
  { ai: '15', title: 'best before', digits: true, length: 6, fixed: true, check: 'date' },
  { ai: '16', title: 'sell by', digits: true, length: 6, fixed: true, check: 'date' },
  { ai: '17', title: 'expires on', digits: true, length: 6, fixed: true, check: 'date' },
  { ai: '20', title: 'variant', digits: true, length: 2, fixed: true },
  { ai: '21', title: 'serial', digits: false, length: 20, fixed: false },
  { ai: '22', title: 'variant of the consumer product', digits: false, length: 20, fixed: false },
  { ai: '30', title: 'count', digits: true, length: 8, fixed: false },
  { ai: '37', title: 'count of what is in it', digits: true, length: 8, fixed: false },
  { ai: '240', title: 'additional number', digits: false, length: 30, fixed: false },
  { ai: '241', title: "customer's part number", digits: false, length: 30, fixed: false },
  { ai: '250', title: 'second serial', digits: false, length: 30, fixed: false },
];

/** What may stand in a Digital Link's path after a GTIN, in this order. */
export const GTIN_QUALIFIERS: readonly string[] = ['22', '10', '21'];
