// Sends what this device said, and takes in what the server knows; each may fail at any moment.

import { limits } from '../../limits.ts';
import type { Act } from '../../record/types.ts';
import { type Answer, getReplica, postActs, postPhoto } from './api.ts';
import { db, type KnownRow, type OwnAct } from './offline-db.ts';
import { wordsNow } from './words-now.ts';

/** As many as one message may hold, in the order in which they were said. */
export function inLots(acts: readonly Act[]): readonly (readonly Act[])[] {
  const lots: Act[][] = [];
  let size = 0;
  for (const act of acts) {
    const length = JSON.stringify(act).length;
    const lot = lots.at(-1);
    const full = lot === undefined || lot.length >= limits.server.actsAtOnce;
    if (full || size + length > limits.server.actsBytes / 4) {
      lots.push([act]);
      size = length;
    } else {
      lot.push(act);
      size += length;
    }
  }
  return lots;
}

/** Null when all that could be sent was sent; acts before photos, since they are small. */
export async function send(own: readonly OwnAct[], photos: boolean): Promise<string | null> {
  const waiting = own
    .filter(({ refused, taken }) => refused === null && !taken)
    .map(({ act }) => act);
  for (const lot of inLots(waiting)) {
    const answer = await postActs(lot);
    if (!answer.ok) return whyOf(answer);
    const { taken, known, refused } = answer.value;
    const there = new Set([...taken, ...known]);
    const whys = new Map(refused.map(({ hash, why }) => [hash, why]));
    const rows = own.filter(({ act }) => there.has(act.hash) || whys.has(act.hash));
    await db.own.bulkPut(
      rows.map((row) => ({
        ...row,
        taken: there.has(row.act.hash),
        refused: whys.get(row.act.hash) ?? null,
      })),
    );
  }
  return photos ? await sendPhotos() : null;
}

async function sendPhotos(): Promise<string | null> {
  for (const hash of await db.photos.where('unsent').equals(1).primaryKeys()) {
    const row = await db.photos.get(hash);
    if (row === undefined) continue;
    const answer = await postPhoto(new Blob([row.bytes], { type: row.type }));
    if (!answer.ok) return whyOf(answer);
    await db.photos.put({ ...row, unsent: 0 });
  }
  return null;
}

const whyOf = (answer: Answer<unknown>): string =>
  answer.ok ? '' : (answer.problems[0]?.why ?? wordsNow().refused.noAnswer);

export type News =
  | { readonly ok: true; readonly known: KnownRow | null }
  | { readonly ok: false; readonly why: string };

/** Null when nothing is new. */
export async function fetchKnown(seen: string): Promise<News> {
  const answer = await getReplica(seen);
  if (!answer.ok) return { ok: false, why: whyOf(answer) };
  if (answer.value.unchanged) return { ok: true, known: null };
  return {
    ok: true,
    known: { key: 'known', seen: answer.value.seen, replica: answer.value.replica },
  };
}

/** Own acts leave the outbox in the same write that keeps the server's copy of them. */
export async function keepKnown(known: KnownRow): Promise<readonly OwnAct[]> {
  const there = new Set(known.replica.acts.map((act) => act.hash));
  return await db.transaction('rw', db.known, db.own, async () => {
    const own = await db.own.toArray();
    await db.known.put(known);
    const gone = own.filter(({ act }) => there.has(act.hash)).map(({ deviceSeq }) => deviceSeq);
    await db.own.bulkDelete(gone);
    // Said to be there and not shown: an archive put back from a copy. It is sent again.
    const left = own.filter(({ act }) => !there.has(act.hash));
    const again = left.map((row) => ({ ...row, taken: false }));
    await db.own.bulkPut(again);
    return again;
  });
}
