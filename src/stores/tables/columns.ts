// The columns of a list of stores in CSV: their heads, the fields they are, what they say.

import type { StoredItem } from '../item.ts';

export type Column = {
  readonly head: string;
  readonly field: keyof StoredItem;
  readonly as: 'text' | 'number' | 'list';
  readonly says: string;
};

// biome-ignore format: a column a line
export const COLUMNS: readonly Column[] = [
  { head: 'kind', field: 'kind', as: 'text', says: 'seal, part or consumable' },
  { head: 'id', field: 'id', as: 'text', says: 'a short word of its own' },
  { head: 'name', field: 'name', as: 'text', says: 'as it is called aboard' },
  { head: 'seal', field: 'seal', as: 'text', says: 'gasket, ring, shaft seal or sealing washer' },
  { head: 'serves', field: 'serves', as: 'list', says: 'a part, or a seal as joint:seal; more with ; between' },
  { head: 'type', field: 'type', as: 'text', says: "of a part: the item's type" },
  { head: 'size', field: 'size', as: 'text', says: 'as it stands on the bag' },
  { head: 'compound', field: 'compound', as: 'text', says: 'NBR, FKM, EPDM, copper, …' },
  { head: 'thickness', field: 'thickness', as: 'text', says: 'of a gasket, with its unit' },
  { head: 'serial', field: 'serial', as: 'text', says: 'of one thing' },
  { head: 'batch', field: 'batch', as: 'text', says: 'of many alike' },
  { head: 'gtin', field: 'gtin', as: 'text', says: 'the number under its bar code' },
  { head: 'cured', field: 'cured', as: 'text', says: 'a quarter as 3Q2024, or a day' },
  { head: 'expires', field: 'expires', as: 'text', says: 'last day of use on its label' },
  { head: 'condition', field: 'condition', as: 'text', says: 'ready to fit, needs work or core' },
  { head: 'origin', field: 'origin', as: 'text', says: 'where it came from; "assumed" is no answer' },
  { head: 'quantity', field: 'quantity', as: 'number', says: 'held' },
  { head: 'unit', field: 'unit', as: 'text', says: 'counted in; pieces unless given' },
  { head: 'counted', field: 'countedOn', as: 'text', says: 'the day of that count' },
  { head: 'place', field: 'place', as: 'text', says: 'where it is kept' },
  { head: 'kit', field: 'kit', as: 'text', says: 'the kit it lies in' },
  { head: 'full', field: 'full', as: 'number', says: 'how many a full kit holds' },
  { head: 'reserved', field: 'reservedFor', as: 'text', says: 'the job it is kept for' },
  { head: 'hand', field: 'hand', as: 'text', says: 'port, starboard or either' },
  { head: 'touches', field: 'touches', as: 'list', says: 'what a consumable may touch; more with ; between' },
  { head: 'note', field: 'note', as: 'text', says: 'anything else' },
];
