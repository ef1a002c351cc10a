// Until when a seal may be fitted: from its cure quarter or day, under a rule that is named.

import { monthsOn } from '../quantity/day.ts';
import { type StorageGroup, type StorageRule, storageTable } from './tables/storage.ts';

export { type Cured, readCured } from '../stores/cured.ts';

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
