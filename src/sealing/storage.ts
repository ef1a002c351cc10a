// Until when a seal may be fitted: from its cure quarter or day, under a rule that is named.

import { isDay, monthsOn } from '../quantity/day.ts';
import { type StorageGroup, type StorageRule, storageTable } from './tables/storage.ts';

export type Cured = {
  /** Earliest and last day that it may have been cured on. */
  readonly from: string;
  readonly counted: string;
};

const quarterEnds = ['03-31', '06-30', '09-30', '12-31'] as const;
const quarterStarts = ['01-01', '04-01', '07-01', '10-01'] as const;

/** `3Q2024`, or a day: a quarter counts from its last day. */
export function readCured(text: string): Cured | null {
  const given = text.trim();
  if (isDay(given)) return { from: given, counted: given };
  const match = /^([1-4])Q[ /-]?(\d{4})$/i.exec(given);
  if (match === null) return null;
  const at = Number(match[1]) - 1;
  return { from: `${match[2]}-${quarterStarts[at]}`, counted: `${match[2]}-${quarterEnds[at]}` };
}

export const storageGroup = (compound: string, rule: StorageRule): StorageGroup | null =>
  storageTable[rule].find(({ compounds }) => compounds.includes(compound)) ?? null;

export type StorageEnd = {
  /** Null: no limit under this rule. */
  readonly expiresOn: string | null;
  /** Null: the rule knows no extension. */
  readonly extendableTo: string | null;
};

export function storageEnd(counted: string, group: StorageGroup): StorageEnd {
  const { years, extensionYears } = group;
  if (years === null) return { expiresOn: null, extendableTo: null };
  const to = (more: number) => monthsOn(counted, 12 * (years + more));
  return {
    expiresOn: to(0),
    extendableTo: extensionYears === null ? null : to(extensionYears),
  };
}
