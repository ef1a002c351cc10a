// The shape of a value sheet: one issue of it, with every value exactly as it was issued.

import { z } from 'zod';

/** Ids are short words or codes; the YAML key is the id. */
export const idSchema = z.string().regex(/^[a-z0-9][a-z0-9-]*$/, 'a short word in a-z, 0-9 and -');

/** Text, since a bare number has no unit; for a limit or a direction it may be words. */
const figure = z.string().meta({ figure: true });

export const VALUE_KINDS = [
  'torque',
  'clearance',
  'limit',
  'interval',
  'speed',
  'time',
  'direction',
] as const;

export const SCOPES = ['this joint', 'general table'] as const;

/** The joint, or `joint:fastener` where its kinds of fastener have values of their own. */
const jointName = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]*(:[a-z0-9][a-z0-9-]*)?$/, 'a joint, or joint:fastener');

export const valueSchema = z.strictObject({
  name: z.string().min(1),
  kind: z.enum(VALUE_KINDS),
  value: figure.optional(),
  min: figure.optional(),
  max: figure.optional(),
  unit: z.string().optional(),
  scope: z.enum(SCOPES).optional(),
  threadCondition: z.string().optional(),
  joint: jointName.optional(),
  why: z.string().optional(),
  supersedes: z.strictObject({ issue: z.string(), value: z.string() }).optional(),
});

export const sheetFileSchema = z.strictObject({
  sheet: idSchema,
  name: z.string().min(1),
  for: z.string().min(1),
  issue: z.string().min(1),
  date: z.iso.date(),
  authority: z.string().min(1),
  why: z.string().optional(),
  confirm: z
    .string()
    .regex(/^[1-9]\d{0,2} (month|year)s?$/, 'a number of months or years, such as 24 months')
    .optional(),
  confirmed: z.strictObject({ on: z.iso.date(), by: z.string().min(1) }).optional(),
  values: z.record(idSchema, valueSchema),
});

export type ValueEntry = z.infer<typeof valueSchema>;
export type SheetFile = z.infer<typeof sheetFileSchema>;
