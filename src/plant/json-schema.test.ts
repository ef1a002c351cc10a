// The published schemas are those of the schema that reads, and let optional fields be unknown.

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { plantJsonSchema, schemaText } from './json-schema.ts';
import { FILE_KINDS } from './kinds.ts';

test.each(FILE_KINDS)('docs/schema/%s.schema.json is what is made now', (kind) => {
  const path = fileURLToPath(new URL(`../../docs/schema/${kind}.schema.json`, import.meta.url));
  expect(readFileSync(path, 'utf8')).toBe(schemaText(kind));
});

test('an optional field takes its value, unknown, or a value with its origin', () => {
  const { $defs } = plantJsonSchema('type') as { $defs: Record<string, unknown> };
  expect(JSON.stringify($defs)).toContain('{"const":"unknown"}');
  const { properties } = plantJsonSchema('machine') as {
    properties: Record<string, { anyOf?: unknown[] }>;
  };
  expect(properties.plate?.anyOf).toMatchObject([
    { type: 'string' },
    { const: 'unknown' },
    { required: ['value', 'from'], additionalProperties: false },
  ]);
  expect(properties.name).toEqual({ type: 'string', minLength: 1 });
});

test('every reference inside a schema leads somewhere', () => {
  for (const kind of FILE_KINDS) {
    const schema = plantJsonSchema(kind);
    const defs = new Set(Object.keys((schema.$defs as object | undefined) ?? {}));
    const used = [...schemaText(kind).matchAll(/"\$ref": "#\/\$defs\/([^"]+)"/g)];
    for (const [, name = ''] of used) expect(defs).toContain(name);
  }
});
