// Surface temperatures that burn skin, by material and time of contact, as publicly stated.

import type { Source } from '../../quantity/types.ts';

export const MATERIALS = [
  'bare metal',
  'coated metal',
  'ceramic, glass, stone',
  'plastic, wood',
] as const;
export type Material = (typeof MATERIALS)[number];

export type BurnRow = {
  readonly contactS: number;
  /** The lower end where the standard gives a range. */
  readonly celsius: number;
  readonly says: string;
};

const tenMinutes: BurnRow = { contactS: 600, celsius: 48, says: '10 min, all materials' };
const eightHours: BurnRow = {
  contactS: 28_800,
  celsius: 43,
  says: '8 h and longer, all materials',
};
const minute = (celsius: number, of: string): BurnRow => ({
  contactS: 60,
  celsius,
  says: `1 min, ${of}`,
});

/** Rising in time of contact. */
export const burnRows: Readonly<Record<Material, readonly BurnRow[]>> = {
  'bare metal': [
    { contactS: 1, celsius: 65, says: '1 s, bare metal, of 65 to 70' },
    { contactS: 10, celsius: 55, says: '10 s, bare metal, of 55 to 58' },
    minute(51, 'bare or coated metal'),
    tenMinutes,
    eightHours,
  ],
  'coated metal': [minute(51, 'bare or coated metal'), tenMinutes, eightHours],
  'ceramic, glass, stone': [minute(56, 'ceramics, glass, stone'), tenMinutes, eightHours],
  'plastic, wood': [minute(60, 'plastics, wood'), tenMinutes, eightHours],
};

export const burnSource: Source = {
  kind: 'from memory',
  of: 'ISO 13732-1:2006, Figure 2 and Table 1 (a public page confirms 65 Cel for bare metal only)',
};

/** Between two rows the longer one's figure; beyond the last the last. */
export function burnRow(material: Material, contactS: number): BurnRow {
  const rows = burnRows[material];
  const row = rows.find((one) => one.contactS >= contactS) ?? rows.at(-1);
  if (row === undefined) throw new Error(`no row for ${material}`);
  return row;
}

/** Shorter contact is outside the standard. */
export const LEAST_CONTACT_S = 0.5;
