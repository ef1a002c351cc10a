// The tools held on a day, with the cycles of their wrenches counted up from the record.

import type { Held } from '../pack/fastening-types.ts';
import { heldCounted } from '../record/wrench-uses.ts';
import type { ServerParts } from './parts.ts';

/** Undefined where no list of tools is kept. */
export async function heldOn(
  { held, archive }: Pick<ServerParts, 'held' | 'archive'>,
  today: string,
): Promise<Held | undefined> {
  if (held === undefined) return undefined;
  const [acts, packs] = await Promise.all([archive.acts(), archive.packs()]);
  return heldCounted(held(today), acts, packs, today);
}
