// How long a seal may lie in store by its compound, under three rules that differ up to twofold.

import type { Source } from '../../quantity/types.ts';

export const STORAGE_RULES = ['ISO 2230', 'SAE ARP5316', 'RMA'] as const;
export type StorageRule = (typeof STORAGE_RULES)[number];

export type StorageGroup = {
  readonly group: string;
  /** Null: no limit. */
  readonly years: number | null;
  /** After inspection; null: the rule knows none. */
  readonly extensionYears: number | null;
  /** Where the rule gives a range, its upper end, which is not relied on. */
  readonly upperYears?: number;
  readonly compounds: readonly string[];
  readonly source: Source;
};

const iso: Source = {
  kind: 'from memory',
  of: 'ISO 2230:2002, groups A, B and C (a supplier page that was read agrees)',
};

const sae: Source = { kind: 'from memory', of: 'SAE ARP5316, shelf life by elastomer' };

const rma: Source = {
  kind: 'published',
  title: 'Sheet rubber catalogue, guidelines of the Rubber Manufacturers Association',
  edition: 'as read',
  place: 'appendix 5, p. 172',
};

export const storageTable: Readonly<Record<StorageRule, readonly StorageGroup[]>> = {
  'ISO 2230': [
    {
      group: 'A',
      years: 5,
      extensionYears: 2,
      compounds: ['NR', 'IR', 'SBR', 'BR', 'AU', 'EU'],
      source: iso,
    },
    {
      group: 'B',
      years: 7,
      extensionYears: 3,
      compounds: ['NBR', 'HNBR', 'CR', 'IIR', 'ACM', 'AEM', 'CO/ECO', 'CSM'],
      source: iso,
    },
    {
      group: 'C',
      years: 10,
      extensionYears: 5,
      compounds: ['EPDM', 'EPM', 'FKM', 'VMQ', 'PVMQ', 'FVMQ', 'FFKM', 'FEPM'],
      source: iso,
    },
  ],
  'SAE ARP5316': [
    {
      group: '15 years',
      years: 15,
      extensionYears: null,
      compounds: ['NBR', 'HNBR', 'CR'],
      source: sae,
    },
    {
      group: 'no limit',
      years: null,
      extensionYears: null,
      compounds: ['EPDM', 'FKM', 'VMQ'],
      source: sae,
    },
  ],
  RMA: [
    {
      group: '3 to 5 years',
      years: 3,
      extensionYears: null,
      upperYears: 5,
      compounds: ['NBR'],
      source: rma,
    },
    {
      group: '5 to 10 years',
      years: 5,
      extensionYears: null,
      upperYears: 10,
      compounds: ['CR', 'EPDM'],
      source: rma,
    },
    {
      group: '5 to 20 years',
      years: 5,
      extensionYears: null,
      upperYears: 20,
      compounds: ['FKM'],
      source: rma,
    },
    { group: '20 years', years: 20, extensionYears: null, compounds: ['VMQ'], source: rma },
  ],
};

/** Every compound that a rule knows. */
export const storedCompounds: readonly string[] = [
  ...new Set(
    Object.values(storageTable).flatMap((groups) => groups.flatMap(({ compounds }) => compounds)),
  ),
];
