// The published JSON Schemas of the four kinds of plant file, made from the schema that reads them.

import { z } from 'zod';
import { type FileKind, fileSchemas } from './kinds.ts';
import { originSchema } from './schema.ts';

type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };
type JsonMap = { readonly [key: string]: Json };

const isMap = (json: unknown): json is JsonMap =>
  typeof json === 'object' && json !== null && !Array.isArray(json);

const TITLES: Readonly<Record<FileKind, string>> = {
  plant: 'Plant file: the vessel or station, and what its machines share',
  type: 'Type file: the description that machines of one type share',
  machine: 'Machine file: one machine at its fitted position, and how it differs from its type',
  sheet: 'Sheet file: issued values',
};

/** A figure with a unit after it; which units fit is told by `boxup check`. */
const FIGURE = '^\\s*[+−-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?\\s*[^\\s\\d.,].*$';

type Definitions = Map<string, Json>;

/** A reference to `schema`, kept once under a name made from `hint`. */
function refer(definitions: Definitions, hint: string, schema: Json): Json {
  const text = JSON.stringify(schema);
  for (let n = 1; n <= definitions.size + 1; n++) {
    const name = n === 1 ? hint : `${hint}-${n}`;
    const held = definitions.get(name);
    if (held !== undefined && JSON.stringify(held) !== text) continue;
    definitions.set(name, schema);
    return { $ref: `#/$defs/${name}` };
  }
  throw new Error(`no name is left for ${hint}`);
}

function wrapped(schema: Json, origin: JsonMap): Json {
  const properties = isMap(origin.properties) ? origin.properties : {};
  const value = { anyOf: [schema, { const: 'unknown' }] };
  return { ...origin, properties: { ...properties, value } };
}

function opened(json: Json, definitions: Definitions, origin: JsonMap, hint: string): Json {
  if (Array.isArray(json)) {
    return json.map((item) => opened(item, definitions, origin, hint));
  }
  if (!isMap(json)) return json;
  const out: Record<string, Json> = {};
  for (const [key, inner] of Object.entries(json)) {
    if (key === 'properties' && isMap(inner)) {
      const required = Array.isArray(json.required) ? json.required : [];
      out[key] = Object.fromEntries(
        Object.entries(inner).map(([name, property]) => {
          const plain = opened(property, definitions, origin, name);
          if (required.includes(name)) return [name, plain];
          const small = JSON.stringify(plain).length < 120;
          const held = small ? plain : refer(definitions, name, plain);
          return [name, { anyOf: [held, { const: 'unknown' }, wrapped(held, origin)] }];
        }),
      );
    } else out[key] = opened(inner, definitions, origin, hint);
  }
  if (typeof json.unit === 'string') {
    const { unit, ...rest } = out;
    return { ...rest, pattern: FIGURE, description: `a figure with its unit, such as 1 ${unit}` };
  }
  const { figure: _, ...rest } = out;
  return rest;
}

function plainSchema(schema: z.ZodType): JsonMap {
  const { $schema: _, ...json } = z.toJSONSchema(schema, { target: 'draft-2020-12', io: 'input' });
  return JSON.parse(JSON.stringify(json)) as JsonMap;
}

/** The JSON Schema (2020-12) of one kind; optional fields may be unknown or have an origin. */
export function plantJsonSchema(kind: FileKind): JsonMap {
  const definitions: Definitions = new Map();
  const origin = plainSchema(originSchema);
  const body = opened(plainSchema(fileSchemas[kind]), definitions, origin, kind);
  const $defs = Object.fromEntries(definitions);
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: TITLES[kind],
    ...(isMap(body) ? body : {}),
    ...(definitions.size === 0 ? {} : { $defs }),
  };
}

export const schemaText = (kind: FileKind): string =>
  `${JSON.stringify(plantJsonSchema(kind), null, 2)}\n`;
