// The shape of what `removal` gives, for its published schema.

import { z } from 'zod';

const part = z.union([z.string(), z.int()]).describe('an id; in the plain forms an index from 0');
const minutes = z.strictObject({ value: z.number(), unit: z.literal('min') });

const step = z.union([
  z.strictObject({
    do: z.literal('undo'),
    joint: z.string(),
    access: z.string().nullable().describe('null: no access is stated'),
    reason: z.string(),
  }),
  z.strictObject({
    do: z.enum(['off', 'aside']),
    part,
    way: z.union([z.string(), z.int()]).nullable(),
    reason: z.string(),
  }),
]);

const workingRow = z.strictObject({
  symbol: z.string(),
  text: z.string(),
  expression: z.string(),
  value: z.number(),
  unit: z.string(),
  source: z.looseObject({ kind: z.string() }),
});

export const planSchema = z.strictObject({
  feasible: z.literal(true),
  order: z.array(step),
  off: z.array(part),
  aside: z.array(part),
  joints: z.array(z.string()),
  along: z
    .array(z.strictObject({ part: z.string(), on: z.string() }))
    .describe('parts that go along with the one they sit on'),
  minutes,
  bound: minutes,
  proven: z.boolean(),
  gap: z.number().min(0),
  avoided: z.strictObject({ joints: z.array(z.string()), minutes }),
  used: z.array(z.string()),
  orderProven: z.boolean(),
  orderBound: z.number(),
  changes: z.number().describe('of tool and place; with `time` their price in minutes'),
  working: z.array(workingRow),
  cautions: z.array(z.string()),
});

export const noRemovalSchema = z.strictObject({
  feasible: z.literal(false),
  why: z.string(),
  proven: z.literal(true),
});
