// Writes a list of tools as CSV that reads back the same.

import { convert, knownUnit } from '../quantity/units.ts';
import { belongsTo, COLUMNS, type Column } from './tables/columns.ts';
import { isGear, type Tool } from './tool.ts';

/** CSV after RFC 4180, the columns that any tool fills; lines end in a line feed. */
export function writeTools(tools: readonly Tool[]): string {
  const rows = tools.map((tool) => COLUMNS.map((column) => cellOf(tool, column)));
  const used = COLUMNS.map((_, at) => at).filter(
    (at) => at < 3 || rows.some((row) => row[at] !== ''),
  );
  const lines = [COLUMNS.map(({ head }) => head), ...rows];
  return lines.map((row) => `${used.map((at) => quoted(row[at] ?? '')).join(',')}\n`).join('');
}

const quoted = (cell: string): string =>
  /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;

function cellOf(tool: Tool, column: Column): string {
  if (!belongsTo(column, tool.kind)) return '';
  if (tool.kind === 'wrench') {
    if (column.head === 'unit') return knownUnit(tool.scaleUnit).symbol;
    if (column.head === 'min') return onScale(tool.min.value, tool.scaleUnit);
    if (column.head === 'max') return onScale(tool.max.value, tool.scaleUnit);
  }
  if (isGear(tool) && column.head === 'safe load') return String(tool.safeLoad.value);
  const value = new Map<string, unknown>(Object.entries(tool)).get(column.field);
  if (value === undefined) return '';
  if (value === true) return 'yes';
  return value === false ? '' : String(value);
}

/** Back to the figure on the scale: 25 lbf·ft comes back as 25. */
const onScale = (newtonMetres: number, unit: string): string =>
  String(Number(convert(newtonMetres, 'N.m', unit).toPrecision(12)));
