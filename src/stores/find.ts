// Which stored item a scanned or typed text means: our own label, a GS1 code, or its id.

import type { Problem } from '../quantity/types.ts';
import { readGs1, type Scanned } from './gs1.ts';
import type { StoredItem } from './item.ts';

/** What the QR of our own label says; the vessel's name keeps another vessel's box out. */
export const labelText = (vessel: string, item: string): string => `boxup:${vessel}/${item}`;

export type Meant = {
  readonly items: readonly StoredItem[];
  readonly scanned: Scanned | null;
  readonly problems: readonly Problem[];
};

/** All that it may be: of a batch held in two places there are two. */
export function findItem(
  text: string,
  items: readonly StoredItem[],
  { vessel, year }: { readonly vessel: string; readonly year: number },
): Meant {
  const given = text.trim();
  const [, from, id] = /^boxup:([^/]+)\/(.+)$/.exec(given) ?? [];
  if (from !== undefined && from !== vessel) {
    const why = `this label is from ${from}`;
    return none({ path: '', got: given, expected: labelText(vessel, '…'), why });
  }
  const own = items.filter((item) => item.id === (id ?? given));
  if (own.length > 0) return { items: own, scanned: null, problems: [] };
  if (id !== undefined) {
    return none({
      path: '',
      got: id,
      expected: 'an item of this list',
      why: 'it is not in the list',
    });
  }
  const read = readGs1(given, year);
  if (!read.ok) return { items: [], scanned: null, problems: read.problems };
  const { scanned } = read;
  const found = items.filter(
    ({ gtin, batch, serial }) =>
      gtin !== undefined &&
      gtin.padStart(14, '0') === scanned.gtin &&
      (scanned.batch === null || batch === undefined || batch === scanned.batch) &&
      (scanned.serial === null || serial === undefined || serial === scanned.serial),
  );
  return { items: found, scanned, problems: [] };
}

const none = (problem: Problem): Meant => ({ items: [], scanned: null, problems: [problem] });
