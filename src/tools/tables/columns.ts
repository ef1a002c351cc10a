// The columns of a list of tools in CSV: their heads, the fields they are, the kinds that have them.

import type { Tool, ToolKind } from '../tool.ts';

export type Column = {
  readonly head: string;
  readonly field: string;
  readonly kinds: readonly ToolKind[] | 'all';
  /** How a cell becomes a value; `figure` keeps its text, a bare number counts in the column's unit. */
  readonly as: 'text' | 'figure' | 'number' | 'yes or no';
  readonly says: string;
};

const torque: readonly ToolKind[] = ['wrench', 'gauge'];
const gear: readonly ToolKind[] = ['chain block', 'sling', 'shackle', 'eye bolt', 'jack'];
const sockets: readonly ToolKind[] = ['socket', 'key'];

// biome-ignore format: a column a line
export const COLUMNS: readonly Column[] = [
  { head: 'kind', field: 'kind', kinds: 'all', as: 'text', says: 'what it is' },
  { head: 'id', field: 'id', kinds: 'all', as: 'text', says: 'a short word of its own' },
  { head: 'name', field: 'name', kinds: 'all', as: 'text', says: 'as it is called aboard' },
  { head: 'drive', field: 'drive', kinds: ['wrench', 'handle', 'adapter', 'extension', 'swivel', 'crowfoot', ...sockets], as: 'text', says: 'driving square, 1/4 to 1 (in) or 6.3 to 25 (mm)' },
  { head: 'to', field: 'to', kinds: ['adapter'], as: 'text', says: 'the square it drives' },
  { head: 'across flats', field: 'acrossFlats', kinds: [...sockets, 'crowfoot', 'spanner'], as: 'figure', says: 'mm' },
  { head: 'long', field: 'long', kinds: sockets, as: 'yes or no', says: 'reaches over a stud' },
  { head: 'length', field: 'length', kinds: ['extension', 'sling'], as: 'figure', says: 'mm' },
  { head: 'offset', field: 'offset', kinds: ['crowfoot'], as: 'figure', says: 'mm, drive square to bolt' },
  { head: 'measures', field: 'measures', kinds: ['gauge'], as: 'text', says: 'gap, pressure, …' },
  { head: 'min', field: 'min', kinds: torque, as: 'figure', says: 'in the unit of its scale' },
  { head: 'max', field: 'max', kinds: torque, as: 'figure', says: 'in the unit of its scale' },
  { head: 'unit', field: 'unit', kinds: torque, as: 'text', says: 'on its scale' },
  { head: 'division', field: 'division', kinds: ['wrench'], as: 'number', says: 'step of its scale' },
  { head: 'tolerance', field: 'tolerance', kinds: ['wrench'], as: 'figure', says: 'a fraction, or 4 %' },
  { head: 'grip', field: 'lengthToGrip', kinds: ['wrench'], as: 'figure', says: 'mm, drive square to the marked grip' },
  { head: 'calibrated', field: 'calibratedOn', kinds: torque, as: 'text', says: 'day' },
  { head: 'months', field: 'intervalMonths', kinds: [...torque, ...gear], as: 'number', says: 'between calibrations (12 unless given) or examinations' },
  { head: 'cycles', field: 'intervalCycles', kinds: ['wrench'], as: 'number', says: 'between calibrations; 5000 unless given' },
  { head: 'since', field: 'cyclesSince', kinds: ['wrench'], as: 'number', says: 'cycles since calibration' },
  { head: 'counted', field: 'countedOn', kinds: ['wrench'], as: 'text', says: 'the day of that count' },
  { head: 'dropped', field: 'droppedOn', kinds: ['wrench'], as: 'text', says: 'day of its last drop' },
  { head: 'safe load', field: 'safeLoad', kinds: gear, as: 'figure', says: 'kg, as marked on it' },
  { head: 'most angle', field: 'mostAngle', kinds: ['sling', 'eye bolt'], as: 'number', says: 'degrees from straight down' },
  { head: 'examined', field: 'examinedOn', kinds: gear, as: 'text', says: 'day' },
  { head: 'uncertainty', field: 'expanded', kinds: ['gauge'], as: 'number', says: 'expanded, in its unit' },
  { head: 'k', field: 'k', kinds: ['gauge'], as: 'number', says: 'coverage factor of it' },
  { head: 'place', field: 'place', kinds: 'all', as: 'text', says: 'where it is kept' },
  { head: 'note', field: 'note', kinds: 'all', as: 'text', says: 'anything else' },
];

export const belongsTo = ({ kinds }: Column, kind: Tool['kind']): boolean =>
  kinds === 'all' || kinds.includes(kind);
