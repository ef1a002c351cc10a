// Writes a list of stores as CSV that reads back the same.

import type { StoredItem } from './item.ts';
import { COLUMNS, type Column } from './tables/columns.ts';

/** CSV after RFC 4180, the columns that any item fills; lines end in a line feed. */
export function writeStores(items: readonly StoredItem[]): string {
  const rows = items.map((item) => COLUMNS.map((column) => cellOf(item, column)));
  const used = COLUMNS.map((_, at) => at).filter(
    (at) => ALWAYS.includes(COLUMNS[at]?.field ?? 'note') || rows.some((row) => row[at] !== ''),
  );
  const lines = [COLUMNS.map(({ head }) => head), ...rows];
  return lines.map((row) => `${used.map((at) => quoted(row[at] ?? '')).join(',')}\n`).join('');
}

const ALWAYS: readonly (keyof StoredItem)[] = [
  'kind',
  'id',
  'name',
  'condition',
  'origin',
  'quantity',
];

const quoted = (cell: string): string =>
  /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;

function cellOf(item: StoredItem, { field }: Column): string {
  const value = item[field];
  if (value === undefined) return '';
  return Array.isArray(value) ? value.join('; ') : String(value);
}
