// Makes known in the record what issues of this plant replaced of values that packs here hold.

import type { Archive } from '../archive/contract.ts';
import type { Plant } from '../plant/types.ts';
import { fold } from '../record/fold.ts';
import type { Act, DeviceTime } from '../record/types.ts';
import { issuesToTell } from '../record/values-used.ts';

/** Who loses a turn to another writer this often leaves it to the next start. */
const TRIES = 5;

/** Says nothing that the record knows already, so asking again is free. */
export async function tellIssues(
  plant: Plant,
  archive: Archive,
  now: () => DeviceTime,
): Promise<readonly Act[]> {
  for (let turn = 0; turn < TRIES; turn += 1) {
    const [acts, packs, heads] = await Promise.all([
      archive.acts(),
      archive.packs(),
      archive.heads(),
    ]);
    if (packs.length === 0) return [];
    const drafts = issuesToTell(plant, fold({ acts, packs }), packs);
    if (drafts.length === 0) return [];
    const kept = await archive.append({ drafts, at: now(), heads });
    if (kept.ok) return kept.acts;
  }
  return [];
}
