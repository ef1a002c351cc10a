// The fields of a calculation's form, read from its published schema: nothing is listed twice.

import { unitOf } from '../../quantity/units.ts';

export type Field =
  | { readonly kind: 'figure'; readonly unit: string }
  | { readonly kind: 'number' | 'text' | 'yesno' | 'free' }
  | { readonly kind: 'fixed'; readonly value: unknown }
  | { readonly kind: 'choice'; readonly options: readonly string[] }
  | { readonly kind: 'group'; readonly rows: readonly Row[] }
  | { readonly kind: 'list'; readonly of: Field }
  | { readonly kind: 'either'; readonly ways: readonly Way[] };

export type Row = {
  readonly name: string;
  readonly field: Field;
  readonly needed: boolean;
  readonly help: string | null;
};

export type Way = { readonly name: string; readonly field: Field };

type Schema = Readonly<Record<string, unknown>>;

const isSchema = (value: unknown): value is Schema =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const schemasIn = (value: unknown): readonly Schema[] =>
  Array.isArray(value) ? value.filter(isSchema) : [];

/** What the register adds to every schema and ignores; a form does not ask for it. */
const NOT_ASKED = (schema: Schema): boolean => Object.keys(schema).length === 0;

export function fieldOf(schema: Schema): Field {
  if (typeof schema.unit === 'string') return { kind: 'figure', unit: schema.unit };
  if ('const' in schema) return { kind: 'fixed', value: schema.const };
  if (Array.isArray(schema.enum)) return { kind: 'choice', options: schema.enum.map(String) };
  const ways = schemasIn(schema.anyOf ?? schema.oneOf).filter((way) => way.type !== 'null');
  const [only] = ways;
  if (only !== undefined && ways.length === 1) return fieldOf(only);
  if (ways.length > 1) return eitherOf(ways);
  switch (schema.type) {
    case 'number':
    case 'integer':
      return { kind: 'number' };
    case 'string':
      return { kind: 'text' };
    case 'boolean':
      return { kind: 'yesno' };
    case 'array':
      return isSchema(schema.items) ? listOf(schema.items) : { kind: 'free' };
    case 'object':
      return isSchema(schema.properties) ? groupOf(schema) : { kind: 'free' };
    default:
      return { kind: 'free' };
  }
}

const listOf = (items: Schema): Field => ({ kind: 'list', of: fieldOf(items) });

function groupOf(schema: Schema): Field {
  const needed = Array.isArray(schema.required) ? schema.required : [];
  const rows = Object.entries(isSchema(schema.properties) ? schema.properties : {}).flatMap(
    ([name, of]): Row[] =>
      isSchema(of) && !NOT_ASKED(of)
        ? [{ name, field: fieldOf(of), needed: needed.includes(name), help: helpOf(of) }]
        : [],
  );
  return { kind: 'group', rows };
}

const helpOf = (schema: Schema): string | null =>
  typeof schema.description === 'string' ? schema.description : null;

function eitherOf(ways: readonly Schema[]): Field {
  const words = ways.filter((way) => way.type === 'string' && Array.isArray(way.enum));
  const alike = ways.length === words.length;
  if (alike)
    return { kind: 'choice', options: words.flatMap((w) => (w.enum as unknown[]).map(String)) };
  const fields = ways.map(fieldOf);
  return {
    kind: 'either',
    ways: fields.map((field, i) => ({ name: helpOf(ways[i] ?? {}) ?? wayName(field), field })),
  };
}

function wayName(field: Field): string {
  switch (field.kind) {
    case 'figure':
      return 'one figure';
    case 'group':
      return field.rows
        .map((row) => row.name)
        .slice(0, 4)
        .join(', ');
    case 'list':
      return 'a list';
    case 'choice':
      return field.options.slice(0, 3).join(', ');
    case 'fixed':
      return String(field.value);
    case 'number':
      return 'a number';
    case 'text':
      return 'in words';
    case 'yesno':
      return 'yes or no';
    case 'either':
      return field.ways.map((way) => way.name).join(' or ');
    case 'free':
      return 'as text';
  }
}

/** Which of several ways a value takes now; the first where it takes none. */
export function wayOf(ways: readonly Way[], value: unknown): number {
  const at = ways.findIndex(({ field }) => fits(field, value));
  return Math.max(at, 0);
}

function fits(field: Field, value: unknown): boolean {
  switch (field.kind) {
    case 'figure':
      return typeof value === 'number' || typeof value === 'string' || hasUnit(value);
    case 'number':
      return typeof value === 'number';
    case 'text':
      return typeof value === 'string';
    case 'yesno':
      return typeof value === 'boolean';
    case 'fixed':
      return value === field.value;
    case 'choice':
      return typeof value === 'string' && field.options.includes(value);
    case 'list':
      return Array.isArray(value) && value.every((each) => fits(field.of, each));
    case 'group': {
      if (!isSchema(value)) return false;
      const known = field.rows.map((row) => row.name);
      return Object.keys(value).every((name) => known.includes(name));
    }
    case 'either':
      return field.ways.some((way) => fits(way.field, value));
    case 'free':
      return true;
  }
}

const hasUnit = (value: unknown): boolean => isSchema(value) && 'unit' in value && 'value' in value;

/** What a newly chosen way or a new row of a list begins with. */
export function emptyOf(field: Field): unknown {
  switch (field.kind) {
    case 'group':
      return {};
    case 'list':
      return [];
    case 'fixed':
      return field.value;
    case 'either':
      return field.ways[0] === undefined ? '' : emptyOf(field.ways[0].field);
    case 'choice':
      return field.options[0] ?? '';
    default:
      return '';
  }
}

export type Typed = { readonly amount: string; readonly unit: string };

/** A figure as it stands in the case, split for a field and a list of units. */
export function splitFigure(value: unknown, unit: string): Typed {
  if (typeof value === 'number') return { amount: String(value), unit };
  if (isSchema(value) && hasUnit(value))
    return { amount: String(value.value), unit: String(value.unit) };
  const text = String(value ?? '').trim();
  const [, number = '', rest = ''] = /^([-+−]?[\d.,]+(?:[eE][-+]?\d+)?)\s*(.*)$/s.exec(text) ?? [];
  if (number !== '' && unitOf(rest) !== undefined) return { amount: number, unit: rest };
  // Not a figure yet: what was typed stays in the field, its unit beside it.
  const at = text.lastIndexOf(' ');
  const last = text.slice(at + 1);
  return at > 0 && unitOf(last) !== undefined
    ? { amount: text.slice(0, at), unit: last }
    : { amount: text, unit };
}

/** Back again: a text with its unit, so that what was typed is what is kept. */
export function joinFigure({ amount, unit }: Typed, own: string): unknown {
  if (amount.trim() === '') return undefined;
  if (own === '1' && unit === '1') return Number.isFinite(Number(amount)) ? Number(amount) : amount;
  return `${amount.trim()} ${unit}`;
}
