// What a log already held when its record began, read from a file and said as acts, once.

import { parse } from 'yaml';
import { z } from 'zod';
import type { Draft } from '../record/types.ts';

const id = z.string().regex(/^[a-z0-9][a-z0-9-]*$/);
const name = z.string().trim().min(1);
const at = z.string().min(10);

export const historySchema = z.strictObject({
  history: id,
  by: name,
  watch: name.optional(),
  sailings: z.array(z.strictObject({ at, where: name })).default([]),
  hours: z.array(z.strictObject({ machine: id, at, hours: z.number().min(0) })).default([]),
  done: z
    .array(
      z.strictObject({
        machine: id,
        target: id,
        does: name,
        at,
        hours: z.number().min(0).nullable(),
      }),
    )
    .default([]),
});

export type History = z.infer<typeof historySchema>;

export type ReadHistory =
  | { readonly ok: true; readonly history: History }
  | { readonly ok: false; readonly why: string };

export function readHistory(text: string): ReadHistory {
  let raw: unknown;
  try {
    raw = parse(text);
  } catch (error) {
    return { ok: false, why: error instanceof Error ? error.message : String(error) };
  }
  const parsed = historySchema.safeParse(raw);
  if (parsed.success) return { ok: true, history: parsed.data };
  const faults = parsed.error.issues.map((each) => `${each.path.join('/')}: ${each.message}`);
  return { ok: false, why: faults.join('; ') };
}

export function draftsOf(history: History): readonly Draft[] {
  const { by } = history;
  const vessel = { kind: 'vessel', id: history.history } as const;
  const machine = (machineId: string) => ({ kind: 'machine', id: machineId }) as const;
  const watch = history.watch;
  return [
    ...history.done.map(
      ({ machine: where, ...body }): Draft => ({
        stream: machine(where),
        kind: 'done-before',
        by,
        body,
      }),
    ),
    ...history.hours.map(
      (body): Draft => ({ stream: machine(body.machine), kind: 'hours-read', by, body }),
    ),
    ...history.sailings.map((body): Draft => ({ stream: vessel, kind: 'sailing-set', by, body })),
    ...(watch === undefined
      ? []
      : [{ stream: vessel, kind: 'watch-taken', by, body: { name: watch } }]),
  ];
}
