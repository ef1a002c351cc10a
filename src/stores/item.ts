// What is held in the stores, as data: seals, spare parts and consumables, each with its origin.

import { z } from 'zod';
import { limits } from '../limits.ts';
import { isDay } from '../quantity/day.ts';
import { readQuantity } from '../quantity/quantity.ts';
import { readCured } from './cured.ts';
import { isKey } from './gs1.ts';

export const STORE_KINDS = ['seal', 'part', 'consumable'] as const;
export const SEAL_KINDS = ['gasket', 'ring', 'shaft seal', 'sealing washer'] as const;
/** Only what is ready to fit counts as held. */
export const CONDITIONS = ['ready to fit', 'needs work', 'core'] as const;
export const HANDS = ['port', 'starboard', 'either'] as const;

/** What a spreadsheet would take for a formula is no name: it must not come out of a list again. */
const text = z
  .string()
  .trim()
  .min(1)
  .max(limits.stores.cellLength)
  .refine((value) => !/^[=+@\t-]/.test(value), {
    error: 'a spreadsheet would take this for a formula',
    params: { expected: 'a text that begins with a letter or a figure' },
  });

const checked = (is: (given: string) => boolean, error: string, expected: string) =>
  text.refine(is, { error, params: { expected } });

const id = z.string().regex(/^[a-z0-9][a-z0-9-]*$/, {
  error: 'an id is a short word: small letters, figures and hyphens',
});

const day = checked(isDay, 'it is no day of the calendar', 'a day as 2026-11-25');

const cured = checked(
  (given) => readCured(given) !== null,
  'it is neither a quarter nor a day of the calendar',
  'a quarter as 3Q2024, or a day as 2024-08-15',
);

const origin = checked(
  (given) => !/^(?:assumed|unknown|not known|none|n\/?a|\?)$/i.test(given),
  'this says that nobody knows where it came from',
  'where it came from, as supplier with invoice, or off which machine; "assumed" is no answer',
);

const thickness = checked(
  (given) => {
    const read = readQuantity(given, 'mm', '');
    return read.ok && read.quantity.value > 0;
  },
  'it is no thickness',
  'a length with its unit, as 0.5 mm',
);

const gtin = checked(
  (given) => /^(?:\d{8}|\d{12,14})$/.test(given) && isKey(given),
  'its check digit is wrong, or it has not 8, 12, 13 or 14 figures',
  'the number under the bar code, with its check digit',
);

const served = z.string().regex(/^[a-z0-9][a-z0-9-]*(?::[a-z0-9][a-z0-9-]*)?$/, {
  error: 'it is neither a part nor a seal',
});

export const itemSchema = z.strictObject({
  kind: z.enum(STORE_KINDS),
  id,
  name: text,
  seal: z.enum(SEAL_KINDS).optional(),
  serves: z.array(served).max(limits.stores.served).optional(),
  type: text.optional(),
  size: text.optional(),
  compound: text.optional(),
  thickness: thickness.optional(),
  serial: text.optional(),
  batch: text.optional(),
  gtin: gtin.optional(),
  cured: cured.optional(),
  expires: day.optional(),
  condition: z.enum(CONDITIONS),
  origin,
  quantity: z.number().min(0).max(limits.stores.quantity),
  unit: text.default('pieces'),
  /** The day its quantity was counted: what was drawn and received since counts besides. */
  countedOn: day.optional(),
  place: text.optional(),
  kit: text.optional(),
  full: z.int().min(1).max(limits.stores.quantity).optional(),
  reservedFor: text.optional(),
  hand: z.enum(HANDS).optional(),
  touches: z.array(text).max(limits.stores.touches).optional(),
  note: text.optional(),
});

export type StoredItem = z.infer<typeof itemSchema>;

type Wrong = {
  readonly field: keyof StoredItem;
  readonly got: unknown;
  readonly expected: string;
  readonly why: string;
};

/** What of one item can't be true together: field, value, allowed, why. */
export function contradictions(item: StoredItem): readonly Wrong[] {
  const { kind, serial, batch, quantity, full, kit, cured: curedIn, expires } = item;
  const wrong: Wrong[] = [];
  const say = (field: keyof StoredItem, got: unknown, expected: string, why: string) =>
    wrong.push({ field, got, expected, why });
  if (serial !== undefined && batch !== undefined) {
    say('batch', batch, 'a serial or a batch', 'one thing has a serial, many alike have a batch');
  }
  if (serial !== undefined && quantity > 1) {
    say('quantity', quantity, '0 or 1', 'a serial belongs to one thing');
  }
  if (full !== undefined && kit === undefined) {
    say('full', full, 'an empty cell, or the kit', 'no kit is named that it could fill');
  }
  if (kind === 'seal' && item.seal === undefined) {
    say('seal', null, SEAL_KINDS.join(', '), 'which kind of seal is it?');
  }
  if (kind !== 'seal') {
    for (const field of ['seal', 'compound', 'thickness', 'cured'] as const) {
      const got = item[field];
      if (got !== undefined) say(field, got, 'an empty cell', `a ${kind} has no "${field}"`);
    }
  }
  if (kind !== 'part' && item.type !== undefined) {
    say('type', item.type, 'an empty cell', `a ${kind} has no "type"`);
  }
  if (kind !== 'consumable' && item.touches !== undefined) {
    say('touches', item.touches.join('; '), 'an empty cell', `a ${kind} has no "touches"`);
  }
  if (kind !== 'consumable' && !Number.isInteger(quantity)) {
    say('quantity', quantity, 'a whole number', 'seals and parts are counted');
  }
  const from = curedIn === undefined ? null : readCured(curedIn);
  if (from !== null && expires !== undefined && expires < from.from) {
    say('expires', expires, `${from.from} or later`, 'it expires before it was cured');
  }
  return wrong;
}

/** Kits of which something is missing, with what. */
export const shortKits = (items: readonly StoredItem[]): readonly ShortKit[] => {
  const kits = new Map<string, { item: StoredItem; missing: number }[]>();
  for (const item of items) {
    const { kit, full, quantity, condition } = item;
    if (kit === undefined || full === undefined) continue;
    const held = condition === 'ready to fit' ? quantity : 0;
    if (held >= full) continue;
    kits.set(kit, [...(kits.get(kit) ?? []), { item, missing: full - held }]);
  }
  return [...kits].map(([kit, missing]) => ({ kit, missing }));
};

export type ShortKit = {
  readonly kit: string;
  readonly missing: readonly { readonly item: StoredItem; readonly missing: number }[];
};
