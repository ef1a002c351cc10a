// docs/plant.md names exactly the twenty faults, each by its plain name and with an example.

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { parseDocument } from 'yaml';
import { FAULTS } from './faults.ts';
import {
  closureSchema,
  fastenerSchema,
  isolationSchema,
  jointSchema,
  lineSchema,
  machineFileSchema,
  partSchema,
  targetSchema,
  valueSchema,
} from './schema.ts';

const path = fileURLToPath(new URL('../../docs/plant.md', import.meta.url));
const page = readFileSync(path, 'utf8');
const list = page.slice(page.indexOf('## The twenty faults'), page.indexOf('## How it is tested'));

test('the faults of the page are those of the program, with an example each', () => {
  const told = [...list.matchAll(/^(F\d+) · (.+)$/gm)];
  expect(told.map(([, id]) => id)).toEqual(Object.keys(FAULTS));
  for (const [, id = '', name = ''] of told) {
    expect(name.startsWith(FAULTS[id as keyof typeof FAULTS]), `${id} ${name}`).toBe(true);
  }
  const examples = [...list.matchAll(/```yaml\n([^`]+)```/g)].map(([, text = '']) => text);
  expect(examples).toHaveLength(20);
  const broken = examples.map(
    (text) => parseDocument(text, { uniqueKeys: false }).errors.length > 0,
  );
  expect(broken).toEqual(examples.map((_, n) => n === 0));
});

test('every field has its word on the page', () => {
  const schemas = [
    closureSchema,
    fastenerSchema,
    isolationSchema,
    jointSchema,
    lineSchema,
    machineFileSchema,
    partSchema,
    targetSchema,
    valueSchema,
  ];
  const told = new Set(
    [...page.replace(/```[^`]+```/g, '').matchAll(/`([^`]+)`/g)].map(([, word]) => word),
  );
  const missing = schemas
    .flatMap((schema) => Object.keys(schema.shape))
    .filter((field) => !told.has(field));
  expect(missing).toEqual([]);
});
