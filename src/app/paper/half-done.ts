// What is already read off a sheet, kept on this device until the sheet is entered: a reload, or a
// call in between, costs nobody the rows that were said.

import { z } from 'zod';
import { useKept } from '../shared/kept.ts';

const row = z.union([
  z.literal('blank'),
  z.object({
    ticked: z.boolean(),
    answers: z.record(z.string(), z.string()),
    holes: z.array(z.string()).readonly().nullable(),
    by: z.string().exactOptional(),
  }),
]);

const halfDone = z.object({
  writtenAt: z.string(),
  found: z.string(),
  /** The step with the last tick; empty where the ticks go to the end. */
  end: z.string(),
  said: z.record(z.string(), row),
});

export type HalfDone = z.infer<typeof halfDone>;
const NOTHING: HalfDone = { writtenAt: '', found: '', end: '', said: {} };

function parsed(text: string): HalfDone {
  if (text === '') return NOTHING;
  try {
    return halfDone.parse(JSON.parse(text));
  } catch {
    // Kept by another version of the app: the sheet itself is still on the table.
    return NOTHING;
  }
}

export function useHalfDone(job: string, letter: string) {
  const [text, keep] = useKept(`paper.${job}.${letter}`, '');
  const now = parsed(text);
  return {
    now,
    change: (more: Partial<HalfDone>) => keep(JSON.stringify({ ...now, ...more })),
    forget: () => keep(''),
  };
}
