// Writes the published JSON Schemas of the plant files into docs/schema.

import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { schemaText } from '../plant/json-schema.ts';
import { FILE_KINDS } from '../plant/kinds.ts';

const folder = fileURLToPath(new URL('../../docs/schema/', import.meta.url));
mkdirSync(folder, { recursive: true });
for (const kind of FILE_KINDS) writeFileSync(`${folder}${kind}.schema.json`, schemaText(kind));
